import type { CellAddress } from '../../workbook/address.ts'
import type { Session } from '../state/session.ts'
import type { GridContext } from './grid-context.ts'
import { MARGIN } from './layout.ts'

/** Selecting with the pointer, opening a cell by a double click, and dragging the edges of columns. */
export function pointerHandlers(session: Session, { layout, viewport }: GridContext, grid: () => HTMLElement) {
  let dragging: ((event: PointerEvent) => void) | undefined
  let drop: (() => void) | undefined

  /** The cell under the pointer, whatever element runs over it. */
  function cellUnder(event: MouseEvent): CellAddress {
    const { left, top } = grid().getBoundingClientRect()
    const scroll = viewport.scroll()
    const [frozenRows, frozenColumns] = layout.frozen()
    const x = event.clientX - left - MARGIN.left
    const y = event.clientY - top - MARGIN.top
    return {
      column: layout.columnAxis().at(x < layout.columnAxis().start(frozenColumns) ? x : x + scroll.left),
      row: layout.rowAxis().at(y < layout.rowAxis().start(frozenRows) ? y : y + scroll.top),
    }
  }

  function dragWidth(event: PointerEvent, column: number): void {
    const from = event.clientX
    const width = layout.columnAxis().size(column)
    dragging = (move) => layout.drag(column, width + move.clientX - from)
    drop = () => {
      const columns = layout.dropped()
      session.act('Column width', () => [{ kind: 'columnWidths', sheet: session.sheet().name, columns }])
    }
  }

  return {
    onPointerDown(event: PointerEvent) {
      const { row, column, edge } = placeOf(event.target)
      if (event.button !== 0 || isScrollBar(event, grid()) || !session.settle()) return
      grid().focus({ preventScroll: true })
      event.preventDefault()
      grid().setPointerCapture(event.pointerId)
      const { size, selection } = session
      if (edge !== undefined) dragWidth(event, edge)
      else if (row !== undefined) selection.select({ top: row, bottom: row, left: 0, right: size().columns - 1 })
      else if (column !== undefined) selection.select({ left: column, right: column, top: 0, bottom: size().rows - 1 })
      else {
        selection.moveTo(cellUnder(event), event.shiftKey)
        dragging = (move) => selection.moveTo(cellUnder(move), true)
      }
    },
    onPointerMove(event: PointerEvent) {
      dragging?.(event)
    },
    onPointerUp() {
      drop?.()
      dragging = drop = undefined
    },
    onPointerCancel() {
      if (drop) layout.dropped()
      dragging = drop = undefined
    },
    onDblClick(event: MouseEvent) {
      const { row, column, edge } = placeOf(event.target)
      if (row === undefined && column === undefined && edge === undefined) session.entry.begin('cell')
    },
  }
}

/** The row number, column letter or column edge that an element stands for. */
function placeOf(target: EventTarget | null): { readonly row?: number; readonly column?: number; readonly edge?: number } {
  const { row, column, edge } = target instanceof HTMLElement ? target.dataset : {}
  return {
    ...(row === undefined ? {} : { row: Number(row) }),
    ...(column === undefined ? {} : { column: Number(column) }),
    ...(edge === undefined ? {} : { edge: Number(edge) }),
  }
}

const isScrollBar = (event: PointerEvent, grid: HTMLElement): boolean => {
  const { left, top } = grid.getBoundingClientRect()
  return event.clientX - left >= grid.clientWidth || event.clientY - top >= grid.clientHeight
}
