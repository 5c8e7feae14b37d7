import type { Area } from './address.ts'
import type { Cell, Row, Sheet } from './document.ts'
import type { CellChange } from './edits.ts'

/** Lists shorter than this are always stored densely by the JavaScript engine. */
const DENSE_BELOW = 1024

/**
 * The sheet with those cells changed: one copy of the list of rows and of each row touched, all else shared.
 * Of two changes to one cell the later holds.
 */
export function withCells(sheet: Sheet, changes: readonly CellChange[]): Sheet {
  const rows: Row[] = sheet.rows.slice()
  const copies = new Map<number, (Cell | undefined)[]>()
  for (const { row, column, cell } of changes) {
    let copy = copies.get(row)
    if (!copy) {
      copy = rows[row]?.slice() ?? []
      copies.set(row, copy)
    }
    if (cell) copy[column] = cell
    else if (column < copy.length) copy[column] = undefined
  }
  for (const [index, copy] of copies) {
    trimEnd(copy)
    if (copy.length > 0) rows[index] = copy
    else if (index < rows.length) rows[index] = undefined
  }
  trimEnd(rows)
  return { ...sheet, rows }
}

/** Every cell of the sheet in reading order: row by row, each from the left. */
export function eachCell(sheet: Sheet, visit: (cell: Cell, row: number, column: number) => void): void {
  eachFilled(sheet.rows, (row, rowIndex) => eachFilled(row, (cell, column) => visit(cell, rowIndex, column)))
}

/** The cells of a rectangle that there are, in reading order, at their addresses. */
export function cellsIn({ rows }: Sheet, { top, left, bottom, right }: Area): CellChange[] {
  const found: CellChange[] = []
  eachFilled(rows.slice(top, bottom + 1), (row, rowIndex) => {
    eachFilled(row.slice(left, right + 1), (cell, columnIndex) => void found.push({ row: top + rowIndex, column: left + columnIndex, cell }))
  })
  return found
}

/** A lone far cell leaves a list of a million holes, which is walked by its keys: 35 ms as against nothing. */
function eachFilled<Item>(list: readonly (Item | undefined)[], visit: (item: Item, index: number) => void): void {
  if (list.length < DENSE_BELOW) {
    for (let index = 0; index < list.length; index++) {
      const item = list[index]
      if (item !== undefined) visit(item, index)
    }
    return
  }
  for (const key in list) {
    const index = Number(key)
    const item = list[index]
    if (item !== undefined) visit(item, index)
  }
}

function trimEnd(list: unknown[]): void {
  let length = list.length
  while (length > 0 && list[length - 1] === undefined) length--
  list.length = length
}

export function sameCell(one: Cell | null | undefined, other: Cell | null | undefined): boolean {
  if (one === other) return true
  if (!one || !other) return !one && !other
  return (
    one.content === other.content &&
    one.role === other.role &&
    one.digits === other.digits &&
    one.decimals === other.decimals &&
    one.wrap === other.wrap &&
    one.note === other.note &&
    one.restatedFrom === other.restatedFrom
  )
}
