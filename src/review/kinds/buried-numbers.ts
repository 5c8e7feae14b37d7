import { convert } from '../../../functions/units/convert.ts'
import { findUnit } from '../../../functions/units/units.ts'
import type { FindingKind, Found } from '../finding.ts'
import { listed } from '../finding-words.ts'
import { literalNumbers, type LiteralNumber } from '../literal-numbers.ts'
import { merge } from '../merge.ts'
import { shapesOf } from '../shapes.ts'

/** Formulas with a number in them that one may want to change. */
export const buriedNumbers: FindingKind = {
  kind: 'buried-numbers',
  heading: 'Numbers buried in formulas',
  about:
    'A quantity inside a formula is neither seen nor sourced, and nobody finds it when it should change: it belongs in an input with unit and source. Left alone are 0, 1 and 2, exponents, digits to round to, indexes of lookups, constants of nature and the 4 of π/4.',
  find: (survey) => merge(shapesOf(survey).flatMap(({ tree, cells }) => {
    const numbers = tree === undefined ? [] : literalNumbers(tree)
    if (numbers.length === 0) return []
    const { severity, reason, key } = words(numbers)
    return cells.map(({ sheet, row, column }) => ({
      found: { severity, sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, reason, key }, alike: reason,
    }))
  })),
}

function words(numbers: readonly LiteralNumber[]): Pick<Found, 'severity' | 'reason' | 'key'> {
  const once = [...new Map(numbers.map((number) => [number.text, number] as const)).values()]
  const sayings = once.map((number) => ({ number, saying: sayingOf(number) }))
  const plain = sayings.flatMap(({ number, saying }) => (saying === undefined ? [number.text] : []))
  const reasons = [
    ...(plain.length === 0 ? [] : [`${listed(plain)} ${plain.length === 1 ? 'stands' : 'stand'} in the formula itself: an input with label, unit and source would show ${plain.length === 1 ? 'it' : 'them'}.`]),
    ...new Set(sayings.flatMap(({ saying }) => (saying === undefined ? [] : [saying.reason]))),
  ]
  const severity = sayings.some(({ saying }) => saying?.isLikelyWrong === true) ? 'warning' : 'remark'
  return { severity, reason: reasons.join(' '), key: once.map(({ text }) => text).join('; ') }
}

interface Saying {
  readonly reason: string
  readonly isLikelyWrong: boolean
}

/** What a number is likely to be, where it is one that everybody knows. */
function sayingOf({ value, text, as }: LiteralNumber): Saying | undefined {
  if (as === 'quantity') return undefined
  const size = Math.abs(value)
  if (as === 'summand' && ATMOSPHERES.some((one) => isNear(size, one))) {
    return { reason: `${text} looks like the pressure of the atmosphere at sea level: take that of the site, by SITE.PRESSURE or UNIT.CONVERT with the site’s pressure.`, isLikelyWrong: true }
  }
  if (as === 'summand' && ZEROS.has(size)) return { reason: `${text} looks like the offset between two temperature scales: UNIT.CONVERT takes it from the units.`, isLikelyWrong: false }
  const [from, to] = as === 'factor' ? (CONVERSIONS.find(([, , factor]) => isNear(size, factor) || isNear(size, 1 / factor)) ?? []) : []
  return from === undefined || to === undefined
    ? undefined
    : { reason: `${text} looks like a conversion factor, as between ${from} and ${to}: UNIT.CONVERT takes it from the units in the cells.`, isLikelyWrong: false }
}

/** In psi, kPa, bar and inHg, as people write them. */
const ATMOSPHERES: readonly number[] = [14.7, 14.696, 101.325, 101.3, 1.01325, 1.013, 29.92, 0.101325]
/** Between °F and °R, °C and K, °C and °F. */
const ZEROS: ReadonlySet<number> = new Set([459.67, 460, 273.15, 273, 32])

const PAIRS: readonly (readonly [string, string])[] = [
  ['t', 'kg'], ['h', 'min'], ['h', 's'], ['ft', 'in'], ['ft2', 'in2'], ['ft3', 'in3'], ['ft3', 'gal'], ['ft', 'm'], ['in', 'mm'], ['in', 'm'], ['lb', 'kg'], ['ton', 'lb'], ['psi', 'kPa'], ['bar', 'psi'], ['bar', 'kPa'],
  ['TR', 'Btu/h'], ['TR', 'kW'], ['kW', 'Btu/h'], ['hp', 'kW'], ['gpm', 'm3/h'], ['m3', 'L'], ['cfm', 'm3/h'], ['Btu/lb', 'kJ/kg'], ['d', 'h'], ['m', 'mm'], ['ft3', 'm3'], ['ft3', 'L'], ['lb/ft3', 'kg/m3'], ['Δ°C', 'Δ°F'],
]

const CONVERSIONS: readonly (readonly [from: string, to: string, factor: number])[] = PAIRS.map(([from, to]) => {
  const [one, other] = [findUnit(from), findUnit(to)]
  if (one === undefined || other === undefined) throw new RangeError(`${from} or ${to} is no unit`)
  return [from, to, convert(1, one, other)] as const
})

const isNear = (value: number, other: number): boolean => Math.abs(value - other) <= 5e-4 * other
