import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import type { ReferredCells } from './formula-source.ts'

/** Where in a range a cell stands: `row 3 of Drums!F7:F15`. */
export function foundWords({ sheet, area: { top, left, bottom, right } }: ReferredCells, { area }: ReferredCells): string {
  const range = `${quoteSheetName(sheet.name)}!${printAddress(top, left)}:${printAddress(bottom, right)}`
  if (left === right) return `row ${area.top - top + 1} of ${range}`
  return top === bottom ? `column ${area.left - left + 1} of ${range}` : `row ${area.top - top + 1}, column ${area.left - left + 1} of ${range}`
}
