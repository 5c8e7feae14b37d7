/** Where the rows, or the columns, of a sheet lie: positions in px from the first one's start. */
export interface Axis {
  readonly count: number
  readonly total: number
  start(index: number): number
  size(index: number): number
  /** The row or column at a position; the first or last one beyond the ends. */
  at(position: number): number
}

/** An axis of `count` items, of which the first have the sizes given and all others the usual one. */
export function createAxis(sizes: readonly number[], usual: number, count: number): Axis {
  const starts = [0]
  for (const size of sizes.slice(0, count)) starts.push((starts.at(-1) ?? 0) + size)
  const measured = starts.length - 1
  const measuredEnd = starts[measured] ?? 0

  const start = (index: number): number => starts[index] ?? measuredEnd + (index - measured) * usual
  return {
    count,
    total: start(count),
    start,
    size: (index) => start(index + 1) - start(index),
    at(position) {
      if (position >= measuredEnd) return Math.max(0, Math.min(count - 1, measured + Math.floor((position - measuredEnd) / usual)))
      let low = 0
      let high = measured - 1
      while (low < high) {
        const middle = (low + high + 1) >> 1
        if (start(middle) <= position) low = middle
        else high = middle - 1
      }
      return low
    },
  }
}
