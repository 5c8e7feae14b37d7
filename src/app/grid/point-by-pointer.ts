import type { CellAddress } from '../../workbook/address.ts'
import type { Pointing } from '../state/pointing.ts'

interface At {
  /** The number or letter at the grid's edge that the pointer is on, if it is. */
  readonly row?: number
  readonly column?: number
}

/** Writes a reference to what the pointer is on; gives what further moves of the pointer do. */
export function pointByPointer(pointing: Pointing, { row, column }: At, event: PointerEvent, under: (event: MouseEvent) => CellAddress): (move: PointerEvent) => void {
  if (row !== undefined) return begun((to) => pointing.toWhole('rows', row, to === undefined ? row : to.row))
  if (column !== undefined) return begun((to) => pointing.toWhole('columns', column, to === undefined ? column : to.column))
  pointing.to(under(event), event.shiftKey)
  return stretch((to) => pointing.to(to, true))

  function begun(point: (to: CellAddress | undefined) => void) {
    point(undefined)
    return stretch(point)
  }
  /** Only where the pointer has come to another cell. */
  function stretch(point: (to: CellAddress) => void) {
    let before = under(event)
    return (move: PointerEvent) => {
      const to = under(move)
      if (to.row !== before.row || to.column !== before.column) point(to)
      before = to
    }
  }
}
