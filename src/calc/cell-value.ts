import { isCellError, type CellValue } from './values.ts'
import { isFormula, type Cell } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'

/** What a cell without formula comes to; undefined for a formula, which only the graph knows. */
export function plainValue(cell: Cell | undefined): CellValue | undefined {
  if (!cell) return null
  if (isFormula(cell.content)) return undefined
  return meantText(cell.content) ?? cell.content
}

/** A value for reading and copying, in full precision. */
export function valueText(value: CellValue | undefined): string {
  if (isCellError(value)) return value.error
  if (value === null || value === undefined) return ''
  return typeof value === 'boolean' ? String(value).toUpperCase() : String(value)
}
