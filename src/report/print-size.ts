import type { Sheet } from '../workbook/document.ts'
import { checkCells } from '../calc/check-cells.ts'
import { printedRowCount } from './outline.ts'

/** From here on a report is more than anyone turns the pages of. */
export const MANY_ROWS = 3000

/** What is usual at the type of the report. */
const ROWS_ON_A_PAGE = 40
/** Head, contents, methods and cautions. */
const PAGES_BEFORE_SHEETS = 4

export interface PrintSize {
  readonly rows: number
  /** An estimate. */
  readonly pages: number
}

/** How long a report of these sheets becomes; the checks of the others are told of as well, but few. */
export function printSize(sheets: readonly Sheet[]): PrintSize {
  const rowsOfSheets = sheets.map(printedRowCount)
  const checks = sheets.reduce((sum, sheet) => sum + checkCells(sheet).length, 0)
  const pagesOf = (rows: number): number => Math.ceil(rows / ROWS_ON_A_PAGE)
  return {
    rows: rowsOfSheets.reduce((sum, rows) => sum + rows, 0),
    pages: PAGES_BEFORE_SHEETS + pagesOf(checks) + rowsOfSheets.reduce((sum, rows) => sum + Math.max(1, pagesOf(rows)), 0),
  }
}
