import { batch, createEffect, createMemo, For, mapArray, on, onCleanup, onMount, Show, type JSX } from 'solid-js'
import { useSession } from '../state/session.ts'
import { ActiveCellAway } from './ActiveCellAway.tsx'
import { createAlignment } from './alignment-store.ts'
import { CellEditor } from './CellEditor.tsx'
import { copyHandlers } from './copy-handlers.ts'
import { FillMark } from './FillMark.tsx'
import { cellId } from './GridCell.tsx'
import { createGridMenu } from './grid-menu-state.ts'
import { GridHeader } from './GridHeader.tsx'
import { GridMenu } from './GridMenu.tsx'
import { GridRow } from './GridRow.tsx'
import { GridProvider, type GridContext } from './grid-context.ts'
import { gridAction } from './keys.ts'
import { selectedKind } from './line-actions.ts'
import { createGridLayout, MARGIN } from './layout.ts'
import { pointerHandlers } from './pointer.ts'
import { runGridAction } from './run-action.ts'
import { NoteTip } from './NoteTip.tsx'
import { keepRowsMeasured } from './row-measuring.ts'
import { itemInSlot, poolFor } from './slots.ts'
import { SpokenSelection } from './SpokenSelection.tsx'
import { createTextSpacing } from './text-spacing.ts'
import { createTextWidth } from './text-width.ts'
import { Traces } from './Traces.tsx'
import { UnitAtCell } from './UnitAtCell.tsx'
import { createViewport } from './viewport.ts'
import './Grid.css'

/** The cells of the sheet shown. Rows and columns out of view have no elements; those in view share a fixed pool of slots. */
export function Grid(props: { readonly ref: (element: HTMLElement) => void }): JSX.Element {
  const session = useSession()
  let grid!: HTMLDivElement // set by the ref below, before any of its handlers can run
  const { sheet, sheetName, opened, size, selection, entry } = session

  const textWidth = createTextWidth(getComputedStyle(document.body).fontFamily)
  const layout = createGridLayout({ sheet, size, textWidth, spacing: createTextSpacing() })
  const { rowAxis, columnAxis, frozen } = layout
  const viewport = createViewport({ rowAxis, columnAxis, frozen, margin: MARGIN })
  const rowPool = createMemo<number>((before) => poolFor(viewport.rows(), before), 0)
  const rowSlots = createMemo(() => countTo(rowPool()))
  const columnPool = createMemo<number>((before) => poolFor(viewport.columns(), before), 0)
  const columns = createMemo(mapArray(() => countTo(columnPool()), (slot) => createMemo(() => itemInSlot(slot, columnPool(), viewport.columns()))))
  const isScrolledAside = createMemo(() => viewport.scroll().left > 0)
  const context: GridContext = {
    layout, viewport, textWidth, isScrolledAside,
    alignment: createAlignment(session.values),
    frozenColumns: createMemo(() => countTo(frozen()[1])),
    columns,
  }

  createEffect(() => {
    session.recalculation.version()
    const [frozenRows, frozenColumns] = frozen()
    for (const { first: top, last: bottom } of [{ first: 0, last: frozenRows - 1 }, viewport.rows()]) {
      for (const { first: left, last: right } of [{ first: 0, last: frozenColumns - 1 }, viewport.columns()]) session.values.need(sheetName(), { top, left, bottom, right })
    }
  })

  keepRowsMeasured({
    layout, viewport, sheetName,
    goal: () => session.pointing.end()?.row ?? selection.corner().row,
    scrollBy: (px) => grid.scrollBy(0, px),
  })

  const scrolledTo = new Map<string, { readonly left: number; readonly top: number }>()
  // One effect: going to a cell of another sheet, that sheet is first where it was left, and then the cell comes into view.
  createEffect(on([sheetName, opened, selection.corner], ([name, opening, corner], before) => {
    if (before?.[0] !== name || before[1] !== opening) {
      if (before?.[1] === opening) scrolledTo.set(before[0], viewport.scroll())
      else scrolledTo.clear()
      const { left, top } = scrolledTo.get(name) ?? { left: 0, top: 0 }
      grid.scrollTo(left, top)
      viewport.setScroll(left, top)
    }
    if (before === undefined || before[2] === corner) return
    const now = viewport.scroll()
    const kind = selectedKind(session)
    const shown = viewport.reveal(corner.row, corner.column)
    // Whole lines are in view wherever one is along them.
    const [left, top] = [kind === 'rows' ? now.left : shown.left, kind === 'columns' ? now.top : shown.top]
    if (viewport.size().width > 0 && (left !== now.left || top !== now.top)) grid.scrollTo(left, top)
  }))

  createEffect(on(session.pointing.end, (end) => {
    if (!end) return
    const { left, top } = viewport.reveal(end.row, end.column)
    grid.scrollTo(left, top)
  }, { defer: true }))

  onMount(() => {
    const measure = () => {
      batch(() => {
        layout.setRoom(grid.clientWidth, grid.clientHeight)
        viewport.setSize(grid.clientWidth, grid.clientHeight)
      })
    }
    const observer = new ResizeObserver(measure)
    observer.observe(grid)
    measure()
    onCleanup(() => observer.disconnect())
  })

  const pointer = pointerHandlers(session, context, () => grid)
  const copying = copyHandlers(session)
  const menu = createGridMenu(session, context, () => grid)
  const onKeyDown = (event: KeyboardEvent) => {
    const action = gridAction(event)
    if (!action || event.target !== grid) return
    event.preventDefault()
    runGridAction(session, { textWidth, pageRows: viewport.pageRows, openMenu: menu.openAtActiveCell }, action)
    // A frozen first cell is in view already, but the start of the sheet need not be.
    if (action.does === 'sheetStart') grid.scrollTo(0, 0)
  }
  const bodyOrigin = () => rowAxis().start(frozen()[0])

  return (
    <GridProvider value={context}>
      <div class="grid-place">
        <div
          ref={(element) => {
            grid = element
            props.ref(element)
          }}
          class="grid"
          classList={{ stale: session.recalculation.busy(), aside: isScrolledAside() }}
          role="grid"
          tabindex={0}
          aria-label={`Sheet ${sheetName()}`}
          aria-description="Tab goes from cell to cell; F6 leads to the next part of the screen"
          aria-multiselectable={true}
          aria-busy={opened() === 0 || session.recalculation.underWay()}
          aria-readonly={session.keeping.reading()}
          aria-rowcount={size().rows + 1}
          aria-colcount={size().columns + 1}
          aria-activedescendant={cellId(selection.active().row, selection.active().column)}
          onScroll={(event) => viewport.setScroll(event.currentTarget.scrollLeft, event.currentTarget.scrollTop)}
          onKeyDown={onKeyDown}
          onContextMenu={menu.onContextMenu}
          {...pointer}
          {...copying}
        >
          <div class="canvas" style={{ width: `${MARGIN.left + columnAxis().total}px`, height: `${MARGIN.top + rowAxis().total}px` }}>
            <div role="rowgroup" class="grid-head">
              <GridHeader />
              <div class="frozen-rows" role="presentation" classList={{ some: frozen()[0] > 0 }} style={{ height: `${bodyOrigin()}px` }}>
                <For each={countTo(frozen()[0])}>{(row) => <GridRow row={() => row} origin={() => 0} />}</For>
              </div>
            </div>
            <div role="rowgroup" class="grid-body">
              <For each={rowSlots()}>{(slot) => <GridRow row={() => itemInSlot(slot, rowPool(), viewport.rows())} origin={bodyOrigin} />}</For>
              <ActiveCellAway />
              <Traces />
            </div>
          </div>
        </div>
        <Show when={entry.editing()?.place === 'cell' && entry.editing()}>
          {(editing) => <CellEditor editing={editing()} focusGrid={() => grid.focus({ preventScroll: true })} />}
        </Show>
        <Show when={menu.at()}>{(at) => <GridMenu at={at()} onClose={menu.close} />}</Show>
        <FillMark grid={() => grid} />
        <NoteTip grid={() => grid} />
        <SpokenSelection />
        <UnitAtCell focusGrid={() => grid.focus({ preventScroll: true })} />
      </div>
    </GridProvider>
  )
}

const countTo = (count: number): number[] => Array.from({ length: count }, (_, index) => index)
