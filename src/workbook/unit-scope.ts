import type { CellAddress } from './address.ts'
import { isFormula, type Cell, type Sheet } from './document.ts'

/**
 * Which unit cell applies to which values.
 *
 * Beside a value: a unit cell applies to the cell on its left if that holds a number or a formula, or is an input, a
 * result or a check. Else it heads a table column and applies downwards, to the first of: a row without any cell,
 * another unit, heading or title in that column, a value with a unit cell of its own beside it. Text and gaps on the
 * way are passed over.
 */

/** The cells with a number or a formula that a unit cell applies to. */
export function valuesOfUnit(sheet: Sheet, { row, column }: CellAddress): CellAddress[] {
  if (isBeside(sheet, row, column)) return isValue(at(sheet, row, column - 1)) ? [{ row, column: column - 1 }] : []
  const values: CellAddress[] = []
  for (let below = row + 1; below < sheet.rows.length && !endsTable(sheet, below, column); below++) {
    if (isValue(at(sheet, below, column))) values.push({ row: below, column })
  }
  return values
}

/** The unit cell that applies to a cell. */
export function unitOfValue(sheet: Sheet, { row, column }: CellAddress): CellAddress | undefined {
  if (isBeside(sheet, row, column + 1)) return { row, column: column + 1 }
  if (endsTable(sheet, row, column)) return undefined
  for (let above = row - 1; above >= 0; above--) {
    if (at(sheet, above, column)?.role === 'unit') return isBeside(sheet, above, column) ? undefined : { row: above, column }
    if (endsTable(sheet, above, column)) return undefined
  }
  return undefined
}

/** {@link unitOfValue} for many cells of a sheet: each column is walked down once, where it goes up from every cell. */
export function unitFinder(sheet: Sheet): (place: CellAddress) => CellAddress | undefined {
  const heads = new Map<number, readonly (number | undefined)[]>()
  return ({ row, column }) => {
    if (isBeside(sheet, row, column + 1)) return { row, column: column + 1 }
    if (endsTable(sheet, row, column)) return undefined
    const known = heads.get(column) ?? headsOf(sheet, column)
    heads.set(column, known)
    const head = known[row]
    return head === undefined ? undefined : { row: head, column }
  }
}

/** By row: the row of the unit cell over it. */
function headsOf(sheet: Sheet, column: number): readonly (number | undefined)[] {
  const heads: (number | undefined)[] = []
  let head: number | undefined
  for (let row = 0; row < sheet.rows.length; row++) {
    heads.push(head)
    if (at(sheet, row, column)?.role === 'unit') head = isBeside(sheet, row, column) ? undefined : row
    else if (endsTable(sheet, row, column)) head = undefined
  }
  return heads
}

const VALUE_ROLES: ReadonlySet<string> = new Set(['input', 'result', 'check'])

function isBeside(sheet: Sheet, row: number, column: number): boolean {
  if (at(sheet, row, column)?.role !== 'unit') return false
  const left = at(sheet, row, column - 1)
  return isValue(left) || (left !== undefined && VALUE_ROLES.has(left.role))
}

function endsTable(sheet: Sheet, row: number, column: number): boolean {
  const role = at(sheet, row, column)?.role
  return sheet.rows[row] === undefined || role === 'unit' || role === 'heading' || role === 'title' || isBeside(sheet, row, column + 1)
}

function isValue(cell: Cell | undefined): boolean {
  return typeof cell?.content === 'number' || isFormula(cell?.content)
}

function at(sheet: Sheet, row: number, column: number): Cell | undefined {
  return sheet.rows[row]?.[column]
}
