import { createMemo, createSignal, type Accessor } from 'solid-js'
import { columnWidth, DEFAULT_COLUMN_WIDTH, usedRange, type Sheet } from '../../workbook/document.ts'
import { MAX_COLUMN_WIDTH } from '../../workbook/limits.ts'
import { createAxis, type Axis } from './axis.ts'
import { createRowHeights, ROW_HEIGHT } from './row-heights.ts'
import type { TextWidth } from './text-width.ts'

/** Room for the row numbers at the left and the column letters at the top. */
export const MARGIN = { left: 46, top: 24 } as const

const LEAST_WIDTH = 24

export interface GridLayout {
  readonly rowAxis: Accessor<Axis>
  readonly columnAxis: Accessor<Axis>
  readonly frozen: Accessor<readonly [rows: number, columns: number]>
  /** Shows a width that is not in the document yet, while an edge is dragged. */
  drag(column: number, width: number): void
  /** The widths with the dragged one among them; ends the dragging. */
  dropped(): readonly number[]
}

interface Surroundings {
  readonly sheet: Accessor<Sheet>
  readonly size: Accessor<{ readonly rows: number; readonly columns: number }>
  readonly textWidth: TextWidth
}

/** Where the rows and columns of the sheet shown lie. */
export function createGridLayout({ sheet, size, textWidth }: Surroundings): GridLayout {
  const [dragged, setDragged] = createSignal<{ readonly column: number; readonly width: number } | undefined>(undefined)
  const rowHeights = createRowHeights(textWidth)

  const widths = createMemo(() => {
    const held = sheet().columns
    const drag = dragged()
    if (!drag) return held
    const count = Math.max(held.length, drag.column + 1)
    return Array.from({ length: count }, (_, column) => (column === drag.column ? drag.width : columnWidth(sheet(), column)))
  })
  const columnAxis = createMemo(() => createAxis(widths(), DEFAULT_COLUMN_WIDTH, size().columns))
  // Equal as long as no height changes, so that an edit elsewhere lays nothing out again.
  const heights = createMemo(() => rowHeights(sheet()), undefined, { equals: (one, other) => one.length === other.length && one.every((height, row) => height === other[row]) })
  const rowAxis = createMemo(() => createAxis(heights(), ROW_HEIGHT, size().rows))
  const frozen = createMemo(() => {
    const { rows, columns } = usedRange(sheet())
    const [frozenRows, frozenColumns] = sheet().frozen
    return [Math.min(frozenRows, rows), Math.min(frozenColumns, columns)] as const
  }, undefined, { equals: ([rows, columns], [otherRows, otherColumns]) => rows === otherRows && columns === otherColumns })

  return {
    rowAxis,
    columnAxis,
    frozen,
    drag: (column, width) => setDragged({ column, width: Math.min(MAX_COLUMN_WIDTH, Math.max(LEAST_WIDTH, Math.round(width))) }),
    dropped() {
      const result = widths()
      setDragged(undefined)
      return result
    },
  }
}
