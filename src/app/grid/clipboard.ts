import type { Area, CellAddress } from '../../workbook/address.ts'
import type { LinedUp } from '../../workbook/areas.ts'
import { emptied, suggestedRole, withContent } from '../../workbook/commands.ts'
import { sheetByName, type Cell, type CellContent, type Sheet, type Workbook } from '../../workbook/document.ts'
import type { CellChange } from '../../workbook/edits.ts'
import { contentOf } from '../../workbook/entry.ts'
import { cellMaker } from '../../workbook/fill.ts'
import type { Part } from '../state/long-change.ts'
import { tabularRows } from './tabular-text.ts'

/** Cells as they were copied here, kept beside the text that other programs get; `from`: which rows and columns they stood in. */
export interface Copied {
  readonly text: string
  readonly from: LinedUp
  readonly cells: readonly (readonly (Cell | undefined)[])[]
}

export function cellsOf(workbook: Workbook, sheetName: string, { rows, columns }: LinedUp): (Cell | undefined)[][] {
  const sheet = sheetByName(workbook, sheetName)
  return rows.map((row) => columns.map((column) => sheet?.rows[row]?.[column]))
}

/** Cells that are put in place at a time: some milliseconds, a block of them in the calculation. */
const CELLS_IN_PART = 2500

/**
 * Puts copied cells at a place, whole, with the relative parts of their references moved along. Where the place is a whole number of
 * times as high or as wide as what was copied, it is repeated all over it.
 */
export function* pasteCells(sheet: string, place: Area, { from, cells }: Copied): Generator<Part> {
  const { height, width } = pastedSize(place, cells)
  const copied = sizeOf(cells)
  const makers = cells.map((line) => line.map(cellMaker))
  let made: CellChange[] = []
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const [rowInCopy, columnInCopy] = [row % copied.height, column % copied.width]
      const at = { row: place.top + row, column: place.left + column }
      const make = makers[rowInCopy]?.[columnInCopy]
      made.push({ ...at, cell: make?.(at.row - (from.rows[rowInCopy] ?? 0), at.column - (from.columns[columnInCopy] ?? 0)) ?? null })
    }
    if (made.length < CELLS_IN_PART && row < height - 1) continue
    yield { edits: [{ kind: 'cells', sheet, cells: made }], share: (row + 1) / height }
    made = []
  }
}

/** How many rows and columns a paste of copied cells fills. */
function pastedSize({ top, left, bottom, right }: Area, cells: Copied['cells']): Size {
  const copied = sizeOf(cells)
  const place = { height: bottom - top + 1, width: right - left + 1 }
  return place.height % copied.height === 0 && place.width % copied.width === 0 ? place : copied
}

const sizeOf = (table: readonly (readonly unknown[])[]): Size => ({ height: table.length, width: table.reduce((most, line) => Math.max(most, line.length), 1) })

interface Size {
  readonly height: number
  readonly width: number
}

/**
 * Puts the cells of tab-separated text at a place, each as if it had been typed there. In parts in reading order, which the calculation
 * takes as blocks some twenty times faster than cells.
 */
export function* pasteText(workbook: Workbook, sheetName: string, at: CellAddress, text: string): Generator<Part> {
  const sheet = sheetByName(workbook, sheetName)
  if (!sheet) return
  let made: CellChange[] = []
  let row = at.row
  for (const { cells, end } of tabularRows(text)) {
    const contents = cells.map(contentOf)
    for (const [index, content] of contents.entries()) {
      const place = { row, column: at.column + index }
      made.push({ ...place, cell: pasted(sheet, place, content, contents[index - 1]) })
    }
    row++
    if (made.length < CELLS_IN_PART && end < text.length) continue
    yield { edits: [{ kind: 'cells', sheet: sheetName, cells: made }], share: end / text.length }
    made = []
  }
}

/** @param left what is pasted on the left of it: whether a text is a unit depends on the value there. */
function pasted(sheet: Sheet, at: CellAddress, content: CellContent, left: CellContent | undefined): Cell | null {
  const before = sheet.rows[at.row]?.[at.column]
  if (before) return content === null ? emptied(before) : withContent(before, content)
  return content === null ? null : { content, role: suggestedRole(sheet, at, content, left) }
}
