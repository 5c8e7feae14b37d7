import type { Sheet } from '../workbook/document.ts'
import { printedRowCount } from './outline.ts'

/** From here on a report is more than anyone turns the pages of. */
export const MANY_ROWS = 3000

/** How many rows of these sheets hold something to print. */
export const printedRows = (sheets: readonly Sheet[]): number => sheets.reduce((sum, sheet) => sum + printedRowCount(sheet), 0)
