import { quoteSheetName } from '../../workbook/address.ts'
import { withCells } from '../../workbook/cells.ts'
import { emptySheet, foldCase, type Workbook } from '../../workbook/document.ts'
import { sheetNameProblem } from '../../workbook/sheet-name.ts'
import type { ReadSheet } from '../reading/contents.ts'
import type { Found } from './find-changes.ts'
import type { Back } from './formula-back.ts'
import { newCell } from './new-cell.ts'
import { newCells } from './sheet-changes.ts'
import { readRows } from './sheet-matching.ts'

/** A sheet that another program has added. */
export function addedSheet(read: ReadSheet, workbook: Workbook, back: Back): Found {
  const { cells, refused } = newCells([...readRows(read)].map(({ row, cells: found }) => [row, found] as const), read.name, back)
  const problem = sheetNameProblem(read.name, workbook.sheets.map(({ name }) => name).filter((name) => foldCase(name) !== foldCase(read.name)))
  const bare = emptySheet(read.name)
  const sheet = withCells(bare, cells.map((cell) => ({ row: cell.row, column: cell.column, cell: newCell(bare, cell, cell) })))
  return {
    kind: 'sheetAdded', place: quoteSheetName(read.name), was: 'no such sheet', is: `a sheet with ${cells.length} ${cells.length === 1 ? 'cell' : 'cells'}`, sheet,
    taking: problem === undefined
      ? { words: `Adds the sheet at the end.${refused === 0 ? '' : ` Formulas that Lowside cannot have stay as texts with notes: ${refused}.`}` }
      : { refused: problem },
  }
}
