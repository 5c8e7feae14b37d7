import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'
import { sheetByName, type Cell, type Sheet, type Workbook } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import { labelOf } from '../workbook/words-beside.ts'

/** For messages: `Basis!C21 (High)`. */
export function placeWords(workbook: Workbook, place: CellPlace): string {
  const sheet = sheetByName(workbook, place.sheet)
  const label = sheet && nameOf(sheet, place)
  return label === undefined ? printCellPlace(place) : `${printCellPlace(place)} (${label})`
}

/**
 * What a cell is called. In a table whose rows go by a typed name, that name is put before the heading: `Cheese store: Served?`, for without it
 * all rows are called the same.
 */
export function nameOf(sheet: Sheet, { row, column }: Omit<CellPlace, 'sheet'>): string | undefined {
  const label = labelOf(sheet, { row, column })
  const before = (sheet.rows[row] ?? []).slice(0, column)
  if (before.some((cell) => cell?.role === 'label')) return label
  const typed = before.find((cell) => cell?.role === 'input' && meantText(cell.content) !== undefined)
  const name = typed && meantText(typed.content)
  return label === undefined || name === undefined ? (label ?? name) : `${name}: ${label}`
}

/** @throws WorkbookProblem if there is no such sheet */
export function sheetAt(workbook: Workbook, { sheet: name }: CellPlace): Sheet {
  const sheet = sheetByName(workbook, name)
  if (sheet === undefined) throw new WorkbookProblem(`there is no sheet "${name}"; there are ${workbook.sheets.map((one) => `"${one.name}"`).join(', ')}`)
  return sheet
}

/** The name of a cell, with its place: `Cheese store: Served? (Zones!T13)`. */
export const calledCell = (cell: CellPlace & { readonly label: string | undefined }): string => (cell.label === undefined ? printCellPlace(cell) : `${cell.label} (${printCellPlace(cell)})`)

export const cellAtPlace = (workbook: Workbook, place: CellPlace): Cell | undefined => sheetByName(workbook, place.sheet)?.rows[place.row]?.[place.column]
