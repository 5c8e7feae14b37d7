import type { Cases } from './cases.ts'
import type { Figure } from './figure.ts'
import type { GivenTolerance } from './given-tolerances.ts'
import type { KeptMapping } from './kept-mapping.ts'
import type { ReportSettings } from './report-settings.ts'
import type { Review } from './review-record.ts'

/** The workbook as plain, immutable data. Rows and columns count from 0 inside, and are A1 addresses outside. */

export const ROLES = ['title', 'heading', 'label', 'input', 'unit', 'result', 'check', 'note', 'text'] as const

/** What a cell is for; decides its look, its print, its export style and what findings expect of it. */
export type Role = (typeof ROLES)[number]

/**
 * What a cell holds. A string that starts with "=" is a formula; one that starts with "'" is literal text,
 * whose rest is what is meant; any other string is text. `null` stands only where there is a role or a note to keep.
 */
export type CellContent = number | boolean | string | null

export interface Cell {
  readonly content: CellContent
  readonly role: Role
  /** Significant digits shown, 1 to 15. */
  readonly digits?: number
  /** Decimal places shown, 0 to 12; wins over `digits`. */
  readonly decimals?: number
  readonly wrap?: true
  readonly note?: string
  /**
   * What stood here before Restate, kept where the way back would give something else (ft/s becomes m/s, m/s would
   * become ft/min). It counts only as long as restating it gives what the cell holds.
   */
  readonly restatedFrom?: string | number
}

export type Row = readonly (Cell | undefined)[] | undefined

export interface Sheet {
  readonly name: string
  /** Widths in px from the first column on; columns beyond the list have `DEFAULT_COLUMN_WIDTH`. */
  readonly columns: readonly number[]
  /** How many rows and columns stay in view. */
  readonly frozen: readonly [rows: number, columns: number]
  /** Sparse; the last row, and the last cell of each row, is never empty. */
  readonly rows: readonly Row[]
}

export interface Workbook {
  readonly title: string
  /** One line: what the workbook is for. */
  readonly purpose: string
  /** In the order of the job; never empty. */
  readonly sheets: readonly Sheet[]
  /** Defined name to reference text such as `Duty!$C$5`. */
  readonly names: ReadonlyMap<string, string>
  readonly figures: readonly Figure[]
  /** Absent until someone has said something of it. */
  readonly report?: ReportSettings
  /** How lists of other people's files go into lists of this workbook; absent while none is kept. */
  readonly mappings?: readonly KeptMapping[]
  /** Absent as long as there is neither a case nor a result to compare. The cells hold the values of the case that is current. */
  readonly cases?: Cases
  /** How far inputs may be off, where the user has said so; absent while nothing was said. */
  readonly tolerances?: readonly GivenTolerance[]
  /** Check marks, accepted findings and the record of both; absent while nobody has reviewed anything. */
  readonly review?: Review
}

export const DEFAULT_COLUMN_WIDTH = 96

export function emptySheet(name: string): Sheet {
  return { name, columns: [], frozen: [0, 0], rows: [] }
}

export function emptyWorkbook(title = 'Untitled', sheetName = 'Sheet'): Workbook {
  return { title, purpose: '', sheets: [emptySheet(sheetName)], names: new Map(), figures: [] }
}

/** The sheet of that name, ignoring case as formulas do. */
export function sheetByName(workbook: Workbook, name: string): Sheet | undefined {
  return workbook.sheets[sheetIndex(workbook, name)]
}

/** Position of the sheet of that name, ignoring case; -1 if there is none. */
export function sheetIndex(workbook: Workbook, name: string): number {
  const exact = workbook.sheets.findIndex((sheet) => sheet.name === name)
  if (exact >= 0) return exact
  const folded = foldCase(name)
  return workbook.sheets.findIndex((sheet) => foldCase(sheet.name) === folded)
}

export function cellAt(workbook: Workbook, sheetName: string, row: number, column: number): Cell | undefined {
  return sheetByName(workbook, sheetName)?.rows[row]?.[column]
}

/** How many rows and columns, counted from A1, hold every cell of the sheet. */
export function usedRange(sheet: Sheet): { readonly rows: number; readonly columns: number } {
  let columns = 0
  for (const row of sheet.rows) if (row && row.length > columns) columns = row.length
  return { rows: sheet.rows.length, columns }
}

export function columnWidth(sheet: Sheet, column: number): number {
  return sheet.columns[column] ?? DEFAULT_COLUMN_WIDTH
}

/** Names of sheets and defined names are the same whatever their case, as in formulas. */
export function foldCase(name: string): string {
  return name.toLowerCase()
}

export function isFormula(content: CellContent | undefined): content is `=${string}` {
  return typeof content === 'string' && content.startsWith('=')
}
