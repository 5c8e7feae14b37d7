import { createMemo, For, type Accessor, type JSX } from 'solid-js'
import { columnLetters } from '../../workbook/address.ts'
import { useSession } from '../state/session.ts'
import { useGrid } from './grid-context.ts'
import { MARGIN } from './layout.ts'

/** The column letters, with the edges that set the widths. */
export function GridHeader(): JSX.Element {
  const { layout, columns, frozenColumns } = useGrid()
  return (
    <div role="row" class="header-row" aria-rowindex={1} style={{ height: `${MARGIN.top}px` }}>
      <div class="row-start" style={{ width: `${MARGIN.left + layout.columnAxis().start(layout.frozen()[1])}px` }}>
        <div role="columnheader" class="corner" aria-colindex={1}><span class="unseen">Row</span></div>
        <For each={frozenColumns()}>{(column) => <ColumnLetter column={() => column} />}</For>
      </div>
      <For each={columns()}>{(column) => <ColumnLetter column={column} />}</For>
    </div>
  )
}

function ColumnLetter(props: { readonly column: Accessor<number | undefined> }): JSX.Element {
  const { selection } = useSession()
  const { layout } = useGrid()
  const column = () => props.column() ?? 0
  const isCurrent = createMemo(() => selection.areas().some(({ left, right }) => column() >= left && column() <= right))
  return (
    <div
      role="columnheader"
      class="column-letter"
      classList={{ current: isCurrent() }}
      hidden={props.column() === undefined}
      aria-colindex={column() + 2}
      data-column={column()}
      style={{ left: `${MARGIN.left + layout.columnAxis().start(column())}px`, width: `${layout.columnAxis().size(column())}px` }}
    >
      {columnLetters(column())}
      <span class="column-edge" data-edge={column()} aria-hidden="true" title="Drag to set the width of the column" />
    </div>
  )
}
