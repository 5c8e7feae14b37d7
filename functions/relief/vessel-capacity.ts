import { fromSi, toSi } from '../units/convert.ts'
import { findUnit } from '../units/units.ts'
import { byName, num, type Expression } from '../workings/expression.ts'

// Non-null: both stand in the table of units. The rule is in these.
const foot = findUnit('ft')!
const lbPerMinute = findUnit('lb/min')!

export const combustibleCases = ['clear', 'within 20 ft'] as const
export type Combustibles = (typeof combustibleCases)[number]

/** f of ammonia, lb/min of air for a foot of diameter and a foot of length; combustible material near the vessel raises it 2.5 times. */
const FACTOR: Readonly<Record<Combustibles, number>> = { 'clear': 0.5, 'within 20 ft': 0.5 * 2.5 }

/** Least capacity, kg/s of air, of the relief of a vessel: f D L. */
export const requiredCapacity = (outsideDiameterM: number, lengthM: number, combustibles: Combustibles): number =>
  toSi(FACTOR[combustibles] * fromSi(outsideDiameterM, foot) * fromSi(lengthM, foot), lbPerMinute)

/** The same in workings. */
export function requiredCapacityOf(outsideDiameterM: Expression, lengthM: Expression, combustibles: Expression): Expression {
  const factor = byName(combustibles, { 'clear': num(FACTOR.clear), 'within 20 ft': num(FACTOR['within 20 ft']) })
  return `${factor}*${outsideDiameterM}/${num(foot.factor)}*${lengthM}/${num(foot.factor)}*${num(lbPerMinute.factor)}`
}

/** Air at 60 °F and 14.696 psia, lb/ft3. */
const STANDARD_AIR = 0.07633

/** Flow of air, ft3/min at 60 °F and 14.696 psia. */
export const standardCubicFeetPerMinute = (airKgPerS: number): number => fromSi(airKgPerS, lbPerMinute) / STANDARD_AIR

/** The same in workings. */
export const standardCubicFeetPerMinuteOf = (airKgPerS: Expression): Expression => `${airKgPerS}/${num(lbPerMinute.factor)}/${num(STANDARD_AIR)}`
