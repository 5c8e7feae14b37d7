/** A number and how far the function is from 0 there; undefined where it has no number. */
export type Off = (input: number) => number | undefined

/** Two numbers, and the function at them. */
export interface Bracket {
  readonly low: number
  readonly high: number
  readonly offLow: number
  readonly offHigh: number
}

export type Closed =
  /** The function is 0 here. */
  | { readonly kind: 'zero'; readonly input: number }
  /** Neighbouring doubles, or as good as, with the function on either side of 0. */
  | ({ readonly kind: 'between' } & Bracket)
  /** Between the two the function has no number here; the bracket is what was reached. */
  | ({ readonly kind: 'gap'; readonly input: number } & Bracket)

/**
 * Closes in on where a function changes its sign between two numbers, until they are neighbouring doubles. Inverse quadratic steps where they
 * are safe, halving elsewhere, so that it never does worse than some times halving, whatever the function: Chandrupatla, Adv. Eng. Softw. 28, 145 (1997).
 * At a jump it ends at the two sides of it.
 */
export function closeIn(off: Off, { low, high, offLow, offHigh }: Bracket): Closed {
  // a is the last point, b the other end of the bracket, c the end before.
  let [a, fa, b, fb] = [high, offHigh, low, offLow]
  if (fa === 0) return { kind: 'zero', input: a }
  if (fb === 0) return { kind: 'zero', input: b }
  const floor = Math.abs(high - low) * LEAST_SHARE
  let share = 0.5
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = a + share * (b - a)
    if (x === a || x === b) break
    const fx = off(x)
    if (fx === undefined) return { kind: 'gap', input: x, ...ordered(a, fa, b, fb) }
    if (fx === 0) return { kind: 'zero', input: x }
    let [c, fc] = [b, fb]
    if (Math.sign(fx) === Math.sign(fa)) [c, fc] = [a, fa]
    else [b, fb] = [a, fa]
    ;[a, fa] = [x, fx]
    const tolerance = (2 * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b)) + floor) / Math.abs(b - a)
    if (tolerance > 0.5) break
    const along = (a - b) / (c - b)
    const rise = (fa - fb) / (fc - fb)
    const safe = rise ** 2 < along && (1 - rise) ** 2 < 1 - along
    share = safe ? ((fa / (fb - fa)) * fc) / (fb - fc) + (((c - a) / (b - a)) * (fa / (fc - fa)) * fb) / (fc - fb) : 0.5
    share = Math.min(1 - tolerance, Math.max(tolerance, share))
  }
  return halved(off, ordered(a, fa, b, fb), floor)
}

/** The last few doubles between, one half at a time. */
function halved(off: Off, bracket: Bracket, floor: number): Closed {
  let { low, high, offLow, offHigh } = bracket
  for (let step = 0; step < MOST_HALVINGS && high - low > floor; step++) {
    const middle = low + (high - low) / 2
    if (middle === low || middle === high) break
    const found = off(middle)
    if (found === undefined) return { kind: 'gap', input: middle, low, high, offLow, offHigh }
    if (found === 0) return { kind: 'zero', input: middle }
    if (Math.sign(found) === Math.sign(offLow)) [low, offLow] = [middle, found]
    else [high, offHigh] = [middle, found]
  }
  return { kind: 'between', low, high, offLow, offHigh }
}

const ordered = (a: number, fa: number, b: number, fb: number): Bracket =>
  a < b ? { low: a, high: b, offLow: fa, offHigh: fb } : { low: b, high: a, offLow: fb, offHigh: fa }

/** Towards a zero at 0 the doubles never end: a bracket this small a share of the first is small enough. */
const LEAST_SHARE = 1e-18
// Halving alone needs 53 steps for all digits, and as many again where the zero is near 0.
const MOST_STEPS = 250
const MOST_HALVINGS = 64

/**
 * Where a function that dips towards 0 between `low` and `high` without changing its sign there comes nearest: by golden sections.
 * Ends at once where the sign does change. Undefined where the function has no number on the way.
 */
export function nearestToZero(off: Off, low: number, high: number, sign: number): { readonly input: number; readonly off: number } | undefined {
  let [a, b] = [low, high]
  let best: { readonly input: number; readonly off: number } | undefined
  const look = (input: number): number | undefined => {
    const found = off(input)
    if (found !== undefined && (best === undefined || found * sign < best.off * sign)) best = { input, off: found }
    return found
  }
  let [x, y] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)]
  let [fx, fy] = [look(x), look(y)]
  for (let step = 0; step < MOST_SECTIONS && b - a > 1e-12 * (high - low); step++) {
    if (fx === undefined || fy === undefined) return undefined
    if (best !== undefined && best.off * sign <= 0) break
    if (fx * sign < fy * sign) {
      ;[b, y, fy] = [y, x, fx]
      x = b - GOLDEN * (b - a)
      fx = look(x)
    } else {
      ;[a, x, fx] = [x, y, fy]
      y = a + GOLDEN * (b - a)
      fy = look(y)
    }
  }
  return best
}

const GOLDEN = (Math.sqrt(5) - 1) / 2
const MOST_SECTIONS = 60
