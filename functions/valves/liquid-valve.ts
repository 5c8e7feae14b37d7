import { num, type Expression } from '../workings/expression.ts'

/** Density of the water that defines Kv, kg/m3, at 15 °C (IEC 60534-2-1). */
const REFERENCE_DENSITY = 999.1

/** FF of liquid of no vapour pressure, and how far it falls up to the critical pressure. */
const FF = { highest: 0.96, fall: 0.28 } as const

/** Factor FF for the pressure in the vena contracta at which liquid of this vapour pressure chokes. */
export const criticalPressureRatio = (vaporPressurePa: number, criticalPa: number): number => FF.highest - FF.fall * Math.sqrt(vaporPressurePa / criticalPa)

/** The pressure drop, Pa, above which liquid flow no longer rises; `recovery` is FL. */
export const chokeDrop = (inletPa: number, vaporPressurePa: number, criticalPa: number, recovery: number): number =>
  recovery ** 2 * (inletPa - criticalPressureRatio(vaporPressurePa, criticalPa) * vaporPressurePa)

/** Flow coefficient Kv, m3/h at 1 bar, of turbulent liquid over the part of the pressure drop that drives it. */
export const liquidFlowCoefficient = (massFlowKgPerS: number, densityKgPerM3: number, dropPa: number): number =>
  ((massFlowKgPerS * 3600) / densityKgPerM3) * Math.sqrt(densityKgPerM3 / REFERENCE_DENSITY / (dropPa / 1e5))

/** {@link chokeDrop} in workings. */
export const chokeDropOf = (inletPa: Expression, vaporPressurePa: Expression, criticalPa: number, recovery: Expression): Expression =>
  `(${recovery}^2*(${inletPa}-(${FF.highest}-${FF.fall}*SQRT(${vaporPressurePa}/${num(criticalPa)}))*${vaporPressurePa}))`

/** {@link liquidFlowCoefficient} in workings. */
export const liquidFlowCoefficientOf = (massFlowKgPerS: Expression, densityKgPerM3: Expression, dropPa: Expression): Expression =>
  `${massFlowKgPerS}*3600/${densityKgPerM3}*SQRT(${densityKgPerM3}/${REFERENCE_DENSITY}/(${dropPa}/100000))`
