import type { LineShift } from '../../workbook/formula/line-references.ts'
import type { RowRun } from '../../workbook/row-alignment.ts'

/** Which line of a sheet before is which line now. Plain data. */
export interface LineRuns {
  /** In order; lines of no run are gone or inserted. The last goes on for good: beyond it nothing moves. */
  readonly runs: readonly RowRun[]
  /** How many lines each side has, up to the last one that holds something. */
  readonly before: number
  readonly now: number
}

/** Lines that are on one side only. */
export interface LoneLines {
  readonly side: 'before' | 'now'
  /** The first of them, on their side. */
  readonly at: number
  readonly count: number
  /** Where they would begin on the other side. */
  readonly other: number
  /** They come after the last line that both sides have: that they are there moves no other. */
  readonly beyond: boolean
}

/** The last run reaches as far as both sides do. */
export function lineRuns(runs: readonly RowRun[], before: number, now: number): LineRuns {
  const last = runs.at(-1) ?? { old: 0, now: 0, count: 1 }
  return { runs: [...runs.slice(0, -1), { ...last, count: Math.max(last.count, Math.min(before - last.old, now - last.now)) }], before, now }
}

/** The same seen from the other side. */
export const mirrored = ({ runs, before, now }: LineRuns): LineRuns => ({ runs: runs.map(({ old, now: at, count }) => ({ old: at, now: old, count })), before: now, now: before })

/** Lines of one side only, from the top down; of a place where some are gone and others came, those that are gone first. */
export function loneLines({ runs, before, now }: LineRuns): LoneLines[] {
  const found: LoneLines[] = []
  let [old, at] = [0, 0]
  for (const run of runs) {
    if (run.old > old) found.push({ side: 'before', at: old, count: run.old - old, other: at, beyond: false })
    if (run.now > at) found.push({ side: 'now', at, count: run.now - at, other: run.old, beyond: false })
    ;[old, at] = [run.old + run.count, run.now + run.count]
  }
  if (before > old) found.push({ side: 'before', at: old, count: before - old, other: at, beyond: true })
  if (now > at) found.push({ side: 'now', at, count: now - at, other: old, beyond: true })
  return found
}

/** A way from lines of one side to lines of another. */
export interface LineMap {
  /** Undefined if the line is gone. */
  line(line: number): number | undefined
  /** What becomes of the lines of a reference: of those that are gone, the next ones that are there take the place; null where none is. */
  readonly shift: LineShift
}

/** From before to now. */
export const forward = ({ runs }: LineRuns): LineMap => mapOf(runs)

/**
 * What both sides have, counted by itself: the way there from before and from now. Two ranges that come to the same there differ by lone lines only.
 * @param closed takes lines beyond the last one of both sides as inserted or taken away, where else they are taken as filled or emptied
 */
export function toCommon({ runs, before, now }: LineRuns, closed: boolean): { readonly before: LineMap; readonly now: LineMap } {
  const last = runs.at(-1)
  const all = closed && last ? [...runs, { old: Math.max(before, last.old + last.count), now: Math.max(now, last.now + last.count), count: 1 }] : runs
  let common = 0
  const counted = all.map((run) => {
    const at = common
    common += run.count
    return { run, at }
  })
  return {
    before: mapOf(counted.map(({ run, at }) => ({ old: run.old, now: at, count: run.count }))),
    now: mapOf(counted.map(({ run, at }) => ({ old: run.now, now: at, count: run.count }))),
  }
}

/** Whether lines beyond the last one of both sides are on one side only, so that they may have been deleted or merely emptied. */
export const hasLinesBeyond = (lines: LineRuns): boolean => loneLines(lines).at(-1)?.beyond === true

/** Nothing is gone, came or moved before this line. */
export function firstMoved({ runs }: LineRuns): number {
  const [first] = runs
  if (first === undefined || first.old !== 0 || first.now !== 0) return 0
  return runs.length === 1 ? Infinity : first.count
}

function mapOf(runs: readonly RowRun[]): LineMap {
  const last = runs.length - 1
  /** Position of the last run that begins at the line or before; -1 where none does. */
  const runAt = (line: number): number => {
    let [low, high] = [0, runs.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((runs[middle]?.old ?? Infinity) <= line) low = middle + 1
      else high = middle
    }
    return low - 1
  }
  const inRun = (at: number, line: number): number | undefined => {
    const run = runs[at]
    return run && (at === last || line < run.old + run.count) ? line - run.old + run.now : undefined
  }
  const end = (at: number): number | undefined => { const run = runs[at]; return run && run.now + run.count - 1 }
  return {
    line: (line) => inRun(runAt(line), line),
    shift(first, final) {
      const [from, to] = [runAt(first), runAt(final)]
      const next = inRun(from, first) ?? runs[from + 1]?.now
      const previous = inRun(to, final) ?? end(to)
      return next === undefined || previous === undefined || next > previous ? null : [next, previous]
    },
  }
}
