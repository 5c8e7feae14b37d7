import type { Area, CellAddress } from '../../workbook/address.ts'
import { clear, emptied, suggestedRole, withContent } from '../../workbook/commands.ts'
import { sheetByName, type Cell, type CellContent, type Sheet, type Workbook } from '../../workbook/document.ts'
import type { CellChange, Edit } from '../../workbook/edits.ts'
import { contentOf } from '../../workbook/entry.ts'
import { cellMaker } from '../../workbook/fill.ts'

/** Cells as they were copied here, kept beside the text that other programs get. */
export interface Copied {
  readonly text: string
  readonly from: Area
  readonly cells: readonly (readonly (Cell | undefined)[])[]
}

export const cellsOf = (workbook: Workbook, sheet: string, { top, left, bottom, right }: Area): (Cell | undefined)[][] =>
  rangeOf(top, bottom).map((row) => rangeOf(left, right).map((column) => sheetByName(workbook, sheet)?.rows[row]?.[column]))

/**
 * Puts copied cells at a place, whole, with the relative parts of their references moved along. Where the place is a whole number of
 * times as high or as wide as what was copied, it is repeated all over it.
 */
export function pasteCells(sheet: string, place: Area, { from, cells }: Copied): Edit[] {
  const { height, width } = pastedSize(place, cells)
  const copied = sizeOf(cells)
  const makers = cells.map((line) => line.map(cellMaker))
  return [{
    kind: 'cells', sheet,
    cells: rangeOf(0, height - 1).flatMap((row) => rangeOf(0, width - 1).map((column): CellChange => {
      const [rowInCopy, columnInCopy] = [row % copied.height, column % copied.width]
      const make = makers[rowInCopy]?.[columnInCopy]
      const [rows, columns] = [place.top + row - from.top - rowInCopy, place.left + column - from.left - columnInCopy]
      return { row: place.top + row, column: place.left + column, cell: make?.(rows, columns) ?? null }
    })),
  }]
}

/** How many rows and columns a paste of copied cells fills. */
export function pastedSize({ top, left, bottom, right }: Area, cells: Copied['cells']): Size {
  const copied = sizeOf(cells)
  const place = { height: bottom - top + 1, width: right - left + 1 }
  return place.height % copied.height === 0 && place.width % copied.width === 0 ? place : copied
}

export const sizeOf = (table: readonly (readonly unknown[])[]): Size => ({ height: table.length, width: table.reduce((most, line) => Math.max(most, line.length), 1) })

interface Size {
  readonly height: number
  readonly width: number
}

/**
 * Puts the texts of a table at a place, each cell as if it had been typed there. One edit in reading order, which the calculation takes
 * as a block some twenty times faster than its cells.
 */
export function pasteText(workbook: Workbook, sheetName: string, at: CellAddress, table: readonly (readonly string[])[]): Edit[] {
  const sheet = sheetByName(workbook, sheetName)
  if (!sheet) return []
  return [{
    kind: 'cells', sheet: sheetName,
    cells: table.flatMap((line, row) => {
      const contents = line.map(contentOf)
      return contents.map((content, column) => ({ row: at.row + row, column: at.column + column, cell: pasted(sheet, { row: at.row + row, column: at.column + column }, content, contents[column - 1]) }))
    }),
  }]
}

/** @param left what is pasted on the left of it: whether a text is a unit depends on the value there. */
function pasted(sheet: Sheet, at: CellAddress, content: CellContent, left: CellContent | undefined): Cell | null {
  const before = sheet.rows[at.row]?.[at.column]
  if (before) return content === null ? emptied(before) : withContent(before, content)
  return content === null ? null : { content, role: suggestedRole(sheet, at, content, left) }
}

export const areaEdits = (workbook: Workbook, sheet: string, { top, left, bottom, right }: Area): Edit[] =>
  clear(workbook, sheet, { from: { row: top, column: left }, to: { row: bottom, column: right } })

const rangeOf = (first: number, last: number): number[] => Array.from({ length: last - first + 1 }, (_, index) => first + index)
