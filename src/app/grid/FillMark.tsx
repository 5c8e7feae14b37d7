import { createMemo, createSignal, Show, type JSX } from 'solid-js'
import type { Area } from '../../workbook/address.ts'
import { fillFrom, stretchedTo } from '../../workbook/fill.ts'
import { useSession } from '../state/session.ts'
import { cellUnder, placeInView } from './cell-under.ts'
import { useGrid } from './grid-context.ts'
import './FillMark.css'

/** Nearer to the grid's edge than this, dragging scrolls. */
const EDGE_PX = 24

/** A mark at the selection's corner; dragged, it repeats the selected cells over those it is drawn across. */
export function FillMark(props: { readonly grid: () => HTMLElement }): JSX.Element {
  const session = useSession()
  const context = useGrid()
  const [target, setTarget] = createSignal<Area | undefined>(undefined)

  const corner = createMemo(() => {
    const { bottom, right } = session.selection.area()
    const { rows, columns } = session.size()
    if (session.entry.editing() || session.selection.areas().length > 1 || bottom === rows - 1 || right === columns - 1) return undefined
    const place = placeInView({ row: bottom, column: right }, context)
    return place.isInView ? place : undefined
  })
  const preview = () => {
    const area = target()
    if (!area) return undefined
    const first = placeInView({ row: area.top, column: area.left }, context)
    const last = placeInView({ row: area.bottom, column: area.right }, context)
    return { left: first.left, top: first.top, width: last.left + last.width - first.left, height: last.top + last.height - first.top }
  }

  function onPointerDown(event: PointerEvent & { readonly currentTarget: HTMLElement }): void {
    if (event.button !== 0 || !session.settle()) return
    event.preventDefault()
    event.stopPropagation()
    props.grid().focus({ preventScroll: true })
    event.currentTarget.setPointerCapture(event.pointerId)
    setTarget(session.selection.area())
  }
  function onPointerMove(event: PointerEvent): void {
    if (!target()) return
    scrollAtEdge(event, props.grid())
    setTarget(stretchedTo(session.selection.area(), cellUnder(event, props.grid(), context)))
  }
  function onPointerUp(): void {
    const area = target()
    setTarget(undefined)
    const source = session.selection.area()
    if (!area || (area.top === source.top && area.bottom === source.bottom && area.left === source.left && area.right === source.right)) return
    session.act('Fill', (workbook) => fillFrom(workbook, session.sheet().name, source, area))
    session.selection.select(area)
  }

  return (
    <div class="grid-overlay">
      <Show when={preview()}>
        {(box) => <div class="fill-preview" style={{ left: `${box().left}px`, top: `${box().top}px`, width: `${box().width}px`, height: `${box().height}px` }} />}
      </Show>
      <Show when={corner()}>
        {(place) => (
          <div
            class="fill-mark"
            aria-hidden="true"
            title="Drag to fill the cells beside with these"
            style={{ left: `${place().left + place().width}px`, top: `${place().top + place().height}px` }}
            onPointerDown={onPointerDown}
            onPointerMove={onPointerMove}
            onPointerUp={onPointerUp}
            onPointerCancel={() => setTarget(undefined)}
          />
        )}
      </Show>
    </div>
  )
}

function scrollAtEdge({ clientX, clientY }: PointerEvent, grid: HTMLElement): void {
  const { left, top } = grid.getBoundingClientRect()
  const by = (distance: number, length: number): number => (distance > length - EDGE_PX ? EDGE_PX : 0)
  grid.scrollBy(by(clientX - left, grid.clientWidth), by(clientY - top, grid.clientHeight))
}
