/** Density of the water that defines Kv, kg/m3, at 15 °C (IEC 60534-2-1). */
const REFERENCE_DENSITY = 999.1

/** Factor FF for the pressure in the vena contracta at which liquid of this vapour pressure chokes. */
export const criticalPressureRatio = (vaporPressurePa: number, criticalPa: number): number => 0.96 - 0.28 * Math.sqrt(vaporPressurePa / criticalPa)

/** The pressure drop, Pa, above which liquid flow no longer rises; `recovery` is FL. */
export const chokeDrop = (inletPa: number, vaporPressurePa: number, criticalPa: number, recovery: number): number =>
  recovery ** 2 * (inletPa - criticalPressureRatio(vaporPressurePa, criticalPa) * vaporPressurePa)

/** Flow coefficient Kv, m3/h at 1 bar, of turbulent liquid over the part of the pressure drop that drives it. */
export const liquidFlowCoefficient = (massFlowKgPerS: number, densityKgPerM3: number, dropPa: number): number =>
  ((massFlowKgPerS * 3600) / densityKgPerM3) * Math.sqrt(densityKgPerM3 / REFERENCE_DENSITY / (dropPa / 1e5))
