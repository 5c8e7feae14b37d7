import { createMemo, createSignal, type Accessor } from 'solid-js'
import type { Axis } from './axis.ts'

/** Items shown, the last one included; empty where `last < first`. */
export interface Span {
  readonly first: number
  readonly last: number
}

export interface Viewport {
  readonly rows: Accessor<Span>
  readonly columns: Accessor<Span>
  readonly scroll: Accessor<{ readonly left: number; readonly top: number }>
  readonly size: Accessor<{ readonly width: number; readonly height: number }>
  setScroll(left: number, top: number): void
  setSize(width: number, height: number): void
  /** Where to scroll to so that a cell is in view; the present place if it is. */
  reveal(row: number, column: number): { readonly left: number; readonly top: number }
  /** Rows that a page holds, at least one. */
  pageRows(): number
}

interface Layout {
  readonly rowAxis: Accessor<Axis>
  readonly columnAxis: Accessor<Axis>
  readonly frozen: Accessor<readonly [rows: number, columns: number]>
  /** What the row numbers and the column letters take of the view, in px. */
  readonly margin: { readonly left: number; readonly top: number }
}

/** Rows drawn beyond the edge, so that a line's scroll shows no gap. */
const SPARE = 2

/** Which rows and columns below and right of the frozen ones are in view. */
export function createViewport({ rowAxis, columnAxis, frozen, margin }: Layout): Viewport {
  const [scroll, setScroll] = createSignal({ left: 0, top: 0 }, { equals: samePlace })
  const [size, setSize] = createSignal({ width: 0, height: 0 })

  const visible = (axis: Axis, frozenCount: number, scrolled: number, length: number, spare: number): Span => {
    const frozenSize = axis.start(frozenCount)
    const first = Math.max(frozenCount, axis.at(scrolled + frozenSize) - spare)
    const last = Math.min(axis.count - 1, axis.at(scrolled + Math.max(0, length)) + spare)
    return { first, last }
  }

  const rows = createMemo(() => visible(rowAxis(), frozen()[0], scroll().top, size().height - margin.top, SPARE), undefined, { equals: sameSpan })
  const columns = createMemo(() => visible(columnAxis(), frozen()[1], scroll().left, size().width - margin.left, 0), undefined, { equals: sameSpan })

  return {
    rows,
    columns,
    scroll,
    size,
    setScroll: (left, top) => setScroll({ left, top }),
    setSize: (width, height) => setSize({ width, height }),
    reveal: (row, column) => ({
      left: revealed(columnAxis(), frozen()[1], column, scroll().left, size().width - margin.left),
      top: revealed(rowAxis(), frozen()[0], row, scroll().top, size().height - margin.top),
    }),
    pageRows() {
      const frozenSize = rowAxis().start(frozen()[0])
      const space = size().height - margin.top - frozenSize
      const top = rowAxis().at(scroll().top + frozenSize)
      return Math.max(1, rowAxis().at(rowAxis().start(top) + space) - top - 1)
    },
  }
}

function revealed(axis: Axis, frozenCount: number, index: number, scrolled: number, length: number): number {
  if (index < frozenCount) return scrolled
  const start = axis.start(index) - axis.start(frozenCount)
  const end = axis.start(index) + axis.size(index)
  if (start < scrolled) return start
  // An item larger than the view is shown from its start.
  return end > scrolled + length ? Math.min(start, end - length) : scrolled
}

const samePlace = (a: { left: number; top: number }, b: { left: number; top: number }): boolean => a.left === b.left && a.top === b.top
const sameSpan = (a: Span, b: Span): boolean => a.first === b.first && a.last === b.last
