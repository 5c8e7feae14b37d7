import { MOST_DECIMALS } from '../../workbook/format.ts'
import { firstPart } from './date-text.ts'

/** What of a number format a cell of a workbook can show, and what of it is to be told. */
export interface NumberLook {
  readonly digits?: number
  readonly decimals?: number
  /** The file shows 0.05 as 5 %. */
  readonly percent?: true
  /** Words or signs that the file shows with the number, such as "kW" or "$". */
  readonly words?: string
}

/** The look that a format code gives (ECMA-376, part 1, 18.8.31), as far as it is plain; nothing of General, fractions and the like. */
export function numberLook(format: string | undefined): NumberLook {
  if (format === undefined) return NONE
  const known = looks.get(format)
  if (known !== undefined) return known
  const look = readLook(format)
  if (looks.size < FORMATS_KEPT) looks.set(format, look)
  return look
}

const NONE: NumberLook = {}

/** A column repeats its format in every cell. */
const looks = new Map<string, NumberLook>()
const FORMATS_KEPT = 1000

function readLook(format: string): NumberLook {
  const words = wordsOf(format)
  const told = words === '' ? {} : { words }
  const pattern = firstPart(format).replace(/\[[^\]]*\]/g, '').replace(/[^0#?.,%/Ee+@A-Za-z-]/g, '')
  const found = /^[-+(]*[#0?,]*[#0?](?:\.([0#?]*))?(,*)(E[+-]0+)?(%?)[)-]*$/i.exec(pattern)
  if (found === null) return told
  const [, places = '', thousands = '', exponent, percent] = found
  // A comma at the end shows thousands: the number as it is says more.
  if (thousands !== '') return told
  if (exponent !== undefined) return { ...told, digits: Math.min(15, places.length + 1) }
  // Places that are shown only where they are needed are left to the usual digits.
  const decimals = places.includes('#') || places.includes('?') ? {} : { decimals: Math.min(MOST_DECIMALS, places.length + (percent === '%' ? 2 : 0)) }
  return { ...told, ...decimals, ...(percent === '%' ? { percent: true } : {}) }
}

/** Quoted words, escaped signs and currency signs in the first part of a format. */
function wordsOf(format: string): string {
  const found: string[] = []
  for (const [text, quoted, escaped, currency, , sign] of format.matchAll(/"([^"]*)"|\\(.)|\[\$([^\]-]*)[^\]]*\]|(_.|\*.)|([$€£¥])|;/g)) {
    if (text === ';') break
    found.push(quoted ?? escaped ?? currency ?? sign ?? '')
  }
  return found.join('').replace(/[()\s-]+/g, ' ').trim()
}
