import { isCellError, type CellValue, type Check } from '../../calc/values.ts'
import type { Cell } from '../../workbook/document.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { valueText } from '../../calc/cell-value.ts'

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

export const sameView = (one: CellView, other: CellView): boolean =>
  one.text === other.text && one.classes === other.classes && one.description === other.description && one.isNumber === other.isNumber && one.runsOn === other.runsOn

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
