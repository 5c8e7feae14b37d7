import { STANDARD_ATMOSPHERE_PA } from '../../../functions/units/constants.ts'
import { factorsMeant, TYPED_WITHIN } from './constants.ts'
import { isDimensionless, isPressure, isTemperature, sameDimension } from './dimension.ts'
import { asWeight } from './free-fall.ts'
import { sameFactor, type Quantity, type Zero } from './meaning.ts'
import { inDegrees } from './products.ts'

/** Why two quantities cannot stand in one sum or comparison. */
export type Disagreement = 'dimension' | 'unit' | 'share' | 'gauge' | 'temperature'

/** Both as one, in the unit that they have in common; undefined where what it is cannot be told. */
export type Agreement = { readonly quantity: Quantity | undefined } | { readonly disagreement: Disagreement }

/** `one + other`, or `one − other`. */
export function sum(first: Quantity, second: Quantity, sign: 1 | -1): Agreement {
  const [one, other] = [inDegrees(first), inDegrees(second)]
  const common = inOneUnit(one, other, sign)
  if ('disagreement' in common || common.quantity === undefined) return common
  const zero = isPressure(one.dimension) ? pressureSum(one.zero, other.zero, sign) : temperatureSum(one.zero, other.zero, sign)
  if (typeof zero === 'string') return { disagreement: zero }
  // Parts of gauge pressures may come to one again, as in a mean.
  const isOfParts = zero.gauge > 1 && one.constants.length + other.constants.length > 0
  return { quantity: { ...common.quantity, zero: isOfParts ? { ...zero, points: 1, gauge: 1 } : zero } }
}

/** Either of them, as IF, MIN or a comparison take them. */
export function either(first: Quantity, second: Quantity): Agreement {
  const [one, other] = [inDegrees(first), inDegrees(second)]
  const common = inOneUnit(one, other)
  if ('disagreement' in common || common.quantity === undefined) return common
  const open = one.zero.open || other.zero.open
  const points = Number.isNaN(one.zero.points) ? other.zero.points : one.zero.points
  const atmospheric = one.zero.atmospheric && other.zero.atmospheric
  if (!open && isPressure(one.dimension) && one.zero.gauge !== other.zero.gauge) return { disagreement: 'gauge' }
  if (!open && isTemperature(one.dimension) && Math.min(one.zero.points, other.zero.points) === 0 && Math.max(one.zero.points, other.zero.points) > 0) return { disagreement: 'temperature' }
  return { quantity: { ...common.quantity, zero: { ...(one.zero.open ? other.zero : one.zero), points, open, atmospheric } } }
}

/** As a sum with a quantity that is taken away: the zero it counts from is then on the other side. */
export const negated = (quantity: Quantity): Quantity => ({ ...quantity, zero: { ...quantity.zero, points: -quantity.zero.points, offset: -quantity.zero.offset, gauge: -quantity.zero.gauge } })

function inOneUnit(one: Quantity, other: Quantity, sign: 1 | -1 = 1): Agreement {
  const loose = one.loose || other.loose
  if (!sameDimension(one.dimension, other.dimension)) {
    const [weight, otherWeight] = [asWeight(one, other.dimension), asWeight(other, one.dimension)]
    // Whichever is the pressure stays as it is: of the two that free fall makes of each other, the unit of that one is known.
    const isOther = isPressure(other.dimension) || otherWeight === undefined
    const common = weight && isOther ? inOneUnit(weight.quantity, other) : otherWeight && inOneUnit(one, otherWeight.quantity)
    return loose && (common === undefined || 'disagreement' in common) ? { quantity: undefined } : (common ?? { disagreement: 'dimension' })
  }
  const common = commonFactors(one, other)
  const [first, ...others] = common
  if (first !== undefined) {
    if (first.used === 0 && otherScale(one, other)) return { disagreement: 'unit' }
    // What both may mean besides is kept as a number that may be a conversion: typed where it is so in both.
    const besides = others.map(({ factor }) => first.factor / factor)
    const isTyped = (number: number): boolean => [one, other].every(({ constants }) => constants.some((constant) => sameFactor(constant, number, TYPED_WITHIN)))
    const [constants, given] = [besides.filter(isTyped), besides.filter((number) => !isTyped(number))]
    const symbol = first.isOfOne ? one.symbol : first.isOfOther ? other.symbol : []
    const { pending, ...rest } = one.pending === undefined ? other : one
    // Of two with a temperature for a factor the zero falls out of the difference.
    const isLeft = pending !== undefined && !(sign === -1 && one.pending !== undefined && other.pending !== undefined)
    return { quantity: { ...rest, ...(isLeft && { pending }), dimension: one.dimension, zero: one.zero, factor: first.factor, constants, given, loose: one.loose && other.loose, symbol } }
  }
  if (isDimensionless(one.dimension)) return { disagreement: sameFactor(Math.max(one.factor, other.factor) / Math.min(one.factor, other.factor), 100) ? 'share' : 'unit' }
  return { disagreement: 'unit' }
}

interface Common {
  readonly factor: number
  /** How many numbers are conversions then. */
  readonly used: number
  readonly isOfOne: boolean
  readonly isOfOther: boolean
}

/** The factors that both may mean, those that take the fewest numbers for conversions first. */
function commonFactors(one: Quantity, other: Quantity): readonly Common[] {
  const found: Common[] = []
  for (const mine of factorsMeant(one.factor, convertersOf(one))) {
    for (const theirs of factorsMeant(other.factor, convertersOf(other))) {
      const used = mine.used.length + theirs.used.length
      if (!sameFactor(mine.factor, theirs.factor, used > 0 ? TYPED_WITHIN : 1e-6)) continue
      // Of two that agree to a hundredth the one that is a unit as it stands.
      const factor = mine.used.length <= theirs.used.length ? mine.factor : theirs.factor
      if (!found.some((before) => sameFactor(before.factor, factor, TYPED_WITHIN))) found.push({ factor, used, isOfOne: mine.used.length === 0, isOfOther: theirs.used.length === 0 })
    }
  }
  return found.toSorted((first, second) => first.used - second.used).slice(0, MOST_COMMON)
}

const MOST_COMMON = 4

/** All numbers multiplied in that may be conversions. */
export const convertersOf = ({ constants, given = [] }: Quantity): readonly number[] => [...constants, ...given]

/** Two temperatures of equal degrees that count from different zeros: °C and K. */
function otherScale(one: Quantity, other: Quantity): boolean {
  if (!isTemperature(one.dimension) || one.zero.open || other.zero.open) return false
  const [mine, theirs] = [one.zero.offset / one.zero.points, other.zero.offset / other.zero.points]
  return Number.isFinite(mine) && Number.isFinite(theirs) && Math.abs(mine - theirs) > OFFSET_WITHIN
}

/** Kelvins: people write 273 and 460. */
export const OFFSET_WITHIN = 0.6

/** Points and offsets add up; a difference less a temperature is neither. */
function temperatureSum(one: Zero, other: Zero, sign: 1 | -1): Zero | Disagreement {
  const points = rounded(one.points + other.points * sign)
  if (points < 0 && !one.open && !other.open) return 'temperature'
  return { points: Number.isNaN(points) ? knownPoints(one, other, sign) : points, offset: one.offset + other.offset * sign, gauge: 0, atmospheric: false, open: one.open || other.open }
}

/** Parts such as 0.7 and 0.3 are 1 together. */
const rounded = (points: number): number => Math.round(points * 1e9) / 1e9

/** What comes out of arithmetic with temperatures counts as a difference of them beside a temperature. */
const knownPoints = (one: Zero, other: Zero, sign: 1 | -1): number => (one.points === 1 ? 1 : other.points === 1 && sign === 1 ? 1 : NaN)

function pressureSum(one: Zero, other: Zero, sign: 1 | -1): Zero | Disagreement {
  const open = one.open || other.open
  const result = { offset: 0, atmospheric: false, open }
  const [mine, theirs] = [one.gauge, other.gauge * sign]
  if (mine !== 0 && theirs !== 0) return { ...result, points: one.points + other.points * sign, gauge: mine + theirs }
  if (mine === 0 && theirs === 0) {
    // An absolute pressure less that of the atmosphere is a gauge pressure, if it is the atmosphere.
    if (sign === -1 && other.atmospheric) return { ...result, points: NaN, gauge: 0, open: true }
    const points = one.points + other.points * sign
    return { ...result, points: Number.isNaN(points) ? (one.points === 1 ? 1 : NaN) : points, gauge: 0 }
  }
  const [gauge, plain] = mine !== 0 ? [one, other] : [other, one]
  if (open) return { ...result, points: NaN, gauge: 0, open: true }
  const gaugeIsAdded = mine !== 0 ? mine > 0 : theirs > 0
  if (!gaugeIsAdded) return 'gauge'
  const plainIsAdded = plain === one || sign === 1
  if (plain.atmospheric && plainIsAdded) return plain.points === 1 ? { ...result, points: 1, gauge: 0 } : { ...result, points: NaN, gauge: 0, open: true }
  return plain.points === 1 ? 'gauge' : { ...result, points: gauge.points, gauge: gauge.gauge }
}

/** Pressures that may be the atmosphere's, Pa: from 5000 m of elevation to a high at sea level. */
export const isAboutAtmospheric = (pressurePa: number): boolean => pressurePa > 0.53 * STANDARD_ATMOSPHERE_PA && pressurePa < 1.07 * STANDARD_ATMOSPHERE_PA

/**
 * A quantity with a number of the formula added, or taken away: the number is of the same unit, or it is what brings it to another zero
 * (+ 459.67, − 32, + 14.7).
 */
export function withNumber(given: Quantity, number: number | undefined): Quantity {
  const quantity = inDegrees(given)
  const { dimension, factor, zero } = quantity
  if (number === undefined || number === 0) return quantity
  if (isTemperature(dimension) && zero.points === 1) {
    const shift = shiftOf(number, factor)
    if (shift !== undefined) return { ...quantity, zero: { ...zero, offset: zero.offset - shift * factor, open: shift === -32 }, symbol: [] }
    return number < 0 ? { ...quantity, zero: { ...zero, open: true } } : quantity
  }
  if (isTemperature(dimension) && zero.points === -1) return { ...quantity, zero: { ...zero, points: 0, offset: 0, open: true } }
  if (isPressure(dimension) && factorsMeant(factor, convertersOf(quantity)).some((meant) => isAboutAtmospheric(Math.abs(number) * meant.factor))) {
    return { ...quantity, zero: { ...zero, points: NaN, gauge: 0, open: true } }
  }
  return quantity
}

/** The zero of a scale, added to a difference of temperatures, or taken from it: it has none. Converted on the way (× 9/5) it has none either. */
export function zeroOf(quantity: Quantity, number: number | undefined): number | undefined {
  const { dimension, factor, zero } = quantity
  if (number === undefined || !isTemperature(dimension) || zero.points !== 0 || zero.open) return undefined
  return shiftOf(number, factor) ?? factorsMeant(factor, convertersOf(quantity)).map((meant) => shiftOf(number, meant.factor)).find((degrees) => degrees !== undefined)
}

/** Degrees to another zero, exactly where the number is a round one; undefined of any other number. */
function shiftOf(number: number, factor: number): number | undefined {
  const [fahrenheit, kelvin] = [sameFactor(factor, 5 / 9, 1e-3), sameFactor(factor, 1, 1e-3)]
  const size = Math.abs(number)
  const exact = kelvin && size >= 273 && size <= 273.16 ? 273.15 : fahrenheit && size >= 459 && size <= 460 ? 459.67 : fahrenheit && size === 32 ? 32 : undefined
  return exact === undefined ? undefined : Math.sign(number) * exact
}
