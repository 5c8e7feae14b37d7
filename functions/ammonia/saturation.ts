import { chebyshevSum } from './chebyshev.ts'
import { saturationTable } from './saturation-table.ts'

export { criticalPressurePa, molarMass } from './equation-of-state.ts'
export { surfaceTension } from './transport.ts'

/*
 * Saturated ammonia from the generated table: what formulas call. Every function here trusts its argument
 * to lie in saturationRange; callers check. Agreement with the equal-Gibbs solve: 1e-11 relative or better.
 * Rows and intervals are taken non-null: every series has a row for every interval, and an index stays among them.
 */

const { intervals, series } = saturationTable
const coldest = intervals[0]!.fromK
const warmest = intervals[intervals.length - 1]!.toK

/** Where the functions of this file hold: just above the triple point to 100 °C; pressures absolute. */
export const saturationRange = {
  minK: coldest,
  maxK: warmest,
  minPa: saturationPressure(coldest),
  maxPa: saturationPressure(warmest),
} as const

/** Saturation pressure, Pa absolute. */
export function saturationPressure(temperatureK: number): number {
  return Math.exp(atTemperature(series.lnPressure, temperatureK))
}

/** Saturation temperature, K, of an absolute pressure: inverse of saturationPressure to 1e-12 K, always within saturationRange. */
export function saturationTemperature(pressurePa: number): number {
  const lnPa = Math.log(pressurePa)
  let index = 0
  while (index < intervals.length - 1 && lnPa >= intervals[index]!.toLnPa) index++
  const { fromK, toK, fromLnPa, toLnPa } = intervals[index]!

  const estimateK = chebyshevSum(series.temperatureK[index]!, position(lnPa, fromLnPa, toLnPa))
  // The estimate is good to 2e-11 K; a Newton step leaves rounding only, for the small differences taken of it.
  const x = position(estimateK, fromK, toK)
  const excess = chebyshevSum(series.lnPressure[index]!, x) - lnPa
  const temperatureK = estimateK - excess / chebyshevSum(series.lnPressureSlope[index]!, x)
  return Math.min(saturationRange.maxK, Math.max(saturationRange.minK, temperatureK))
}

/** Slope of the saturation line dp/dT, Pa/K. */
export function saturationSlope(temperatureK: number): number {
  return saturationPressure(temperatureK) * atTemperature(series.lnPressureSlope, temperatureK)
}

/** Density of saturated liquid, kg/m3. */
export function liquidDensity(temperatureK: number): number {
  return atTemperature(series.liquidDensity, temperatureK)
}

/** Density of saturated vapour, kg/m3. */
export function vaporDensity(temperatureK: number): number {
  return Math.exp(atTemperature(series.lnVaporDensity, temperatureK))
}

/** Enthalpy of saturated liquid, J/kg, IIR reference (200 kJ/kg at 273.15 K). */
export function liquidEnthalpy(temperatureK: number): number {
  return atTemperature(series.liquidEnthalpy, temperatureK)
}

/** Enthalpy of saturated vapour, J/kg, IIR reference. */
export function vaporEnthalpy(temperatureK: number): number {
  return atTemperature(series.vaporEnthalpy, temperatureK)
}

/** Latent heat of evaporation, J/kg. */
export function latentHeat(temperatureK: number): number {
  return vaporEnthalpy(temperatureK) - liquidEnthalpy(temperatureK)
}

/** Viscosity of saturated liquid, Pa s (Fenghour et al. 1995). */
export function liquidViscosity(temperatureK: number): number {
  return Math.exp(atTemperature(series.lnLiquidViscosity, temperatureK))
}

/** Viscosity of saturated vapour, Pa s (Fenghour et al. 1995). */
export function vaporViscosity(temperatureK: number): number {
  return Math.exp(atTemperature(series.lnVaporViscosity, temperatureK))
}

function atTemperature(rows: readonly (readonly number[])[], temperatureK: number): number {
  let index = 0
  while (index < intervals.length - 1 && temperatureK >= intervals[index]!.toK) index++
  const { fromK, toK } = intervals[index]!
  return chebyshevSum(rows[index]!, position(temperatureK, fromK, toK))
}

/** Where a value lies in an interval, from -1 to 1. */
function position(value: number, from: number, to: number): number {
  return (2 * value - from - to) / (to - from)
}
