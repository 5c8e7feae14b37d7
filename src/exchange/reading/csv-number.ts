import type { Dialect, ReadCell } from './contents.ts'

type Mark = Dialect['decimalMark']

/**
 * Which sign stands between whole number and fraction, from the cells where it can be only one: "0,5" or "1.234,5", not "1,234", which may
 * be either. Undefined where no cell says.
 */
export function foundDecimalMark(rows: Iterable<readonly string[]>): Mark | undefined {
  let [points, commas] = [0, 0]
  for (const row of rows) {
    for (const cell of row) {
      if (cell.length > LONGEST || cell.length < 3) continue
      if (SURE_POINT.test(cell)) points++
      else if (SURE_COMMA.test(cell)) commas++
    }
  }
  return points + commas === 0 ? undefined : commas > points ? ',' : '.'
}

export type CellNumber = ReadCell | 'unsure' | 'text'

/**
 * Reads a text of a file as a number, strictly: what would not come back as the same number is a text. `007`, `3/4`, `1 1/2`, `1-2` and
 * `12E4` are tags and sizes; an exponent needs a sign, or a mark in what stands before it (`1E+05`, `1.5e3`), since that is how programs
 * write one, and a tag seldom looks so. More than 15 digits are more than a number holds.
 * @param mark undefined where the file does not say: then "1,234" and "1.234" are unsure
 */
export function cellNumber(text: string, mark: Mark | undefined): CellNumber {
  const bare = text.trim()
  const first = bare.charCodeAt(0)
  if (bare.length > LONGEST || !((first >= 48 && first <= 57) || '+-.,'.includes(bare.charAt(0)))) return 'text'
  const percent = bare.endsWith('%')
  const number = percent ? bare.slice(0, -1).trimEnd() : bare
  if (WHOLE.test(number)) return exact(number, number, percent, '')
  for (const one of ['.', ','] as const) {
    const other = one === '.' ? ',' : '.'
    const plain = FRACTION[one].exec(number)
    if (plain && (mark === one || (mark === undefined && !AMBIGUOUS.test(number)))) return exact(number, number.replace(one, '.'), percent, plain[1] ?? '')
    // A space between figures that has no fraction after it may stand between two tags.
    const grouped = GROUPED[one].exec(number)
    if (grouped && (mark === one || (mark === undefined && grouped[1] !== undefined))) {
      if (/\d \d/.test(number) && grouped[1] === undefined) return 'unsure'
      return exact(number, number.replace(/[\s'’]/g, '').replaceAll(other, '').replace(one, '.'), percent, grouped[1] ?? '', true)
    }
  }
  return FRACTION['.'].test(number) || FRACTION[','].test(number) || GROUPED['.'].test(number) || GROUPED[','].test(number) ? 'unsure' : exponent(number, mark)
}

function exact(written: string, number: string, percent: boolean, fraction: string, grouped = false): CellNumber {
  if (written.replace(/\D/g, '').replace(/^0+/, '').length > DIGITS) return 'text'
  const value = percent ? Number((Number(number) / 100).toPrecision(DIGITS)) : Number(number)
  // Zeros at the end are shown as they were written.
  const decimals = fraction.endsWith('0') || percent || grouped ? fraction.length : 0
  const code = `${grouped ? '#,##0' : '0'}${decimals > 0 ? `.${'0'.repeat(decimals)}` : ''}${percent ? '%' : ''}`
  return code === '0' ? { value } : { value, format: code }
}

function exponent(number: string, mark: Mark | undefined): CellNumber {
  const found = /^[+-]?(?:0|[1-9]\d*)(?:([.,])\d+)?[eE]([+-]?)\d{1,3}$/.exec(number)
  if (found === null) return 'text'
  const [, sign, ofExponent] = found
  if (sign === undefined && ofExponent === '') return 'text'
  if (sign !== undefined && sign !== (mark ?? sign)) return 'unsure'
  const value = Number(number.replace(',', '.'))
  return Number.isFinite(value) ? { value } : 'text'
}

const LONGEST = 40
/** What a number holds exactly. */
const DIGITS = 15
const WHOLE = /^[+-]?(?:0|[1-9]\d*)$/
const FRACTION = { '.': /^[+-]?(?:0|[1-9]\d*)?\.(\d+)$/, ',': /^[+-]?(?:0|[1-9]\d*)?,(\d+)$/ } as const
const GROUPED = {
  '.': /^[+-]?[1-9]\d{0,2}(?:(?:,\d{3})+|(?:[ \u00a0\u2009\u202f'’]\d{3})+)(?:\.(\d+))?$/,
  ',': /^[+-]?[1-9]\d{0,2}(?:(?:\.\d{3})+|(?:[ \u00a0\u2009\u202f]\d{3})+)(?:,(\d+))?$/,
} as const
/** One mark and three figures after it: a fraction or a group. */
const AMBIGUOUS = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/

const SURE_POINT = /^\s*[+-]?(?:(?:0|[1-9]\d*)?\.(?:\d{1,2}|\d{4,})|0?\.\d{3}|[1-9]\d{3,}\.\d{3}|[1-9]\d{0,2}(?:,\d{3})+\.\d+|[1-9]\d{0,2}(?:,\d{3}){2,})%?\s*$/
const SURE_COMMA = /^\s*[+-]?(?:(?:0|[1-9]\d*)?,(?:\d{1,2}|\d{4,})|0?,\d{3}|[1-9]\d{3,},\d{3}|[1-9]\d{0,2}(?:\.\d{3})+,\d+|[1-9]\d{0,2}(?:\.\d{3}){2,})%?\s*$/
