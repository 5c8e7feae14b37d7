import { saturationReference } from '../../functions/ammonia/saturation-reference.ts'
import { saturationPressure, saturationRange } from '../../functions/ammonia/saturation.ts'
import { atLeast, millisecondsOf, sideBySide, type Figure } from './measure.ts'

const SOLVES = 2_000
const CALLS = 400_000

/** The table that formulas call against the equal-Gibbs solve that it is made from. */
export function saturation(): Figure[] {
  const { minK, maxK } = saturationRange
  const temperatures = Array.from({ length: SOLVES }, (_, i) => minK + ((maxK - minK) * i) / (SOLVES - 1))
  // A sum that is looked at keeps the calls from being left out.
  let sum = 0
  const time = sideBySide(7, {
    table: () => millisecondsOf(() => { for (let i = 0; i < CALLS; i++) sum += saturationPressure(temperatures[i % SOLVES] ?? minK) }) / CALLS,
    solve: () => millisecondsOf(() => { for (const temperatureK of temperatures) sum += saturationReference(temperatureK).pressurePa }) / SOLVES,
  })
  if (!Number.isFinite(sum)) throw new Error('a saturation pressure is not finite')
  return [atLeast(`saturation pressure: table ${(time.table * 1e6).toFixed(0)} ns a call, quicker than the equal-Gibbs solve by`, time.solve / time.table, 100)]
}
