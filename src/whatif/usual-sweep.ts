import { fromSi, toSi } from '../../functions/units/convert.ts'
import type { Unit } from '../../functions/units/units.ts'
import type { Bounds } from './bounds.ts'

/** 18 Δ°F both ways. */
const REACH_K = 10
/** Some 15 psi both ways: a gauge pressure has no zero of which a share could be taken. */
const REACH_PA = 100_000

/** Over which numbers an input is swept for someone who has said nothing: round what it holds. The choice is ours. */
export function usualSweep(value: number, unit: Unit | undefined): Bounds {
  if (unit?.dimension === 'temperature') {
    const kelvin = toSi(value, unit)
    return ends([kelvin - REACH_K, kelvin + REACH_K].map((one) => fromSi(one, unit)), '10 K (18 Δ°F) to either side')
  }
  if (unit?.gauge === true) return ends([value - Math.abs(REACH_PA / unit.factor), value + Math.abs(REACH_PA / unit.factor)], '1 bar (15 psi) to either side')
  if (unit?.dimension === 'temperature difference') return ends(value === 0 ? [0, REACH_K / unit.factor] : [0, 2 * value], value === 0 ? 'up to 10 ΔK (18 Δ°F)' : 'nothing to twice what the input holds')
  if (unit?.code === '%' && value >= 0 && value <= 100) return ends([0, 100], '0 to 100 %')
  if (value === 0) return ends([-10, 10], 'the input is 0, which gives no measure: 10 to either side')
  return ends([value / 2, value * 2], 'a half to twice what the input holds')
}

function ends(numbers: readonly number[], why: string): Bounds {
  const [one = 0, other = 0] = numbers.map((number) => Number(number.toPrecision(4)))
  return { from: Math.min(one, other), to: Math.max(one, other), why }
}
