import type { ReadValue } from './contents.ts'
import { dayNumber } from './number-formats.ts'

/** What a cell of an OpenDocument file says of its value; `text` is what it shows. */
export interface OdsValue {
  readonly type: string | undefined
  readonly number: string | undefined
  readonly date: string | undefined
  readonly time: string | undefined
  readonly boolean: string | undefined
  readonly string: string | undefined
}

export const odsValue = (attributes: ReadonlyMap<string, string>): OdsValue => ({
  // An error is a text for OpenDocument; programs say so in an attribute of their own.
  type: attributes.get('calcext:value-type') === 'error' ? 'error' : attributes.get('office:value-type'),
  number: attributes.get('office:value'), date: attributes.get('office:date-value'), time: attributes.get('office:time-value'),
  boolean: attributes.get('office:boolean-value'), string: attributes.get('office:string-value'),
})

/** The value (OpenDocument 1.3, part 3, 19.385), dates as days since 1899-12-30 and times as parts of a day. */
export function readOdsValue({ type, number, date, time, boolean, string }: OdsValue, text: string, isFormula: boolean): ReadValue {
  switch (type) {
    case 'float': case 'percentage': case 'currency': {
      const value = number === undefined || number.trim() === '' ? Number.NaN : Number(number)
      return Number.isFinite(value) ? value : text === '' ? null : text
    }
    case 'date': return dayNumber(date ?? '') ?? date ?? text
    case 'time': return daysOf(time ?? '') ?? time ?? text
    case 'boolean': return boolean === 'true'
    case 'error': return { error: text.slice(0, 40) || '#VALUE!' }
    case 'string': return isFormula && ERRORS.has(text) && string === undefined ? { error: text } : (string ?? text)
    default: return text === '' ? null : text
  }
}

const ERRORS: ReadonlySet<string> = new Set(['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A'])

/** `PT08H30M00S` */
function daysOf(text: string): number | undefined {
  const found = /^(-?)P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:[.,]\d+)?)S)?)?$/.exec(text)
  if (found === null) return undefined
  const [, sign, days = 0, hours = 0, minutes = 0, seconds = '0'] = found
  return (sign === '-' ? -1 : 1) * (Number(days) + (Number(hours) + Number(minutes) / 60 + Number(seconds.replace(',', '.')) / 3600) / 24)
}
