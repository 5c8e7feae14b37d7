import { voidFraction } from '../holdup/void-fraction.ts'
import { frictionGradient } from '../lines/friction.ts'
import { crossSection } from '../lines/pipe-loss.ts'
import { twoPhaseGradient, type Mixture } from '../lines/two-phase-loss.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'
import { meanFrictionGradient, meanVoidFraction } from './coil-means.ts'

/** A gravity-fed coil between the legs of its drum. Heights count from the bottom of the coil. */
export interface Loop {
  /** Of the liquid's surface in the drum. */
  readonly levelM: number
  readonly leg: Branch
  readonly coilHeightM: number
  readonly circuits: number
  readonly circuitBoreM: number
  readonly circuitLengthM: number
  readonly wetReturn: Branch
  /** From the top of the coil to where the return ends in the drum. */
  readonly returnRiseM: number
  readonly roughnessM: number
}

export interface Branch {
  readonly boreM: number
  readonly lengthM: number
  /** Sum of the K of entry, bends, valves and exit. */
  readonly resistance: number
}

/** Saturated ammonia in the loop and what evaporating it takes, SI. */
export interface LoopFluid extends Mixture {
  readonly latentHeat: number
}

/** How much faster than the liquid the vapour runs, for what stands in coil and return. */
export const slipModels = {
  Zivi: ({ liquidDensity, vaporDensity }: Mixture) => Math.cbrt(liquidDensity / vaporDensity),
  homogeneous: () => 1,
} as const

export type SlipModel = keyof typeof slipModels

/** What drives the loop and what takes it up, Pa, with the flow that belongs to it, kg/s, and its velocities, m/s. */
export interface Balance {
  readonly drivingHeadPa: number
  readonly legLossPa: number
  readonly coilFrictionPa: number
  readonly coilAccelerationPa: number
  readonly coilColumnPa: number
  readonly returnFrictionPa: number
  readonly returnColumnPa: number
  readonly fedFlowKgPerS: number
  readonly legVelocity: number
  /** Of the mixture, vapour and liquid equally fast. */
  readonly returnVelocity: number
}

/** The loop's terms at a circulation number of 1 or more, whether or not they balance. */
export function balanceAt(circulationNumber: number, loop: Loop, fluid: LoopFluid, loadW: number, model: SlipModel): Balance {
  const { leg, wetReturn, roughnessM } = loop
  const { liquidDensity, vaporDensity } = fluid
  const fedFlowKgPerS = (circulationNumber * loadW) / fluid.latentHeat
  const outletQuality = 1 / circulationNumber
  const expansion = 1 / vaporDensity - 1 / liquidDensity

  const legFlux = fedFlowKgPerS / crossSection(leg.boreM)
  const legGradient = frictionGradient(legFlux, leg.boreM, roughnessM, liquidDensity, fluid.liquidViscosity)

  const coilFlux = fedFlowKgPerS / loop.circuits / crossSection(loop.circuitBoreM)
  const coilGradient = (density: number, viscosity: number) => frictionGradient(coilFlux, loop.circuitBoreM, roughnessM, density, viscosity)
  const meanGradient = meanFrictionGradient(coilGradient(liquidDensity, fluid.liquidViscosity), coilGradient(vaporDensity, fluid.vaporViscosity), outletQuality)

  const returnFlux = fedFlowKgPerS / crossSection(wetReturn.boreM)
  const returnVolume = 1 / liquidDensity + outletQuality * expansion // m³/kg
  const returnGradient = twoPhaseGradient.MSH(returnFlux, outletQuality, wetReturn.boreM, roughnessM, fluid)

  const column = (vaporShare: number, heightM: number) => (liquidDensity - vaporShare * (liquidDensity - vaporDensity)) * STANDARD_GRAVITY * heightM
  // A return that ends under the level has the drum's liquid above it; without it such a loop would run without heat.
  const submergenceM = Math.max(0, loop.levelM - loop.coilHeightM - loop.returnRiseM)

  return {
    drivingHeadPa: column(0, loop.levelM),
    legLossPa: legGradient * leg.lengthM + (leg.resistance * legFlux ** 2) / (2 * liquidDensity),
    coilFrictionPa: meanGradient * loop.circuitLengthM,
    coilAccelerationPa: coilFlux ** 2 * outletQuality * expansion,
    coilColumnPa: column(meanVoidFraction(slipModels[model](fluid), vaporDensity / liquidDensity, outletQuality), loop.coilHeightM),
    returnFrictionPa: returnGradient * wetReturn.lengthM + (wetReturn.resistance * returnFlux ** 2 * returnVolume) / 2,
    returnColumnPa: column(voidFraction(model, { ...fluid, quality: outletQuality }), loop.returnRiseM) + column(0, submergenceM),
    fedFlowKgPerS,
    legVelocity: legFlux / liquidDensity,
    returnVelocity: returnFlux * returnVolume,
  }
}

/** What flow and columns take up, Pa: in balance as much as the driving head. */
export const losses = (balance: Balance): number =>
  balance.legLossPa + balance.coilFrictionPa + balance.coilAccelerationPa + balance.coilColumnPa + balance.returnFrictionPa + balance.returnColumnPa
