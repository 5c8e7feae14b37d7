import { num, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'

/** N6 of IEC 60534-2-1 for Kv with kg/h and bar; with Cv it would be 27.3, with kPa 3.16. */
const N6 = 31.6

/** Ratio of heat capacities of air, for which valves state their xT. */
const AIR_GAMMA = 1.4

/** Expansion factor Y at a ratio of pressure drop to inlet pressure; 2/3 where the flow chokes, and beyond. */
export const expansionFactor = (dropRatio: number, chokeRatio: number): number => 1 - Math.min(dropRatio, chokeRatio) / (3 * chokeRatio)

/** Flow coefficient Kv, m3/h at 1 bar, of turbulent vapour of that density at the inlet; `limitingRatio` is xT, `gamma` the ratio of heat capacities. */
export function vaporFlowCoefficient(massFlowKgPerS: number, inletPa: number, densityKgPerM3: number, dropPa: number, limitingRatio: number, gamma: number): number {
  const chokeRatio = (gamma / AIR_GAMMA) * limitingRatio
  const ratio = Math.min(dropPa / inletPa, chokeRatio)
  return (massFlowKgPerS * 3600) / (N6 * expansionFactor(ratio, chokeRatio) * Math.sqrt(ratio * (inletPa / 1e5) * densityKgPerM3))
}

interface WrittenVapor {
  readonly massFlow: Expression
  readonly inletPa: Expression
  readonly density: Expression
  readonly drop: Expression
  readonly xT: Expression
}

/** {@link vaporFlowCoefficient} in workings. */
export function vaporFlowCoefficientSteps({ massFlow, inletPa, density, drop, xT }: WrittenVapor, gamma: number, steps: Steps): Expression {
  const chokeRatio = steps.step('Fγ xT', '-', `${num(gamma)}/${num(AIR_GAMMA)}*${xT}`)
  const ratio = steps.step('drop ratio x, at most Fγ xT', '-', `MIN(${drop}/${inletPa},${chokeRatio})`)
  return `${massFlow}*3600/(${N6}*(1-${ratio}/(3*${chokeRatio}))*SQRT(${ratio}*(${inletPa}/100000)*${density}))`
}
