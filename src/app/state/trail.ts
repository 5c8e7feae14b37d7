import { createSignal, type Accessor } from 'solid-js'
import { sheetByName, type Workbook } from '../../workbook/document.ts'
import type { CellAddress } from '../../workbook/address.ts'

export interface Visited extends CellAddress {
  readonly sheet: string
}

export interface Trail {
  /** The cells that were left by following, the last one left at the end. */
  readonly visited: Accessor<readonly Visited[]>
  /** Goes to a cell, and keeps the way back. */
  follow(to: Visited): void
  /** Back to the cell at that position of the trail; the last one where none is given. */
  back(index?: number): void
  forget(): void
}

interface Surroundings {
  readonly workbook: Accessor<Workbook>
  readonly here: Accessor<Visited>
  readonly goTo: (to: Visited) => void
}

/** A walk from cell to cell through what feeds and what uses them. */
export function createTrail({ workbook, here, goTo }: Surroundings): Trail {
  const [left, setLeft] = createSignal<readonly Visited[]>([])
  const visited = () => left().filter(({ sheet }) => sheetByName(workbook(), sheet) !== undefined)
  return {
    visited,
    follow(to) {
      setLeft([...visited(), here()])
      goTo(to)
    },
    back(index = visited().length - 1) {
      const to = visited()[index]
      if (!to) return
      setLeft(visited().slice(0, index))
      goTo(to)
    },
    forget: () => void setLeft([]),
  }
}
