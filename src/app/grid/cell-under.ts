import type { CellAddress } from '../../workbook/address.ts'
import type { GridContext } from './grid-context.ts'
import { MARGIN } from './layout.ts'

type Where = Pick<GridContext, 'layout' | 'viewport'>

/** The cell under the pointer, whatever element runs over it. */
export function cellUnder({ clientX, clientY }: Pick<MouseEvent, 'clientX' | 'clientY'>, grid: HTMLElement, { layout, viewport }: Where): CellAddress {
  const { left, top } = grid.getBoundingClientRect()
  const scroll = viewport.scroll()
  const [frozenRows, frozenColumns] = layout.frozen()
  const x = clientX - left - MARGIN.left
  const y = clientY - top - MARGIN.top
  return {
    column: layout.columnAxis().at(x < layout.columnAxis().start(frozenColumns) ? x : x + scroll.left),
    row: layout.rowAxis().at(y < layout.rowAxis().start(frozenRows) ? y : y + scroll.top),
  }
}

export interface PlaceInView {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
  /** Its lower right corner is in view, not under what stays in view. */
  readonly isInView: boolean
}

/** Where a cell is on the screen, in px from the grid's upper left. */
export function placeInView({ row, column }: CellAddress, { layout, viewport }: Where): PlaceInView {
  const [frozenRows, frozenColumns] = layout.frozen()
  const { left: scrolledLeft, top: scrolledTop } = viewport.scroll()
  const left = MARGIN.left + layout.columnAxis().start(column) - (column < frozenColumns ? 0 : scrolledLeft)
  const top = MARGIN.top + layout.rowAxis().start(row) - (row < frozenRows ? 0 : scrolledTop)
  const [width, height] = [layout.columnAxis().size(column), layout.rowAxis().size(row)]
  const leftEdge = MARGIN.left + (column < frozenColumns ? 0 : layout.columnAxis().start(frozenColumns))
  const topEdge = MARGIN.top + (row < frozenRows ? 0 : layout.rowAxis().start(frozenRows))
  const isInView = left + width > leftEdge && top + height > topEdge && left + width < viewport.size().width && top + height < viewport.size().height
  return { left, top, width, height, isInView }
}
