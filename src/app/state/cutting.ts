import { createMemo, createSignal, type Accessor } from 'solid-js'
import { sheetByName, type Workbook } from '../../workbook/document.ts'
import type { Block } from '../../workbook/move-cells.ts'
import { inArea } from './selection.ts'

/** Cells that are cut: they stay where they are, marked, until they are pasted. */
export interface Cutting {
  /** Undefined where nothing is cut, or as soon as one of the cells has become another one. */
  readonly block: Accessor<Block | undefined>
  /** Whether a cell of the sheet shown is cut. */
  includes(row: number, column: number): boolean
  take(block: Block): void
  /** False if nothing was cut. */
  end(): boolean
}

export function createCutting(workbook: Accessor<Workbook>, sheet: Accessor<string>): Cutting {
  const [taken, setTaken] = createSignal<Block | undefined>(undefined)
  const block = createMemo(() => {
    const found = taken()
    return found && isAsTaken(found, workbook()) ? found : undefined
  })
  const here = createMemo(() => (block()?.sheet === sheet() ? block()?.area : undefined))
  return {
    block,
    includes(row, column) {
      const area = here()
      return area !== undefined && inArea(area, row, column)
    },
    take: (cells) => void setTaken(cells),
    end() {
      const wasCut = block() !== undefined
      setTaken(undefined)
      return wasCut
    },
  }
}

function isAsTaken({ sheet, area: { top, left }, cells }: Block, workbook: Workbook): boolean {
  const rows = sheetByName(workbook, sheet)?.rows
  return rows !== undefined && cells.every((line, row) => line.every((cell, column) => rows[top + row]?.[left + column] === cell))
}
