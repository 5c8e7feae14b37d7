import type { LineShift } from '../../workbook/formula/line-references.ts'
import type { RowAlignment } from '../../workbook/row-alignment.ts'

/** Rows that another program inserted or took away, as an edit of the sheet as it was exported. */
export interface RowShift {
  readonly kind: 'inserted' | 'deleted'
  readonly sheet: string
  /** The row, of the sheet as it was exported, before which rows were inserted; or the first of those taken away. */
  readonly at: number
  /** Where the first of the inserted rows is in the file; where the one after those taken away is. */
  readonly now: number
  readonly count: number
}

/** The shifts of a sheet, from its top down. What stands below the last row that is the same row moves nothing, and is none. */
export function rowShifts(sheet: string, { runs }: RowAlignment): RowShift[] {
  const shifts: RowShift[] = []
  let [old, now] = [0, 0]
  for (const run of runs) {
    if (run.old > old) shifts.push({ kind: 'deleted', sheet, at: old, now, count: run.old - old })
    if (run.now > now) shifts.push({ kind: 'inserted', sheet, at: run.old, now, count: run.now - now })
    ;[old, now] = [run.old + run.count, run.now + run.count]
  }
  return shifts
}

/** Where the rows of a sheet are after some shifts of it. */
export interface RowMap {
  /** Undefined if the row is gone. */
  after(row: number): number | undefined
  /** Where a row of the shifted sheet was before; undefined if it is one of those inserted. */
  before(row: number): number | undefined
  /** What becomes of the rows of a reference. */
  readonly reference: LineShift
}

/** @param shifts of one sheet, from its top down */
export function rowMap(shifts: readonly RowShift[]): RowMap {
  const stretches: Stretch[] = [{ old: 0, now: 0, end: Infinity }]
  let [old, now] = [0, 0]
  for (const { kind, at, count } of shifts) {
    const last = stretches.at(-1)
    if (last) last.end = at
    now += at - old
    old = at
    if (kind === 'inserted') now += count
    else old += count
    stretches.push({ old, now, end: Infinity })
  }
  const ofOld = (row: number): Stretch | undefined => lastWhere(stretches, (one) => one.old <= row)
  const after = (row: number): number | undefined => {
    const stretch = ofOld(row)
    return stretch && row < stretch.end ? row - stretch.old + stretch.now : undefined
  }
  return {
    after,
    before(row) {
      const stretch = lastWhere(stretches, (one) => one.now <= row)
      if (stretch === undefined) return undefined
      const was = row - stretch.now + stretch.old
      return was < stretch.end ? was : undefined
    },
    reference(first, last) {
      const [from, to] = [ofOld(first), ofOld(last)]
      if (from === undefined || to === undefined) return null
      // Of a row that is gone the next one that is there, or the one before, takes the place.
      const next = first < from.end ? first - from.old + from.now : stretches[stretches.indexOf(from) + 1]?.now
      const previous = last < to.end ? last - to.old + to.now : to.end - 1 - to.old + to.now
      return next === undefined || next > previous ? null : [next, previous]
    },
  }
}

/** Rows that stay together, from `old` to before `end`. */
interface Stretch {
  readonly old: number
  readonly now: number
  end: number
}

/** The last of a list whose first ones all pass. */
function lastWhere<Item>(list: readonly Item[], passes: (item: Item) => boolean): Item | undefined {
  let [low, high] = [0, list.length]
  while (low < high) {
    const middle = (low + high) >> 1
    const item = list[middle]
    if (item !== undefined && passes(item)) low = middle + 1
    else high = middle
  }
  return list[low - 1]
}
