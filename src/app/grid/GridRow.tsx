import { createMemo, For, type Accessor, type JSX } from 'solid-js'
import { rowKind } from '../../workbook/row-kind.ts'
import { useSession } from '../state/session.ts'
import { GridCell } from './GridCell.tsx'
import { useGrid } from './grid-context.ts'
import { MARGIN } from './layout.ts'

interface Props {
  readonly row: Accessor<number | undefined>
  /** Where the rows of this group begin, in px from the first row. */
  readonly origin: Accessor<number>
}

/** One row slot: the row number and the frozen cells stay in view at the left, the others move with the sheet. */
export function GridRow(props: Props): JSX.Element {
  const { selection, sheet } = useSession()
  const { layout, columns, frozenColumns } = useGrid()
  const shown = createMemo(() => props.row())
  const row = () => shown() ?? 0
  const cells = createMemo(() => sheet().rows[row()])
  const kind = createMemo(() => rowKind(cells()))
  const isCurrent = createMemo(() => selection.areas().some(({ top, bottom }) => row() >= top && row() <= bottom))

  return (
    <div
      role="row"
      class={`row row-${kind()}`}
      hidden={shown() === undefined}
      aria-rowindex={row() + 2}
      style={{ transform: `translateY(${layout.rowAxis().start(row()) - props.origin()}px)`, height: `${layout.rowAxis().size(row())}px` }}
    >
      <div class="row-start" style={{ width: `${MARGIN.left + layout.columnAxis().start(layout.frozen()[1])}px` }}>
        <div role="rowheader" class="row-number" classList={{ current: isCurrent() }} aria-colindex={1} data-row={row()}>{row() + 1}</div>
        <For each={frozenColumns()}>{(column) => <GridCell row={shown} cells={cells} column={() => column} />}</For>
      </div>
      <For each={columns()}>{(column) => <GridCell row={shown} cells={cells} column={column} />}</For>
    </div>
  )
}
