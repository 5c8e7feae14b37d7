import { STANDARD_ATMOSPHERE_PA } from './constants.ts'
import type { Unit } from './units.ts'

/** The SI value of a number in a unit; gauge units count from `sitePa`. */
export const toSi = (value: number, unit: Unit, sitePa = STANDARD_ATMOSPHERE_PA): number =>
  value * unit.factor + unit.offset + (unit.gauge ? sitePa : 0)

/** A number in a unit for an SI value; inverse of {@link toSi}. */
export const fromSi = (si: number, unit: Unit, sitePa = STANDARD_ATMOSPHERE_PA): number =>
  (si - unit.offset - (unit.gauge ? sitePa : 0)) / unit.factor

/**
 * A number in one unit for a number in another of the same dimension. The same unit gives the same number, to the last digit.
 * @throws RangeError where the dimensions differ: that is a fault of the caller, who has the user's words for it.
 */
export function convert(value: number, from: Unit, to: Unit, sitePa = STANDARD_ATMOSPHERE_PA): number {
  if (from.dimension !== to.dimension) throw new RangeError(`${from.code} is a ${from.dimension}, ${to.code} a ${to.dimension}`)
  return from === to ? value : fromSi(toSi(value, from, sitePa), to, sitePa)
}
