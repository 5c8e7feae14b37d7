import { shortened } from '../../../functions/units/format.ts'
import type { Unit } from '../../../functions/units/units.ts'
import { unitOfTrade } from './source-units.ts'

/** A number as a cell of someone's list has it. */
export interface NumberRead {
  readonly value: number
  /** The unit that stands in the cell itself. */
  readonly unit?: Unit
  /** How it was understood, where that is not plain. */
  readonly mark?: string
}

export type CommaMeans = 'decimal' | 'thousands' | 'unknown'

const NUMBER = /^([+\-−–]?)\s*((?:\d[\d.,'’\u00a0\u202f ]*\d|\d)(?:[.,](?!\d))?|[.,]\d+)(?:[eE]([+-]?\d+))?/
const FRACTION = /^([+\-−–]?)\s*(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*[/⁄]\s*(\d+)/
const VULGAR: Readonly<Record<string, string>> = { '¼': '1/4', '½': '1/2', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' }

/** Reads `24`, `24"`, `600 mm`, `1 1/2`, `1,25`, `1 250.5`, `12 ft 6 in`; or says in words why it is no number. */
export function readNumber(text: string, comma: CommaMeans): NumberRead | { readonly why: string } {
  const typed = text.trim().replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign] ?? ''}`).trim()
  const feet = feetAndInches(typed)
  if (feet) return feet
  const fraction = FRACTION.exec(typed)
  if (fraction) {
    const [whole, sign, ones = '0', top = '0', bottom = '0'] = fraction
    if (Number(bottom) === 0) return { why: 'a fraction over nothing' }
    const value = (Number(ones) + Number(top) / Number(bottom)) * (sign === '' || sign === '+' ? 1 : -1)
    return withUnit(typed.slice(whole.length), value, text, `the fraction ${whole.trim()} was read as ${value}`)
  }
  const found = NUMBER.exec(typed)
  if (!found) return { why: 'not a number' }
  const [whole, sign = '', digits = '', power] = found
  const plain = plainDigits(digits.replace(/['’\u00a0\u202f ]/g, ''), comma)
  if (plain === undefined) return { why: 'not a number: the marks in it can be understood in two ways' }
  const value = Number(`${plain.digits}${power === undefined ? '' : `e${power}`}`) * (sign === '' || sign === '+' ? 1 : -1)
  if (!Number.isFinite(value)) return { why: 'too large for a number' }
  return withUnit(typed.slice(whole.length), value === 0 ? 0 : value, text, plain.mark)
}

function withUnit(rest: string, value: number, text: string, mark: string | undefined): NumberRead | { readonly why: string } {
  const trailing = rest.trim()
  const marked = mark === undefined ? {} : { mark }
  if (trailing === '') return { value, ...marked }
  const unit = unitOfTrade(trailing)
  return unit ? { value, unit, ...marked } : { why: /^[a-z°%"'µ]/i.test(trailing) ? `“${shortened(trailing)}” is no unit known here` : `“${shortened(text.trim())}” is not a number` }
}

function feetAndInches(text: string): NumberRead | undefined {
  const found = /^(\d+(?:\.\d+)?)\s*(?:ft\.?|feet|foot|'|’|′)\s*-?\s*(\d+(?:\.\d+)?)(?:\s*[- ]\s*(\d+)\/(\d+))?\s*(?:in\.?|inches|inch|"|”|″|'')$/i.exec(text)
  const unit = found && unitOfTrade('in')
  if (!found || !unit) return undefined
  const value = Number(found[1]) * 12 + Number(found[2]) + (found[3] === undefined ? 0 : Number(found[3]) / Number(found[4]))
  return Number.isFinite(value) ? { value, unit, mark: `${text} was read as ${value} in` } : undefined
}

/** Digits as code reads them. A point after a comma, or a comma after a point, leaves no doubt. */
function plainDigits(digits: string, comma: CommaMeans): { readonly digits: string; readonly mark?: string } | undefined {
  const [commas, points] = [digits.split(',').length - 1, digits.split('.').length - 1]
  if (commas === 0) {
    if (points <= 1) return comma === 'decimal' && isGrouped(digits, '.') ? { digits: digits.replace('.', ''), mark: `${digits} was read as ${digits.replace('.', '')}: a point between thousands, as the others have decimal commas` } : { digits }
    return isGrouped(digits, '.') ? { digits: digits.replaceAll('.', '') } : undefined
  }
  if (points > 0) {
    const last = Math.max(digits.lastIndexOf(','), digits.lastIndexOf('.'))
    const decimal = digits[last] ?? '.'
    const group = decimal === ',' ? '.' : ','
    const [whole = '', ...fractions] = digits.split(decimal)
    return fractions.length === 1 && isGrouped(whole, group) ? { digits: `${whole.replaceAll(group, '')}.${fractions[0] ?? ''}` } : undefined
  }
  if (commas > 1) return isGrouped(digits, ',') ? { digits: digits.replaceAll(',', '') } : undefined
  if (!isGrouped(digits, ',') || comma === 'decimal') return { digits: digits.replace(',', '.') }
  const thousands = digits.replace(',', '')
  return comma === 'thousands' ? { digits: thousands } : { digits: thousands, mark: `${digits} was read as ${thousands}, a comma between thousands` }
}

/** `1.234`, `12,345,678`: groups of three after one to three, the first no zero alone. */
function isGrouped(digits: string, mark: '.' | ','): boolean {
  const [first = '', ...groups] = digits.split(mark)
  return groups.length > 0 && /^[1-9]\d{0,2}$/.test(first) && groups.every((group) => /^\d{3}$/.test(group))
}

/** What a comma means in texts of one column, by those that leave no doubt. */
export function commaIn(texts: Iterable<string>, fileHasDecimalCommas: boolean): CommaMeans {
  if (fileHasDecimalCommas) return 'decimal'
  let means: CommaMeans = 'unknown'
  for (const text of texts) {
    if (/^\D*\d+,(?:\d{1,2}|\d{4,})(?!\d|,)/.test(text) || /^\D*0,\d/.test(text)) return 'decimal'
    if (/\d,\d{3}(?:\.\d|,\d{3})/.test(text)) means = 'thousands'
  }
  return means
}
