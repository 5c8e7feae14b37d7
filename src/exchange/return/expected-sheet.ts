import { shifter } from '../../workbook/formula/references.ts'
import type { FileCell, FileSheet } from '../package/file-sheet.ts'
import type { CellValue } from '../../calc/values.ts'

/** A cell as the export writes it. */
export interface ExpectedCell {
  readonly value: CellValue
  /** Without "=". */
  readonly formula?: string
  readonly note?: string
}

export interface ExpectedRow {
  readonly row: number
  readonly cells: readonly (ExpectedCell | undefined)[]
}

/** The rows of a sheet as the export writes them, each formula in full where cells below one another share it. */
export function* expectedRows({ rows }: FileSheet): Generator<ExpectedRow> {
  const shared = new Map<number, { readonly row: number; readonly at: (rows: number, columns: number) => string }>()
  for (const { row, cells } of rows) {
    yield { row, cells: cells.map((cell) => cell && expectedCell(cell, row)) }
  }

  function expectedCell({ value, formula, note }: FileCell, row: number): ExpectedCell {
    const noted = note === undefined ? {} : { note }
    if (formula === undefined) return { value, ...noted }
    const { text, shared: group } = formula
    if (group === undefined) return { value, formula: text, ...noted }
    if (group.range !== undefined) shared.set(group.number, { row, at: shifter(text) })
    const first = shared.get(group.number)
    return { value, formula: first === undefined ? text : first.at(row - first.row, 0), ...noted }
  }
}
