import type { CellPlace } from '../../workbook/cell-place.ts'
import type { CellsOfSheet } from './derivation.ts'

/** Cells as rectangles that do not overlap: runs in a column, and runs side by side of the same rows as one. */
export function rectangles(places: readonly CellPlace[]): readonly CellsOfSheet[] {
  const bySheet = new Map<string, Map<number, number[]>>()
  for (const { sheet, row, column } of places) {
    const columns = bySheet.get(sheet) ?? new Map<number, number[]>()
    bySheet.set(sheet, columns)
    const rows = columns.get(column)
    if (rows === undefined) columns.set(column, [row])
    else rows.push(row)
  }
  return [...bySheet].flatMap(([sheet, columns]) => {
    const found: { top: number; left: number; bottom: number; right: number }[] = []
    for (const [column, rows] of [...columns].toSorted(([one], [other]) => one - other)) {
      for (const [top, bottom] of runs(rows.toSorted((one, other) => one - other))) {
        const beside = found.find((one) => one.right === column - 1 && one.top === top && one.bottom === bottom)
        if (beside === undefined) found.push({ top, left: column, bottom, right: column })
        else beside.right = column
      }
    }
    return found.toSorted((one, other) => one.top - other.top || one.left - other.left).map((area) => ({ sheet, area }))
  })
}

function runs(rows: readonly number[]): [number, number][] {
  const found: [number, number][] = []
  for (const row of rows) {
    const last = found.at(-1)
    if (last !== undefined && row <= last[1] + 1) last[1] = row
    else found.push([row, row])
  }
  return found
}
