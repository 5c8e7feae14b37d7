import type { Dimension } from '../../../functions/units/units.ts'

/** A table of a workbook that can take rows: headings, perhaps a row of units and one of totals, then a row an item. Rows and columns from 0. */
export interface WorkbookList {
  /** The sheet's name; where a sheet has several, with the first heading after it. */
  readonly name: string
  readonly sheet: string
  readonly headingRow: number
  /** The first and the last row of items. */
  readonly firstRow: number
  readonly lastRow: number
  /** The last row with something filled in; `firstRow - 1` where there is none. */
  readonly lastFilledRow: number
  /** Rows of items that nothing is filled into yet, from the top. */
  readonly freeRows: readonly number[]
  /** What can be filled in, from the left. */
  readonly columns: readonly ListColumn[]
  /** Every column of the table, and where in it stands what a new row gets: its formula, role and format. */
  readonly models: readonly ColumnModel[]
}

export interface ColumnModel {
  readonly column: number
  /** Of the cell to copy; undefined where rows have none. */
  readonly row: number | undefined
  readonly kind: 'input' | 'formula' | 'remark' | 'unit'
}

export interface ListColumn {
  readonly column: number
  readonly heading: string
  /** As it stands in the sheet, such as `in`; undefined where the column has none, or one that is no unit. */
  readonly unit: string | undefined
  readonly kind: 'number' | 'text' | 'choice'
  /** Of a choice: what the formulas of the row understand. */
  readonly choices: readonly string[]
  /** What tells the items apart: the first column that can be filled in. */
  readonly isTag: boolean
  /** A text beside the inputs that no formula needs. */
  readonly isRemark: boolean
  /** Filled in all rows that there are. */
  readonly isAlwaysFilled: boolean
  /** What the row's formulas want of it, by function. */
  readonly uses: readonly ColumnUse[]
}

/** One place in the formulas of a row that takes what stands in a column. */
export interface ColumnUse {
  /** What has to stand elsewhere in the row for the formula to come here. */
  readonly when: readonly Condition[]
  /** False where the formula may pass it by for another reason. */
  readonly certain: boolean
  /** Where it is an argument: the function and its argument in words. */
  readonly of: string | undefined
  /** The SI values that are accepted, and of which dimension. */
  readonly range: { readonly min?: number; readonly max?: number; readonly above?: number; readonly below?: number } | undefined
  readonly dimension: Dimension | undefined
}

/** True if the column holds one of these texts, or none of them. */
export interface Condition {
  readonly column: number
  readonly isOneOf: boolean
  readonly texts: readonly string[]
}
