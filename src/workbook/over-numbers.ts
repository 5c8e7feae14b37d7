import { isFormula, type Cell, type Role, type Row } from './document.ts'

const HEADERS: ReadonlySet<Role> = new Set(['heading', 'label', 'unit'])
export const mayHeadNumbers = (role: Role): boolean => HEADERS.has(role)

/** A heading, label or unit right over a column of numbers stands at the right as they do. */
export function standsOverNumbers(rows: readonly Row[], row: number, column: number): boolean {
  const cell = rows[row]?.[column]
  if (!cell || !mayHeadNumbers(cell.role)) return false
  if (cell.role === 'unit' && isValue(rows[row]?.[column - 1])) return false
  let below = row + 1
  while (rows[below]?.[column]?.role === 'unit') below++
  return isValue(rows[below]?.[column])
}

const isValue = (cell: Cell | undefined): boolean =>
  cell !== undefined && (cell.role === 'input' || cell.role === 'result') && (typeof cell.content === 'number' || isFormula(cell.content))
