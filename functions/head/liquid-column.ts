import { liquidDensity, saturationPressure, saturationRange, saturationSlope } from '../ammonia/saturation.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'

/**
 * The drum temperature under which a column of `heightM` of the drum's own liquid has the saturation temperature `coilK` at its foot, K;
 * undefined where it would lie below the property range. For columns up to 30 m the pressure at the foot rises steadily and
 * convexly with the drum's temperature, so that Newton's steps from the warm end come down to the root without passing it.
 */
export function drumTemperatureForCoil(coilK: number, heightM: number): number | undefined {
  const wantedPa = saturationPressure(coilK)
  const excess = (drumK: number) => saturationPressure(drumK) + liquidDensity(drumK) * STANDARD_GRAVITY * heightM - wantedPa
  if (excess(saturationRange.minK) > 0) return undefined
  let low = saturationRange.minK
  let high = coilK
  let drumK = coilK
  for (let step = 0; step < 60; step++) {
    const error = excess(drumK)
    if (error > 0) high = drumK
    else low = drumK
    const newton = drumK - error / (saturationSlope(drumK) - densityFall(drumK) * STANDARD_GRAVITY * heightM)
    const next = newton > low && newton < high ? newton : (low + high) / 2
    if (Math.abs(next - drumK) <= 1e-13 * coilK) return next
    drumK = next
  }
  return drumK
}

/** −dρL/dT, kg/(m³·K), by a central difference: it only steers the steps. */
const densityFall = (temperatureK: number): number => {
  const from = Math.max(saturationRange.minK, temperatureK - 0.5)
  const to = Math.min(saturationRange.maxK, temperatureK + 0.5)
  return (liquidDensity(from) - liquidDensity(to)) / (to - from)
}
