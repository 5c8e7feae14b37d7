import type { Cell, CellContent } from '../../workbook/document.ts'
import { entryOf } from '../../workbook/entry.ts'
import type { Tolerance } from '../../workbook/given-tolerances.ts'

/** Nothing in a cell. */
export const EMPTY = 'empty'
export const GONE = 'gone'
export const NO_SUCH = 'not there'

/** A content as it reads, all digits shown, with its unit where it is a number. */
export function contentWords(content: CellContent, unit?: string): string {
  if (content === null) return EMPTY
  const text = entryOf(content)
  return typeof content === 'number' ? withUnit(text, unit) : text
}

/** A number with its unit; a plain number has none, however a unit cell says so. */
export const withUnit = (number: string, unit: string | undefined): string => (unit === undefined || unit === '-' || unit === '' ? number : `${number} ${unit}`)

export const formatWords = ({ digits, decimals, wrap }: Cell): string => {
  const shown = decimals === undefined ? (digits === undefined ? 'as usual' : counted(digits, 'digit')) : `${counted(decimals, 'decimal')}${digits === undefined ? '' : ` (${counted(digits, 'digit')})`}`
  return wrap === true ? `${shown}, wrapped` : shown
}

export const toleranceWords = (tolerance: Tolerance, unit: string | undefined): string =>
  tolerance.kind === 'share' ? `± ${Number((tolerance.share * 100).toPrecision(15))} %` : `± ${withUnit(String(tolerance.size), unit)}`

/** `1 row`, `3 rows` */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count.toLocaleString('en')} ${count === 1 ? one : many}`

/** The first of some texts, and that there are more. */
export function listed(texts: readonly string[], most = 6): string {
  const shown = texts.slice(0, most).join(', ')
  return texts.length > most ? `${shown}, and ${(texts.length - most).toLocaleString('en')} more` : shown
}
