import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

/** One line of the table: what was measured, the figure, and what it should reach. */
export interface Figure {
  readonly what: string
  readonly figure: string
  readonly reach: string
  readonly met: boolean | undefined
}

/** Milliseconds that a call takes. */
export function millisecondsOf(run: () => unknown): number {
  const start = performance.now()
  run()
  return performance.now() - start
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = (sorted.length - 1) / 2
  return ((sorted[Math.floor(middle)] ?? Number.NaN) + (sorted[Math.ceil(middle)] ?? Number.NaN)) / 2
}

/**
 * The median time of each of several things, measured in turn over and over, so that whatever else the machine does falls on all of them.
 * `Sample` returns the milliseconds of what counts, set-up left out.
 */
export function sideBySide<const Name extends string>(rounds: number, samples: Readonly<Record<Name, () => number>>): Record<Name, number> {
  const names = Object.keys(samples) as Name[] // the keys are the names
  const times = new Map<Name, number[]>(names.map((name) => [name, []]))
  for (let round = -1; round < rounds; round++) {
    // To and fro, and swept before each: what one leaves behind is not another's cost.
    for (const name of round % 2 === 0 ? names : names.toReversed()) {
      collect()
      const time = samples[name]()
      // The first round warms up.
      if (round >= 0) times.get(name)?.push(time)
    }
  }
  return Object.fromEntries(names.map((name) => [name, median(times.get(name) ?? [])])) as Record<Name, number>
}

// The collector can be called from a context that is made after the flag is set.
setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void

/** Bytes in use after what is no longer needed is gone. */
export function bytesInUse(): number {
  collect()
  return process.memoryUsage().heapUsed
}

export const times = (ratio: number): string => `${ratio.toFixed(ratio < 10 ? 2 : 0)} ×`

export const atMost = (what: string, ratio: number, most: number): Figure => ({ what, figure: times(ratio), reach: `≤ ${most} ×`, met: ratio <= most })
export const atLeast = (what: string, ratio: number, least: number): Figure => ({ what, figure: times(ratio), reach: `≥ ${least} ×`, met: ratio >= least })
export const justSo = (what: string, figure: string): Figure => ({ what, figure, reach: '', met: undefined })
