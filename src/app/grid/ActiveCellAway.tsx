import { createMemo, Show, type JSX } from 'solid-js'
import { useSession } from '../state/session.ts'
import { GridCell } from './GridCell.tsx'
import { useGrid } from './grid-context.ts'
import type { Span } from './viewport.ts'

/** The active cell while it is scrolled out of view, at its place: the grid's active descendant is always an element of the page. */
export function ActiveCellAway(): JSX.Element {
  const { selection, sheet } = useSession()
  const { layout, viewport } = useGrid()
  const row = () => selection.active().row
  const column = () => selection.active().column
  const isAway = createMemo(() => !isDrawn(row(), layout.frozen()[0], viewport.rows()) || !isDrawn(column(), layout.frozen()[1], viewport.columns()))
  const top = () => layout.rowAxis().start(row()) - layout.rowAxis().start(layout.frozen()[0])

  return (
    <Show when={isAway()}>
      <div role="row" class="row-away" aria-rowindex={row() + 2} style={{ transform: `translateY(${top()}px)`, height: `${layout.rowAxis().size(row())}px` }}>
        <GridCell row={row} cells={() => sheet().rows[row()]} column={column} />
      </div>
    </Show>
  )
}

const isDrawn = (item: number, frozen: number, { first, last }: Span): boolean => item < frozen || (item >= first && item <= last)
