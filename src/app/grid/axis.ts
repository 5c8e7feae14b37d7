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
export function createAxis(sizes: ArrayLike<number>, usual: number, count: number): Axis {
  const measured = Math.min(sizes.length, count)
  const starts = new Float64Array(measured + 1)
  let measuredEnd = 0
  for (let index = 0; index < measured; index++) {
    measuredEnd += sizes[index] ?? usual
    starts[index + 1] = measuredEnd
  }

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
