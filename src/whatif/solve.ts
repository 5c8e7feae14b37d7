import type { Unit } from '../../functions/units/units.ts'
import type { CellValue } from '../calc/values.ts'
import { isFormula, type Workbook } from '../workbook/document.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import { usualBounds, type Bounds } from './bounds.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { cellAtPlace, placeWords } from './place.ts'
import { noNumberWords, Probe, type ProbedInput, type Reading, type Watched } from './probe.ts'
import { search, type Found, type Root } from './search.ts'
import { upstreamOf } from '../workbook/upstream.ts'

/** A number for the result to come to, in a unit or in its own; or, for a check, that it just holds. */
export type Goal = { readonly kind: 'number'; readonly number: number; readonly unit?: Unit | undefined } | { readonly kind: 'met' }

export interface SolveRequest {
  readonly by: CellPlace
  readonly target: CellPlace
  readonly goal: Goal
  /** In the unit given, or in that of the input; left out, bounds that suit what the input measures. */
  readonly within?: { readonly from: number; readonly to: number; readonly unit?: Unit | undefined }
}

/** The result at an input. */
export interface Tried {
  /** In the unit of the input's cell. */
  readonly input: number
  readonly reading: Reading
}

/** An input that does, and how. */
export type Solution =
  /** The result comes to the target. */
  | { readonly kind: 'exact'; readonly at: Tried }
  /** The result is the target from here to there, as with a size from a list. */
  | { readonly kind: 'stretch'; readonly at: Tried; readonly until: Tried }
  /** The result steps over the target: the last input before, and the smallest after it. `at` is the one after. */
  | { readonly kind: 'step'; readonly at: Tried; readonly before: Tried }
  /** The check turns here: `at` is the last input at which it holds, `beyond` the nearest at which it does not. */
  | { readonly kind: 'limit'; readonly at: Tried; readonly beyond: Tried; readonly holds: 'below' | 'above' }

export type SolveKind =
  | 'found' | 'several'
  /** No input within the bounds does; `nearest` comes closest. */
  | 'none'
  /** All of them do. */
  | 'everywhere'
  /** The result does not hang on the input, by its formulas or by its values. */
  | 'independent'
  /** The result has no number, or the check no verdict, anywhere within the bounds. */
  | 'no number'

export interface Solved {
  readonly kind: SolveKind
  readonly input: ProbedInput
  readonly target: Watched
  readonly goal: Goal
  /** What the result should come to, in the unit beside it; undefined for a check. */
  readonly wanted: number | undefined
  readonly bounds: Bounds
  /** In rising order of the input. */
  readonly solutions: readonly Solution[]
  /** Where the result comes closest, if nothing does; for a check only where it has a margin. */
  readonly nearest: Tried | undefined
  /** Whether the result rises or falls all the way between the bounds, as far as was looked. */
  readonly isMonotonic: boolean
  /** Where the result has no number or verdict, with the first reason. */
  readonly gaps: readonly { readonly from: number; readonly to: number; readonly words: string }[]
  /** Everything tried, in the order of trying. */
  readonly path: readonly Tried[]
  readonly base: Tried
}

/** At neighbouring inputs a result that runs on cannot differ by more of itself: it has stepped. */
const STEP_SHARE = 1e-7
/** A result within this of the target is there: the engine gives 15 digits. */
const EQUAL_SHARE = 1e-14

/**
 * Looks between bounds for the input that brings a result to a target, or to the point where a check just holds. The workbook is not changed.
 * @throws WorkbookProblem where input, target or bounds are not what they should be
 */
export function solve(workbook: Workbook, { by, target, goal, within }: SolveRequest): Solved {
  refuseTarget(workbook, target, goal)
  const probe = new Probe(workbook, [by], [target])
  const [input, watched] = [probe.inputs[0], probe.watched[0]]
  if (input === undefined || watched === undefined) throw new RangeError('the probe has what it was made with')
  const wanted = goal.kind === 'number' ? probe.inUnitOf(watched, goal.number, goal.unit) : undefined
  const bounds = within === undefined ? usualBounds(input, probe.sitePa()) : givenBounds(within, (number) => probe.inUnitOf(input, number, within.unit))

  const path: Tried[] = []
  const tried = new Map<number, Reading>()
  const readAt = (number: number): Reading => {
    const before = tried.get(number)
    if (before !== undefined) return before
    probe.set(new Map([[0, number]]))
    const reading = probe.readOne(0)
    tried.set(number, reading)
    path.push({ input: number, reading })
    return reading
  }
  const triedAt = (number: number): Tried => ({ input: number, reading: readAt(number) })
  const offOf = (reading: Reading): number | undefined => (wanted === undefined ? offCheck(reading) : offNumber(reading.value, wanted))

  const base = triedAt(input.value)
  const shared = { input, target: watched, goal, wanted, bounds, base, path }
  if (!hangsOn(workbook, target, by)) return { ...shared, kind: offOf(base.reading) === 0 ? 'everywhere' : 'independent', solutions: [], nearest: undefined, isMonotonic: true, gaps: [] }

  const found = search((number) => offOf(readAt(number)), bounds.from, bounds.to, [input.value])
  const tidied = (input: number): Tried => tidy(triedAt(input), triedAt, offOf)
  const solutions = found.roots.map((root) => solutionOf(root, triedAt, tidied, wanted))
  return {
    ...shared, kind: kindOf(found, solutions, wanted), solutions,
    nearest: solutions.length > 0 ? undefined : nearestOf(found, (input) => tidy(triedAt(input), triedAt, offOf, NEAREST_SHARE), wanted),
    isMonotonic: isMonotonic(found),
    gaps: found.gaps.map((gap) => ({ ...gap, words: noNumberWords(readAt(gap.from).value) })),
  }
}

function kindOf({ samples }: Found, solutions: readonly Solution[], wanted: number | undefined): SolveKind {
  const offs = samples.flatMap(({ off }) => off ?? [])
  const [first] = offs
  if (first === undefined) return 'no number'
  if (wanted === undefined ? offs.every((off) => off > 0) : offs.every((off) => off === 0)) return 'everywhere'
  if (solutions.length > 0) return solutions.length === 1 ? 'found' : 'several'
  return wanted !== undefined && offs.every((off) => off === first) ? 'independent' : 'none'
}

function solutionOf(root: Root, triedAt: (input: number) => Tried, tidied: (input: number) => Tried, wanted: number | undefined): Solution {
  if (root.kind === 'zero') return { kind: 'exact', at: tidied(root.input) }
  if (root.kind === 'stretch') return { kind: 'stretch', at: triedAt(root.from), until: triedAt(root.to) }
  const [low, high] = [triedAt(root.low), triedAt(root.high)]
  if (wanted === undefined) {
    return root.offLow > 0 ? { kind: 'limit', at: tidied(root.low), beyond: high, holds: 'below' } : { kind: 'limit', at: tidied(root.high), beyond: low, holds: 'above' }
  }
  const size = Math.max(Math.abs(wanted), Math.abs(wanted + root.offLow), Math.abs(wanted + root.offHigh))
  if (Math.abs(root.offHigh - root.offLow) > STEP_SHARE * size) return { kind: 'step', at: high, before: low }
  return { kind: 'exact', at: tidied(Math.abs(root.offLow) < Math.abs(root.offHigh) ? root.low : root.high) }
}

/**
 * The number of fewest digits next to a solution, if it does as well: 125, not 125.0000000000001. The engine takes numbers that differ by 1e-13
 * of themselves for equal, so that many neighbours do.
 */
function tidy(found: Tried, triedAt: (input: number) => Tried, offOf: (reading: Reading) => number | undefined, share = TIDY_SHARE): Tried {
  const off = offOf(found.reading)
  for (let digits = 1; digits <= MOST_TIDY_DIGITS; digits++) {
    const input = Number(found.input.toPrecision(digits))
    if (Math.abs(input - found.input) > share * Math.abs(found.input)) continue
    if (input === found.input) return found
    const other = triedAt(input)
    const otherOff = offOf(other.reading)
    const doesAsWell = typeof other.reading.value === 'boolean' ? other.reading.value : off !== undefined && otherOff !== undefined && Math.abs(otherOff) <= Math.abs(off)
    return doesAsWell ? other : found
  }
  return found
}
const TIDY_SHARE = 2e-12
/** Where a curve is flat, as at its lowest point, the place is known to half the digits. */
const NEAREST_SHARE = 1e-7
const MOST_TIDY_DIGITS = 12

/** Of a check without a margin no place is nearer than another. */
function nearestOf({ samples }: Found, triedAt: (input: number) => Tried, wanted: number | undefined): Tried | undefined {
  let best: { readonly input: number; readonly distance: number } | undefined
  for (const { input, off } of samples) {
    if (off === undefined || (wanted === undefined && off === -1)) continue
    if (best === undefined || Math.abs(off) < best.distance) best = { input, distance: Math.abs(off) }
  }
  return best && triedAt(best.input)
}

function isMonotonic({ samples }: Found): boolean {
  let [rises, falls] = [false, false]
  let before: number | undefined
  const offs = samples.flatMap(({ off }) => off ?? [])
  const noise = 1e-12 * Math.max(...offs.map(Math.abs), 0)
  for (const off of offs) {
    if (before !== undefined && off - before > noise) rises = true
    if (before !== undefined && before - off > noise) falls = true
    before = off
  }
  return !(rises && falls)
}

/** A check has 1 or −1, or its margin where it has one: never 0, since it always says which. */
function offCheck({ value, check }: Reading): number | undefined {
  if (typeof value !== 'boolean') return undefined
  const margin = check?.margin
  if (margin === undefined || Math.sign(margin) === (value ? -1 : 1)) return value ? 1 : -1
  return value ? Math.max(margin, Number.MIN_VALUE) : Math.min(margin, -Number.MIN_VALUE)
}

function offNumber(value: CellValue, wanted: number): number | undefined {
  if (typeof value !== 'number') return undefined
  const off = value - wanted
  return Math.abs(off) <= EQUAL_SHARE * Math.max(Math.abs(value), Math.abs(wanted)) ? 0 : off
}

function givenBounds({ from, to }: { readonly from: number; readonly to: number }, inCell: (number: number) => number): Bounds {
  if (!Number.isFinite(from) || !Number.isFinite(to) || from === to) throw new WorkbookProblem(`from ${from} to ${to} there is nothing to look through; accepted: two different numbers`)
  const ends = [inCell(from), inCell(to)]
  return { from: Math.min(...ends), to: Math.max(...ends), why: 'as given' }
}

function refuseTarget(workbook: Workbook, target: CellPlace, goal: Goal): void {
  const cell = cellAtPlace(workbook, target)
  const words = placeWords(workbook, target)
  if (!isFormula(cell?.content)) {
    throw new WorkbookProblem(`${words} cannot be brought to a target: it ${cell?.content == null ? 'is empty' : 'is typed in, not computed'}; accepted is a cell with a formula`)
  }
  if (goal.kind === 'met' && cell?.role !== 'check') throw new WorkbookProblem(`${words} is no check, which could be met; give the number that it should come to`)
  if (goal.kind === 'number' && cell?.role === 'check') throw new WorkbookProblem(`${words} is a check: it can be met, not come to ${goal.number}`)
  if (goal.kind === 'number' && !Number.isFinite(goal.number)) throw new WorkbookProblem(`${goal.number} is no number to come to`)
}

function hangsOn(workbook: Workbook, target: CellPlace, input: CellPlace): boolean {
  const upstream = upstreamOf(workbook, [target])
  return !upstream.isClosed || upstream.has(input)
}
