import type { AreaValues } from '../calc/values.ts'
import { printAddress } from '../workbook/address.ts'
import { alignmentPads } from '../workbook/decimal-alignment.ts'
import type { Sheet } from '../workbook/document.ts'
import { outlineOf } from './outline.ts'
import { printedCell, type PrintedCell } from './printed-cell.ts'

export interface Remark {
  readonly address: string
  readonly text: string
}

export interface PrintedCells {
  at(row: number, column: number): PrintedCell | undefined
  /** In reading order; their numbers count from 1. */
  readonly remarks: readonly Remark[]
  numbersOf(row: number, column: number): readonly number[]
  /** What stands unseen after a number, so that decimal points lie under each other. */
  padOf(row: number, column: number): string
}

/** Every cell of the sheet that is printed. `values` are the sheet's, from A1. @param checkedAt how a check mark on a cell stands */
export function printedCells(sheet: Sheet, values: AreaValues, checkedAt: (row: number, column: number) => PrintedCell['checked'] = () => undefined): PrintedCells {
  const { head, blocks, columns } = outlineOf(sheet)
  const cells = new Map<number, readonly (PrintedCell | undefined)[]>()
  const numbers = new Map<PrintedCell, readonly number[]>()
  const remarks: Remark[] = []
  for (const row of [...head, ...blocks.flat()]) {
    const printed: (PrintedCell | undefined)[] = []
    for (const column of columns) {
      const cell = printedCell(sheet, row, column, values, checkedAt(row, column))
      printed[column] = cell
      if (!cell || cell.remarks.length === 0) continue
      numbers.set(cell, cell.remarks.map((text) => remarks.push({ address: printAddress(row, column), text })))
    }
    cells.set(row, printed)
  }
  const at = (row: number, column: number): PrintedCell | undefined => cells.get(row)?.[column]
  const pads = new Map<number, ReadonlyMap<number, string>>()
  const padsOf = (column: number): ReadonlyMap<number, string> => {
    const isNumber = (row: number): boolean => at(row, column)?.kind === 'number'
    return new Map([head, ...blocks].flatMap((block) => {
      const rows = block.filter(isNumber)
      const found = alignmentPads(rows.map((row) => at(row, column)?.text))
      return rows.map((row, index) => [row, found[index] ?? ''] as const)
    }))
  }
  return {
    at, remarks,
    numbersOf: (row, column) => numbers.get(at(row, column) ?? NO_CELL) ?? [],
    padOf(row, column) {
      const known = pads.get(column) ?? padsOf(column)
      pads.set(column, known)
      return known.get(row) ?? ''
    },
  }
}

const NO_CELL: PrintedCell = { text: '', role: 'text', kind: 'text', staysIn: false, remarks: [] }
