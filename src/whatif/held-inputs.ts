import { isFormula, sheetByName, type Workbook } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import type { HeldInput } from './messages.ts'
import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'
import { nameOf } from './place.ts'
import { upstreamOf } from '../workbook/upstream.ts'

/** Typed inputs that some cells hang on, but for those varied, each with its label, value and unit, in the order of the sheets. */
export function heldInputs(workbook: Workbook, watched: readonly CellPlace[], varied: readonly CellPlace[]): HeldInput[] {
  const own = new Set(varied.map(printCellPlace))
  return upstreamOf(workbook, watched).places().flatMap((place): HeldInput[] => {
    const sheet = sheetByName(workbook, place.sheet)
    const cell = sheet?.rows[place.row]?.[place.column]
    if (sheet === undefined || cell?.role !== 'input' || cell.content === null || isFormula(cell.content) || own.has(printCellPlace(place))) return []
    return [{ ...place, label: nameOf(sheet, place), value: meantText(cell.content) ?? cell.content, unitText: unitTextOf(workbook, place) }]
  })
}

/** The unit beside or over a cell, where it is typed and no formula. */
export function unitTextOf(workbook: Workbook, place: CellPlace): string | undefined {
  const sheet = sheetByName(workbook, place.sheet)
  const at = sheet && unitOfValue(sheet, place)
  const content = at && sheet.rows[at.row]?.[at.column]?.content
  return content === undefined || isFormula(content) ? undefined : meantText(content)
}
