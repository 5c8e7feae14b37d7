import { isFormula, type Cell, type Role, type Row } from './document.ts'
import { rowKind } from './row-kind.ts'

const HEADERS: ReadonlySet<Role> = new Set(['heading', 'label', 'unit'])
export const mayHeadNumbers = (role: Role): boolean => HEADERS.has(role)

/** A heading, label or unit right over a column of numbers stands at the right as they do. */
export function standsOverNumbers(rows: readonly Row[], row: number, column: number): boolean {
  const cell = rows[row]?.[column]
  if (!cell || !mayHeadNumbers(cell.role)) return false
  if (cell.role === 'unit' && isValue(rows[row]?.[column - 1])) return false
  const isUnit = (below: number): boolean => rows[below]?.[column]?.role === 'unit'
  let below = row + 1
  while (isUnit(below)) below++
  // What a table begins with, such as its total, may be without this column: its unit says that numbers come.
  const end = cell.role === 'unit' || isUnit(row + 1) ? below + MOST_BETWEEN : below
  while (below < end && isEmpty(rows[below]?.[column]) && rowKind(rows[below]) === 'plain') below++
  return isValue(rows[below]?.[column])
}

/** Farther down are other things. */
const MOST_BETWEEN = 3

const isEmpty = (cell: Cell | undefined): boolean => cell === undefined || cell.content === null

const isValue = (cell: Cell | undefined): boolean =>
  cell !== undefined && (cell.role === 'input' || cell.role === 'result') && (typeof cell.content === 'number' || isFormula(cell.content))
