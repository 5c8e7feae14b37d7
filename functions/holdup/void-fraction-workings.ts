import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'
import { byName, num, unless, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import { voidConstants, type Powers, type VoidModel } from './void-fraction.ts'

interface WrittenFlow {
  readonly quality: Expression
  readonly temperature: Expression
  readonly model: Expression
  /** Empty texts where omitted. */
  readonly massFlux: Expression
  readonly bore: Expression
}

/** Share of a line's cross-section that vapour takes, by each of the models; an error where one lacks the mass flux or bore it needs. */
export function voidFractionSteps({ quality: x, temperature, model, massFlux: givenFlux, bore: givenBore }: WrittenFlow, steps: Steps): Expression {
  const ammonia = saturatedAt(temperature, steps)
  const liquidDensity = steps.step('density of the liquid', 'kg/m3', ammonia.liquidDensity)
  const vaporDensity = steps.step('density of the vapour', 'kg/m3', ammonia.vaporDensity)
  const liquidViscosity = steps.step('viscosity of the liquid', 'Pa·s', ammonia.liquidViscosity)
  const vaporViscosity = steps.step('viscosity of the vapour', 'Pa·s', ammonia.vaporViscosity)
  const tension = steps.step('surface tension', 'N/m', ammonia.surfaceTension)
  const ratio = steps.step('ratio of the densities', '', `${liquidDensity}/${vaporDensity}`)
  const massFlux = unless(`${givenFlux}<>""`, givenFlux)
  const bore = unless(`${givenBore}<>""`, givenBore)

  const slipping = (slip: Expression) => `${x}*${ratio}/(${x}*${ratio}+${slip}*(1-${x}))`
  const separated = ({ factor, qualityPower, densityPower, viscosityPower }: Powers) =>
    `IF(${x}=0,0,1/(1+${num(factor)}*((1-${x})/${x})^${num(qualityPower)}*${ratio}^${num(-densityPower)}*(${liquidViscosity}/${vaporViscosity})^${num(viscosityPower)}))`
  const drifting = ({ spread }: { spread: number }) => {
    const drift = `${num(voidConstants.drift)}*(1-${x})*(${num(STANDARD_GRAVITY)}*${tension}*(${liquidDensity}-${vaporDensity}))^0.25/SQRT(${liquidDensity})`
    return `${x}/${vaporDensity}/((1+${num(spread)}*(1-${x}))*(${x}/${vaporDensity}+(1-${x})/${liquidDensity})+${drift}/${massFlux})`
  }
  const premoli = () => {
    const step = (label: string, formula: Expression) => steps.step(`Premoli: ${label}`, '', `IF(${model}="Premoli",${formula},0)`)
    const reynolds = step('Reynolds number', `${massFlux}*${bore}/${liquidViscosity}`)
    const weber = step('Weber number', `${massFlux}^2*${bore}/(${tension}*${liquidDensity})`)
    const [e1, e2] = [voidConstants.Premoli.first, voidConstants.Premoli.second]
    const first = step('E1', `${num(e1.factor)}*${reynolds}^${num(e1.reynoldsPower)}*${ratio}^${num(e1.densityPower)}`)
    const second = step('E2', `${num(e2.factor)}*${weber}*${reynolds}^${num(e2.reynoldsPower)}*${ratio}^${num(e2.densityPower)}`)
    const y = step('vapour to liquid by volume without slip', `IF(${x}=1,0,${x}*${ratio}/(1-${x}))`)
    return slipping(`(1+${first}*SQRT(MAX(0,${y}/(1+${y}*${second})-${y}*${second})))`)
  }

  const entrained = num(voidConstants.Smith.entrained)
  const models: Readonly<Record<VoidModel, Expression>> = {
    Zivi: slipping(`${ratio}^(1/3)`),
    homogeneous: slipping('1'),
    Chisholm: slipping(`SQRT(1-${x}*(1-${ratio}))`),
    Smith: slipping(`(${entrained}+(1-${entrained})*SQRT((${x}*${ratio}+${entrained}*(1-${x}))/(${x}+${entrained}*(1-${x}))))`),
    Baroczy: separated(voidConstants.Baroczy),
    Lockhart: separated(voidConstants.Lockhart),
    Rouhani: drifting(voidConstants.Rouhani),
    Steiner: drifting(voidConstants.Steiner),
    Premoli: premoli(),
  }
  return byName(model, models)
}
