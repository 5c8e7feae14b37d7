import type { CellValue } from '../../calc/values.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import type { LineAxis } from '../../workbook/line-edits.ts'
import type { UnitSystem } from '../../workbook/unit-pairs.ts'
import type { Layout } from './layout.ts'

/** What differs between two workbooks, one called before and one called now. Plain data: it crosses to other threads. */
export interface Difference {
  /** Its number among all of the comparison, from 0, in the order of the sheets and of reading. */
  readonly id: number
  readonly kind: DifferenceKind
  /** Where it is now; for what is gone, where it was. Of no sheet what belongs to the workbook as a whole: its title, a name, a case. */
  readonly sheet: string | undefined
  /** In the layout of the workbook now; undefined for what is gone or is no cell. Of rows and columns the first. */
  readonly now?: CellPlace
  /** In the layout of the workbook before; undefined for what is new or is no cell. Of rows and columns the first. */
  readonly before?: CellPlace
  /** What the cell is called, or what else it is that differs, in words. */
  readonly label: string | undefined
  /** What it was and what it is, as they read: "42 TR", "=C5*2", "3 rows". Formulas with references as they are now. */
  readonly was: string
  readonly is: string
  /** What taking the side of the other workbook does to the one that is open (`now`), in words; the edits are made by `acceptDifferences`. Or why that cannot be. */
  readonly accept: { readonly words: string } | { readonly refused: string }
  /** What is to be taken from the other side: for `acceptDifferences` alone. */
  readonly subject: Subject
}

export const DIFFERENCE_KINDS = [
  'sheet added', 'sheet gone', 'sheet renamed', 'sheets moved', 'rows inserted', 'rows gone', 'columns inserted', 'columns gone',
  'input', 'formula', 'formula overwritten', 'formula entered', 'unit', 'text', 'cell new', 'cell gone', 'note', 'role', 'format', 'name', 'case', 'tolerance', 'figure', 'title', 'mark',
] as const

export type DifferenceKind = (typeof DIFFERENCE_KINDS)[number]

/** What a difference is about, as data. Lines, sheets and cells are counted as they are in the workbook that has them. */
export type Subject =
  /** The whole cell, or the part of it that the kind says. */
  | { readonly of: 'cell'; readonly part: 'content' | 'note' | 'role' | 'format' | 'all' }
  /** `at` of lines that are gone is in the workbook before, of inserted ones in that now. Beyond the last line of the other side nothing moves for them. */
  | { readonly of: 'lines'; readonly axis: LineAxis; readonly side: 'before' | 'now'; readonly at: number; readonly count: number; readonly beyond: boolean }
  | { readonly of: 'sheet'; readonly name: string }
  | { readonly of: 'order of sheets' }
  | { readonly of: 'title' | 'purpose' | 'prepared by' | 'checked by' }
  /** In small letters. */
  | { readonly of: 'name'; readonly name: string }
  /** By the name of the case in small letters: the whole case, its note, or its value in the cell of the difference. */
  | { readonly of: 'case'; readonly name: string; readonly part: 'all' | 'note' | 'value' }
  | { readonly of: 'current case' | 'order of cases' | 'compared results' }
  | { readonly of: 'tolerance' }
  /** By their positions in the two lists. */
  | { readonly of: 'figure'; readonly before?: number; readonly now?: number }
  | { readonly of: 'order of figures' }
  | { readonly of: 'mark' }

/** What the differences do to a result: the same cell in both, with the values that both come to. */
export interface Effect {
  /** Undefined where a cell that the user chose has no counterpart there. */
  readonly before: CellPlace | undefined
  readonly now: CellPlace
  readonly label: string | undefined
  /** The units that apply to the cell in both. */
  readonly unitBefore: string | undefined
  readonly unit: string | undefined
  readonly was: CellValue
  readonly is: CellValue
  /** (is − was) / |was|, where both are numbers of the same dimension and was is not 0. Of none whose zero is an agreed one, as of °F and psig: a share of it says nothing. */
  readonly change: number | undefined
  /** is − was in the unit of now, where there is no share because of its zero. */
  readonly step?: number
  /** A check that was met and is not, or the other way. */
  readonly turned: boolean
}

export interface Comparison {
  readonly differences: readonly Difference[]
  /** Results and checks that come to something else, checks that turned first, then most changed first; those that the user chose, in their order, where they chose some. */
  readonly effects: readonly Effect[]
  /** How many results and checks were held against each other. */
  readonly resultsCompared: number
  /** The case, or the base, whose results these are in both. */
  readonly resultsOf: string
  /** Which sheet, row and column of one is which of the other. */
  readonly layout: Layout
  /** The system of units in which a template was compared, where it is in the other. */
  readonly restatedTo?: UnitSystem
}
