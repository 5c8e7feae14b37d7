import { findUnit, similarUnit, units } from '../../../functions/units/units.ts'
import { isDimensionless, sameDimension } from './dimension.ts'
import { ofUnit, unitQuantity } from './known-unit.ts'
import { sameFactor } from './meaning.ts'

/**
 * The unit that a text means which functions do not take as it stands: “kg/sec” is kg/s, “CFM” cfm, “gal/min” gpm. Undefined of what they take,
 * of what no unit has the size of (Btu/(lb·°F), $/kWh), and of what may mean several (“tons”).
 */
export function meantUnit(text: string): string | undefined {
  if (findUnit(text) !== undefined || isTons(text)) return undefined
  const folded = text.toLowerCase().replace(/\.$/, '')
  const whole = Object.hasOwn(WHOLE, folded) ? WHOLE[folded] : undefined
  if (whole !== undefined) return whole
  const respelt = respell(text)
  return similarUnit(text)?.code ?? findUnit(respelt)?.code ?? similarUnit(respelt)?.code ?? ofEqualSize(text) ?? ofEqualSize(respelt)
}

/** “tons” is said of refrigeration and of mass. */
export const isTons = (text: string): boolean => /^tons?\.?$/i.test(text) && text !== 'ton'

/** How people write units that are known by another code. */
const WHOLE: Readonly<Record<string, string>> = {
  'psid': 'psi', 'lbf/in2': 'psi', 'lbs/in2': 'psi', 'btuh': 'Btu/h', 'pph': 'lb/h', 'percent': '%', 'acfm': 'cfm', 'usgpm': 'gpm', 'us gpm': 'gpm', 'fps': 'ft/s', 'cms': 'm3/s', 'cf': 'ft3',
  'tr.': 'TR', 'tonr': 'TR', 'tons r': 'TR', 'tonsr': 'TR', 'ton r': 'TR', 'rt': 'TR', 'tons of refrigeration': 'TR', 'tons refrigeration': 'TR', 'tons ref': 'TR', 'short tons': 'ton', 'tonnes': 't',
}

/** The same of the words that units are made of, those of two words first. */
const WORDS: readonly (readonly [RegExp, string])[] = [
  [/\bdeg(?:rees?)?\.? ?(?=[fcr]\b)/gi, '°'], [/\b(?:cubic|cu)\.? ?(?:feet|foot|ft)\b/gi, 'ft3'], [/\b(?:square|sq)\.? ?(?:feet|foot|ft)\b/gi, 'ft2'], [/\b(?:square|sq)\.? ?(?:inches|inch|in)\b/gi, 'in2'],
  [/\b(?:cubic|cu)\.? ?(?:inches|inch|in)\b/gi, 'in3'], [/\b(?:cubic|cu)\.? ?m(?:et(?:er|re)s?)?\b/gi, 'm3'], [/\b(?:square|sq)\.? ?m(?:et(?:er|re)s?)?\b/gi, 'm2'],
  [/ per /gi, '/'], [/\b(?:lbs|lbm|pounds?)\b/gi, 'lb'], [/\binch(?:es)?\b/gi, 'in'], [/\b(?:feet|foot)\b/gi, 'ft'], [/\b(?:hours?|hrs?)\b/gi, 'h'], [/\b(?:minutes?|mins)\b/gi, 'min'],
  [/\b(?:seconds?|secs?)\b/gi, 's'], [/\bdays?\b/gi, 'd'], [/\b(?:gallons?|gals)\b/gi, 'gal'], [/\b(?:kilograms?|kgs)\b/gi, 'kg'], [/\bmet(?:er|re)s?\b/gi, 'm'], [/\blit(?:er|re)s?\b/gi, 'L'],
]

const respell = (text: string): string => WORDS.reduce((written, [word, code]) => written.replace(word, code), text).trim()

/** By what it measures, size and zero; a ratio is left as it is written, since lb/lb says more than nothing. */
function ofEqualSize(text: string): string | undefined {
  const quantity = /^scfm$/i.test(text) ? undefined : unitQuantity(text)
  if (quantity === undefined || isDimensionless(quantity.dimension)) return undefined
  return units.find((unit) => {
    const { dimension, factor, zero } = ofUnit(unit)
    return sameDimension(dimension, quantity.dimension) && sameFactor(factor, quantity.factor) && Object.is(zero.points, quantity.zero.points) && zero.gauge === quantity.zero.gauge && zero.offset === quantity.zero.offset
  })?.code
}
