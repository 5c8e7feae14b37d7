import { createMemo, createSignal, type Accessor } from 'solid-js'
import { columnWidth, DEFAULT_COLUMN_WIDTH, usedRange, type Sheet } from '../../workbook/document.ts'
import { MAX_COLUMN_WIDTH } from '../../workbook/limits.ts'
import { createAxis, type Axis } from './axis.ts'
import { createRowHeights, ROW_HEIGHT, type RowHeights } from './row-heights.ts'
import { spacedWidth, type TextSpacing } from './text-spacing.ts'
import type { TextWidth } from './text-width.ts'

/** Room for the row numbers at the left and the column letters at the top. */
export const MARGIN = { left: 46, top: 24 } as const

/** Narrower, a column could not be found again. */
export const LEAST_WIDTH = 24

export interface GridLayout {
  readonly rowAxis: Accessor<Axis>
  readonly columnAxis: Accessor<Axis>
  /** What stays in view. */
  readonly frozen: Accessor<readonly [rows: number, columns: number]>
  /** How large the grid is on the screen. */
  setRoom(width: number, height: number): void
  /** As far as they are worked out. */
  readonly rowHeights: Accessor<RowHeights>
  /** Lays the rows out by what has been worked out since. */
  layOutRows(): void
  /** Shows a width that is not in the document yet, while an edge is dragged. */
  drag(column: number, width: number): void
  /** The widths with the dragged one among them; ends the dragging. */
  dropped(): readonly number[]
}

interface Surroundings {
  readonly sheet: Accessor<Sheet>
  readonly size: Accessor<{ readonly rows: number; readonly columns: number }>
  readonly textWidth: TextWidth
  readonly spacing: Accessor<TextSpacing>
}

/** Where the rows and columns of the sheet shown lie. */
export function createGridLayout({ sheet, size, textWidth, spacing }: Surroundings): GridLayout {
  const [dragged, setDragged] = createSignal<{ readonly column: number; readonly width: number } | undefined>(undefined)
  const heightsOf = createMemo(() => createRowHeights(spacedWidth(textWidth, spacing()), spacing().linePx))
  const [room, setRoom] = createSignal({ width: Infinity, height: Infinity })

  const widths = createMemo(() => {
    const held = sheet().columns
    const drag = dragged()
    if (!drag) return held
    const count = Math.max(held.length, drag.column + 1)
    return Array.from({ length: count }, (_, column) => (column === drag.column ? drag.width : columnWidth(sheet(), column)))
  })
  const columnAxis = createMemo(() => createAxis(widths(), DEFAULT_COLUMN_WIDTH, size().columns))
  const rowHeights = createMemo(() => heightsOf()(sheet()))
  const sizes = createMemo(() => rowHeights().sizes)
  const [laidOut, layOut] = createSignal(undefined, { equals: false })
  const rowAxis = createMemo(() => {
    laidOut()
    return createAxis(sizes(), ROW_HEIGHT, size().rows)
  })
  const frozen = createMemo(() => {
    const { rows, columns } = usedRange(sheet())
    const [frozenRows, frozenColumns] = sheet().frozen
    return [inRoom(rowAxis(), Math.min(frozenRows, rows), room().height - MARGIN.top - LEAST_ROOM.height), inRoom(columnAxis(), Math.min(frozenColumns, columns), room().width - MARGIN.left - LEAST_ROOM.width)] as const
  }, undefined, { equals: ([rows, columns], [otherRows, otherColumns]) => rows === otherRows && columns === otherColumns })

  return {
    rowAxis,
    columnAxis,
    frozen,
    setRoom: (width, height) => void setRoom({ width, height }),
    rowHeights,
    layOutRows: () => layOut(undefined),
    drag: (column, width) => setDragged({ column, width: Math.min(MAX_COLUMN_WIDTH, Math.max(LEAST_WIDTH, Math.round(width))) }),
    dropped() {
      const result = widths()
      setDragged(undefined)
      return result
    },
  }
}

/** What stays in view leaves room for a usual column and some rows beside it, or else scrolls as all others do. */
const LEAST_ROOM = { width: DEFAULT_COLUMN_WIDTH, height: 4 * ROW_HEIGHT } as const

const inRoom = (axis: Axis, count: number, room: number): number => (axis.start(count) <= room ? count : 0)
