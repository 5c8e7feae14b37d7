import type { CellAddress } from '../workbook/address.ts'
import { eachCell } from '../workbook/cells.ts'
import { sheetByName, type Sheet, type Workbook } from '../workbook/document.ts'
import type { Edit } from '../workbook/edits.ts'

const known = new WeakMap<Sheet, readonly CellAddress[]>()

/** Where a sheet has its checks, in reading order. Sheets are immutable: each is looked through once. */
export function checkCells(sheet: Sheet): readonly CellAddress[] {
  const before = known.get(sheet)
  if (before !== undefined) return before
  const found: CellAddress[] = []
  eachCell(sheet, ({ role }, row, column) => {
    if (role === 'check') found.push({ row, column })
  })
  known.set(sheet, found)
  return found
}

/** Spares the look through a large sheet after an edit of a few of its cells: only those can have become checks, or have ceased to be. */
export function followChecks(before: Workbook, after: Workbook, edits: readonly Extract<Edit, { kind: 'cells' }>[]): void {
  for (const name of new Set(edits.map(({ sheet }) => sheet))) {
    const [sheet, edited] = [sheetByName(before, name), sheetByName(after, name)]
    const checks = sheet === undefined ? undefined : known.get(sheet)
    if (checks === undefined || edited === undefined) continue
    const changed = new Set(edits.filter((edit) => edit.sheet === name).flatMap(({ cells }) => cells.map(keyOf)))
    const changedChecks = [...changed].map(addressOf).filter(({ row, column }) => edited.rows[row]?.[column]?.role === 'check')
    const kept = checks.filter((check) => !changed.has(keyOf(check)))
    known.set(edited, changedChecks.length === 0 ? kept : [...kept, ...changedChecks].toSorted((one, other) => one.row - other.row || one.column - other.column))
  }
}

const COLUMNS = 2 ** 15
const keyOf = ({ row, column }: CellAddress): number => row * COLUMNS + column
const addressOf = (key: number): CellAddress => ({ row: Math.floor(key / COLUMNS), column: key % COLUMNS })
