import { saturationRange } from '../ammonia/saturation.ts'
import { quantityOf, type SiQuantity } from '../arguments.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { formatQuantity } from '../units/format.ts'
import { num, unless, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'

/** Share of the set pressure by which a valve may be above it when it carries its capacity. */
const OVERPRESSURE = 1.1

export const setPressureArgument = quantityOf(['pressure'], 'set pressure stamped on the relief valve, at most the vessel’s MAWP', {
  above: 0, max: 20e6, limit: 'absolute pressures up to 200 bar',
})

/** Pressure, Pa absolute, at which a valve set this far above the atmosphere carries its capacity. */
export const relievingPressure = (setAboveAtmospherePa: number, sitePa: number): number => OVERPRESSURE * setAboveAtmospherePa + sitePa

/** How far the set pressure is above the atmosphere, Pa; a valve that opens to it cannot be set below. */
export function setAboveAtmosphere(set: SiQuantity, sitePa: number): number | Fault {
  if (set.si > sitePa) return set.si - sitePa
  const show = (si: number) => formatQuantity(si, set.unit, sitePa)
  return outOfRange(`set pressure is ${show(set.si)}; accepted is more than ${show(sitePa)} (the atmosphere into which the valve relieves; psi, bar and kPa are absolute, psig is not)`)
}

/** The relieving pressure of a valve on saturated ammonia, Pa absolute, within the property range. */
export function saturatedRelievingPressure(set: SiQuantity, sitePa: number): number | Fault {
  const above = setAboveAtmosphere(set, sitePa)
  if (typeof above !== 'number') return above
  const relievingPa = relievingPressure(above, sitePa)
  if (relievingPa <= saturationRange.maxPa) return relievingPa
  const show = (si: number) => formatQuantity(si, set.unit, sitePa)
  const mostPa = (saturationRange.maxPa - sitePa) / OVERPRESSURE + sitePa
  return outOfRange(`set pressure is ${show(set.si)}; accepted is at most ${show(mostPa)} (10 % above it ammonia boils at 100 °C, where the property range ends)`)
}

/** {@link setAboveAtmosphere} in workings. */
export const setAboveAtmosphereStep = (setPa: Expression, sitePa: Expression, steps: Steps): Expression =>
  steps.step('set pressure above the atmosphere', 'Pa', unless(`${setPa}>${sitePa}`, `${setPa}-${sitePa}`))

/** {@link saturatedRelievingPressure} in workings. */
export function saturatedRelievingPressureSteps(setPa: Expression, sitePa: Expression, steps: Steps): Expression {
  const relieving = steps.step('relieving pressure', 'Pa', `${OVERPRESSURE}*${setAboveAtmosphereStep(setPa, sitePa, steps)}+${sitePa}`)
  return unless(`${relieving}<=${num(saturationRange.maxPa)}`, relieving)
}
