import { parseAddress } from '../../src/workbook/address.ts'
import { withCells } from '../../src/workbook/cells.ts'
import { emptySheet, isFormula, type Cell, type CellContent, type Role, type Sheet, type Workbook } from '../../src/workbook/document.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'

/** What a test puts into a cell: its content, or a content with a role other than the usual one. */
export type Put = CellContent | readonly [CellContent, Role]

export function cellOf(put: Put): Cell {
  if (isPair(put)) return { content: put[0], role: put[1] }
  return { content: put, role: isFormula(put) ? 'result' : typeof put === 'string' ? 'text' : 'input' }
}

const isPair = (put: Put): put is readonly [CellContent, Role] => Array.isArray(put)

export function at(address: string): { row: number; column: number } {
  const found = parseAddress(address)
  if (found === undefined) throw new WorkbookProblem(`${address} is no address`)
  return found
}

export const sheetOf = (name: string, cells: Readonly<Record<string, Put>>): Sheet =>
  withCells(emptySheet(name), Object.entries(cells).map(([address, put]) => ({ ...at(address), cell: cellOf(put) })))

/** A workbook of sheets, each with its cells by address. */
export const workbookOf = (sheets: Readonly<Record<string, Readonly<Record<string, Put>>>>, names: Readonly<Record<string, string>> = {}): Workbook => ({
  title: 'Test', purpose: '', sheets: Object.entries(sheets).map(([name, cells]) => sheetOf(name, cells)), names: new Map(Object.entries(names)), figures: [],
})
