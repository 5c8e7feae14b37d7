import type { RowAlignment, RowRun } from '../workbook/row-alignment.ts'

/** Which line of a template stands for which of a workbook. */
export interface LineMap {
  /** Undefined for one that the template does not have. */
  toTemplate(line: number): number | undefined
  /** What becomes of the template's lines from one to another; null where they are gone. */
  toWorkbook(first: number, last: number): readonly [first: number, last: number] | null
  /** The nearest line of the workbook that both have: up from a line, or down. */
  nearest(line: number, way: -1 | 1): number | undefined
}

/**
 * @param alignment of the template's lines (old) with the workbook's (now)
 * @param lines that the template has
 */
export function lineMap({ runs }: RowAlignment, lines: number): LineMap {
  const last = runs.at(-1)
  // What is added below the last run moves nothing.
  const endless: readonly RowRun[] = last ? [...runs.slice(0, -1), { ...last, count: Infinity }] : [{ old: 0, now: 0, count: Infinity }]
  const begun = (side: 'old' | 'now', line: number): number => lastAtMost(endless, side, line)
  const lengthOf = ({ old, count }: RowRun): number => Math.min(count, lines - old)
  return {
    toTemplate(line) {
      const run = endless[begun('now', line)]
      const at = run && line - run.now < run.count ? run.old + line - run.now : undefined
      return at === undefined || at >= lines ? undefined : at
    },
    toWorkbook(first, end) {
      const before = begun('old', first)
      const isIn = first < (endless[before]?.old ?? 0) + (endless[before]?.count ?? 0)
      const [from, to] = [endless[isIn ? before : before + 1], endless[begun('old', end)]]
      if (from === undefined || to === undefined) return null
      const span = [Math.max(first, from.old) - from.old + from.now, Math.min(end, to.old + to.count - 1) - to.old + to.now] as const
      return span[0] > span[1] ? null : span
    },
    nearest(line, way) {
      const at = begun('now', line)
      const run = endless[at]
      const isIn = run !== undefined && line - run.now < lengthOf(run)
      if (isIn) return line
      if (way < 0) return run && run.now + lengthOf(run) - 1
      return endless[at + 1]?.now
    },
  }
}

/** The last run that begins at a line or before it; -1 where none does. */
function lastAtMost(runs: readonly RowRun[], side: 'old' | 'now', line: number): number {
  let [low, high] = [0, runs.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((runs[middle]?.[side] ?? 0) <= line) low = middle + 1
    else high = middle
  }
  return low - 1
}
