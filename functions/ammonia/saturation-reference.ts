import coefficients from './coefficients.json' with { type: 'json' }
import { type AmmoniaState, ammoniaState, molarMass } from './equation-of-state.ts'
import { residualEnergy } from './helmholtz-energy.ts'

const { reducing, triplePointK, saturatedDensityEstimate } = coefficients.equationOfState

/** Near the critical point the two densities merge and the Newton steps lose their footing. */
const highestSolvedK = 405

/** Liquid and vapour in equilibrium; enthalpy and entropy on the IIR reference. */
export interface SaturationState {
  temperatureK: number
  pressurePa: number
  /** dp/dT along saturation */
  slopePaPerK: number
  liquid: AmmoniaState
  vapor: AmmoniaState
}

/**
 * Saturated ammonia by solving the equation of state (Gao et al. 2023) for equal pressure and equal
 * Gibbs energy in both phases: the reference that the saturation table is made from and tested against.
 * IIR reference state: 200 kJ/kg and 1 kJ/(kg K) for saturated liquid at 273.15 K.
 *
 * @param temperatureK 195.49 (triple point) to 405 K
 * @throws RangeError outside that range
 */
export function saturationReference(temperatureK: number): SaturationState {
  if (!(temperatureK >= triplePointK && temperatureK <= highestSolvedK)) {
    throw new RangeError(
      `Saturation of ammonia is solved from ${triplePointK} to ${highestSolvedK} K, not at ${temperatureK} K.`,
    )
  }
  const { liquid, vapor } = onIirReference(equilibrium(temperatureK))
  // Clapeyron's equation.
  const slopePaPerK =
    (vapor.enthalpyJPerKg - liquid.enthalpyJPerKg) /
    (temperatureK * (1 / vapor.densityKgPerM3 - 1 / liquid.densityKgPerM3))
  // The liquid root would lose about 1e-11 of the pressure at low temperature.
  return { temperatureK, pressurePa: vapor.pressurePa, slopePaPerK, liquid, vapor }
}

interface Phases {
  liquid: AmmoniaState
  vapor: AmmoniaState
}

/**
 * With J = delta·(1 + delta·ar_d), the reduced pressure, and K = delta·ar_d + ar + ln delta, the reduced
 * Gibbs energy: J and K equal in both phases, by Newton in both densities. Since K' = J'/delta, the
 * 2×2 system solves in closed form.
 */
function equilibrium(temperatureK: number): Phases {
  const tau = reducing.temperatureK / temperatureK
  let { liquidDelta, vaporDelta } = estimatedDensities(temperatureK)

  for (let step = 0; step < 20; step++) {
    const liquid = reducedPotentials(tau, liquidDelta)
    const vapor = reducedPotentials(tau, vaporDelta)
    const gapJ = liquid.j - vapor.j
    const gapK = liquid.k - vapor.k
    const gapVolume = 1 / liquidDelta - 1 / vaporDelta
    const liquidChange = (gapJ / vaporDelta - gapK) / (liquid.jSlope * gapVolume)
    const vaporChange = (gapJ / liquidDelta - gapK) / (vapor.jSlope * gapVolume)
    liquidDelta += liquidChange
    vaporDelta += vaporChange
    // Convergence is quadratic: after a step this small the next one is below rounding.
    if (Math.abs(liquidChange / liquidDelta) + Math.abs(vaporChange / vaporDelta) < 1e-9) {
      return {
        liquid: ammoniaState(temperatureK, densityAt(liquidDelta)),
        vapor: ammoniaState(temperatureK, densityAt(vaporDelta)),
      }
    }
  }
  throw new RangeError(`The saturation solve did not settle at ${temperatureK} K.`)
}

function reducedPotentials(tau: number, delta: number): { j: number; k: number; jSlope: number } {
  const residual = residualEnergy(tau, delta)
  return {
    j: delta * (1 + residual.d),
    k: residual.d + residual.value + Math.log(delta),
    jSlope: 1 + 2 * residual.d + residual.dd,
  }
}

function densityAt(delta: number): number {
  return delta * reducing.densityMolPerM3 * molarMass
}

function estimatedDensities(temperatureK: number): { liquidDelta: number; vaporDelta: number } {
  const theta = 1 - temperatureK / reducing.temperatureK
  const { liquid, vapor } = saturatedDensityEstimate
  return { liquidDelta: 1 + powerSum(liquid, theta), vaporDelta: Math.exp(powerSum(vapor, theta)) }
}

function powerSum(terms: { n: number; t: number }[], theta: number): number {
  return terms.reduce((sum, { n, t }) => sum + n * theta ** t, 0)
}

const iirShift = (() => {
  const { liquid } = equilibrium(273.15)
  return { enthalpyJPerKg: 200e3 - liquid.enthalpyJPerKg, entropyJPerKgK: 1e3 - liquid.entropyJPerKgK }
})()

function onIirReference({ liquid, vapor }: Phases): Phases {
  return { liquid: shifted(liquid), vapor: shifted(vapor) }
}

function shifted(state: AmmoniaState): AmmoniaState {
  const enthalpyJPerKg = state.enthalpyJPerKg + iirShift.enthalpyJPerKg
  const entropyJPerKgK = state.entropyJPerKgK + iirShift.entropyJPerKgK
  return {
    ...state,
    enthalpyJPerKg,
    entropyJPerKgK,
    gibbsJPerKg: enthalpyJPerKg - state.temperatureK * entropyJPerKgK,
  }
}
