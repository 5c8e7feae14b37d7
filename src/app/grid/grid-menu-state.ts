import { createSignal } from 'solid-js'
import type { Session } from '../state/session.ts'
import { cellUnder, placeInView } from './cell-under.ts'
import type { GridContext } from './grid-context.ts'
import { selectedKind, selectLines } from './line-actions.ts'

/** Where the grid's menu is open, and what opens it. */
export function createGridMenu(session: Session, context: GridContext, grid: () => HTMLElement) {
  const [at, setAt] = createSignal<{ readonly x: number; readonly y: number } | undefined>(undefined)

  /** A press outside of what is selected selects what it hits. */
  function selectUnder(event: MouseEvent): void {
    const { row, column } = event.target instanceof HTMLElement ? event.target.dataset : {}
    const { selection } = session
    const kind = selectedKind(session)
    if (row !== undefined) {
      if (kind !== 'rows' || !selection.includes(Number(row), 0)) selectLines(session, 'rows', Number(row), Number(row))
    } else if (column !== undefined) {
      if (kind !== 'columns' || !selection.includes(0, Number(column))) selectLines(session, 'columns', Number(column), Number(column))
    } else {
      const place = cellUnder(event, grid(), context)
      if (!selection.includes(place.row, place.column)) selection.moveTo(place)
    }
  }

  function openAtActiveCell(): void {
    if (!session.settle()) return
    const { left, top } = grid().getBoundingClientRect()
    const place = placeInView(session.selection.active(), context)
    setAt({ x: left + Math.max(0, place.left) + 12, y: top + Math.max(0, place.top) + place.height })
  }

  return {
    at,
    close() {
      setAt(undefined)
      grid().focus({ preventScroll: true })
    },
    openAtActiveCell,
    onContextMenu(event: MouseEvent) {
      event.preventDefault()
      // The menu key has no place of its own.
      if (event.button !== 2) return openAtActiveCell()
      if (!session.settle()) return
      selectUnder(event)
      setAt({ x: event.clientX, y: event.clientY })
    },
  }
}
