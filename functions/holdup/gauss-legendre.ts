/** Nodes and weights of a Gauss–Legendre rule on −1 … 1. */
export interface QuadratureRule {
  readonly nodes: readonly number[]
  readonly weights: readonly number[]
}

/**
 * The rule with `count` nodes, exact for polynomials up to degree 2·count − 1: nodes are the roots of the Legendre polynomial P,
 * weights 2/[(1 − x²) P′²] (Abramowitz & Stegun 25.4.29).
 */
export function gaussLegendre(count: number): QuadratureRule {
  const nodes = Array.from({ length: count }, (_, i) => legendreRoot(count, i))
  const weights = nodes.map((x) => 2 / ((1 - x * x) * legendre(count, x).slope ** 2))
  return { nodes, weights }
}

/** ∫ integrand from `from` to `to` by a rule. */
export function integrate(integrand: (x: number) => number, from: number, to: number, { nodes, weights }: QuadratureRule): number {
  const half = (to - from) / 2
  const middle = (to + from) / 2
  let sum = 0
  // Weights are as many as nodes.
  for (let i = 0; i < nodes.length; i++) sum += weights[i]! * integrand(middle + half * nodes[i]!)
  return half * sum
}

function legendreRoot(count: number, index: number): number {
  let x = Math.cos((Math.PI * (index + 0.75)) / (count + 0.5))
  // From this estimate Newton's method reaches rounding in three or four steps.
  for (let step = 0; step < 6; step++) {
    const { value, slope } = legendre(count, x)
    x -= value / slope
  }
  return x
}

/** P and P′ by the three-term recurrence (Abramowitz & Stegun 22.7.10, 22.8.5). */
function legendre(degree: number, x: number): { value: number; slope: number } {
  let before = 1
  let value = x
  for (let n = 2; n <= degree; n++) [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n]
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) }
}
