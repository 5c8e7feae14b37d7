import { fromSi, toSi } from '../../functions/units/convert.ts'
import { formatNumber } from '../../functions/units/format.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'
import type { ProbedInput } from './probe.ts'

/** Between which numbers, in the unit of the cell, an input is looked for. */
export interface Bounds {
  readonly from: number
  readonly to: number
  /** In words, why these: for the user who gave none. */
  readonly why: string
}

/** 72 °F and 40 K both ways: from any room of a plant to the coldest suction. */
const REACH_K = 40
/** A little within where saturation properties are known, −77.6 to 100 °C (Gao et al. 2023). */
const COLDEST_K = 196.15
const WARMEST_K = 368.15
const TIMES = 10
const PRESSURE_TIMES = 5

/** Bounds for someone who has given none, from what the input holds and its unit measures. The choice is ours. */
export function usualBounds({ value, unit }: Pick<ProbedInput, 'value' | 'unit'>, sitePa: number): Bounds {
  if (unit?.dimension === 'temperature') {
    const kelvin = toSi(value, unit)
    const ends = [Math.min(kelvin, Math.max(COLDEST_K, kelvin - REACH_K)), Math.max(kelvin, Math.min(WARMEST_K, kelvin + REACH_K))].map((one) => fromSi(one, unit))
    return within(ends, `${formatNumber(REACH_K / unit.factor)} ${differenceCode(unit)} to either side, as far as ammonia’s saturation is known`)
  }
  if (unit?.dimension === 'temperature difference') {
    const reach = Math.max(REACH_K / unit.factor, 2 * Math.abs(value))
    return within(value > 0 ? [0, reach] : [-reach, reach], `up to ${formatNumber(reach)} ${unit.code}`)
  }
  if (unit?.gauge === true) {
    const absolute = toSi(value, unit, sitePa)
    return within([absolute / PRESSURE_TIMES, absolute * PRESSURE_TIMES].map((one) => fromSi(one, unit, sitePa)), `a fifth to five times the absolute pressure`)
  }
  if (unit?.code === '%' && value >= 0 && value <= 100) return within([0, 100], '0 to 100 %')
  if (value === 0) return within([-100, 100], 'the input is 0, which gives no measure: 100 to either side')
  return within([value / TIMES, value * TIMES], 'a tenth to ten times what the input holds')
}

const within = (ends: readonly number[], why: string): Bounds => ({ from: Math.min(...ends), to: Math.max(...ends), why })

const differenceCode = (unit: Unit): string => findUnit(`Δ${unit.code}`)?.code ?? (unit.code === '°R' ? 'Δ°F' : 'ΔK')
