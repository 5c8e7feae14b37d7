import { createMemo, For, type JSX } from 'solid-js'
import type { Area } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import { useSession } from '../state/session.ts'
import { useGrid } from './grid-context.ts'
import { MARGIN } from './layout.ts'
import { tracePath, type Box } from './trace-path.ts'

/** More lines than these show nothing. */
const MOST_TRACES = 12

/** Outlines round the cells that feed the selected one, and thin lines from them to it. */
export function Traces(): JSX.Element {
  const session = useSession()
  const { layout } = useGrid()

  const boxOf = ({ top, left, bottom, right }: Area): Box => {
    const origin = layout.rowAxis().start(layout.frozen()[0])
    // A whole row or column runs to the sheet's end: no further than the grid.
    const lastRow = Math.min(bottom, session.size().rows - 1)
    const lastColumn = Math.min(right, session.size().columns - 1)
    return {
      left: MARGIN.left + layout.columnAxis().start(left),
      right: MARGIN.left + layout.columnAxis().start(lastColumn + 1),
      top: layout.rowAxis().start(top) - origin,
      bottom: layout.rowAxis().start(lastRow + 1) - origin,
    }
  }
  const traces = createMemo(() => {
    const { row, column } = session.selection.active()
    const target = boxOf({ top: row, bottom: row, left: column, right: column })
    return session.feeds.all()
      .filter(({ sheet }) => foldCase(sheet) === foldCase(session.sheet().name))
      .slice(0, MOST_TRACES)
      .map(({ area, colour }, index) => ({ colour, box: boxOf(area), path: tracePath(boxOf(area), target, index) }))
  })

  return (
    <svg class="traces" aria-hidden="true">
      <For each={traces()}>
        {({ colour, box, path }) => (
          <g class={`trace trace-${colour}`}>
            <rect x={box.left + 0.5} y={box.top + 0.5} width={Math.max(0, box.right - box.left - 1)} height={Math.max(0, box.bottom - box.top - 2)} rx="2" />
            <path d={path.line} />
            <circle cx={path.from.x} cy={path.from.y} r="2.5" />
          </g>
        )}
      </For>
    </svg>
  )
}
