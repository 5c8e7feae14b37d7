import { num, type Expression } from '../workings/expression.ts'

/** Molar masses, g/mol, and the rating temperature of air, 520 °R in K, as the code prints them. */
const AMMONIA = 17.03
const AIR = 28.97
const AIR_RATING_K = 520 / 1.8

/** Ratio of heat capacities of ammonia for the code's constant C. */
const GAMMA = 1.31

/** C of air as the code prints it. */
const AIR_CONSTANT = 356

/** The code's constant C for a gas, US units. */
export const nozzleConstant = (gamma: number): number => 520 * Math.sqrt(gamma * (2 / (gamma + 1)) ** ((gamma + 1) / (gamma - 1)))

/** Mass flow of saturated ammonia vapour through a valve for each unit of air it is rated for: ASME VIII, W = K A P C √(M/T). */
export const ammoniaPerAir = (relievingK: number): number =>
  (nozzleConstant(GAMMA) / AIR_CONSTANT) * Math.sqrt(((AMMONIA / AIR) * AIR_RATING_K) / relievingK)

/** The same in workings. */
export const ammoniaPerAirOf = (relievingK: Expression): Expression =>
  `${num(nozzleConstant(GAMMA))}/${AIR_CONSTANT}*SQRT(${AMMONIA}/${AIR}*${num(AIR_RATING_K)}/${relievingK})`
