import type { RowRun } from '../../workbook/row-alignment.ts'

/** A column as alignment looks at it: how often each text stands in it, wherever. Rows inserted and taken away change little of that. */
export interface AlignedColumn {
  readonly counts: ReadonlyMap<string, number>
  readonly size: number
}

/** With more columns than that on a side they stand for those of the same number: such sheets are sparse. */
const MOST_COLUMNS = 400

/** What a column that has no counterpart must bring in likeness elsewhere: less, and nothing was inserted or taken away. */
const COST_OF_LONE = 0.3

/** Columns with nothing in common may still be the same column. */
const LEAST = 0.1

/** Two columns without anything. */
const BLANK = 0.5

/**
 * Which column of a sheet is which column of it later, by what stands in them: the pairs, rising on both sides, that are the most alike in all, where each column
 * that is left alone costs something.
 */
export function alignColumns(before: readonly AlignedColumn[], after: readonly AlignedColumn[]): readonly RowRun[] {
  if (before.length > MOST_COLUMNS || after.length > MOST_COLUMNS || before.length === 0 || after.length === 0) return [{ old: 0, now: 0, count: 1 }]
  const [olds, news] = [before.length, after.length]
  const width = news + 1
  const best = new Float64Array((olds + 1) * width)
  const likes = new Float64Array(olds * news)
  // What one side has more of at the end moves nothing, and costs nothing.
  for (let old = olds - 1; old >= 0; old--) {
    for (let now = news - 1; now >= 0; now--) {
      const alike = (likes[old * news + now] = LEAST + likeness(before[old], after[now]))
      const both = alike + (best[(old + 1) * width + now + 1] ?? 0)
      best[old * width + now] = Math.max(both, (best[(old + 1) * width + now] ?? 0) - COST_OF_LONE, (best[old * width + now + 1] ?? 0) - COST_OF_LONE)
    }
  }
  const runs: { old: number; now: number; count: number }[] = []
  let [old, now] = [0, 0]
  while (old < olds && now < news) {
    const here = best[old * width + now] ?? 0
    if (here === (likes[old * news + now] ?? 0) + (best[(old + 1) * width + now + 1] ?? 0)) {
      const run = runs.at(-1)
      if (run && old - run.old === now - run.now) run.count = old - run.old + 1
      else runs.push({ old, now, count: 1 })
      old++
      now++
    } else if (here === (best[(old + 1) * width + now] ?? 0) - COST_OF_LONE) old++
    else now++
  }
  return runs.length === 0 ? [{ old: 0, now: 0, count: 1 }] : runs
}

/** The share of what stands in the fuller of them that stands in the other too. */
function likeness(one: AlignedColumn | undefined, other: AlignedColumn | undefined): number {
  if (one === undefined || other === undefined) return 0
  if (one.size === 0 || other.size === 0) return one.size === other.size ? BLANK : 0
  const [small, large] = one.counts.size <= other.counts.size ? [one.counts, other.counts] : [other.counts, one.counts]
  let same = 0
  for (const [text, count] of small) same += Math.min(count, large.get(text) ?? 0)
  return same / Math.max(one.size, other.size)
}
