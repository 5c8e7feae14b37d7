import { saturationPressure, vaporDensity } from '../ammonia/saturation.ts'
import type { SiQuantity } from '../arguments.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { formatQuantity } from '../units/format.ts'
import type { Unit } from '../units/units.ts'
import { GREATEST_RELATIVE_ROUGHNESS } from './friction.ts'
import { crossSection } from './pipe-loss.ts'

/** A roughness of which the pipe's friction is no longer known. */
export function tooRough(roughness: SiQuantity, boreM: number): Fault | undefined {
  const most = GREATEST_RELATIVE_ROUGHNESS * boreM
  if (roughness.si <= most) return undefined
  const show = (si: number) => formatQuantity(si, roughness.unit)
  return outOfRange(`roughness is ${show(roughness.si)}; accepted is at most ${show(most)} in this bore (relative roughness ${GREATEST_RELATIVE_ROUGHNESS}, where Moody’s chart ends)`)
}

/**
 * A flow that chokes: vapour at one temperature cannot pass G² x/ρV = p, where its pressure falls without its flow rising.
 * A mixture chokes earlier still; the limit is where the flow is certainly impossible.
 */
export function choked(massFlow: SiQuantity, quality: number, boreM: number, temperatureK: number): Fault | undefined {
  const allVapor = crossSection(boreM) * Math.sqrt(saturationPressure(temperatureK) * vaporDensity(temperatureK))
  // Compared without dividing by a quality that may be 0.
  const share = Math.sqrt(quality)
  if (massFlow.si * share <= allVapor) return undefined
  const most = allVapor / share
  const show = (si: number) => formatQuantity(si, massFlow.unit)
  return outOfRange(`mass flow is ${show(massFlow.si)}; accepted is at most ${show(most)} in this bore (the vapour would choke, isothermal flow)`)
}

/**
 * A loss that no steady flow can have: by p1² − p2² = 2 p1 Δp, isothermal, the loss Δp at inlet density takes all of the pressure
 * once it is half of it.
 */
export function lossTooGreat(lossPa: number, temperatureK: number, shownIn: Unit): Fault | undefined {
  const inletPa = saturationPressure(temperatureK)
  if (lossPa <= inletPa / 2) return undefined
  const show = (si: number) => formatQuantity(si, shownIn)
  return outOfRange(
    `the loss at inlet density would be ${show(lossPa)}; accepted is at most ${show(inletPa / 2)} (half the saturation pressure at the inlet: beyond it expanding vapour cannot flow so fast): take a larger bore, a shorter line or less flow`,
  )
}
