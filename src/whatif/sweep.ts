import type { Unit } from '../../functions/units/units.ts'
import type { Workbook } from '../workbook/document.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import { MOST_WATCHED, Probe, type ProbedInput, type Reading, type Watched } from './probe.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { MOST_POINTS, spaced, type Spacing } from './spacing.ts'
import { refineTurn } from './turning.ts'
import { verdictOf, type Verdict } from './verdict.ts'

/** One input of a sweep. */
export interface Variation {
  readonly place: CellPlace
  readonly spacing: Spacing
  /** Of the numbers of the spacing; left out, the unit beside the input. */
  readonly unit?: Unit | undefined
}

export interface SweepRequest {
  /** One, or two: points then go along the first for each number of the second. */
  readonly vary: readonly Variation[]
  readonly watch: readonly CellPlace[]
}

/** One varied input as it turned out. */
export interface SweepAxis {
  readonly input: ProbedInput
  /** Of the numbers; undefined where the cell has none. */
  readonly unitText: string | undefined
  readonly numbers: readonly number[]
}

export interface SweepPoint {
  readonly kind: 'point'
  /** Position along each axis. */
  readonly at: readonly number[]
  /** The varied inputs, in the units of the axes. */
  readonly given: readonly number[]
  /** Of the watched cells, in their order. */
  readonly readings: readonly Reading[]
}

/** Where a check turns, between two neighbouring points along the first axis. */
export interface SweepLimit {
  readonly kind: 'limit'
  /** Position of the check among the watched cells. */
  readonly watched: number
  /** Position along the second axis; 0 where there is none. */
  readonly row: number
  /** Positions along the first axis that it lies between. */
  readonly between: readonly [before: number, after: number]
  /** What the check says before and after, in the direction of the sweep; `none`: it has no verdict there, as with an error. */
  readonly from: Verdict
  readonly to: Verdict
  /** The last number with the verdict before, and the first with the one after: as close as doubles, or 1e-9 of the distance between the points. */
  readonly last: number
  readonly first: number
}

export type SweepEvent = SweepPoint | SweepLimit

/** A sweep that is ready to run: nothing but the base is computed yet. */
export interface Sweep {
  readonly axes: readonly SweepAxis[]
  readonly watched: readonly Watched[]
  /** How many points there will be. */
  readonly count: number
  /** Computes as it is asked: a point, then the limits between it and the one before. The generator may be left at any time. */
  readonly events: () => Generator<SweepEvent, void, void>
}

/** Values that a sweep keeps. */
const MOST_VALUES = 2_000_000

/** @throws WorkbookProblem for what cannot be varied or watched, and for too much */
export function sweep(workbook: Workbook, { vary, watch }: SweepRequest): Sweep {
  if (vary.length < 1 || vary.length > 2) throw new WorkbookProblem(`${vary.length} inputs are varied; accepted: one or two`)
  if (watch.length === 0) throw new WorkbookProblem(`no cell is watched; accepted: one to ${MOST_WATCHED} results or checks`)
  const numbers = vary.map(({ spacing }) => spaced(spacing))
  const count = numbers.reduce((product, one) => product * one.length, 1)
  if (count > MOST_POINTS) throw new WorkbookProblem(`${count} points; accepted: up to ${MOST_POINTS}: take larger steps`)
  if (count * watch.length > MOST_VALUES) throw new WorkbookProblem(`${count} points of ${watch.length} watched cells; accepted: up to ${MOST_VALUES} values: take larger steps or watch fewer`)
  const probe = new Probe(workbook, vary.map(({ place }) => place), watch)
  const axes = vary.map(({ unit }, at): SweepAxis & { readonly inCell: readonly number[]; readonly unit: Unit | undefined } => {
    const input = probe.inputs[at]
    const along = numbers[at]
    if (input === undefined || along === undefined) throw new RangeError('there is an input for each variation')
    return { input, unitText: unit?.code ?? input.unitText, numbers: along, inCell: along.map((number) => probe.inUnitOf(input, number, unit)), unit }
  })
  return { axes: axes.map(({ input, unitText, numbers: along }) => ({ input, unitText, numbers: along })), watched: probe.watched, count, events }

  function* events(): Generator<SweepEvent, void, void> {
    const [first, second] = axes
    if (first === undefined) return
    const checks = probe.watched.flatMap(({ isCheck }, at) => (isCheck ? [at] : []))
    const inCell = (number: number): number => probe.inUnitOf(first.input, number, first.unit)
    try {
      for (let row = 0; row < (second?.numbers.length ?? 1); row++) {
        let before: readonly Verdict[] = []
        for (let at = 0; at < first.numbers.length; at++) {
          const numbersNow = new Map([[0, first.inCell[at] ?? Number.NaN]])
          if (second !== undefined) numbersNow.set(1, second.inCell[row] ?? Number.NaN)
          probe.set(numbersNow)
          const readings = probe.read()
          const given = [first.numbers[at] ?? Number.NaN, ...(second === undefined ? [] : [second.numbers[row] ?? Number.NaN])]
          yield { kind: 'point', at: second === undefined ? [at] : [at, row], given, readings }
          const now = readings.map(({ value }) => verdictOf(value))
          for (const check of at === 0 ? [] : checks) {
            const [from, to] = [before[check] ?? 'none', now[check] ?? 'none']
            if (from === to) continue
            const [low, high] = [first.numbers[at - 1] ?? Number.NaN, first.numbers[at] ?? Number.NaN]
            const turn = refineTurn(low, high, (number) => {
              probe.set(new Map([[0, inCell(number)]]))
              return verdictOf(probe.valueOf(check)) === from
            })
            yield { kind: 'limit', watched: check, row, between: [at - 1, at], from, to, ...turn }
          }
          before = now
        }
      }
    } finally {
      probe.restore()
    }
  }
}

/** A sweep that has run: points in the order of computation (along the first axis, row by row), and limits. */
export interface Swept {
  readonly axes: readonly SweepAxis[]
  readonly watched: readonly Watched[]
  readonly points: readonly SweepPoint[]
  readonly limits: readonly SweepLimit[]
}

/**
 * Runs a sweep to its end.
 * @param pause awaited after each event: lets others have their turn, and may throw to stop
 */
export async function runSweep(ready: Sweep, pause: (points: number) => Promise<void> | undefined = () => undefined): Promise<Swept> {
  const points: SweepPoint[] = []
  const limits: SweepLimit[] = []
  for (const event of ready.events()) {
    if (event.kind === 'point') points.push(event)
    else limits.push(event)
    const paused = pause(points.length)
    if (paused !== undefined) await paused
  }
  return { axes: ready.axes, watched: ready.watched, points, limits }
}
