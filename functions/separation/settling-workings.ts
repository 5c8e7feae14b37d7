import { STANDARD_GRAVITY } from '../units/constants.ts'
import { num, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import { dragCoefficient } from './drag.ts'
import { INERTIAL, SLOPE_REACH, STEPS, VISCOUS } from './settling.ts'

/** Cells for what a droplet's fall depends on, SI. */
export type WrittenPhases = Readonly<Record<'liquidDensity' | 'vaporDensity' | 'vaporViscosity', Expression>>

const GRAVITY = num(STANDARD_GRAVITY)

/** The terminal velocity of a droplet, m/s, in workings: the steps of `terminalVelocity`. */
export function terminalVelocitySteps(
  diameterM: Expression, { liquidDensity, vaporDensity, vaporViscosity }: WrittenPhases, law: Expression, steps: Steps,
): Expression {
  const known = steps.step('C Re², which holds no velocity', '', `4*${GRAVITY}*${diameterM}^3*${vaporDensity}*(${liquidDensity}-${vaporDensity})/(3*${vaporViscosity}^2)`)
  const reynolds = reynoldsSteps(law, 2, known, `(${largerRoot(VISCOUS, INERTIAL, known)})^2`, steps)
  return `${reynolds}*${vaporViscosity}/(${vaporDensity}*${diameterM})`
}

/** The diameter of the droplet with a terminal velocity, m, in workings: the steps of `terminalDiameter`. */
export function terminalDiameterSteps(
  velocityMps: Expression, { liquidDensity, vaporDensity, vaporViscosity }: WrittenPhases, law: Expression, steps: Steps,
): Expression {
  const known = steps.step('C/Re, which holds no diameter', '', `4*${GRAVITY}*${vaporViscosity}*(${liquidDensity}-${vaporDensity})/(3*${vaporDensity}^2*${velocityMps}^3)`)
  const reynolds = reynoldsSteps(law, -1, known, `1/(${largerRoot(INERTIAL, VISCOUS, known)})^2`, steps)
  return `${reynolds}*${vaporViscosity}/(${vaporDensity}*${velocityMps})`
}

/** The positive root x of quadratic·x² + linear·x = √known, by which Dallavalle's law gives the start. */
const largerRoot = (linear: number, quadratic: number, known: Expression): Expression =>
  `2*SQRT(${known})/(${num(linear)}+SQRT(${num(linear)}^2+4*${num(quadratic)}*SQRT(${known})))`

/** The Reynolds number at which C(Re)·Reⁿ has the known value. A step in ln Re is a factor of Re, which needs no logarithm. */
function reynoldsSteps(law: Expression, power: 2 | -1, known: Expression, startingFrom: Expression, steps: Steps): Expression {
  const step = (label: string, formula: Expression) => steps.step(label, '', formula)
  const left = (at: Expression) => `(${dragCoefficient(law, at)})*${at}^${num(power)}`

  let reynolds = step('Reynolds number, start by Dallavalle’s law', startingFrom)
  const above = step('a little above it', `${reynolds}*EXP(${num(SLOPE_REACH)})`)
  const below = step('a little below it', `${reynolds}*EXP(${num(-SLOPE_REACH)})`)
  const slope = step('slope of ln(C Reⁿ) over ln Re', `LN(${left(above)}/(${left(below)}))/${num(2 * SLOPE_REACH)}`)
  for (let number = 1; number <= STEPS; number++) {
    reynolds = step(`Reynolds number, step ${number}`, `${reynolds}*(${known}/(${left(reynolds)}))^(1/${slope})`)
  }
  return reynolds
}
