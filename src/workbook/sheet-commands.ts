import { doubleSheetInPlaces } from './place-following.ts'
import { eachCell, withCells } from './cells.ts'
import { sheetOf } from './commands.ts'
import { emptySheet, foldCase, isFormula, sheetIndex, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import { renameSheetInFormula } from './formula/references.ts'

const LONGEST_NAME = 31

/** An empty sheet after the last one, under a name that is free. */
export function addSheet(workbook: Workbook): { readonly name: string; readonly edits: Edit[] } {
  const name = freeName(workbook, 'Sheet')
  return { name, edits: [{ kind: 'addSheet', at: workbook.sheets.length, sheet: emptySheet(name) }] }
}

/** A copy right after the sheet. References in it to the sheet itself mean the copy; all others stay. */
export function duplicateSheet(workbook: Workbook, sheetName: string): { readonly name: string; readonly edits: Edit[] } {
  const sheet = sheetOf(workbook, sheetName)
  const name = freeName(workbook, sheet.name)
  const cells: CellChange[] = []
  eachCell(sheet, (cell, row, column) => {
    if (!isFormula(cell.content)) return
    const content = renameSheetInFormula(cell.content, sheet.name, name)
    if (content !== cell.content) cells.push({ row, column, cell: { ...cell, content } })
  })
  return { name, edits: [{ kind: 'addSheet', at: sheetIndex(workbook, sheet.name) + 1, sheet: { ...withCells(sheet, cells), name } }, ...doubleSheetInPlaces(workbook, sheet.name, name)] }
}

/** The name with the first number behind it that no sheet has: from `Drum`, or `Drum 2`, to `Drum 3`. */
function freeName({ sheets }: Workbook, like: string): string {
  const taken = new Set(sheets.map(({ name }) => foldCase(name)))
  const stem = like.replace(/ \d+$/, '')
  for (let number = 2; ; number++) {
    const ending = ` ${number}`
    // No half of a character is left behind.
    const name = stem.slice(0, LONGEST_NAME - ending.length).replace(/[\s\ud800-\udbff]+$/, '') + ending
    if (!taken.has(foldCase(name))) return name
  }
}
