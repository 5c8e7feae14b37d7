/**
 * The coefficients c_k of the Chebyshev series that meets a function at degree + 1 points of an interval:
 * f = SUM c_k·T_k(x), k = 0 … degree, x from -1 to 1 over the interval. Both ends are among the points,
 * so that series of neighbouring intervals join without a step.
 */
export function chebyshevSeries(f: (at: number) => number, from: number, to: number, degree: number): number[] {
  /** cos(pi·j/degree), the angle brought into one turn first: that keeps the last digits of long sums. */
  const cosine = (j: number) => Math.cos((Math.PI * (j % (2 * degree))) / degree)
  const values = Array.from({ length: degree + 1 }, (_, j) => {
    if (j === 0) return f(to)
    if (j === degree) return f(from)
    return f((from + to) / 2 + ((to - from) / 2) * cosine(j))
  })
  return values.map((_, k) => {
    const sum = values.reduce((total, value, j) => total + halved(j, degree) * value * cosine(k * j), 0)
    return (2 / degree) * halved(k, degree) * sum
  })
}

function halved(index: number, degree: number): number {
  return index === 0 || index === degree ? 0.5 : 1
}

/** SUM c_k·T_k(x) by Clenshaw's recurrence; the same value as SUM c_k·cos(k·acos x). */
export function chebyshevSum(series: readonly number[], x: number): number {
  const twice = 2 * x
  let next = 0
  let afterNext = 0
  for (let k = series.length - 1; k > 0; k--) {
    // Within the bounds of the array by the loop's limits. The difference first: it need not wait for `next`.
    const current = series[k]! - afterNext + twice * next
    afterNext = next
    next = current
  }
  return series[0]! - afterNext + x * next
}
