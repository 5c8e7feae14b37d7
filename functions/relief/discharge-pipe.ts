import { fromSi, toSi } from '../units/convert.ts'
import { findUnit } from '../units/units.ts'
import { fullyRoughFrictionFactor, STEEL_ROUGHNESS_M } from '../lines/friction.ts'
import { fullyRoughFactor } from '../lines/friction-workings.ts'
import { num, unless, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'

// Non-null: these stand in the table of units. The rule is in these.
const foot = findUnit('ft')!
const inch = findUnit('in')!
const psia = findUnit('psia')!
const lbPerMinute = findUnit('lb/min')!

/** Constants of the rule in psi, inches, feet and lb/min of air: of the choked outlet, and of the length. */
const CHOKED = 0.6226
const LENGTH = 0.2146

/** Pressure, Pa, below which the end of a pipe cannot fall at a flow of air: there it chokes. */
export const chokedOutletPressure = (boreM: number, ratedKgPerS: number): number =>
  toSi((CHOKED * fromSi(ratedKgPerS, lbPerMinute)) / fromSi(boreM, inch) ** 2, psia)

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
  const feet = (LENGTH * d ** 5 * (start ** 2 - end ** 2)) / (frictionFactor * flow ** 2) - (d * Math.log(start / end)) / (6 * frictionFactor)
  return toSi(feet, foot)
}

/** {@link dischargePipeLength} from an allowed pressure after the valve, in workings; an error where no pipe is short enough. */
export function dischargePipeSteps({ bore, flow, allowed, site }: Readonly<Record<'bore' | 'flow' | 'allowed' | 'site', Expression>>, steps: Steps): Expression {
  const d = steps.step('d', 'in', `${bore}/${num(inch.factor)}`)
  const rated = steps.step('C', 'lb/min', `${flow}/${num(lbPerMinute.factor)}`)
  const end = steps.step('P2', 'psi', `MAX(${site}/${num(psia.factor)},${CHOKED}*${rated}/${d}^2)`)
  const start = steps.step('P0, above P2', 'psi', unless(`${allowed}/${num(psia.factor)}>${end}`, `${allowed}/${num(psia.factor)}`))
  const f = steps.step('Darcy friction factor, fully rough', '-', fullyRoughFactor(`${num(STEEL_ROUGHNESS_M)}/${bore}`))
  const feet = steps.step('L', 'ft', `${LENGTH}*${d}^5*(${start}^2-${end}^2)/(${f}*${rated}^2)-${d}*LN(${start}/${end})/(6*${f})`)
  return unless(`${feet}>=0`, `${feet}*${num(foot.factor)}`)
}
