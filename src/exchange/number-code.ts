import type { Cell } from '../workbook/document.ts'
import { DEFAULT_DIGITS, formatNumber } from '../workbook/number-format.ts'

const GENERAL = 'General'

/**
 * The number format of a file under which a number looks as in its cell. A file knows decimal places, not significant digits: a cell
 * with those gets the places that its present value needs.
 */
export function numberCode(value: number, { digits, decimals }: Pick<Cell, 'digits' | 'decimals'>): string {
  const shown = formatNumber(value, { ...(digits === undefined ? {} : { digits }), ...(decimals === undefined ? {} : { decimals }) })
  const exponent = shown.indexOf('e')
  if (exponent >= 0) return `${zeros(placesOf(shown.slice(0, exponent)))}E+0`
  if (decimals !== undefined) return zeros(decimals)
  if (shown === String(value)) return GENERAL
  const wholeDigits = Math.floor(Math.log10(Math.abs(value))) + 1
  return zeros(Math.max(0, (digits ?? DEFAULT_DIGITS) - wholeDigits))
}

const placesOf = (text: string): number => (text.includes('.') ? text.length - text.indexOf('.') - 1 : 0)

const zeros = (places: number): string => (places === 0 ? '0' : `0.${'0'.repeat(places)}`)
