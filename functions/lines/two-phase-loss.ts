import { liquidDensity, liquidViscosity, surfaceTension, vaporDensity, vaporViscosity } from '../ammonia/saturation.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'
import { frictionGradient } from './friction.ts'

/** What the laws need to know of liquid and vapour, SI. */
export interface Mixture {
  readonly liquidDensity: number
  readonly vaporDensity: number
  readonly liquidViscosity: number
  readonly vaporViscosity: number
  readonly surfaceTension: number
}

export const saturatedMixture = (temperatureK: number): Mixture => ({
  liquidDensity: liquidDensity(temperatureK),
  vaporDensity: vaporDensity(temperatureK),
  liquidViscosity: liquidViscosity(temperatureK),
  vaporViscosity: vaporViscosity(temperatureK),
  surfaceTension: surfaceTension(temperatureK),
})

/** Friction gradient, Pa/m, at a mass flux of 0 or more and a quality from 0 (all liquid) to 1 (all vapour). */
type TwoPhaseLaw = (massFlux: number, quality: number, boreM: number, roughnessM: number, mixture: Mixture) => number

export type TwoPhaseModel = 'MSH' | 'Friedel'

export const twoPhaseGradient: Readonly<Record<TwoPhaseModel, TwoPhaseLaw>> = { MSH: muellerSteinhagenHeck, Friedel: friedel }

/** Müller-Steinhagen and Heck, Chem. Eng. Process. 20, 297 (1986). */
function muellerSteinhagenHeck(...[massFlux, quality, boreM, roughnessM, mixture]: Parameters<TwoPhaseLaw>): number {
  const { allLiquid, allVapor } = gradientsAlone(massFlux, boreM, roughnessM, mixture)
  return (allLiquid + 2 * (allVapor - allLiquid) * quality) * (1 - quality) ** (1 / 3) + allVapor * quality ** 3
}

/** The factor of Friedel's third term and the exponents of what it depends on. */
export const FRIEDEL = { factor: 3.24, quality: 0.78, wetness: 0.224, densities: 0.91, viscosities: 0.19, viscosityGap: 0.7, froude: 0.0454, weber: 0.035 } as const

/** Friedel, European Two-Phase Flow Group Meeting, Ispra (1979), for horizontal flow: the multiplier is of the whole flow as liquid. */
function friedel(...[massFlux, quality, boreM, roughnessM, mixture]: Parameters<TwoPhaseLaw>): number {
  const { liquidDensity, vaporDensity, liquidViscosity, vaporViscosity } = mixture
  const { allLiquid, allVapor } = gradientsAlone(massFlux, boreM, roughnessM, mixture)
  const viscosityRatio = vaporViscosity / liquidViscosity
  const density = 1 / (quality / vaporDensity + (1 - quality) / liquidDensity)
  // Roots of the Froude and the Weber number, since a square of a very small flow would underflow.
  const froudeRoot = massFlux / density / Math.sqrt(STANDARD_GRAVITY * boreM)
  const weberRoot = massFlux * Math.sqrt(boreM / density / mixture.surfaceTension)
  const f = quality ** FRIEDEL.quality * (1 - quality) ** FRIEDEL.wetness
  const h = (liquidDensity / vaporDensity) ** FRIEDEL.densities * viscosityRatio ** FRIEDEL.viscosities * (1 - viscosityRatio) ** FRIEDEL.viscosityGap
  const numbers = froudeRoot ** (2 * FRIEDEL.froude) * weberRoot ** (2 * FRIEDEL.weber)
  if (numbers === 0) return 0 // no flow
  const interaction = (FRIEDEL.factor * f * h) / numbers
  return (1 - quality) ** 2 * allLiquid + quality ** 2 * allVapor + interaction * allLiquid
}

/** The gradients of the same mass flux were it all liquid, and were it all vapour. */
const gradientsAlone = (massFlux: number, boreM: number, roughnessM: number, mixture: Mixture) => ({
  allLiquid: frictionGradient(massFlux, boreM, roughnessM, mixture.liquidDensity, mixture.liquidViscosity),
  allVapor: frictionGradient(massFlux, boreM, roughnessM, mixture.vaporDensity, mixture.vaporViscosity),
})
