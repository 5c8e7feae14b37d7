import type { CellAddress } from '../workbook/address.ts'
import { isFormula, type Cell, type Sheet } from '../workbook/document.ts'
import { shifter } from '../workbook/formula/references.ts'
import { sameFormula } from './plain-formula.ts'
import { formulaSkeleton } from './sheet-outline.ts'

/** A cell that is not as its neighbours in a column or row of cells that were filled from one. */
export interface OddOne {
  readonly sheet: Sheet
  readonly row: number
  readonly column: number
  readonly cell: Cell
  /** The neighbour, where it stands, and its formula as it would stand in the cell. */
  readonly neighbour: Cell
  readonly at: CellAddress
  readonly expected: string
  readonly way: Way
  /** False at either end of them, where only one side can be compared with. */
  readonly isBetween: boolean
}

/** Along which cells were filled. */
export type Way = 'down' | 'across'

/** A cell on the way down or across. */
export interface Step {
  readonly sheet: Sheet
  readonly row: number
  readonly column: number
  /** Its place along the way. */
  readonly at: number
  readonly cell: Cell
  readonly shape: string | undefined
}

export interface OddStep {
  readonly step: Step
  readonly odd: OddOne
}

/** So many alike make a column of one formula, between them or at its end; and no more than so many may differ. */
const LEAST_BETWEEN = 3
const LEAST_AT_END = 4
const MOST_ODD = 2
/** Where one in five is typed, values are given for some and computed for others by design. */
const TYPED_SHARE = 5

/** The cells of a column or a row that are unlike both their neighbours, where these are alike, or unlike the others at an end of them. */
export function oddAlong(way: readonly Step[], direction: Way): OddStep[] {
  const gap = direction === 'down' ? 1 : gapAcross(way)
  return segments(way, gap).flatMap((segment) => {
    if (segment.length <= LEAST_BETWEEN) return []
    const runs = runsOf(segment)
    if (runs.length < 2) return []
    const counts = new Map<number | undefined, number>()
    for (const { class: one, steps } of runs) counts.set(one, (counts.get(one) ?? 0) + steps.length)
    return runs.flatMap((run, index) => oddRun(run, index, runs, counts, direction))
  })
}

/** Cells after one another that have the same formula, moved along. */
interface Run {
  readonly steps: Step[]
  /** Undefined for typed values. */
  readonly class: number | undefined
}

/** Values stand in every column, or in every second one with their units between. */
const gapAcross = (way: readonly Step[]): number => (way.every((step, index) => index === 0 || step.at - (way[index - 1]?.at ?? 0) >= 2) ? 2 : 1)

function segments(way: readonly Step[], gap: number): Step[][] {
  const found: Step[][] = []
  for (const step of way) {
    const last = found.at(-1)
    if (last !== undefined && step.at - (last.at(-1)?.at ?? 0) === gap) last.push(step)
    else found.push([step])
  }
  return found
}

/** How many formulas a new one is compared with: sheets where each row has its own have as many as rows. */
const CLASSES_COMPARED = 6

function runsOf(segment: readonly Step[]): Run[] {
  const classes: { readonly first: Step; readonly shapes: Set<string> }[] = []
  const classOf = (step: Step): number | undefined => {
    const { shape } = step
    if (shape === undefined) return undefined
    const from = Math.max(0, classes.length - CLASSES_COMPARED)
    let found = classes.findLastIndex(({ shapes }) => shapes.has(shape))
    if (found < 0) found = classes.findIndex(({ first }, index) => index >= from && isSameMoved(first, step))
    if (found < 0) return classes.push({ first: step, shapes: new Set([shape]) }) - 1
    classes[found]?.shapes.add(shape)
    return found
  }
  const runs: Run[] = []
  for (const step of segment) {
    const one = classOf(step)
    const last = runs.at(-1)
    if (last !== undefined && last.class === one) last.steps.push(step)
    else runs.push({ steps: [step], class: one })
  }
  return runs
}

/** A `$` more or less changes the shape, but not what the formula says along its column or row. */
const isSameMoved = (one: Step, other: Step): boolean =>
  isFormula(other.cell.content) && isBuiltAlike(one, other) && sameFormula(movedTo(one, other), other.cell.content, one.sheet.name)

const isBuiltAlike = ({ cell: { content: one } }: Step, { cell: { content: other } }: Step): boolean =>
  isFormula(one) && isFormula(other) && formulaSkeleton(one) === formulaSkeleton(other)

const movedTo = (from: Step, to: Step): string => (isFormula(from.cell.content) ? shifter(from.cell.content)(to.row - from.row, to.column - from.column) : '')

function oddRun(run: Run, index: number, runs: readonly Run[], counts: ReadonlyMap<number | undefined, number>, way: Way): OddStep[] {
  const { steps, class: own } = run
  // What comes again and again is a pattern.
  const alike = counts.get(own) ?? 0
  if (steps.length > MOST_ODD || (alike > MOST_ODD && (own !== undefined || alike * TYPED_SHARE > totalOf(counts)))) return []
  const frame = frameOf(index, runs)
  if (frame === undefined) return []
  const { neighbour, isBetween } = frame
  return steps.flatMap((step) => {
    // At an end a total, or the first of a running sum, is another formula by right: only one built alike is likely to be meant as the others.
    if (!isBetween && step.shape !== undefined && !isBuiltAlike(step, neighbour)) return []
    const { sheet, row, column, cell } = step
    return [{ step, odd: { sheet, row, column, cell, neighbour: neighbour.cell, at: { row: neighbour.row, column: neighbour.column }, expected: movedTo(neighbour, step), way, isBetween } }]
  })
}

const totalOf = (counts: ReadonlyMap<number | undefined, number>): number => [...counts.values()].reduce((sum, count) => sum + count, 0)

/** The cell that an odd run is held against: where the same formula goes on on both sides of it, or of it and another odd one, or where it ends with it. */
function frameOf(index: number, runs: readonly Run[]): { readonly neighbour: Step; readonly isBetween: boolean } | undefined {
  for (const [start, end] of [[index - 1, index + 1], [index - 1, index + 2], [index - 2, index + 1]] as const) {
    const [before, after] = [runs[start], runs[end]]
    const neighbour = before?.steps.at(-1)
    const odd = runs.slice(Math.max(0, start + 1), end).reduce((sum, { steps }) => sum + steps.length, 0)
    if (neighbour === undefined || before?.class === undefined || before.class !== after?.class || odd > MOST_ODD) continue
    if (before.steps.length + after.steps.length >= LEAST_BETWEEN) return { neighbour, isBetween: true }
  }
  const beside = index === 0 ? runs[1] : index === runs.length - 1 ? runs[index - 1] : undefined
  const neighbour = index === 0 ? beside?.steps[0] : beside?.steps.at(-1)
  return neighbour === undefined || beside?.class === undefined || beside.steps.length < LEAST_AT_END ? undefined : { neighbour, isBetween: false }
}
