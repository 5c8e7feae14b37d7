import { isDimensionless, isPressure, isTemperature, times, toPower } from './dimension.ts'
import { mayBringDimension } from './constants.ts'
import { ANY_ZERO, sameFactor, type PlainNumber, type Quantity, type Zero } from './meaning.ts'
import { convertedSymbol, timesSymbol } from './unit-words.ts'

/** What a quantity must not be a factor as: counted from the atmosphere, or from a zero that is not the absolute one. */
export function unfitFactor({ dimension, zero: { points, offset, gauge, open } }: Quantity): 'gauge' | 'temperature' | undefined {
  if (open) return undefined
  if (isPressure(dimension) && gauge !== 0) return 'gauge'
  return isTemperature(dimension) && points > 0 && Math.abs(offset) > 1 ? 'temperature' : undefined
}

/** `one × other^exponent` of two quantities neither of which is unfit. */
export function product(one: Quantity, other: Quantity, exponent: 1 | -1): Quantity {
  const dimension = times(one.dimension, other.dimension, exponent)
  const pending = one.pending ?? other.pending
  // By what it was multiplied with it is divided again: a temperature, of whatever parts.
  const isMean = pending !== undefined && isTemperature(dimension)
  const [shareless, share] = isDimensionless(other.dimension) ? [one, other] : isDimensionless(one.dimension) && exponent === 1 ? [other, one] : []
  return {
    kind: 'quantity',
    dimension,
    factor: one.factor * other.factor ** exponent,
    // A share of a gauge pressure counts from the atmosphere too: 1.1 times the set pressure.
    zero: isMean ? { ...ANY_ZERO, open: true } : shareless && share ? shared(shareless.zero, shareless) : ANY_ZERO,
    ...(pending && !isMean && { pending }),
    constants: [...one.constants, ...other.constants.map((constant) => constant ** exponent)],
    ...withGiven(one, other, exponent),
    loose: one.loose || other.loose,
    symbol: timesSymbol(one.symbol, other.symbol, exponent),
  }
}

export const numberProduct = (one: PlainNumber, other: PlainNumber, exponent: 1 | -1): PlainNumber => ({
  kind: 'number',
  value: one.value === undefined || other.value === undefined ? undefined : one.value * other.value ** exponent,
  factors: [...factorsOf(one), ...factorsOf(other).map((factor) => factor ** exponent)],
  ...withGiven(one, other, exponent),
  loose: one.loose || other.loose,
})

/** A quantity times a number, or over it. */
export function scaled(quantity: Quantity, number: PlainNumber, exponent: 1 | -1): Quantity {
  const { zero, dimension } = quantity
  const loose = quantity.loose || isLoose(number)
  const value = number.value === undefined ? undefined : number.value ** exponent
  const isShifted = isTemperature(dimension) ? zero.points !== 0 && Math.abs(zero.offset) > 1 : isPressure(dimension) && zero.gauge !== 0
  if (isShifted && value === undefined) return { ...quantity, loose, zero: shared(zero, quantity) }
  // Part of a temperature: with other parts it may come to one again, as in a mean.
  if (isShifted && isTemperature(dimension) && value !== undefined) return { ...quantity, loose, zero: { ...zero, points: zero.points * value, offset: zero.offset * value } }
  if (isShifted && value !== undefined && zero.gauge > 1 && sameFactor(value * zero.gauge, 1)) return { ...quantity, zero: { ...zero, points: 1, gauge: 1 } }
  return { ...quantity, loose, constants: [...quantity.constants, ...factorsOf(number).map((factor) => factor ** exponent)], ...withGiven(quantity, number, exponent) }
}

/** 1.8 times a temperature, or 5/9 of it, is a temperature in other degrees. */
export function inDegrees(quantity: Quantity): Quantity {
  const { dimension, factor, zero, symbol } = quantity
  const isOther = isTemperature(dimension) && Math.abs(zero.offset) > 1 && [1.8, 5 / 9].some((ratio) => sameFactor(Math.abs(zero.points), ratio, 1e-3))
  if (!isOther) return quantity
  const ratio = Math.abs(zero.points)
  return { ...quantity, factor: factor / ratio, zero: { ...zero, points: Math.sign(zero.points), offset: zero.offset / ratio }, symbol: convertedSymbol(symbol, ratio) }
}

/** A number over a quantity. */
export const inverse = (number: PlainNumber, quantity: Quantity): Quantity => scaled(power(quantity, -1), number, 1)

/** Undefined where the exponent leaves no dimension that could be told: an empirical power. */
export function power(quantity: Quantity, exponent: number): Quantity {
  return {
    ...quantity,
    dimension: toPower(quantity.dimension, exponent),
    factor: quantity.factor ** exponent,
    zero: ANY_ZERO,
    constants: quantity.constants.map((constant) => Math.abs(constant) ** exponent),
    ...(quantity.given && { given: quantity.given.map((constant) => constant ** exponent) }),
    symbol: quantity.symbol.map(([code, power]) => [code, power * exponent]),
  }
}

export const isLoose = (number: PlainNumber): boolean => number.loose || number.factors.some(mayBringDimension)

const factorsOf = ({ value, factors, given }: PlainNumber): readonly number[] => (factors.length > 0 || given !== undefined || value === undefined ? factors : [value])

interface Giving {
  readonly given?: readonly number[]
}

function withGiven(one: Giving, other: Giving, exponent: 1 | -1): Giving {
  if (one.given === undefined && other.given === undefined) return {}
  return { given: [...(one.given ?? []), ...(other.given ?? []).map((number) => number ** exponent)] }
}

/** Of a temperature it can no longer be told what it is. */
function shared(zero: Zero, { dimension }: Quantity): Zero {
  if (isTemperature(dimension) && zero.points !== 0) return { ...zero, points: NaN, open: true }
  return isPressure(dimension) ? { ...zero, points: zero.points === 0 ? 0 : zero.gauge === 0 ? NaN : zero.points } : zero
}
