import { plainValue, valueText } from '../calc/cell-value.ts'
import { isCellError, type AreaValues, type CellValue, type Check } from '../calc/values.ts'
import { printAddress } from '../workbook/address.ts'
import type { Cell, Role, Sheet } from '../workbook/document.ts'
import { formatNumber } from '../workbook/number-format.ts'
import { isPrinted } from './outline.ts'

/** A cell as it is printed. */
export interface PrintedCell {
  readonly text: string
  readonly role: Role
  readonly kind: 'text' | 'number' | 'met' | 'not-met' | 'error'
  /** Stays in its own column, however much the text would run on. */
  readonly staysIn: boolean
  /** Said in a footnote: what is wrong, the note at the cell. */
  readonly remarks: readonly string[]
  /** How a check mark on it stands; absent where there is none. */
  readonly checked?: 'good' | 'stale'
}

/** Up to so many characters a text is given the room for one line. */
export const SHORT_TEXT = 16

/** What is printed of a cell; undefined where there is nothing. `values` are the sheet's, from A1. */
export function printedCell(sheet: Sheet, row: number, column: number, { values, checks }: AreaValues, checked?: PrintedCell['checked']): PrintedCell | undefined {
  const cell = sheet.rows[row]?.[column]
  if (!isPrinted(cell)) return undefined
  const value = plainValue(cell) ?? values[row]?.[column] ?? null
  const { text, kind } = textOf(cell, value, checks.get(printAddress(row, column)))
  const fits = cell.role === 'unit' || (cell.role === 'input' && text.length <= SHORT_TEXT)
  const staysIn = kind === 'number' || kind === 'error' || cell.wrap === true || fits
  const remarks = [...(isCellError(value) ? [`${value.error}: ${value.message}`] : []), ...(cell.note === undefined ? [] : [cell.note])]
  return { text, role: cell.role, kind, staysIn, remarks, ...(checked === undefined || cell.content === null ? {} : { checked }) }
}

function textOf(cell: Cell, value: CellValue, check: Check | undefined): Pick<PrintedCell, 'text' | 'kind'> {
  if (isCellError(value)) return { text: value.error, kind: 'error' }
  if (cell.role === 'check' && typeof value === 'boolean') {
    const met = check?.met ?? value
    return { text: check?.words ?? (met ? 'met' : 'not met'), kind: met ? 'met' : 'not-met' }
  }
  return typeof value === 'number' ? { text: formatNumber(value, cell), kind: 'number' } : { text: valueText(value), kind: 'text' }
}
