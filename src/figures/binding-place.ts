import { areaOf, parseReference, type Area, type CellAddress } from '../workbook/address.ts'
import { sheetByName, usedRange, type Sheet, type Workbook } from '../workbook/document.ts'
import type { FigurePart } from '../workbook/figure-kinds.ts'
import type { Figure } from '../workbook/figure.ts'
import { namedReference } from '../workbook/formula/references.ts'
import { MAX_COLUMNS } from '../workbook/limits.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'

/** The cells that a part is bound to. */
export interface Place {
  readonly sheet: Sheet
  readonly area: Area
}

/** More cells than this make no picture. */
const MOST_CELLS = 100_000

/** Where a binding points, or what is wrong with it. */
export function placeOf(text: string, { sheet: home }: Figure, workbook: Workbook): Place | string {
  const reference = parseReference(text.trim()) ?? namedReference(workbook.names, text.trim())
  if (text.includes('#REF!')) return 'the cells it was bound to are gone; bind it to others'
  if (!reference) return `"${text}" is no reference; accepted: cells such as Drum!C5:D5, or a defined name`
  const name = reference.sheet ?? home
  const sheet = name === undefined ? undefined : sheetByName(workbook, name)
  if (!sheet) return `${name === undefined ? `"${text}" names no sheet` : `there is no sheet "${name}"`}; there are ${workbook.sheets.map((one) => `"${one.name}"`).join(', ')}`
  const used = usedRange(sheet)
  const whole = areaOf(reference)
  const area = { ...whole, bottom: Math.max(whole.top, Math.min(whole.bottom, used.rows - 1)), right: Math.max(whole.left, Math.min(whole.right, used.columns)) }
  const cells = (area.bottom - area.top + 1) * (area.right - area.left + 1)
  return cells > MOST_CELLS ? `${text} has ${cells} cells; accepted: up to ${MOST_CELLS}` : { sheet, area }
}

/** Cells of one sheet that a figure reads. */
export interface FigureArea {
  readonly sheet: string
  readonly area: Area
}

/** Every cell that a figure reads, units at the heads of tables included. */
export function figureAreas(figure: Figure, workbook: Workbook): FigureArea[] {
  return Object.values(figure.bindings).flatMap((text): FigureArea[] => {
    const place = placeOf(text, figure, workbook)
    if (typeof place === 'string') return []
    const { sheet, area } = place
    // The units beside the last column belong to it.
    const areas = [{ sheet: sheet.name, area: { ...area, right: Math.min(MAX_COLUMNS - 1, area.right + 1) } }]
    for (let column = area.left; column <= area.right; column++) {
      const unit = unitOfValue(sheet, { row: firstValueRow(sheet, area, column), column })
      if (unit && (unit.row < area.top || unit.row > area.bottom)) areas.push({ sheet: sheet.name, area: { top: unit.row, bottom: unit.row, left: unit.column, right: unit.column } })
    }
    return areas
  })
}

/** The cells of a list in its order: down the first column, or along a row. */
export function listPlaces({ sheet, area }: Place, { holds }: FigurePart): CellAddress[] {
  const { top, bottom, left, right } = area
  const isRow = top === bottom && right > left && !(holds === 'quantities' && right === left + 1 && sheet.rows[top]?.[right]?.role === 'unit')
  if (isRow) return Array.from({ length: right - left + 1 }, (_, index) => ({ row: top, column: left + index }))
  const from = firstValueRow(sheet, area, left)
  return Array.from({ length: bottom - from + 1 }, (_, index) => ({ row: from + index, column: left }))
}

/** A column may be taken with the unit at its head. */
const firstValueRow = (sheet: Sheet, { top, bottom }: Area, column: number): number => (top < bottom && sheet.rows[top]?.[column]?.role === 'unit' ? top + 1 : top)
