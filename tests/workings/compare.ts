import { expect } from 'vitest'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import type { Given } from '../../functions/given.ts'
import { workingsValues } from './plain-engine.ts'
import { sampleCalls, type Bounds } from './sample-calls.ts'

export interface Comparison {
  /** Relative; against the larger of the two values, or of `scale` where results pass through zero. */
  readonly tolerance?: number
  /** The size below which a difference counts by itself: the rounding of the value that the result is a small difference of. */
  readonly scale?: (call: readonly Given[]) => number
  readonly valid?: number
  readonly bounds?: Bounds
  readonly texts?: Readonly<Record<string, readonly string[]>>
}

const REFUSED_KEPT = 150

/**
 * Holds a function's workings to its computation: the same value for at least `valid` random calls with a result, an error for
 * every call that the computation refuses.
 */
export function expectWorkingsToAgree(name: string, { tolerance = 1e-9, scale = () => 0, valid = 1000, bounds = {}, texts = {} }: Comparison = {}): void {
  const definition = functionByName(name)
  if (definition === undefined) throw new Error(`there is no function ${name}`)
  const calls: (readonly Given[])[] = []
  let refused = 0
  // Arguments that have to fit each other leave many random calls refused: enough of those are kept to see that the workings refuse them too.
  for (const call of sampleCalls(definition, valid * 20, bounds, texts)) {
    const isRefused = isFault(definition.call(call))
    if (!isRefused || refused < REFUSED_KEPT) calls.push(call)
    if (isRefused) refused++
    if (calls.length >= valid + Math.min(refused, REFUSED_KEPT)) break
  }
  const results = calls.map((call) => definition.call(call))
  expect(results.filter((result) => !isFault(result)).length, `${name}: random calls with a result`).toBeGreaterThanOrEqual(valid)
  const written = workingsValues(definition, calls)
  const differing = calls
    .map((call, index) => ({ call, computed: results[index], workings: written[index] }))
    .filter(({ call, computed, workings }) => {
      if (isFault(computed)) return !(typeof workings === 'string' && workings.startsWith('#'))
      if (typeof computed !== 'number' || typeof workings !== 'number') return computed !== workings
      return !(Math.abs(computed - workings) <= tolerance * Math.max(Math.abs(computed), Math.abs(workings), scale(call)))
    })
    .map(({ call, computed, workings }) => ({ call: JSON.stringify(call), computed: isFault(computed) ? computed.message : computed, workings }))
  expect(differing.slice(0, 5), `${name}: ${differing.length} of ${calls.length} calls differ`).toEqual([])
}
