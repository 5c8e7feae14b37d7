import { cellsIn, withCells } from '../../src/workbook/cells.ts'
import { sheetByName, usedRange, type Cell, type Sheet, type Workbook } from '../../src/workbook/document.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { CAUTIONS } from './order.ts'

/** One sheet of cautions: each line once, those first that most templates have, else in the order of the job. */
export function joinCautions(workbooks: readonly Workbook[]): Sheet {
  const sheets = workbooks.flatMap((workbook) => sheetByName(workbook, CAUTIONS) ?? [])
  const [first] = sheets
  if (first === undefined) throw new WorkbookProblem(`no template has a sheet "${CAUTIONS}"`)
  const found = new Map<Cell['content'], { readonly cell: Cell; times: number }>()
  for (const { cell } of sheets.flatMap(linesOf)) {
    const before = found.get(cell.content)
    if (before) before.times++
    else found.set(cell.content, { cell, times: 1 })
  }
  const lines = [...found.values()].toSorted((one, other) => other.times - one.times)
  const [start = { row: HEAD_ROWS, column: 1 }] = linesOf(first)
  const head = withCells(first, linesOf(first).map(({ row, column }) => ({ row, column, cell: null })))
  return withCells(head, lines.map(({ cell }, index) => ({ row: start.row + index, column: start.column, cell })))
}

/** Below the title. */
const HEAD_ROWS = 1

function linesOf(sheet: Sheet): { readonly row: number; readonly column: number; readonly cell: Cell }[] {
  const { rows, columns } = usedRange(sheet)
  return cellsIn(sheet, { top: HEAD_ROWS, left: 0, bottom: rows - 1, right: columns - 1 }).flatMap(({ row, column, cell }) => (cell ? [{ row, column, cell }] : []))
}
