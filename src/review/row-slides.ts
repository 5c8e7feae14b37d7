import type { RowRun } from '../workbook/row-alignment.ts'

/** Where rows were inserted or taken away among rows that are alike: it may have been before any of them. */
export interface Slide {
  /** The run before it, by its position. */
  readonly run: number
  /** By how many rows it may move up and down. */
  readonly up: number
  readonly down: number
}

/** @param isAlike whether a row of before (old) and one of now may be the same */
export function slidesOf(runs: readonly RowRun[], isAlike: (old: number, now: number) => boolean): Slide[] {
  return runs.flatMap((one, run): Slide[] => {
    const next = runs[run + 1]
    if (next === undefined) return []
    const [oldEnd, nowEnd] = [one.old + one.count, one.now + one.count]
    // Where rows have gone and others have come, both say where.
    if (next.old > oldEnd && next.now > nowEnd) return []
    let [up, down] = [0, 0]
    while (down < next.count - 1 && isAlike(oldEnd + down, nowEnd + down)) down++
    while (up < one.count - 1 && isAlike(next.old - 1 - up, next.now - 1 - up)) up++
    return up + down === 0 ? [] : [{ run, up, down }]
  })
}

/** The runs with one such place so many rows further down, or up where it is below 0. */
export const slid = (runs: readonly RowRun[], { run }: Slide, by: number): RowRun[] => runs.map((one, index) => {
  if (index === run) return { ...one, count: one.count + by }
  return index === run + 1 ? { old: one.old + by, now: one.now + by, count: one.count - by } : one
})
