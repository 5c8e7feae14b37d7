import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { criticalPressurePa } from '../ammonia/saturation.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'
import { byName, num, unless, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import { GREATEST_RELATIVE_ROUGHNESS } from './friction.ts'
import { frictionGradientOf, muellerSteinhagenHeckGradient } from './friction-workings.ts'
import { crossSectionOf } from './pipe-loss.ts'
import { FRIEDEL } from './two-phase-loss.ts'

type LineKey = 'massFlow' | 'bore' | 'length' | 'temperature' | 'roughness'

/** The loss of saturated liquid or vapour in a pipe, Pa, in workings; an error where PIPE.LOSS refuses. */
export function pipeLossSteps(given: Readonly<Record<LineKey | 'phase' | 'ΣK', Expression>>, steps: Steps): Expression {
  const { bore, length, phase } = given
  const isVapor = `${phase}="vapor"`
  const saturated = saturatedAt(given.temperature, steps, 'inlet')
  const pressure = steps.step('pressure at the inlet', 'Pa', saturated.pressure)
  const density = steps.step('density', 'kg/m3', `IF(${isVapor},${saturated.vaporDensity},${saturated.liquidDensity})`)
  const viscosity = steps.step('viscosity', 'Pa·s', `IF(${isVapor},${saturated.vaporViscosity},${saturated.liquidViscosity})`)
  const flux = steps.step('mass flux', 'kg/(m2·s)', `${given.massFlow}/${crossSectionOf(bore)}`)
  const passes = `OR(NOT(${isVapor}),${flux}^2<=${pressure}*${density})`
  const roughness = steps.step('roughness where the pipe is not too rough and the flow does not choke', 'm', roughnessIf(passes, given))
  const gradient = steps.step('friction gradient', 'Pa/m', frictionGradientOf(flux, bore, roughness, density, viscosity))
  const loss = steps.step('loss', 'Pa', `${gradient}*${length}+${given.ΣK}*${flux}^2/(2*${density})`)
  return unless(`${loss}<=IF(${isVapor},${pressure}/2,${num(criticalPressurePa)})`, loss)
}

/** The friction loss of a mixture in a pipe, Pa, in workings; an error where WETRETURN.LOSS refuses. */
export function wetReturnLossSteps(given: Readonly<Record<LineKey | 'quality' | 'model', Expression>>, steps: Steps): Expression {
  const { bore, length, quality } = given
  const saturated = saturatedAt(given.temperature, steps, 'line')
  const pressure = steps.step('pressure', 'Pa', saturated.pressure)
  const liquid = {
    density: steps.step('liquid density', 'kg/m3', saturated.liquidDensity),
    viscosity: steps.step('liquid viscosity', 'Pa·s', saturated.liquidViscosity),
  }
  const vapor = {
    density: steps.step('vapour density', 'kg/m3', saturated.vaporDensity),
    viscosity: steps.step('vapour viscosity', 'Pa·s', saturated.vaporViscosity),
  }
  const flux = steps.step('mass flux', 'kg/(m2·s)', `${given.massFlow}/${crossSectionOf(bore)}`)
  const passes = `${flux}^2*${quality}<=${pressure}*${vapor.density}`
  const roughness = steps.step('roughness where the pipe is not too rough and the flow does not choke', 'm', roughnessIf(passes, given))
  const alone = ({ density, viscosity }: Phase) => frictionGradientOf(flux, bore, roughness, density, viscosity)
  const allLiquid = steps.step('friction gradient, all liquid', 'Pa/m', alone(liquid))
  const allVapor = steps.step('friction gradient, all vapour', 'Pa/m', alone(vapor))
  const density = steps.step('homogeneous density', 'kg/m3', `1/(${quality}/${vapor.density}+(1-${quality})/${liquid.density})`)
  const interaction = friedelInteraction({ quality, bore, flux, density, liquid, vapor, surfaceTension: saturated.surfaceTension })
  const gradient = byName(given.model, {
    MSH: muellerSteinhagenHeckGradient(allLiquid, allVapor, quality),
    Friedel: `(1-${quality})^2*${allLiquid}+${quality}^2*${allVapor}+IF(${flux}=0,0,${interaction})*${allLiquid}`,
  })
  const loss = steps.step('loss', 'Pa', `${gradient}*${length}`)
  return unless(`${loss}<=${pressure}/2`, loss)
}

interface Phase {
  readonly density: Expression
  readonly viscosity: Expression
}

interface Mixture {
  readonly quality: Expression
  readonly bore: Expression
  readonly flux: Expression
  readonly density: Expression
  readonly liquid: Phase
  readonly vapor: Phase
  readonly surfaceTension: Expression
}

/** The factor of the liquid's gradient in Friedel's third term, at a mass flux above 0. */
function friedelInteraction({ quality, bore, flux, density, liquid, vapor, surfaceTension }: Mixture): Expression {
  const viscosityRatio = `(${vapor.viscosity}/${liquid.viscosity})`
  const f = `${quality}^${FRIEDEL.quality}*(1-${quality})^${FRIEDEL.wetness}`
  const h = `(${liquid.density}/${vapor.density})^${FRIEDEL.densities}*${viscosityRatio}^${FRIEDEL.viscosities}*(1-${viscosityRatio})^${FRIEDEL.viscosityGap}`
  const froudeRoot = `(${flux}/${density}/SQRT(${num(STANDARD_GRAVITY)}*${bore}))`
  const weberRoot = `(${flux}*SQRT(${bore}/${density}/${surfaceTension}))`
  return `${FRIEDEL.factor}*${f}*${h}/(${froudeRoot}^${num(2 * FRIEDEL.froude)}*${weberRoot}^${num(2 * FRIEDEL.weber)})`
}

const roughnessIf = (passes: Expression, { roughness, bore }: Readonly<Record<'roughness' | 'bore', Expression>>): Expression =>
  unless(`AND(${roughness}<=${num(GREATEST_RELATIVE_ROUGHNESS)}*${bore},${passes})`, roughness)
