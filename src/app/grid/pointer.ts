import type { CellAddress } from '../../workbook/address.ts'
import type { LineAxis } from '../../workbook/line-edits.ts'
import type { Session } from '../state/session.ts'
import { cellUnder } from './cell-under.ts'
import type { GridContext } from './grid-context.ts'
import { linesArea } from './line-actions.ts'
import { fitColumns } from './column-widths.ts'
import { pointByPointer } from './point-by-pointer.ts'

/** Selecting with the pointer, opening a cell by a double click, and dragging the edges of columns. */
export function pointerHandlers(session: Session, context: GridContext, grid: () => HTMLElement) {
  const { layout } = context
  let dragging: ((event: PointerEvent) => void) | undefined
  let drop: (() => void) | undefined
  /** What was pressed last: with the pointer captured, clicks are told of the grid only. */
  let pressed: ReturnType<typeof placeOf> = {}

  const under = (event: MouseEvent): CellAddress => cellUnder(event, grid(), context)

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
      const place = placeOf(event.target)
      pressed = place
      const { row, column, edge } = place
      if (event.button !== 0 || isScrollBar(event, grid())) return
      if (edge === undefined && session.pointing.fits()) {
        event.preventDefault()
        grid().setPointerCapture(event.pointerId)
        dragging = pointByPointer(session.pointing, place, event, under)
        return
      }
      if (!session.settle()) return
      grid().focus({ preventScroll: true })
      event.preventDefault()
      grid().setPointerCapture(event.pointerId)
      const { selection } = session
      if (edge !== undefined) dragWidth(event, edge)
      else if (row !== undefined) dragging = selectingLines(session, 'rows', row, event, (move) => under(move).row)
      else if (column !== undefined) dragging = selectingLines(session, 'columns', column, event, (move) => under(move).column)
      else {
        if (addsToSelection(event)) selection.add(under(event))
        else selection.moveTo(under(event), event.shiftKey)
        dragging = (move) => selection.moveTo(under(move), true)
      }
    },
    onMouseDown(event: MouseEvent) {
      // The text that is pointed from keeps the focus.
      if (session.entry.editing()) event.preventDefault()
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
    onDblClick() {
      const { row, column, edge } = pressed
      if (session.entry.editing()) return
      if (edge !== undefined) fitColumns(session, context, [edge])
      else if (row === undefined && column === undefined) session.entry.begin('cell')
    },
  }
}

/** Selects the line pressed, beside others or alone, or those from the active one to it, and on to where the pointer is dragged. */
function selectingLines(session: Session, axis: LineAxis, line: number, event: PointerEvent, lineUnder: (event: PointerEvent) => number): (event: PointerEvent) => void {
  const { selection } = session
  const { row, column } = selection.active()
  const isStretched = event.shiftKey && !addsToSelection(event)
  const from = !isStretched ? line : axis === 'rows' ? row : column
  const others = addsToSelection(event) ? selection.areas() : isStretched ? selection.areas().slice(0, -1) : []
  const selectTo = (to: number) => selection.selectAll([...others, linesArea(session, axis, from, to)])
  selectTo(line)
  return (move) => selectTo(lineUnder(move))
}

/** Where Ctrl with a press opens a menu, the other command key adds. */
const addsToSelection = ({ ctrlKey, metaKey }: PointerEvent): boolean => metaKey || (ctrlKey && !navigator.platform.startsWith('Mac'))

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
