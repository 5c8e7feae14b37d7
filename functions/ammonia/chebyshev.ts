/**
 * The coefficients c_k of the Chebyshev series that meets a function at degree + 1 points of an interval:
 * f = SUM c_k·T_k(x), k = 0 … degree, x from -1 to 1 over the interval. Both ends are among the points,
 * so that series of neighbouring intervals join without a step.
 */
export function chebyshevSeries(f: (at: number) => number, from: number, to: number, degree: number): number[] {
  const points = Array.from({ length: degree + 1 }, (_, j) => {
    const at = (from + to) / 2 - ((to - from) / 2) * Math.cos((Math.PI * j) / degree)
    return { angle: Math.PI * (1 - j / degree), value: f(j === 0 ? from : j === degree ? to : at) }
  })
  return points.map((_, k) => {
    const sum = points.reduce((total, { angle, value }, j) => total + halved(j, degree) * value * Math.cos(k * angle), 0)
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
