import { liquidDensity, liquidViscosity, vaporDensity, vaporViscosity } from '../ammonia/saturation.ts'
import type { Expression } from '../workings/expression.ts'
import { frictionGradient } from './friction.ts'

export type Phase = 'liquid' | 'vapor'

/** A straight pipe and how rough it is inside. */
export interface Line {
  readonly boreM: number
  readonly lengthM: number
  readonly roughnessM: number
}

export const crossSection = (boreM: number): number => (Math.PI / 4) * boreM ** 2

/** The same in workings. */
export const crossSectionOf = (boreM: Expression): Expression => `(PI()/4*${boreM}^2)`

/** Pressure loss, Pa, of saturated ammonia of the density it has at the inlet; `resistance` is the sum of the K of bends, fittings and valves. */
export function pipeLoss(massFlowKgPerS: number, line: Line, temperatureK: number, phase: Phase, resistance: number): number {
  const { density, viscosity } = phases[phase]
  const massFlux = massFlowKgPerS / crossSection(line.boreM)
  const gradient = frictionGradient(massFlux, line.boreM, line.roughnessM, density(temperatureK), viscosity(temperatureK))
  return gradient * line.lengthM + (resistance * massFlux ** 2) / (2 * density(temperatureK))
}

const phases = {
  liquid: { density: liquidDensity, viscosity: liquidViscosity },
  vapor: { density: vaporDensity, viscosity: vaporViscosity },
}
