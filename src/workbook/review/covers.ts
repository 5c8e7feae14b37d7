import type { Area } from '../address.ts'
import { held } from '../cases.ts'
import { eachCell } from '../cells.ts'
import type { CellPlace } from '../cell-place.ts'
import { sheetOf } from '../commands.ts'
import { foldCase, isFormula, sheetByName, type Workbook } from '../document.ts'
import type { CheckMark, CoveredCell } from '../review-record.ts'
import { upstreamOf } from '../upstream.ts'

/** The cells of a sheet that hold something, within an area or all of them. */
export function filledCells(workbook: Workbook, sheetName: string, area: Area | null): CellPlace[] {
  const sheet = sheetOf(workbook, sheetName)
  const places: CellPlace[] = []
  const { top, bottom, left, right } = area ?? { top: 0, left: 0, bottom: Infinity, right: Infinity }
  eachCell(sheet, ({ content }, row, column) => {
    if (content !== null && row >= top && row <= bottom && column >= left && column <= right) places.push({ sheet: sheet.name, row, column })
  })
  return places
}

/** What stands in cells and in all that feeds them, with the units of the numbers among it, and the defined names on the way. Empty cells are left out. */
export function coversOf(workbook: Workbook, from: readonly CellPlace[]): Pick<CheckMark, 'covers' | 'names'> {
  const upstream = upstreamOf(workbook, from, 'all')
  const covers = upstream.places().flatMap((place): CoveredCell[] => {
    const cell = sheetByName(workbook, place.sheet)?.rows[place.row]?.[place.column]
    return cell === undefined || cell.content === null ? [] : [{ ...place, ...held(cell) }]
  })
  const used = new Set([...upstream.names].map(foldCase))
  const names = [...workbook.names].filter(([name]) => used.has(foldCase(name))).toSorted(([one], [other]) => (one < other ? -1 : 1))
  return { covers, names }
}

/** The places of cells that have formulas. */
export const formulaCells = (covers: readonly CoveredCell[], places: readonly CellPlace[]): CellPlace[] => {
  const formulas = new Set(covers.filter(({ content }) => isFormula(content)).map(({ sheet, row, column }) => `${sheet}!${row}:${column}`))
  return places.filter(({ sheet, row, column }) => formulas.has(`${sheet}!${row}:${column}`))
}
