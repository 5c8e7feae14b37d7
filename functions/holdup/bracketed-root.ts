/**
 * A root of a continuous function between two points where its signs differ, to rounding.
 * Inverse quadratic steps where they are safe, halving elsewhere: Chandrupatla, Adv. Eng. Softw. 28, 145 (1997).
 * Where they do not differ by more than rounding, the root is at an end: the one with the smaller value.
 */
export function bracketedRoot(f: (x: number) => number, from: number, to: number): number {
  let a = to
  let b = from
  let fa = f(a)
  let fb = f(b)
  let share = 0.5
  if (Math.sign(fa) * Math.sign(fb) >= 0) return Math.abs(fa) < Math.abs(fb) ? a : b
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = a + share * (b - a)
    const fx = f(x)
    let c = b
    let fc = fb
    if (Math.sign(fx) === Math.sign(fa)) {
      c = a
      fc = fa
    } else {
      b = a
      fb = fa
    }
    a = x
    fa = fx

    const best = Math.abs(fa) < Math.abs(fb) ? a : b
    const tolerance = (2 * Number.EPSILON * Math.abs(best)) / Math.abs(b - a)
    if (fa === 0 || tolerance > 0.5 || a === b) return best

    const along = (a - b) / (c - b)
    const rise = (fa - fb) / (fc - fb)
    const safe = rise ** 2 < along && (1 - rise) ** 2 < 1 - along
    share = safe ? ((fa / (fb - fa)) * fc) / (fb - fc) + (((c - a) / (b - a)) * (fa / (fc - fa)) * fb) / (fc - fb) : 0.5
    share = Math.min(1 - tolerance, Math.max(tolerance, share))
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b
}

// Halving alone needs 52 steps for 16 digits, and some more towards a root near zero.
const MOST_STEPS = 200
