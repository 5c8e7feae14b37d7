import { createSignal, type Accessor, type Setter } from 'solid-js'
import type { AreaValues, CellValue, Check } from '../../calc/values.ts'
import { printAddress, type Area } from '../../workbook/address.ts'
import type { Recalculation } from './recalculation.ts'

export interface Values {
  /** The last value known; undefined while there has been none. */
  at(sheet: string, row: number, column: number): CellValue | undefined
  checkAt(sheet: string, row: number, column: number): Check | undefined
  /** Whether the value known is the one after the last change. */
  isCurrent(sheet: string, row: number, column: number): boolean
  /** What was read together with a cell; the same object as long as nothing was read anew. */
  blockAt(sheet: string, row: number, column: number): AreaValues | undefined
  /** Reads what is not known, or known from before the last change, of an area. */
  need(sheet: string, area: Area): void
  /** Forgets everything: another workbook. */
  clear(): void
}

/** Rows and columns that are read together, so that scrolling asks seldom and a change redraws what it must. */
export const BLOCK_ROWS = 64
const BLOCK_COLUMNS = 32
/** Blocks kept, far more than are in view: about 5 MB of numbers. */
const MOST_BLOCKS = 300

interface Block {
  readonly values: Accessor<AreaValues | undefined>
  readonly setValues: Setter<AreaValues | undefined>
  /** The version that `values` are of, or that they are being read for. */
  version: number
  reading: boolean
}

/** The values of the graph as far as they have been asked for. A value stays until the next one is there. */
export function createValues({ ask, version }: Pick<Recalculation, 'ask' | 'version'>): Values {
  const [blocks, setBlocks] = createSignal(new Map<string, Block>())
  // Blocks are made on demand, by whoever comes first: the cell that shows a value or the view that needs it.
  function blockOf(sheet: string, blockRow: number, blockColumn: number): Block {
    const key = keyOf(sheet, blockRow, blockColumn)
    let block = blocks().get(key)
    if (!block) {
      const [values, setValues] = createSignal<AreaValues | undefined>(undefined)
      block = { values, setValues, version: -1, reading: false }
      blocks().set(key, block)
    }
    return block
  }
  /** The block, from now on the last one to be forgotten. */
  function refreshed(sheet: string, blockRow: number, blockColumn: number): Block {
    const key = keyOf(sheet, blockRow, blockColumn)
    const block = blockOf(sheet, blockRow, blockColumn)
    blocks().delete(key)
    blocks().set(key, block)
    const [oldest] = blocks().keys()
    if (blocks().size > MOST_BLOCKS && oldest !== undefined) blocks().delete(oldest)
    return block
  }
  const blockAt = (sheet: string, row: number, column: number): AreaValues | undefined =>
    blockOf(sheet, Math.floor(row / BLOCK_ROWS), Math.floor(column / BLOCK_COLUMNS)).values()

  /** One reading at a time for each block: a change meanwhile is followed by one more, however many there were. */
  async function read(block: Block, sheet: string, area: Area): Promise<void> {
    block.reading = true
    // One that has been forgotten meanwhile belongs to another workbook.
    const isKept = (): boolean => blocks().get(keyOf(sheet, area.top / BLOCK_ROWS, area.left / BLOCK_COLUMNS)) === block
    while (block.version !== version() && isKept()) {
      block.version = version()
      const values = await ask((service) => service.read(sheet, area))
      if (values) block.setValues(values)
    }
    block.reading = false
  }

  return {
    at: (sheet, row, column) => blockAt(sheet, row, column)?.values[row % BLOCK_ROWS]?.[column % BLOCK_COLUMNS],
    checkAt: (sheet, row, column) => blockAt(sheet, row, column)?.checks.get(printAddress(row, column)),
    isCurrent(sheet, row, column) {
      const block = blocks().get(keyOf(sheet, Math.floor(row / BLOCK_ROWS), Math.floor(column / BLOCK_COLUMNS)))
      return block !== undefined && !block.reading && block.version === version()
    },
    blockAt,
    need(sheet, { top, left, bottom, right }) {
      if (version() === 0) return
      for (let blockRow = Math.floor(top / BLOCK_ROWS); blockRow * BLOCK_ROWS <= bottom; blockRow++) {
        for (let blockColumn = Math.floor(left / BLOCK_COLUMNS); blockColumn * BLOCK_COLUMNS <= right; blockColumn++) {
          const block = refreshed(sheet, blockRow, blockColumn)
          if (block.reading || block.version === version()) continue
          const first = { top: blockRow * BLOCK_ROWS, left: blockColumn * BLOCK_COLUMNS }
          void read(block, sheet, { ...first, bottom: first.top + BLOCK_ROWS - 1, right: first.left + BLOCK_COLUMNS - 1 })
        }
      }
    },
    clear() {
      setBlocks(new Map())
    },
  }
}

const keyOf = (sheet: string, blockRow: number, blockColumn: number): string => `${blockRow}:${blockColumn}:${sheet}`
