import { convert } from '../../functions/units/convert.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'

/** A quantity of ammonia at which a rule begins to apply, in the unit in which the rule states it. */
export interface MassThreshold {
  readonly value: number
  readonly unit: Unit
  readonly rule: string
}

const threshold = (value: number, code: string, rule: string): MassThreshold => {
  const unit = findUnit(code)
  if (unit === undefined) throw new RangeError(`${code} is no unit`)
  return { value, unit, rule }
}

/** By the rules as published; the quantity of the planning rule (EPCRA 302) and of COMAH from memory. */
const THRESHOLDS: readonly MassThreshold[] = [
  threshold(10_000, 'lb', '29 CFR 1910.119 (PSM) and 40 CFR 68 (RMP)'),
  threshold(15_000, 'lb', '29 CFR 1910.119 for solutions'),
  threshold(20_000, 'lb', '40 CFR 68 for solutions'),
  threshold(500, 'lb', '40 CFR 355 and 370 (EPCRA)'),
  threshold(100, 'lb', '40 CFR 302.4 and 355 (release in 24 h)'),
  threshold(50, 't', 'Directive 2012/18/EU, lower tier'),
  threshold(200, 't', 'Directive 2012/18/EU, upper tier'),
  threshold(4.5, 't', 'SOR/2019-51 (E2)'),
  threshold(10, 't', 'GB 18218-2018'),
  threshold(1.5, 't', 'ICPE 4735, authorisation'),
  threshold(150, 'kg', 'ICPE 4735, declaration'),
]

/** People print such numbers to three or two digits: 4 540 kg, 45 kg. */
const NEAR = 0.01
const EXACT = 1e-9

/** The threshold that a quantity is a rounded print of; undefined where it is none, or exactly one. */
export function imageOf(value: number, unit: Unit): MassThreshold | undefined {
  if (unit.dimension !== 'mass') return undefined
  const share = (one: MassThreshold): number => Math.abs(convert(value, unit, one.unit) / one.value - 1)
  if (THRESHOLDS.some((one) => share(one) <= EXACT)) return undefined
  return THRESHOLDS.find((one) => share(one) <= NEAR && isOtherSystem(one.unit, unit))
}

/** Pounds and kilograms: within one system nothing needs to be rounded. */
const isOtherSystem = (one: Unit, other: Unit): boolean => isPounds(one) !== isPounds(other)
const isPounds = ({ code }: Unit): boolean => code === 'lb' || code === 'ton'
