import { fromSi, toSi } from '../units/convert.ts'
import { findUnit } from '../units/units.ts'
import { fullyRoughFrictionFactor, STEEL_ROUGHNESS_M } from '../lines/friction.ts'

// Non-null: these stand in the table of units. The rule is in these.
const foot = findUnit('ft')!
const inch = findUnit('in')!
const psia = findUnit('psia')!
const lbPerMinute = findUnit('lb/min')!

/** Pressure, Pa, below which the end of a pipe cannot fall at a flow of air: there it chokes. */
export const chokedOutletPressure = (boreM: number, ratedKgPerS: number): number =>
  toSi((0.6226 * fromSi(ratedKgPerS, lbPerMinute)) / fromSi(boreM, inch) ** 2, psia)

/** Darcy friction factor of steel pipe at fully rough flow. */
export const dischargeFrictionFactor = (boreM: number): number => fullyRoughFrictionFactor(STEEL_ROUGHNESS_M / boreM)

/**
 * Equivalent length, m, of pipe in which a rated flow of air falls from the pressure after the valve to the one at the end of the pipe,
 * isothermal at 60 °F. The start must lie above the end, and the end not below {@link chokedOutletPressure}.
 */
export function dischargePipeLength(boreM: number, ratedKgPerS: number, startPa: number, endPa: number, frictionFactor: number): number {
  const d = fromSi(boreM, inch)
  const flow = fromSi(ratedKgPerS, lbPerMinute)
  const start = fromSi(startPa, psia)
  const end = fromSi(endPa, psia)
  const feet = (0.2146 * d ** 5 * (start ** 2 - end ** 2)) / (frictionFactor * flow ** 2) - (d * Math.log(start / end)) / (6 * frictionFactor)
  return toSi(feet, foot)
}
