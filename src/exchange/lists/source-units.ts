import { findUnit, similarUnit, type Unit } from '../../../functions/units/units.ts'

/** The unit that people of the trade mean by a text in a list of theirs: `inches`, `"`, `cu. ft`, `deg F`, `lbs`, `psig`; undefined where it is none. */
export function unitOfTrade(text: string): Unit | undefined {
  const typed = text.trim().replace(/^in\s+(?=[a-z°])/i, '')
  if (typed === '' || typed.length > 24) return undefined
  const known = findUnit(typed)
  if (known) return known
  const folded = typed.toLowerCase().replace(/[º˚]/g, '°').replace(/[.\s_-]+/g, ' ').trim()
  const code = SPELT[folded] ?? SPELT[folded.replace(/\s/g, '')]
  return code === undefined ? similarUnit(typed) : findUnit(code)
}

/** From memory, as lists of the trade have them. */
const SPELT: Readonly<Record<string, string>> = Object.assign(Object.create(null) as Record<string, string>, {
  '"': 'in', '”': 'in', '″': 'in', "''": 'in', 'inch': 'in', 'inches': 'in', 'ins': 'in', 'zoll': 'in',
  "'": 'ft', '’': 'ft', '′': 'ft', 'foot': 'ft', 'feet': 'ft',
  'millimetre': 'mm', 'millimetres': 'mm', 'millimeter': 'mm', 'millimeters': 'mm', 'centimetres': 'cm', 'centimeters': 'cm',
  'metre': 'm', 'metres': 'm', 'meter': 'm', 'meters': 'm', 'mtr': 'm', 'mtrs': 'm',
  'cuft': 'ft3', 'cu feet': 'ft3', 'cubic feet': 'ft3', 'cubic foot': 'ft3', 'cf': 'ft3', 'cft': 'ft3', 'cuin': 'in3', 'cubic inches': 'in3',
  'cum': 'm3', 'cubic metres': 'm3', 'cubic meters': 'm3', 'cbm': 'm3', 'ltr': 'L', 'ltrs': 'L', 'litre': 'L', 'litres': 'L', 'liter': 'L', 'liters': 'L', 'dm3': 'L',
  'gallon': 'gal', 'gallons': 'gal', 'gals': 'gal', 'us gal': 'gal',
  'sqft': 'ft2', 'square feet': 'ft2', 'sqm': 'm2', 'square metres': 'm2', 'square meters': 'm2',
  'degf': '°F', 'deg f': '°F', 'fahrenheit': '°F', 'degc': '°C', 'deg c': '°C', 'celsius': '°C', 'kelvin': 'K',
  'lbs': 'lb', 'pound': 'lb', 'pounds': 'lb', 'kgs': 'kg', 'kilogram': 'kg', 'kilograms': 'kg', 'tonne': 't', 'tonnes': 't',
  'percent': '%', 'pct': '%', 'per cent': '%', '% vol': '%', 'vol %': '%', '% by volume': '%', 'percent by volume': '%',
  'psi g': 'psig', 'psi a': 'psia', 'psi(g)': 'psig', 'psi(a)': 'psia', 'bar g': 'bar(g)', 'bar a': 'bar', 'bara': 'bar', 'bar(a)': 'bar', 'kpa g': 'kPa(g)', 'kpa a': 'kPa', 'kpa(a)': 'kPa', 'kpaa': 'kPa',
  'tons': 'TR', 'tr': 'TR', 'ton of refrigeration': 'TR', 'tons of refrigeration': 'TR', 'btuh': 'Btu/h', 'btu/hr': 'Btu/h',
  'lbs/min': 'lb/min', 'lb/hr': 'lb/h', 'lbs/hr': 'lb/h', 'kg/hr': 'kg/h',
})

/** A heading taken apart: its words, and the unit that it names in brackets, after a comma, or as its last word. */
export interface HeadingParts {
  readonly words: string
  readonly unit: Unit | undefined
  /** A text in brackets that is no unit, such as `tag`. */
  readonly aside: string | undefined
}

export function headingParts(heading: string): HeadingParts {
  const text = heading.replace(/\s+/g, ' ').trim()
  const bracketed = /^(.*?)\s*(?:\[([^[\]]*)\]|\(((?:[^()]|\([^()]*\))*)\)|\{([^{}]*)\})\s*(.*)$/.exec(text)
  if (bracketed) {
    const inside = bracketed[2] ?? bracketed[3] ?? bracketed[4] ?? ''
    const unit = unitOfTrade(inside)
    const words = `${bracketed[1] ?? ''} ${bracketed[5] ?? ''}`.trim()
    if (unit) return { words, unit, aside: undefined }
    const rest = headingParts(words)
    return { words: rest.words, unit: rest.unit, aside: inside.trim() || undefined }
  }
  for (const at of [/^(.+?)\s*[,;:/]\s*([^,;:]+)$/, /^(.+?)\s+(?:in\s+)?(\S+)$/, /^(.+?)\s+(\S+\s\S+)$/, /^(.+?)_([^_]+)$/]) {
    const [, words = '', last = ''] = at.exec(text) ?? []
    const unit = isTellingUnit(last) ? unitOfTrade(last) : undefined
    if (unit) return { words: words.replace(/\s+in$/i, ''), unit, aside: undefined }
  }
  return { words: text, unit: undefined, aside: undefined }
}

/** A last word of one letter is rather an abbreviation of something else, and "in" may be a word of the sentence. */
const isTellingUnit = (text: string): boolean => /^(?:m|L|%|°.|K|["'”’″′])$/.test(text) || text.trim().length > 1
