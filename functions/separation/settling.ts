import { dragLaws, type DragLaw } from './drag.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'

/*
 * A rigid sphere falling steadily through vapour: weight less buoyancy equals drag. With ln Re as unknown both questions, how fast
 * and how large, are one equation, ln C(Re) + n ln Re = known, whose left side rises or falls throughout.
 */

/**
 * Terminal velocity of a droplet, m/s.
 *
 * @param diameterM diameter, m, above 0
 * @param liquidDensity of the droplet, kg/m3, above that of the vapour
 * @param vaporDensity kg/m3
 * @param vaporViscosityPas Pa s
 */
export function terminalVelocity(
  diameterM: number, liquidDensity: number, vaporDensity: number, vaporViscosityPas: number, law: DragLaw,
): number {
  // C Re² holds no velocity.
  const known = (4 * STANDARD_GRAVITY * diameterM ** 3 * vaporDensity * (liquidDensity - vaporDensity)) / (3 * vaporViscosityPas ** 2)
  const root = Math.sqrt(known)
  const start = (2 * root) / (VISCOUS + Math.sqrt(VISCOUS ** 2 + 4 * INERTIAL * root))
  const reynolds = solveReynolds(law, 2, known, start ** 2)
  return (reynolds * vaporViscosityPas) / (vaporDensity * diameterM)
}

/**
 * Diameter of the droplet whose terminal velocity is the given one, m: inverse of {@link terminalVelocity}.
 *
 * @param velocityMps m/s, above 0
 * @param liquidDensity of the droplet, kg/m3, above that of the vapour
 * @param vaporDensity kg/m3
 * @param vaporViscosityPas Pa s
 */
export function terminalDiameter(
  velocityMps: number, liquidDensity: number, vaporDensity: number, vaporViscosityPas: number, law: DragLaw,
): number {
  // C/Re holds no diameter.
  const known = (4 * STANDARD_GRAVITY * vaporViscosityPas * (liquidDensity - vaporDensity)) / (3 * vaporDensity ** 2 * velocityMps ** 3)
  const root = Math.sqrt(known)
  const start = (2 * root) / (INERTIAL + Math.sqrt(INERTIAL ** 2 + 4 * VISCOUS * root))
  const reynolds = solveReynolds(law, -1, known, start ** -2)
  return (reynolds * vaporViscosityPas) / (vaporDensity * velocityMps)
}

// Dallavalle's drag law, C = (0.63 + 4.8/√Re)², can be solved for Re by a quadratic: a start within a third of the root.
export const INERTIAL = 0.63
export const VISCOUS = 4.8

/** Ten steps leave less than 1e-13 of any law's root. Their number is fixed so that the computation can be written out step by step. */
export const STEPS = 10

/** How far to either side of the start, in ln Re, its slope is taken. */
export const SLOPE_REACH = 0.1

/** The Reynolds number at which C(Re)·Reⁿ has the known value. */
function solveReynolds(law: DragLaw, power: 2 | -1, known: number, start: number): number {
  const drag = dragLaws[law]
  const excess = (lnReynolds: number) => Math.log(drag(Math.exp(lnReynolds))) + power * lnReynolds - Math.log(known)

  let lnReynolds = Math.log(start)
  // One slope serves all steps: in ln Re the equation is nearly straight.
  const slope = (excess(lnReynolds + SLOPE_REACH) - excess(lnReynolds - SLOPE_REACH)) / (2 * SLOPE_REACH)
  for (let step = 0; step < STEPS; step++) lnReynolds -= excess(lnReynolds) / slope
  return Math.exp(lnReynolds)
}
