import { describe, expect, it } from 'vitest'
import { closeIn, nearestToZero } from '../../../src/whatif/root-finding.ts'

interface Case {
  readonly name: string
  readonly f: (x: number) => number
  readonly from: number
  readonly to: number
  readonly root: number
}

const poles = (x: number): number => {
  let sum = 0
  for (let i = 1; i <= 20; i++) sum += (2 * i - 5) ** 2 / (x - i * i) ** 3
  return -2 * sum
}
/** Roots of the second function of the set, between its poles; from memory, as printed with the set, the last one computed with 50 digits. */
const POLE_ROOTS = [3.022915347273057, 6.683753560808079, 11.238701655002211, 19.67600008062341, 29.828227326504756, 41.906116195289414, 55.95359580014309, 71.9856655865878, 90.00886853916667, 110.0265327483302]

// Test functions of Alefeld, Potra and Shi, Algorithm 748, ACM Trans. Math. Softw. 21 (1995) 327; functions and roots from memory.
const CASES: readonly Case[] = [
  { name: 'sin x − x/2', f: (x) => Math.sin(x) - x / 2, from: Math.PI / 2, to: Math.PI, root: 1.895494267033981 },
  ...POLE_ROOTS.map((root, i) => ({ name: `between poles ${i + 1}`, f: poles, from: (i + 1) ** 2 + 1e-9, to: (i + 2) ** 2 - 1e-9, root })),
  ...[-40, -100, -200].map((a, i) => ({ name: `${a} x e^−${i + 1}x`, f: (x: number) => a * x * Math.exp(-(i + 1) * x), from: -9, to: 31, root: 0 })),
  ...[4, 6, 8, 10, 12].map((n) => ({ name: `x^${n} − 0.2`, f: (x: number) => x ** n - 0.2, from: 0, to: 5, root: 0.2 ** (1 / n) })),
  { name: 'sin x − 0.5', f: (x) => Math.sin(x) - 0.5, from: 0, to: 1.5, root: Math.PI / 6 },
  { name: '2x e⁻¹ − 2 e⁻ˣ + 1', f: (x) => 2 * x * Math.exp(-1) - 2 * Math.exp(-x) + 1, from: 0, to: 1, root: 0.4224777096412367 },
  { name: '17 x − (1 − 5x)²', f: (x) => (1 + (1 - 5) ** 2) * x - (1 - 5 * x) ** 2, from: 0, to: 1, root: 0.03840255184062192 },
  { name: 'x − (1 − x)⁴', f: (x) => x - (1 - x) ** 4, from: 0, to: 1, root: 0.2755080409994844 },
  ...[2, 5, 15, 20].map((n) => ({ name: `(${n} x − 1)/((${n} − 1) x)`, f: (x: number) => (n * x - 1) / ((n - 1) * x), from: 0.01, to: 1, root: 1 / n })),
  ...[2, 6, 20, 33].map((n) => ({ name: `x^1/${n} − ${n}^1/${n}`, f: (x: number) => x ** (1 / n) - n ** (1 / n), from: 1, to: 100, root: n })),
  { name: 'a bend at 0, far to the left', f: (x) => (x >= 0 ? (x / 1.5 + Math.sin(x) - 1) / 20 : -1 / 20), from: -1e4, to: Math.PI / 2, root: 0.6238065189616123 },
]

const close = (f: (x: number) => number | undefined, low: number, high: number) => closeIn(f, { low, high, offLow: f(low) ?? Number.NaN, offHigh: f(high) ?? Number.NaN })

describe('closing in on a change of sign', () => {
  it.each(CASES)('$name: $root', ({ f, from, to, root }) => {
    let calls = 0
    const closed = close((x) => {
      calls++
      return f(x)
    }, from, to)
    const ends = closed.kind === 'zero' ? [closed.input] : closed.kind === 'between' ? [closed.low, closed.high] : []
    expect(ends.length).toBeGreaterThan(0)
    for (const end of ends) expect(Math.abs(end - root)).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(root)))
    expect(calls).toBeLessThanOrEqual(120)
  })

  it('ends at neighbouring doubles on either side of a jump', () => {
    const closed = close((x) => (x < 0.7 ? -3 : 5), 0, 1)
    expect(closed).toMatchObject({ kind: 'between', offLow: -3, offHigh: 5, high: 0.7 })
    if (closed.kind === 'between') expect(closed.low + (closed.high - closed.low) / 2 === closed.low || closed.low + (closed.high - closed.low) / 2 === closed.high).toBe(true)
  })

  it('tells where there is no number on the way', () => {
    const closed = close((x) => (x > 0.4 && x < 0.6 ? undefined : x - 0.5), 0, 1)
    expect(closed).toMatchObject({ kind: 'gap', input: 0.5 })
  })

  it('finds how near a dip comes', () => {
    const dip = nearestToZero((x) => (x - 0.3) ** 2 + 0.01, 0, 1, 1)
    expect(dip?.input).toBeCloseTo(0.3, 6)
    expect(dip?.off).toBeCloseTo(0.01, 12)
  })
})
