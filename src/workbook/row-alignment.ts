/** A row as far as alignment looks at it. */
export interface AlignedRow {
  readonly row: number
  /** All that stands in it, in a form that stays the same where lines above were inserted or taken away. */
  readonly whole: string
  /** The same without its numbers. */
  readonly outline: string
  /** A short text a cell. */
  readonly cells: readonly string[]
}

/** Rows that stay together: `count` rows from `old` on stand from `now` on. */
export interface RowRun {
  readonly old: number
  readonly now: number
  readonly count: number
}

/** What became of the rows of a sheet: all of them up to the last run's end are either in a run, or gone, or new. */
export interface RowAlignment {
  /** In order, without gaps that would not be insertions or deletions. The last goes on for good: what is added below moves nothing. */
  readonly runs: readonly RowRun[]
}

/** Aligning row by row what has so many pairs takes a moment; beyond, rows stand for those of the same number. */
const MOST_PAIRS = 250_000

/**
 * Which row of a sheet is which row of it later, after someone may have inserted, deleted and changed some: rows that are the same and there once only
 * hold the others in their places (patience), by all that they hold and then by their texts; what is left between them is paired by likeness.
 * @param before rows that hold something, in order
 * @param after likewise
 */
export function alignRows(before: readonly AlignedRow[], after: readonly AlignedRow[]): RowAlignment {
  const pairs: Pair[] = []
  anchor(before, after, ['whole', 'outline'], pairs)
  const [oldRows, newRows] = [byRow(before), byRow(after)]
  const all: Pair[] = []
  let last: Pair = [-1, -1]
  for (const pair of pairs) {
    between(last, pair, oldRows, newRows, all)
    all.push(pair)
    last = pair
  }
  const end: Pair = [1 + Math.max(last[0], before.at(-1)?.row ?? -1), 1 + Math.max(last[1], after.at(-1)?.row ?? -1)]
  between(last, end, oldRows, newRows, all)
  return { runs: runsOf(all) }
}

type Pair = readonly [old: number, now: number]
type Key = 'whole' | 'outline'

function anchor(before: readonly AlignedRow[], after: readonly AlignedRow[], keys: readonly Key[], pairs: Pair[]): void {
  const [key, ...others] = keys
  if (key === undefined || before.length === 0 || after.length === 0) return
  let start = 0
  while (start < before.length && start < after.length && before[start]?.[key] === after[start]?.[key]) pairs.push(pairOf(before[start], after[start++]))
  let tail = 0
  const most = Math.min(before.length, after.length) - start
  while (tail < most && before.at(-1 - tail)?.[key] === after.at(-1 - tail)?.[key]) tail++
  const [left, right] = [before.slice(start, before.length - tail), after.slice(start, after.length - tail)]
  const unique = rising(uniquePairs(left, right, key))
  if (unique.length === 0) anchor(left, right, others, pairs)
  else {
    let [oldFrom, newFrom] = [0, 0]
    for (const [old, now] of unique) {
      anchor(left.slice(oldFrom, old), right.slice(newFrom, now), keys, pairs)
      pairs.push(pairOf(left[old], right[now]))
      ;[oldFrom, newFrom] = [old + 1, now + 1]
    }
    anchor(left.slice(oldFrom), right.slice(newFrom), keys, pairs)
  }
  for (let index = tail; index > 0; index--) pairs.push(pairOf(before.at(-index), after.at(-index)))
}

const pairOf = (old: AlignedRow | undefined, now: AlignedRow | undefined): Pair => [old?.row ?? 0, now?.row ?? 0]

/** Positions of rows that are there once on either side. */
function uniquePairs(before: readonly AlignedRow[], after: readonly AlignedRow[], key: Key): Pair[] {
  const positions = (rows: readonly AlignedRow[]): Map<string, number> => {
    const found = new Map<string, number>()
    for (const [index, row] of rows.entries()) found.set(row[key], found.has(row[key]) ? -1 : index)
    return found
  }
  const now = positions(after)
  return [...positions(before)].flatMap(([text, old]): Pair[] => {
    const at = now.get(text) ?? -1
    return old >= 0 && at >= 0 ? [[old, at]] : []
  })
}

/** The longest list of pairs that rises on both sides; they rise on the first. */
function rising(pairs: readonly Pair[]): readonly Pair[] {
  const ends: number[] = []
  const before = new Int32Array(pairs.length).fill(-1)
  for (const [index, [, now]] of pairs.entries()) {
    let [low, high] = [0, ends.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((pairs[ends[middle] ?? 0]?.[1] ?? 0) < now) low = middle + 1
      else high = middle
    }
    before[index] = low === 0 ? -1 : (ends[low - 1] ?? -1)
    ends[low] = index
  }
  const found: Pair[] = []
  for (let index = ends.at(-1) ?? -1; index >= 0; index = before[index] ?? -1) found.push(pairs[index] ?? [0, 0])
  return found.reverse()
}

/** Pairs the rows between two pairs, blank ones among them. */
function between([oldBefore, newBefore]: Pair, [oldAfter, newAfter]: Pair, oldRows: RowFinder, newRows: RowFinder, pairs: Pair[]): void {
  const [olds, news] = [oldAfter - oldBefore - 1, newAfter - newBefore - 1]
  if (olds === 0 || news === 0) return
  if (olds === news || olds * news > MOST_PAIRS) {
    // One pair at either end of them says the same as all.
    const count = Math.min(olds, news)
    pairs.push([oldBefore + 1, newBefore + 1], ...(count > 1 ? [[oldBefore + count, newBefore + count] as const] : []))
    return
  }
  pairs.push(...likest(olds, news, (old, now) => likeness(oldRows(oldBefore + 1 + old), newRows(newBefore + 1 + now))).map(([old, now]): Pair => [oldBefore + 1 + old, newBefore + 1 + now]))
}

type RowFinder = (row: number) => AlignedRow | undefined

function byRow(rows: readonly AlignedRow[]): RowFinder {
  const found = new Map(rows.map((one) => [one.row, one]))
  return (row) => found.get(row)
}

/** Rows with nothing in common may still be the same row: better than one that goes and one that comes. */
const LEAST = 0.1

function likeness(old: AlignedRow | undefined, now: AlignedRow | undefined): number {
  if (old === undefined || now === undefined) return old === now ? 0.5 : LEAST
  let same = 0
  for (const [column, text] of old.cells.entries()) if (text !== '' && text === now.cells[column]) same++
  return LEAST + same + (old.outline === now.outline ? 1 : 0)
}

/** The pairs, rising on both sides, that are the most alike in all. */
function likest(olds: number, news: number, like: (old: number, now: number) => number): Pair[] {
  const width = news + 1
  const best = new Float64Array((olds + 1) * width)
  const likes = new Float64Array(olds * news)
  for (let old = olds - 1; old >= 0; old--) {
    for (let now = news - 1; now >= 0; now--) {
      const alike = (likes[old * news + now] = like(old, now))
      const [skipOld, skipNew, both] = [best[(old + 1) * width + now] ?? 0, best[old * width + now + 1] ?? 0, alike + (best[(old + 1) * width + now + 1] ?? 0)]
      best[old * width + now] = Math.max(skipOld, skipNew, both)
    }
  }
  const pairs: Pair[] = []
  let [old, now] = [0, 0]
  while (old < olds && now < news) {
    const here = best[old * width + now] ?? 0
    if (here === (likes[old * news + now] ?? 0) + (best[(old + 1) * width + now + 1] ?? 0)) pairs.push([old++, now++])
    else if (here === (best[(old + 1) * width + now] ?? 0)) old++
    else now++
  }
  return pairs
}

/** Pairs that are as far apart on either side belong to one run, with all that is between them. */
function runsOf(pairs: readonly Pair[]): RowRun[] {
  const runs: { old: number; now: number; count: number }[] = []
  for (const [old, now] of pairs) {
    const run = runs.at(-1)
    if (run && old - run.old === now - run.now) run.count = old - run.old + 1
    else runs.push({ old, now, count: 1 })
  }
  return runs
}
