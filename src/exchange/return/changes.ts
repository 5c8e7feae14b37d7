import type { CellContent, Sheet } from '../../workbook/document.ts'
import type { RowShift } from './row-shifts.ts'

/** What differs between a file that Lowside exported and the file as it came back. */
export type Change = InputChange | AskedChange | WorkingsChange | PassedOver

interface Difference {
  /** Its number among all changes of the file. */
  readonly id: number
  /** `Duty!C5`, as the workbook has it; a sheet, or a name. */
  readonly place: string
  /** What stands in Lowside, and what in the file, in words. */
  readonly was: string
  readonly is: string
}

interface AtCell {
  readonly sheet: string
  /** As exported. */
  readonly row: number
  readonly column: number
}

/** An input with another value: this is what the file went out for. */
export interface InputChange extends Difference, AtCell {
  readonly kind: 'input'
  readonly content: CellContent
}

/** What is taken over only if the user says so. */
export type AskedChange = CellChange | NoteChange | RowsChange | RowsAdded | NameChange | SheetAdded | SheetRemoved | SheetRenamed | SheetsMoved

interface Asked extends Difference {
  /** What taking it over would mean; or why it cannot be. */
  readonly taking: { readonly words: string } | { readonly refused: string }
}

export type CellDifference = 'formulaChanged' | 'formulaOverwritten' | 'formulaInInput' | 'formulaEntered' | 'contentChanged' | 'cellNew' | 'cellEmptied'

/** `content` is a formula in the layout of the file, with the names that sheets have in the workbook. */
export interface CellChange extends Asked, AtCell {
  readonly kind: CellDifference
  readonly content: CellContent
}

export interface NoteChange extends Asked, AtCell {
  readonly kind: 'noteChanged'
  readonly note: string
}

/** A cell of rows that are new, counted from the first of them. */
export interface NewCell {
  readonly row: number
  readonly column: number
  readonly content: CellContent
  readonly note?: string
}

export interface RowsChange extends Asked {
  readonly kind: 'rowsInserted' | 'rowsDeleted'
  readonly shift: RowShift
  readonly cells: readonly NewCell[]
}

/** Rows below all others: nothing moves. */
export interface RowsAdded extends Asked {
  readonly kind: 'rowsAdded'
  readonly sheet: string
  /** The first of them, as exported. */
  readonly row: number
  readonly cells: readonly NewCell[]
}

export interface NameChange extends Asked {
  readonly kind: 'nameChanged' | 'nameAdded' | 'nameRemoved'
  readonly name: string
  /** As for a cell's formula, without "="; null where it is gone. */
  readonly refersTo: string | null
}

export interface SheetAdded extends Asked {
  readonly kind: 'sheetAdded'
  readonly sheet: Sheet
}

export interface SheetRemoved extends Asked {
  readonly kind: 'sheetRemoved'
  readonly sheet: string
}

export interface SheetRenamed extends Asked {
  readonly kind: 'sheetRenamed'
  readonly sheet: string
  readonly name: string
}

export interface SheetsMoved extends Asked {
  readonly kind: 'sheetsMoved'
  /** The sheets of the workbook in the order of the file. */
  readonly order: readonly string[]
}

/** Workings, or their tables, with something else in them: never taken over, as the workbook computes with its own. */
export interface WorkingsChange extends Difference {
  readonly kind: 'workings'
  /** The function, or the sheet of tables. */
  readonly of: string
  /** The step, in the words above its column. */
  readonly step: string
  /** The cell that made the call first; empty for tables. */
  readonly firstCalledIn: string
}

/** What is not taken over and not asked about, with the reason. */
export interface PassedOver extends Difference {
  readonly kind: 'passedOver'
  readonly reason: string
}

/** All that can be asked about. */
export const ASKED_KINDS = [
  'sheetRenamed', 'sheetRemoved', 'sheetAdded', 'sheetsMoved', 'rowsInserted', 'rowsDeleted', 'rowsAdded', 'formulaInInput', 'formulaChanged', 'formulaOverwritten', 'formulaEntered',
  'contentChanged', 'cellNew', 'cellEmptied', 'noteChanged', 'nameChanged', 'nameAdded', 'nameRemoved',
] as const satisfies readonly AskedChange['kind'][]

const ASKED: ReadonlySet<string> = new Set(ASKED_KINDS)

export const isAsked = (change: Change): change is AskedChange => ASKED.has(change.kind)
export const canBeTaken = (change: AskedChange): boolean => 'words' in change.taking

/** Each kind of what is asked, as the heading of a list. */
export const KIND_WORDS: Readonly<Record<AskedChange['kind'], string>> = {
  sheetRenamed: 'Sheets with another name',
  sheetRemoved: 'Sheets that are gone',
  sheetAdded: 'Sheets that are new',
  sheetsMoved: 'Sheets in another order',
  rowsInserted: 'Rows inserted',
  rowsDeleted: 'Rows taken away',
  rowsAdded: 'Rows added below',
  formulaInInput: 'Formulas in inputs',
  formulaChanged: 'Changed formulas',
  formulaOverwritten: 'Formulas overwritten',
  formulaEntered: 'Formulas in place of something else',
  contentChanged: 'Changed labels, units and texts',
  cellNew: 'Cells that are new',
  cellEmptied: 'Cells emptied',
  noteChanged: 'Changed notes',
  nameChanged: 'Defined names that mean something else',
  nameAdded: 'Defined names that are new',
  nameRemoved: 'Defined names that are gone',
}
