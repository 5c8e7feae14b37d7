import { isCellError, type CellValue, type Check } from '../../calc/values.ts'
import { isFormula, type Cell, type Role, type Row } from '../../workbook/document.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { valueText } from '../state/cell-value.ts'

/** How a cell looks: its text and the classes that its role and value give it. */
export interface CellView {
  readonly text: string
  readonly classes: string
  /** Said beside the text: the error's message. */
  readonly description?: string
  readonly isNumber: boolean
  /** May run on over empty cells on its right. */
  readonly runsOn: boolean
}

export const EMPTY_VIEW: CellView = { text: '', classes: '', isNumber: false, runsOn: false }

/** What a cell shows, given what it comes to; `value` is undefined until a formula's value is known. */
export function cellView(cell: Cell | undefined, value: CellValue | undefined, check: Check | undefined): CellView {
  if (!cell) return EMPTY_VIEW
  const role = `role-${cell.role}`
  if (isCellError(value)) return { text: value.error, classes: `${role} error`, description: value.message, isNumber: false, runsOn: false }
  if (cell.role === 'check' && (check || typeof value === 'boolean')) {
    const met = check?.met ?? value === true
    return { text: check?.words ?? (met ? 'met' : 'not met'), classes: `${role} ${met ? 'met' : 'not-met'}`, isNumber: false, runsOn: true }
  }
  if (typeof value === 'number') return { text: formatNumber(value, cell), classes: `${role} number`, isNumber: true, runsOn: false }
  return { text: valueText(value), classes: role, isNumber: false, runsOn: true }
}

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
