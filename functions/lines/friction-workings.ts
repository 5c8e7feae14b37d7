import type { Expression } from '../workings/expression.ts'

/**
 * Churchill's Darcy friction factor times the Reynolds number, as in friction.ts: 64 in laminar flow, and so down to no flow at all.
 * The Reynolds number occurs three times: take it down as a step, or keep it short. One formula of some 120 characters.
 */
export function frictionTimesReynolds(reynolds: Expression, relativeRoughness: Expression): Expression {
  // Below Reynolds 1 the product is 64 to the last digit; the powers would overflow there, and nothing can be divided by 0.
  const flowing = `MAX(1,${reynolds})`
  return `64*(1+((2.457*LN((7/${flowing})^0.9+0.27*${relativeRoughness}))^16+(37530/${flowing})^16)^(-1.5)*(${flowing}/8)^12)^(1/12)`
}

/** Churchill's Darcy friction factor. Reynolds above 0. */
export const churchillFactor = (reynolds: Expression, relativeRoughness: Expression): Expression =>
  `${frictionTimesReynolds(reynolds, relativeRoughness)}/(${reynolds})`

/** Darcy friction factor where it no longer depends on the flow. */
export const fullyRoughFactor = (relativeRoughness: Expression): Expression => `1/(2*LOG10(${relativeRoughness}/3.7))^2`

/** Pressure lost to friction for a length, Pa/m, at a mass flux, kg/(m2·s), of 0 or more; each argument is a cell or in brackets. */
export const frictionGradientOf = (massFlux: Expression, boreM: Expression, roughnessM: Expression, density: Expression, viscosity: Expression): Expression =>
  `${frictionTimesReynolds(`${massFlux}*${boreM}/${viscosity}`, `${roughnessM}/${boreM}`)}*${viscosity}*${massFlux}/(2*${density}*${boreM}^2)`

/** Müller-Steinhagen and Heck's gradient from those of the whole flow as liquid and as vapour; each argument is a cell or in brackets. */
export const muellerSteinhagenHeckGradient = (allLiquid: Expression, allVapor: Expression, quality: Expression): Expression =>
  `((${allLiquid}+2*(${allVapor}-${allLiquid})*${quality})*(1-${quality})^(1/3)+${allVapor}*${quality}^3)`
