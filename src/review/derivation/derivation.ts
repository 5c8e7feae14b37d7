import type { Area } from '../../workbook/address.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import type { Remark } from '../../workbook/words-beside.ts'
import type { Where } from './where.ts'

/** How some results come about, down to the inputs. Plain data: it crosses to other threads. */
export interface Derivation {
  readonly title: string
  /** Which case the numbers are of, where the workbook has cases. */
  readonly caseWords: string | undefined
  /** The numbers of the steps that were asked for. */
  readonly results: readonly number[]
  /** What is given first, then what is computed; each step refers to earlier ones by their numbers. */
  readonly steps: readonly Step[]
  /** Formulas refer to these too, but nothing of them is in the numbers: branches that were not taken, rows that were not looked up. */
  readonly noPart: readonly CellsOfSheet[]
  /** Units, headings and other words that formulas read. */
  readonly words: readonly CellsOfSheet[]
  /** Where there were more steps than can be told, how many cells were not gone into; they stand among `noPart`. */
  readonly cut: number
}

export interface CellsOfSheet {
  readonly sheet: string
  readonly area: Area
}

/** From memory, or what is common practice: to be confirmed before it is relied on. */
export type Standing = 'practice' | 'from memory'

export interface Step {
  /** From 1. */
  readonly number: number
  /** Typed in; computed by a formula; cells of a range taken together; rows that are computed alike. */
  readonly kind: 'given' | 'computed' | 'range' | 'rows'
  readonly place: CellPlace
  /** The cells it stands for: one, or those of the range or the rows. */
  readonly cells: CellsOfSheet
  readonly label: string
  /** As printed, with its unit; of a check its verdict. */
  readonly value: string
  /** What is wrong with the value, where it is an error. */
  readonly error?: string
  /** Of a check. */
  readonly met?: boolean
  /** Of what is computed; of rows the first one's. */
  readonly formula?: StepFormula
  /** The numbers of the steps that it is computed from. */
  readonly uses: readonly number[]
  /** What stands beside it: its method, its source. */
  readonly remarks: readonly Remark[]
  readonly note?: string
  readonly tolerance?: string
  /** What the base holds, where the current case has a value of its own. */
  readonly base?: string
  readonly standing: readonly Standing[]
  /** The functions of the catalogue that the formula calls, by name. */
  readonly functions: readonly string[]
  /** Cells that only pass the value on, perhaps in another unit. */
  readonly passedOn: readonly PassedOn[]
  /** Of a range or of rows: each with what it comes to, as far as they are listed. */
  readonly rows: readonly StepRow[]
  /** Of a range or of rows, how many there are. */
  readonly count: number
  /** It hangs on itself. */
  readonly circular?: true
}

export interface StepFormula {
  /** The cell that it is told of: of a range or of rows the first that has one. */
  readonly at: CellPlace
  /** As it stands in the cell. */
  readonly raw: string
  readonly words: string
  readonly equalities: readonly string[]
  readonly reasons: readonly string[]
  readonly wheres: readonly Where[]
}

export interface PassedOn {
  readonly place: CellPlace
  readonly value: string
}

export interface StepRow {
  readonly place: CellPlace
  readonly label: string
  readonly value: string
  /** With numbers put in. */
  readonly line?: string
}
