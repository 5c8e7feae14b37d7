import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { GREATEST_RELATIVE_ROUGHNESS } from '../lines/friction.ts'
import { frictionTimesReynolds } from '../lines/friction-workings.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'
import { byName, num, unless, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import type { Balance, SlipModel } from './balance.ts'
import type { LoopRows } from './loop-block.ts'

export type WrittenRows = { readonly [K in keyof LoopRows]: Expression }

/** Each term of `balanceAt` as a formula of the circulation number N; columns hold whatever does not depend on it. */
type BalanceWorkings = { readonly [K in keyof Balance]: (circulationNumber: Expression) => Expression }

export function balanceSteps(given: WrittenRows, model: Expression, steps: Steps): BalanceWorkings {
  const { load, circuits, 'coil height': coilHeight, 'return rise': returnRise, 'level above coil bottom': level } = given
  const saturated = saturatedAt(given['drum temperature'], steps, 'drum')
  const density = steps.step('density of the liquid', 'kg/m3', saturated.liquidDensity)
  const vaporDensity = steps.step('density of the vapour', 'kg/m3', saturated.vaporDensity)
  const liquid: Phase = { name: 'liquid', density, viscosity: steps.step('viscosity of the liquid', 'Pa·s', saturated.liquidViscosity) }
  const vapor: Phase = { name: 'vapour', density: vaporDensity, viscosity: steps.step('viscosity of the vapour', 'Pa·s', saturated.vaporViscosity) }
  const boiled = steps.step('evaporated flow', 'kg/s', `${load}/(${saturated.vaporEnthalpy}-${saturated.liquidEnthalpy})`)
  const expansion = steps.step('specific volume of vapour less that of liquid', 'm3/kg', `1/${vaporDensity}-1/${density}`)
  const slips: Readonly<Record<SlipModel, Expression>> = { Zivi: `(${density}/${vaporDensity})^(1/3)`, homogeneous: '1' }
  const k = steps.step('k = slip × density of vapour/liquid', '-', `${byName(model, slips)}*${vaporDensity}/${density}`)
  const liquidWeight = steps.step('liquid, ρ g', 'Pa/m', `${density}*${num(STANDARD_GRAVITY)}`)
  const lightening = steps.step('liquid less vapour, ρ g', 'Pa/m', `(${density}-${vaporDensity})*${num(STANDARD_GRAVITY)}`)
  const submergence = steps.step('level above the return’s end', 'm', `MAX(0,${level}-${coilHeight}-${returnRise})`)

  const bores = [given['leg bore'], given['circuit bore'], given['return bore']]
  const roughness = steps.step('roughness, at most what the narrowest bore allows', 'm',
    unless(`${given.roughness}<=${num(GREATEST_RELATIVE_ROUGHNESS)}*MIN(${bores.join(',')})`, given.roughness))
  const leg = tubeSteps('leg', boiled, given['leg bore'], given['leg length'], roughness, steps)
  const circuit = tubeSteps('circuit', `${boiled}/${circuits}`, given['circuit bore'], given['circuit length'], roughness, steps)
  const wetReturn = tubeSteps('return', boiled, given['return bore'], given['return length'], roughness, steps)
  const legAll = leg.friction(liquid)
  const circuitAll = { liquid: circuit.friction(liquid), vapor: circuit.friction(vapor) }
  const returnAll = { liquid: wetReturn.friction(liquid), vapor: wetReturn.friction(vapor) }

  // What the means along the coil are made of: 1 − u^power, u = 1 − 1/N, as in coil-means.ts.
  const drop = (n: Expression, power: string) => `(1-(1-1/${n})^(${power}))`
  const returnVolume = (n: Expression) => `(1/${density}+${expansion}/${n})`

  return {
    drivingHeadPa: () => `${liquidWeight}*${level}`,
    legLossPa: (n) => `${legAll(n)}+${given['leg ΣK']}*(${n}*${leg.flux})^2/(2*${density})`,
    coilFrictionPa: (n) =>
      `${circuitAll.liquid(n)}*${n}*(6/7*${drop(n, '7/3')}-3/4*${drop(n, '4/3')})` +
      `+${circuitAll.vapor(n)}*(2*${n}*(3/4*${drop(n, '4/3')}-3/7*${drop(n, '7/3')})+${n}^(-3)/4)`,
    coilAccelerationPa: (n) => `${circuit.flux}^2*${n}*${expansion}`,
    coilColumnPa: (n) => `${coilHeight}*(${liquidWeight}-${lightening}*(1/(1-${k})-${k}*${n}/(1-${k})^2*LN(1+(1-${k})/(${k}*${n}))))`,
    returnFrictionPa: (n) =>
      `${returnAll.liquid(n)}*(1-2/${n})*(1-1/${n})^(1/3)+${returnAll.vapor(n)}*(2/${n}*(1-1/${n})^(1/3)+${n}^(-3))` +
      `+${given['return ΣK']}*(${n}*${wetReturn.flux})^2*${returnVolume(n)}/2`,
    returnColumnPa: (n) => `${returnRise}*(${liquidWeight}-${lightening}/(1+${k}*(${n}-1)))+${liquidWeight}*${submergence}`,
    fedFlowKgPerS: (n) => `${n}*${boiled}`,
    legVelocity: (n) => `${n}*${leg.flux}/${density}`,
    returnVelocity: (n) => `${n}*${wetReturn.flux}*${returnVolume(n)}`,
  }
}

interface Phase {
  readonly name: 'liquid' | 'vapour'
  readonly density: Expression
  readonly viscosity: Expression
}

/** A tube's mass flux at N = 1, and what friction takes along it were all of the flow of one phase. */
function tubeSteps(name: string, flow: Expression, bore: Expression, length: Expression, roughness: Expression, steps: Steps) {
  const flux = steps.step(`mass flux in the ${name} at N = 1`, 'kg/(m2·s)', `${flow}/(PI()/4*${bore}^2)`)
  const relativeRoughness = steps.step(`relative roughness of the ${name}`, '-', `${roughness}/${bore}`)
  const friction = (phase: Phase) => {
    const reynolds = steps.step(`Reynolds number in the ${name} at N = 1, all ${phase.name}`, '-', `${flux}*${bore}/${phase.viscosity}`)
    const perFactor = steps.step(`friction in the ${name} at N = 1, all ${phase.name}, for f Re = 1`, 'Pa',
      `${phase.viscosity}*${flux}*${length}/(2*${phase.density}*${bore}^2)`)
    return (n: Expression): Expression => `${perFactor}*${n}*${frictionTimesReynolds(`${n}*${reynolds}`, relativeRoughness)}`
  }
  return { flux, friction }
}
