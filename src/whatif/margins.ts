import { isFormula, type Workbook } from '../workbook/document.ts'
import type { GivenTolerance, Tolerance } from '../workbook/given-tolerances.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { cellAtPlace, placeWords } from './place.ts'
import { MOST_INPUTS, noNumberWords, Probe, type ProbedInput, type Watched } from './probe.ts'
import { toleranceSize, usualTolerance } from './tolerances.ts'
import { upstreamOf } from '../workbook/upstream.ts'

/** What the result does when one input goes to one end of its tolerance. */
export interface Move {
  /** In the unit of the input's cell. */
  readonly input: number
  /** The result there, and by how much it differs from the base; undefined where it is no number. */
  readonly result: number | undefined
  readonly change: number | undefined
  /** What keeps the result from being a number. */
  readonly words?: string
}

/** One input with what it does to the result. */
export interface Margin {
  readonly input: ProbedInput
  readonly tolerance: Tolerance
  /** Where the tolerance comes from; undefined where the caller gave it. */
  readonly source: string | undefined
  readonly less: Move
  readonly more: Move
  /** The larger of both changes, without sign; an end at which the result is no number does not count. */
  readonly reach: number
}

export interface Margins {
  readonly target: Watched
  readonly base: number
  /** Inputs that move the result or make it fail, those that move it most first. */
  readonly moving: readonly Margin[]
  /** Inputs upstream that do not move it within their tolerance, in the order of the sheets. */
  readonly still: readonly Margin[]
  /** Root of the sum of the squares of the largest rises, and of the largest falls: what to expect where inputs are off independently (GUM, JCGM 100:2008, 5.1.2). */
  readonly rootSumSquare: Spread
  /** Sum of the largest rises, and of the largest falls: the most, were each as bad as it may be and none minded the others. */
  readonly sum: Spread
  /** The result itself with every input at its end that raises it, and at the one that lowers it; undefined where it is no number. */
  readonly together: { readonly up: number | undefined; readonly down: number | undefined }
  /** Inputs of which an end makes the result no number: that end is missing in the sums. */
  readonly failing: number
}

/** Changes of the result: `up` is at least 0, `down` at most. */
export interface Spread {
  readonly up: number
  readonly down: number
}

/** Margins that are ready to be computed. */
export interface MarginsReady {
  readonly target: Watched
  readonly base: number
  /** Numbers upstream of the result, each with the tolerance that counts. */
  readonly inputs: readonly { readonly input: ProbedInput; readonly tolerance: Tolerance; readonly source: string | undefined }[]
  /** Gives each input's margin as it is computed, at last all of them together. May be left at any time. */
  readonly run: () => Generator<Margin, Margins, void>
}

/** A change this small a share of the result is the arithmetic's own. */
const NOTHING = 1e-13

/**
 * Which inputs move a result, and by how much when each is off by its tolerance. All typed numbers that the result hangs on through formulas
 * and names are inputs to it.
 * @param given tolerances that the user has given inputs; those that the workbook keeps, unless told otherwise
 * @throws WorkbookProblem if the result is no formula that comes to a number, or hangs on too many inputs
 */
export function margins(workbook: Workbook, target: CellPlace, given: readonly GivenTolerance[] = workbook.tolerances ?? []): MarginsReady {
  if (!isFormula(cellAtPlace(workbook, target)?.content)) throw new WorkbookProblem(`${placeWords(workbook, target)} is no formula: nothing moves it; accepted is a result`)
  const places = upstreamOf(workbook, [target]).places().filter((place) => isNumberInput(workbook, place))
  if (places.length > MOST_INPUTS) throw new WorkbookProblem(`${placeWords(workbook, target)} hangs on ${places.length} inputs; accepted: up to ${MOST_INPUTS}`)
  const probe = new Probe(workbook, places, [target])
  const [watched] = probe.watched
  const value = probe.valueOf(0)
  if (watched === undefined) throw new RangeError('the probe has what it was made with')
  if (typeof value !== 'number') throw new WorkbookProblem(`${placeWords(workbook, target)} comes to no number: ${noNumberWords(value)}; accepted is a result that is one`)
  const own = new Map(given.map(({ place, tolerance }) => [keyOf(place), tolerance]))
  const inputs = probe.inputs.map((input) => {
    const known = own.get(keyOf(input))
    return known === undefined ? { input, ...usualTolerance(input.value, input.unit) } : { input, tolerance: known, source: undefined }
  })
  return { target: watched, base: value, inputs, run: () => runMargins(probe, watched, value, inputs) }
}

function* runMargins(probe: Probe, target: Watched, base: number, inputs: MarginsReady['inputs']): Generator<Margin, Margins, void> {
  const all: Margin[] = []
  try {
    for (const [at, one] of inputs.entries()) {
      const size = toleranceSize(one.tolerance, one.input.value)
      const less = moveTo(probe, at, one.input.value - size, base)
      const more = moveTo(probe, at, one.input.value + size, base)
      probe.set(new Map([[at, one.input.value]]))
      const reach = Math.max(...[less, more].map(({ change }) => (Math.abs(change ?? 0))))
      const margin = { ...one, less, more, reach }
      all.push(margin)
      yield margin
    }
    const isStill = (margin: Margin): boolean => margin.reach <= NOTHING * Math.abs(base) && !fails(margin)
    const moving = all.filter((margin) => !isStill(margin))
    const rises = moving.map(({ less, more }) => Math.max(0, less.change ?? 0, more.change ?? 0))
    const falls = moving.map(({ less, more }) => Math.min(0, less.change ?? 0, more.change ?? 0))
    return {
      target, base,
      moving: moving.toSorted((one, other) => other.reach - one.reach),
      still: all.filter(isStill),
      rootSumSquare: { up: Math.hypot(...rises), down: -Math.hypot(...falls) + 0 },
      sum: { up: total(rises), down: total(falls) },
      together: { up: allAtOnce(probe, all, isStill, 1), down: allAtOnce(probe, all, isStill, -1) },
      failing: moving.filter(fails).length,
    }
  } finally {
    probe.restore()
  }
}

const fails = ({ less, more }: Margin): boolean => less.result === undefined || more.result === undefined

function moveTo(probe: Probe, at: number, input: number, base: number): Move {
  probe.set(new Map([[at, input]]))
  const value = probe.valueOf(0)
  if (typeof value !== 'number') return { input, result: undefined, change: undefined, words: noNumberWords(value) }
  return { input, result: value, change: value - base }
}

/** The result where each input stands at the end that moves it in one direction; the others stay. */
function allAtOnce(probe: Probe, all: readonly Margin[], isStill: (margin: Margin) => boolean, direction: 1 | -1): number | undefined {
  const ends = new Map<number, number>()
  for (const [at, margin] of all.entries()) {
    ends.set(at, margin.input.value)
    if (isStill(margin)) continue
    const best = [margin.less, margin.more].toSorted((one, other) => ((other.change ?? 0) - (one.change ?? 0)) * direction)[0]
    if (best?.change !== undefined && best.change * direction > 0) ends.set(at, best.input)
  }
  probe.set(ends)
  const value = probe.valueOf(0)
  return typeof value === 'number' ? value : undefined
}

/** Runs margins to their end. @param pause awaited after each input; may throw to stop */
export async function runAllMargins(ready: MarginsReady, pause: (inputs: number) => Promise<void> | undefined = () => undefined): Promise<Margins> {
  const run = ready.run()
  for (let count = 1; ; count++) {
    const next = run.next()
    if (next.done === true) return next.value
    const paused = pause(count)
    if (paused !== undefined) await paused
  }
}

const isNumberInput = (workbook: Workbook, place: CellPlace): boolean => {
  const cell = cellAtPlace(workbook, place)
  return cell?.role === 'input' && typeof cell.content === 'number'
}

const keyOf = ({ sheet, row, column }: CellPlace): string => `${sheet.toLowerCase()}!${row}:${column}`

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
