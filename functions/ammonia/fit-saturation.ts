import { chebyshevSeries } from './chebyshev.ts'
import { saturationReference, type SaturationState } from './saturation-reference.ts'
import { viscosity } from './transport.ts'

/**
 * Piecewise Chebyshev series of saturated ammonia, a row of coefficients an interval, all equally long.
 * A value is SUM c_k·cos(k·acos x) with x = (2·T - fromK - toK)/(toK - fromK), held within ±1.
 * The `temperatureK` series takes x from ln p in the same way, over fromLnPa and toLnPa.
 */
export interface SaturationTable {
  intervals: { fromK: number; toK: number; fromLnPa: number; toLnPa: number }[]
  series: Record<SeriesName, number[][]>
}

/** The tabulated properties. Logarithms are of Pa, kg/m3, Pa s; enthalpies in J/kg, IIR reference; the slope is d(ln p)/dT in 1/K. */
export type SeriesName =
  | 'lnPressure'
  | 'lnPressureSlope'
  | 'temperatureK'
  | 'liquidDensity'
  | 'lnVaporDensity'
  | 'liquidEnthalpy'
  | 'vaporEnthalpy'
  | 'lnLiquidViscosity'
  | 'lnVaporViscosity'

/** As wide as degree 12 allows for 1e-11: narrower towards the critical point. */
const piecesK = [
  [195.55, 240.25],
  [240.25, 300.25],
  [300.25, 346.75],
  [346.75, 373.15],
] as const
const degree = 12

/** Fits the saturation table to the equal-Gibbs solve. */
export function fitSaturationTable(): SaturationTable {
  const intervals = piecesK.map(([fromK, toK]) => ({
    fromK,
    toK,
    fromLnPa: lnPressure(fromK),
    toLnPa: lnPressure(toK),
  }))
  const ofTemperature = (property: (state: SaturationState) => number) =>
    intervals.map(({ fromK, toK }) =>
      chebyshevSeries((temperatureK) => property(saturationReference(temperatureK)), fromK, toK, degree),
    )
  return {
    intervals,
    series: {
      lnPressure: ofTemperature(({ pressurePa }) => Math.log(pressurePa)),
      lnPressureSlope: ofTemperature(({ pressurePa, slopePaPerK }) => slopePaPerK / pressurePa),
      temperatureK: intervals.map(({ fromK, toK, fromLnPa, toLnPa }) =>
        chebyshevSeries((lnPa) => temperatureAt(lnPa, fromK, toK), fromLnPa, toLnPa, degree),
      ),
      liquidDensity: ofTemperature(({ liquid }) => liquid.densityKgPerM3),
      lnVaporDensity: ofTemperature(({ vapor }) => Math.log(vapor.densityKgPerM3)),
      liquidEnthalpy: ofTemperature(({ liquid }) => liquid.enthalpyJPerKg),
      vaporEnthalpy: ofTemperature(({ vapor }) => vapor.enthalpyJPerKg),
      lnLiquidViscosity: ofTemperature(({ liquid }) => Math.log(viscosity(liquid.temperatureK, liquid.densityKgPerM3))),
      lnVaporViscosity: ofTemperature(({ vapor }) => Math.log(viscosity(vapor.temperatureK, vapor.densityKgPerM3))),
    },
  }
}

function lnPressure(temperatureK: number): number {
  return Math.log(saturationReference(temperatureK).pressurePa)
}

/** The saturation temperature of a pressure, by Newton on the equal-Gibbs solve. */
function temperatureAt(lnPa: number, fromK: number, toK: number): number {
  let temperatureK = (fromK + toK) / 2
  for (let step = 0; step < 8; step++) {
    const { pressurePa, slopePaPerK } = saturationReference(temperatureK)
    temperatureK -= ((Math.log(pressurePa) - lnPa) * pressurePa) / slopePaPerK
    temperatureK = Math.min(toK, Math.max(fromK, temperatureK))
  }
  return temperatureK
}
