import type { Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { bandOf, columnsHeaded, isTable, type Band } from './bands.ts'
import type { InputCell } from './input-cells.ts'

/** Whether an input's own row, its note or, in a table, what says where the table comes from, tells that nobody has looked it up. */
export function isUnsure({ sheet, row, column, cell: { note } }: InputCell): boolean {
  const band = bandOf(sheet, row)
  return [note, ...textsRight(sheet, row, column)].some((text) => text !== undefined && UNSURE.test(text)) || (band !== undefined && isTable(sheet, band) && isTableUnsure(sheet, band))
}

/** What people write beside a number that they have not looked up. */
export const UNSURE = /\bfrom memory\b|\bcommon practice\b|\bnot confirmed\b|\bconfirm\b|\bweak source\b|\bno published source\b|\brule of thumb\b|\bassumed\b/i

/** The texts that stand further on in a row: method, source. */
export const textsRight = (sheet: Sheet, row: number, column: number): string[] =>
  (sheet.rows[row] ?? []).slice(column + 1).flatMap((cell) => (cell?.role === 'text' || cell?.role === 'note' ? (meantText(cell.content) ?? []) : []))

const known = new WeakMap<Band, boolean>()

/** In its column of sources; where it has no headings, in any text beside it. */
function isTableUnsure(sheet: Sheet, band: Band): boolean {
  const before = known.get(band)
  if (before !== undefined) return before
  const columns = columnsHeaded(band, /\b(?:source|origin|basis|reference)s?\b/i)
  const texts = sheet.rows.slice(band.top, band.bottom + 1).flatMap((row, index) => [
    ...columns.flatMap((column) => meantText(row?.[column]?.content) ?? []),
    ...(band.headings.size === 0 ? textsRight(sheet, band.top + index, -1) : []),
  ])
  const isUnsure = texts.some((text) => UNSURE.test(text))
  known.set(band, isUnsure)
  return isUnsure
}
