import type { CellValue } from '../../calc/values.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import type { Edit } from '../../workbook/edits.ts'

/** What differs between two workbooks, one called before and one called now. Plain data: it crosses to other threads. */
export interface Difference {
  /** Its number among all of the comparison, from 0, in the order of the sheets and of reading. */
  readonly id: number
  readonly kind: DifferenceKind
  /** Where it is now; for what is gone, where it was. A sheet alone has no cell. */
  readonly sheet: string
  /** In the layout of the workbook now; undefined for what is gone or is no cell. */
  readonly now?: CellPlace
  /** In the layout of the workbook before; undefined for what is new or is no cell. */
  readonly before?: CellPlace
  /** What the cell is called, or what else it is that differs, in words. */
  readonly label: string | undefined
  /** What it was and what it is, as they read: "42 TR", "=C5*2", "3 rows". */
  readonly was: string
  readonly is: string
  /** Takes the side of the other workbook into the one that is open (`now`), in edits against it as it is; or why that cannot be, in words. */
  readonly accept: { readonly words: string; readonly edits: readonly Edit[] } | { readonly refused: string }
}

export const DIFFERENCE_KINDS = [
  'sheet added', 'sheet gone', 'sheet renamed', 'sheets moved', 'rows inserted', 'rows gone', 'columns inserted', 'columns gone',
  'input', 'formula', 'formula overwritten', 'formula entered', 'unit', 'text', 'cell new', 'cell gone', 'note', 'role', 'format', 'name', 'case', 'tolerance', 'figure', 'title', 'mark',
] as const

export type DifferenceKind = (typeof DIFFERENCE_KINDS)[number]

/** What the differences do to a result: the same cell in both, with the values that both come to. */
export interface Effect {
  readonly before: CellPlace
  readonly now: CellPlace
  readonly label: string | undefined
  readonly unit: string | undefined
  readonly was: CellValue
  readonly is: CellValue
  /** (is − was) / |was|, where both are numbers in the same unit and was is not 0. */
  readonly change: number | undefined
}

export interface Comparison {
  readonly differences: readonly Difference[]
  /** Results and checks that come to something else, most changed first; those that the user chose, where they chose some. */
  readonly effects: readonly Effect[]
}
