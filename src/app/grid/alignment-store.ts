import type { AreaValues, CellValue } from '../../calc/values.ts'
import type { Cell, Row, Sheet } from '../../workbook/document.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { plainValue } from '../../calc/cell-value.ts'
import { BLOCK_ROWS, type Values } from '../state/values.ts'
import { alignmentPads } from '../../workbook/decimal-alignment.ts'

const BLOCKS_KEPT = 2000

interface Known {
  /** Of which rows and which answer the pads are known to hold. */
  readonly rows: readonly Row[]
  readonly block: AreaValues | undefined
  readonly numbers: readonly NumberAt[]
  readonly pads: readonly string[]
}

/** What the pads of one cell depend on. */
interface NumberAt {
  readonly cell: Cell | undefined
  readonly value: CellValue | undefined
}

/**
 * What stands unseen after a cell's number, worked out for the rows that are read together and kept until a number in the column changes;
 * so scrolling never moves a number, and an edit costs nothing in other columns.
 */
export function createAlignment(values: Pick<Values, 'at' | 'blockAt'>): (sheet: Sheet, row: number, column: number) => string {
  const blocks = new Map<string, Known>()
  return (sheet, row, column) => {
    const first = row - (row % BLOCK_ROWS)
    const key = `${first}:${column}:${sheet.name}`
    const block = values.blockAt(sheet.name, row, column)
    const before = blocks.get(key)
    if (before && before.block === block && before.rows === sheet.rows) return before.pads[row - first] ?? ''

    const numbers = Array.from({ length: BLOCK_ROWS }, (_, offset) => numberAt(values, sheet, first + offset, column))
    const isSame = before?.numbers.every((one, offset) => one.cell === numbers[offset]?.cell && one.value === numbers[offset]?.value)
    const known: Known = { rows: sheet.rows, block, numbers, pads: before && isSame ? before.pads : alignmentPads(numbers.map(numberText)) }
    if (blocks.size >= BLOCKS_KEPT) blocks.clear()
    blocks.set(key, known)
    return known.pads[row - first] ?? ''
  }
}

function numberAt(values: Pick<Values, 'at'>, sheet: Sheet, row: number, column: number): NumberAt {
  const cell = sheet.rows[row]?.[column]
  return { cell, value: cell && (plainValue(cell) ?? values.at(sheet.name, row, column)) }
}

const numberText = ({ cell, value }: NumberAt): string | undefined => (cell && typeof value === 'number' ? formatNumber(value, cell) : undefined)
