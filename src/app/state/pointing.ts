import { createMemo, createSignal, type Accessor } from 'solid-js'
import type { CellAddress } from '../../workbook/address.ts'
import type { Extent } from '../../workbook/formula/calls.ts'
import { putReference, referenceFits } from '../entry-line/pointing.ts'
import type { Entry } from './entry.ts'
import { areaBetween } from './selection.ts'

/** Writes references into the formula being typed by pointing at cells. */
export interface Pointing {
  /** A click on a cell or a sheet writes a reference: one fits at the caret, or the last one pointed at ends there. */
  readonly fits: Accessor<boolean>
  /** The same for arrow keys, which only point where the caret has not been moved by hand. */
  readonly fitsKeys: Accessor<boolean>
  /** The corner that was pointed at last, on the sheet shown. */
  readonly end: Accessor<CellAddress | undefined>
  /** To one cell, or stretched from the one pointed at before. */
  to(place: CellAddress, extend?: boolean): void
  toWhole(kind: 'columns' | 'rows', first: number, last: number): void
  step(rows: number, columns: number, extend: boolean): void
  /** Shows another sheet to point at; the text is then typed in the entry line. */
  show(sheet: string): void
}

interface Surroundings {
  readonly entry: Entry
  readonly sheet: Accessor<string>
  readonly active: Accessor<CellAddress>
  readonly size: Accessor<{ readonly rows: number; readonly columns: number }>
  readonly show: (sheet: string) => void
}

interface Held {
  /** The text as pointing left it: once it is another, the reference is no longer the pointer's. */
  readonly text: string
  readonly extent: Extent
  readonly sheet: string
  readonly anchor: CellAddress
  readonly end: CellAddress
}

export function createPointing({ entry, sheet, active, size, show }: Surroundings): Pointing {
  const [last, setLast] = createSignal<Held | undefined>(undefined)
  const held = (): Held | undefined => {
    const now = last()
    return now && entry.editing() && entry.text() === now.text && entry.caret() === now.extent.end ? now : undefined
  }
  const heldHere = (): Held | undefined => (held()?.sheet === sheet() ? held() : undefined)
  const mayStand = () => entry.editing() !== undefined && referenceFits({ text: entry.text(), caret: entry.caret() })

  function write(anchor: CellAddress, end: CellAddress, whole?: 'columns' | 'rows'): void {
    const caret = entry.caret()
    const home = entry.editing()?.sheet
    const { text, caret: after, extent } = putReference(entry.text(), held()?.extent ?? { start: caret, end: caret }, {
      sheet: home === sheet() ? null : sheet(), area: areaBetween(anchor, end), ...(whole ? { whole } : {}),
    })
    setLast({ text, extent, sheet: sheet(), anchor, end })
    entry.put(text, after)
  }
  const within = ({ row, column }: CellAddress): CellAddress => ({
    row: Math.max(0, Math.min(size().rows - 1, row)), column: Math.max(0, Math.min(size().columns - 1, column)),
  })
  /** Where keys start from: the cell being typed, or where another sheet was left. */
  function startHere(): CellAddress {
    const home = entry.editing()
    return home?.sheet === sheet() ? { row: home.row, column: home.column } : active()
  }

  return {
    fits: createMemo(() => held() !== undefined || mayStand()),
    fitsKeys: createMemo(() => held() !== undefined || (entry.isFresh() && mayStand())),
    end: () => heldHere()?.end,
    to: (place, extend = false) => write(extend ? (heldHere()?.anchor ?? place) : place, place),
    toWhole: (kind, first, final) => write(atEnd(kind, first), atEnd(kind, final), kind),
    step(rows, columns, extend) {
      const now = heldHere()
      const anchor = now?.anchor ?? startHere()
      const from = extend ? (now?.end ?? anchor) : anchor
      const end = within({ row: from.row + rows, column: from.column + columns })
      write(extend ? anchor : end, end)
    },
    show(name) {
      entry.moveTo('line')
      show(name)
    },
  }
}

const atEnd = (kind: 'columns' | 'rows', index: number): CellAddress => (kind === 'columns' ? { row: 0, column: index } : { row: index, column: 0 })
