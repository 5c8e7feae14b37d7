import { units } from '../../../functions/units/units.ts'
import { factorsMeant, isTellingConversion, mayBringDimension, TYPED_WITHIN, type Meant } from './constants.ts'
import { dimensionOf, isDimensionless, isPressure, isTemperature, sameDimension } from './dimension.ts'
import { asWeight } from './free-fall.ts'
import { sameFactor, type Quantity } from './meaning.ts'
import { inDegrees } from './products.ts'
import { OFFSET_WITHIN } from './sums.ts'
import { withTradeConstant } from './trade-constants.ts'

/** Why a number is not of the unit that is written beside it. */
export type Misfit =
  | { readonly how: 'dimension' }
  /** The number would have to be multiplied by this. */
  | { readonly how: 'factor'; readonly needed: number }
  /** A conversion that there is no need of, or that goes the wrong way. */
  | { readonly how: 'surplus' | 'inverted'; readonly constant: number }
  | { readonly how: 'share'; readonly needed: number }
  /** Counts from the atmosphere and is written as if it did not, or the other way round; or is a difference of two pressures. */
  | { readonly how: 'gauge' | 'absolute' | 'pressure difference' | 'sum of gauges' }
  | { readonly how: 'difference' | 'temperature' | 'zero' | 'sum of temperatures' | 'part of a temperature' }

/** Undefined where number and unit agree, or where it cannot be told. */
export function misfit(given: Quantity, unit: Quantity): Misfit | undefined {
  const quantity = inDegrees(given)
  const turned = quantity.zero.gauge === -1 ? { ...quantity, factor: -quantity.factor, zero: { ...quantity.zero, gauge: 1, points: 1 } } : quantity
  if (!sameDimension(turned.dimension, unit.dimension)) return otherDimension(turned, unit)
  const scale = scaleMisfit(turned.factor, turned, unit)
  const isHundred = scale?.how === 'factor' && (sameFactor(scale.needed, 100) || sameFactor(scale.needed, 0.01))
  if (scale?.how === 'factor' && isHundred && hasPercent(turned)) return { how: 'share', needed: scale.needed }
  if (scale !== undefined) return scale
  return isTemperature(unit.dimension) ? temperatureMisfit(turned, unit) : isPressure(unit.dimension) ? pressureMisfit(turned, unit) : undefined
}

function otherDimension(quantity: Quantity, unit: Quantity): Misfit | undefined {
  if (withTradeConstant(quantity, unit.dimension).some((one) => scaleMisfit(one.factor, one, unit) === undefined)) return undefined
  const weight = asWeight(quantity, unit.dimension)
  if (weight === undefined) return quantity.loose ? undefined : { how: 'dimension' }
  const wrong = scaleMisfit(weight.quantity.factor, weight.quantity, unit)
  return wrong !== undefined && quantity.loose && !weight.isTyped ? undefined : wrong
}

function scaleMisfit(factor: number, { constants, given = [] }: Pick<Quantity, 'constants' | 'given'>, unit: Quantity): Misfit | undefined {
  const meant = factorsMeant(factor, [...constants, ...given])
  const fitting = meant.filter((one) => sameFactor(one.factor, unit.factor, one.used.length > 0 ? TYPED_WITHIN : 1e-6))
  if (fitting.length > 0) return surplus(fitting, constants, unit)
  if (isDimensionless(unit.dimension)) {
    const share = meant.find((one) => sameFactor(one.factor / unit.factor, 100) || sameFactor(one.factor / unit.factor, 0.01))
    if (share) return { how: 'share', needed: share.factor / unit.factor }
  }
  const inverted = constants.find((constant) => sameFactor(factor * constant, unit.factor, TYPED_WITHIN))
  if (inverted !== undefined) return { how: 'inverted', constant: inverted }
  const isCoefficient = constants.some(mayBringDimension) && meant.some(({ factor: read }) => CIRCLES.some((circle) => sameFactor(read / unit.factor, circle, TYPED_WITHIN)))
  return isCoefficient ? undefined : { how: 'factor', needed: simplest(meant, unit.factor) }
}

/** A coefficient may hold a circle's π along with the conversion: 0.4085 gpm over the square of a bore in inches is in ft/s. */
const CIRCLES = [Math.PI / 4, 4 / Math.PI, Math.PI, 1 / Math.PI, Math.sqrt(Math.PI / 4), Math.sqrt(4 / Math.PI)]

const hasPercent = ({ symbol }: Quantity): boolean => symbol.some(([code]) => code === '%')

/** Of the ways to read the constants the one that leaves the simplest factor to be missed. */
function simplest(meant: readonly Meant[], wanted: number): number {
  const ratios = meant.map(({ factor }) => factor / wanted)
  return ratios.find((ratio) => isTellingConversion(ratio) || sameFactor(ratio, 12) || sameFactor(ratio, 1 / 12)) ?? ratios[0] ?? 1
}

/** A conversion typed into a formula whose units agree without it. */
function surplus(fitting: readonly Meant[], constants: readonly number[], unit: Quantity): Misfit | undefined {
  if (isDimensionless(unit.dimension)) {
    const hundred = sameFactor(unit.factor, 1) ? constants.find((constant) => constant === 100) : undefined
    return hundred !== undefined && !fitting.some(({ used }) => used.length > 0) ? { how: 'share', needed: 0.01 } : undefined
  }
  const constant = constants.find((one, index) =>
    !fitting.some(({ used }) => used.includes(index)) && (isTellingConversion(one) || isInchesInAFoot(one, unit)) && isRatioOf(one, unit))
  return constant === undefined ? undefined : { how: 'surplus', constant }
}

const isInchesInAFoot = (constant: number, { dimension }: Quantity): boolean =>
  sameDimension(dimension, dimensionOf('length')) && (constant === 12 || sameFactor(constant, 1 / 12))

/** Whether two units of the same kind have that ratio: 60 is one of mass flows, and of all that has a time in it, not of lengths. */
const isRatioOf = (ratio: number, { dimension }: Quantity): boolean => {
  if (dimension[2] !== 0 && [60, 3600].some((one) => sameFactor(ratio, one) || sameFactor(ratio, 1 / one))) return true
  const alike = units.filter((one) => sameDimension(dimensionOf(one.dimension), dimension))
  return alike.some((one) => alike.some((other) => sameFactor(Math.abs(one.factor / other.factor), Math.abs(ratio), TYPED_WITHIN)))
}

function temperatureMisfit({ zero, loose }: Quantity, unit: Quantity): Misfit | undefined {
  const { points, open, offset } = zero
  const isTemperatureUnit = unit.zero.points === 1
  if (points > 1 && Number.isInteger(points)) return { how: 'sum of temperatures' }
  if (points > 0 && points !== 1) return { how: 'part of a temperature' }
  if (points === 1) {
    if (isTemperatureUnit) return Math.abs(offset - unit.zero.offset) > OFFSET_WITHIN ? { how: 'zero' } : undefined
    return open || unit.zero.points !== 0 ? undefined : { how: 'temperature' }
  }
  if (open || loose || !isTemperatureUnit) return undefined
  // What comes out of arithmetic may be a temperature from absolute zero; no arithmetic gives one from another zero.
  return points === 0 || Math.abs(unit.zero.offset) > 1 ? { how: 'difference' } : undefined
}

function pressureMisfit({ zero: { points, gauge, open } }: Quantity, { zero: unit }: Quantity): Misfit | undefined {
  if (open) return undefined
  if (gauge > 1 && unit.gauge === 1) return { how: 'sum of gauges' }
  if (gauge !== 0 && unit.gauge === 0) return { how: 'gauge' }
  if (gauge === 0 && unit.gauge !== 0) return { how: points === 0 ? 'pressure difference' : 'absolute' }
  return points === 0 && unit.points === 1 ? { how: 'pressure difference' } : undefined
}
