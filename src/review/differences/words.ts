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
  return typeof content === 'number' && unit !== undefined ? `${text} ${unit}` : text
}

export const formatWords = ({ digits, decimals, wrap }: Cell): string => {
  const shown = decimals === undefined ? (digits === undefined ? 'as usual' : counted(digits, 'digit')) : `${counted(decimals, 'decimal')}${digits === undefined ? '' : ` (${counted(digits, 'digit')})`}`
  return wrap === true ? `${shown}, wrapped` : shown
}

export const toleranceWords = (tolerance: Tolerance, unit: string | undefined): string =>
  tolerance.kind === 'share' ? `± ${Number((tolerance.share * 100).toPrecision(15))} %` : `± ${tolerance.size}${unit === undefined ? '' : ` ${unit}`}`

/** `1 row`, `3 rows` */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count.toLocaleString('en')} ${count === 1 ? one : many}`

/** The first of some texts, and that there are more. */
export function listed(texts: readonly string[], most = 6): string {
  const shown = texts.slice(0, most).join(', ')
  return texts.length > most ? `${shown}, and ${(texts.length - most).toLocaleString('en')} more` : shown
}
