import type { AreaValues } from '../../calc/values.ts'
import type { Row, Sheet } from '../../workbook/document.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { plainValue } from '../state/cell-value.ts'
import { BLOCK_ROWS, type Values } from '../state/values.ts'
import { alignmentPads } from './decimal-alignment.ts'

const BLOCKS_KEPT = 2000

interface Known {
  readonly rows: readonly Row[]
  readonly block: AreaValues | undefined
  readonly pads: readonly string[]
}

/**
 * What stands unseen after a cell's number, worked out for the rows that are read together and kept until one of them changes;
 * so scrolling never moves a number.
 */
export function createAlignment(values: Pick<Values, 'at' | 'blockAt'>): (sheet: Sheet, row: number, column: number) => string {
  const blocks = new Map<string, Known>()
  return (sheet, row, column) => {
    const first = row - (row % BLOCK_ROWS)
    const key = `${first}:${column}:${sheet.name}`
    const block = values.blockAt(sheet.name, row, column)
    const before = blocks.get(key)
    if (before && before.block === block && before.rows.every((one, offset) => one === sheet.rows[first + offset])) return before.pads[row - first] ?? ''

    const rows = Array.from({ length: BLOCK_ROWS }, (_, offset) => sheet.rows[first + offset])
    const pads = padsFrom(values, sheet, first, column)
    if (blocks.size >= BLOCKS_KEPT) blocks.clear()
    blocks.set(key, { rows, block, pads })
    return pads[row - first] ?? ''
  }
}

const padsFrom = (values: Pick<Values, 'at'>, sheet: Sheet, first: number, column: number): string[] =>
  alignmentPads(Array.from({ length: BLOCK_ROWS }, (_, offset) => {
    const cell = sheet.rows[first + offset]?.[column]
    const value = cell && (plainValue(cell) ?? values.at(sheet.name, first + offset, column))
    return cell && typeof value === 'number' ? formatNumber(value, cell) : undefined
  }))
