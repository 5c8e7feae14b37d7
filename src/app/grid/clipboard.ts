import type { Area, CellAddress } from '../../workbook/address.ts'
import { clear, setEntry } from '../../workbook/commands.ts'
import { isFormula, sheetByName, type Cell, type Workbook } from '../../workbook/document.ts'
import { applyEdits, type Edit } from '../../workbook/edits.ts'
import { contentOf } from '../../workbook/entry.ts'
import { shiftReferences } from '../../workbook/formula/references.ts'
import { parseTabular } from './tabular-text.ts'

/** Cells as they were copied here, kept beside the text that other programs get. */
export interface Copied {
  readonly text: string
  readonly from: Area
  readonly cells: readonly (readonly (Cell | undefined)[])[]
}

export const cellsOf = (workbook: Workbook, sheet: string, { top, left, bottom, right }: Area): (Cell | undefined)[][] =>
  rangeOf(top, bottom).map((row) => rangeOf(left, right).map((column) => sheetByName(workbook, sheet)?.rows[row]?.[column]))

/** Puts copied cells at a place, whole, with the relative parts of their references moved along. */
export function pasteCells(sheet: string, at: CellAddress, { from, cells }: Copied): Edit[] {
  const rows = at.row - from.top
  const columns = at.column - from.left
  return [{
    kind: 'cells', sheet,
    cells: cells.flatMap((line, row) => line.map((cell, column) => ({ row: at.row + row, column: at.column + column, cell: moved(cell, rows, columns) }))),
  }]
}

/** Puts tab-separated text at a place, each cell as if it had been typed there. */
export function pasteText(workbook: Workbook, sheet: string, at: CellAddress, text: string): Edit[] {
  const entries = parseTabular(text).flatMap((line, row) =>
    line.map((typed, column) => ({ at: { row: at.row + row, column: at.column + column }, typed, isText: typeof contentOf(typed) === 'string' && !isFormula(contentOf(typed)) })))
  const enter = (book: Workbook, texts: boolean): Edit[] =>
    merged(sheet, entries.filter(({ isText }) => isText === texts).flatMap((entry) => setEntry(book, sheet, entry.at, entry.typed)))
  // Values first: whether a text is a unit depends on the value on its left.
  const values = enter(workbook, false)
  return [...values, ...enter(applyEdits(workbook, values).workbook, true)]
}

export const areaEdits = (workbook: Workbook, sheet: string, { top, left, bottom, right }: Area): Edit[] =>
  clear(workbook, sheet, { from: { row: top, column: left }, to: { row: bottom, column: right } })

/** One edit out of many of one cell each. */
const merged = (sheet: string, edits: readonly Edit[]): Edit[] =>
  edits.length === 0 ? [] : [{ kind: 'cells', sheet, cells: edits.flatMap((edit) => (edit.kind === 'cells' ? edit.cells : [])) }]

function moved(cell: Cell | undefined, rows: number, columns: number): Cell | null {
  if (!cell) return null
  return isFormula(cell.content) ? { ...cell, content: shiftReferences(cell.content, rows, columns) } : cell
}

const rangeOf = (first: number, last: number): number[] => Array.from({ length: last - first + 1 }, (_, index) => first + index)
