import { changeCells, type CellRange } from './commands.ts'
import type { Cell, Workbook } from './document.ts'
import type { Edit } from './edits.ts'
import { DEFAULT_DIGITS, type NumberFormat } from './number-format.ts'

/** How the numbers of cells are shown: by significant digits, by decimals, or, with neither, as they come. */
export function setNumberFormat(workbook: Workbook, sheetName: string, range: CellRange, { digits, decimals }: NumberFormat): Edit[] {
  return changeCells(workbook, sheetName, range, ({ digits: _digits, decimals: _decimals, ...cell }) => ({
    ...cell, ...(digits === undefined ? {} : { digits }), ...(decimals === undefined ? {} : { decimals }),
  }))
}

export const MOST_DIGITS = 15
export const MOST_DECIMALS = 12

/** Shows one place more or fewer: of the decimals where a cell has a number of them, else of the significant digits. */
export function changePlaces(workbook: Workbook, sheetName: string, range: CellRange, by: 1 | -1): Edit[] {
  return changeCells(workbook, sheetName, range, (cell) =>
    cell.decimals === undefined
      ? { ...cell, digits: Math.min(MOST_DIGITS, Math.max(1, (cell.digits ?? DEFAULT_DIGITS) + by)) }
      : { ...cell, decimals: Math.min(MOST_DECIMALS, Math.max(0, cell.decimals + by)) })
}

/** Whether the texts of cells are broken into lines. */
export function setWrap(workbook: Workbook, sheetName: string, range: CellRange, wrap: boolean): Edit[] {
  return changeCells(workbook, sheetName, range, ({ wrap: _wrap, ...cell }) => (wrap ? { ...cell, wrap } : cell))
}

/** A note on a cell; nothing, or blanks alone, takes it away. An empty cell becomes one that has the note only. */
export function setNote(workbook: Workbook, sheetName: string, range: CellRange, text: string): Edit[] {
  const note = text.trim() === '' ? {} : { note: text }
  return changeCells(workbook, sheetName, range, ({ note: _note, ...cell }) => keptOrGone({ ...cell, ...note }), 'note' in note ? { content: null, role: 'text', ...note } : undefined)
}

/** A text cell without content was there for its note only. */
const keptOrGone = (cell: Cell): Cell | null => (cell.content === null && cell.role === 'text' && cell.note === undefined ? null : cell)
