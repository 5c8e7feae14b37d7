import coefficients from './coefficients.json' with { type: 'json' }
import { idealEnergy, residualEnergy } from './helmholtz-energy.ts'

const { reducing, gasConstant, molarMass: kgPerMol } = coefficients.equationOfState
const gasConstantPerKg = gasConstant / kgPerMol

/** Molar mass of ammonia, kg/mol (Gao et al. 2023). */
export const molarMass = kgPerMol

/** Molar gas constant, J/(mol K), exact SI value to ten figures; the equation of state is fitted with it. */
export const molarGasConstant = gasConstant

/** Thermodynamic state of ammonia at one temperature and density, on the reference state named by whoever made it. */
export interface AmmoniaState {
  temperatureK: number
  densityKgPerM3: number
  pressurePa: number
  enthalpyJPerKg: number
  entropyJPerKgK: number
  gibbsJPerKg: number
  cvJPerKgK: number
  cpJPerKgK: number
  speedOfSoundMPerS: number
}

/**
 * The state of ammonia by the equation of state of Gao, Wu, Bell, Harvey and Lemmon,
 * J. Phys. Chem. Ref. Data 52, 013102 (2023). Enthalpy and entropy are on the equation's own
 * reference state (u = 0, s = 0 for saturated liquid at the triple point).
 *
 * At zero density pressure is 0, entropy infinite, all else the ideal gas. Between the saturated
 * densities the result is the single-phase continuation, not a mixture.
 *
 * @param temperatureK 195.49 to 725 K
 * @param densityKgPerM3 0 or more, up to the density of 1000 MPa
 */
export function ammoniaState(temperatureK: number, densityKgPerM3: number): AmmoniaState {
  const tau = reducing.temperatureK / temperatureK
  const delta = densityKgPerM3 / kgPerMol / reducing.densityMolPerM3
  const ideal = idealEnergy(tau, delta)
  const residual = residualEnergy(tau, delta)

  const compressibility = 1 + residual.d
  const expansion = 1 + residual.d - residual.dt
  const stiffness = 1 + 2 * residual.d + residual.dd
  const cv = -gasConstantPerKg * (ideal.tt + residual.tt)
  const cp = cv + (gasConstantPerKg * expansion * expansion) / stiffness
  const energyUnit = gasConstantPerKg * temperatureK
  const enthalpy = energyUnit * (ideal.t + residual.t + compressibility)
  const entropy = gasConstantPerKg * (ideal.t + residual.t - ideal.value - residual.value)

  return {
    temperatureK,
    densityKgPerM3,
    pressurePa: densityKgPerM3 * energyUnit * compressibility,
    enthalpyJPerKg: enthalpy,
    entropyJPerKgK: entropy,
    gibbsJPerKg: enthalpy - temperatureK * entropy,
    cvJPerKgK: cv,
    cpJPerKgK: cp,
    speedOfSoundMPerS: Math.sqrt((cp / cv) * energyUnit * stiffness),
  }
}

/** Critical pressure of ammonia, Pa: the equation of state at its reducing point, 405.56 K and 13696 mol/m3. */
export const criticalPressurePa = ammoniaState(reducing.temperatureK, reducing.densityMolPerM3 * kgPerMol).pressurePa
