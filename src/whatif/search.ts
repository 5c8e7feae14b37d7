import { closeIn, nearestToZero } from './root-finding.ts'
import { refineTurn } from './turning.ts'

/** The function at a number: how far off 0 it is, undefined where it has no number. */
export interface Sample {
  readonly input: number
  readonly off: number | undefined
}

/** Where a function is 0, or steps over it. */
export type Root =
  | { readonly kind: 'zero'; readonly input: number }
  /** 0 all the way. */
  | { readonly kind: 'stretch'; readonly from: number; readonly to: number }
  /** Neighbouring doubles on either side of 0. */
  | { readonly kind: 'crossing'; readonly low: number; readonly high: number; readonly offLow: number; readonly offHigh: number }

/** A stretch where the function has no number, to 1e-9 of the bounds. */
export interface Gap {
  readonly from: number
  readonly to: number
}

export interface Found {
  /** In rising order. */
  readonly roots: readonly Root[]
  readonly gaps: readonly Gap[]
  /** Everything that was looked at, in rising order. */
  readonly samples: readonly Sample[]
}

const SCANNED = 48
const MOST_REFINED = 160
const ROUNDS = 3
const MOST_EDGES = 16
const MOST_DIPS = 6

/**
 * All the zeros, jumps over 0 and gaps of a function between two numbers that a look from place to place shows. It looks at even distances
 * (even ratios where the bounds are far apart), then closer where neighbours do not lie on a straight line, at the edges of where there is no number,
 * and into dips that might reach 0; every change of sign is then closed in on. What turns twice between two looks is missed.
 */
export function search(off: (input: number) => number | undefined, from: number, to: number, extra: readonly number[]): Found {
  const known = new Map<number, number | undefined>()
  const at = (input: number): number | undefined => {
    if (known.has(input)) return known.get(input)
    const found = off(input)
    known.set(input, found)
    return found
  }
  for (const input of scanned(from, to, extra)) at(input)
  bend(known, at)
  edges(known, at, to - from)
  dips(known, at)

  const roots: Root[] = []
  let before: Sample | undefined
  for (const sample of sorted(known)) {
    if (sample.off === 0) zeroAt(roots, sample.input)
    else if (before?.off !== undefined && sample.off !== undefined && before.off * sample.off < 0) close(before.input, before.off, sample.input, sample.off, 0)
    before = sample
  }
  return { roots: stretched(roots.toSorted((one, other) => startOf(one) - startOf(other))), gaps: gapsOf(sorted(known)), samples: sorted(known) }

  function close(low: number, offLow: number, high: number, offHigh: number, depth: number): void {
    const closed = closeIn(at, { low, high, offLow, offHigh })
    if (closed.kind === 'zero') roots.push({ kind: 'zero', input: closed.input })
    else if (closed.kind === 'between') roots.push({ kind: 'crossing', low: closed.low, high: closed.high, offLow: closed.offLow, offHigh: closed.offHigh })
    else if (depth < MOST_EDGES) {
      const left = edge(at, closed.low, closed.input, to - from)
      const right = edge(at, closed.high, closed.input, to - from)
      closeSide(closed.low, closed.offLow, left, depth)
      closeSide(right, at(right) ?? Number.NaN, closed.high, depth)
    }
  }

  function closeSide(low: number, offLow: number, high: number, depth: number): void {
    const offHigh = at(high)
    if (offHigh === 0) roots.push({ kind: 'zero', input: high })
    else if (offHigh !== undefined && offLow * offHigh < 0) close(low, offLow, high, offHigh, depth + 1)
  }

  /** Neighbouring looks that are all 0 are one stretch; its ends lie somewhere before the looks beside it. */
  function stretched(found: readonly Root[]): Root[] {
    const step = (to - from) * 1e-9
    const isZero = (input: number): boolean => at(input) === 0
    const result: Root[] = []
    for (const root of found) {
      const last = result.at(-1)
      if (root.kind !== 'zero') result.push(root)
      else if (last?.kind === 'stretch' && root.input <= last.to) continue
      else if ((root.input + step <= to && isZero(root.input + step)) || (root.input - step >= from && isZero(root.input - step))) {
        result.push({ kind: 'stretch', from: endOfZeros(root.input, -1), to: endOfZeros(root.input, 1) })
      } else result.push(root)
    }
    return result
  }

  function endOfZeros(input: number, direction: 1 | -1): number {
    const beyond = sorted(known).filter((one) => (one.input - input) * direction > 0)
    const inOrder = direction > 0 ? beyond : beyond.toReversed()
    const other = inOrder.findIndex((one) => one.off !== 0)
    const lastZero = other === 0 ? input : (inOrder[(other < 0 ? inOrder.length : other) - 1]?.input ?? input)
    const end = other < 0 ? undefined : inOrder[other]
    return end === undefined ? lastZero : refineTurn(lastZero, end.input, (one) => at(one) === 0, 1e-12).last
  }
}

function scanned(from: number, to: number, extra: readonly number[]): number[] {
  const isWide = from > 0 && to / from > WIDE
  const numbers = Array.from({ length: SCANNED + 1 }, (_, step) => (step === SCANNED ? to : isWide ? from * (to / from) ** (step / SCANNED) : from + (step / SCANNED) * (to - from)))
  return [...numbers, ...extra.filter((one) => one >= from && one <= to)]
}
const WIDE = 20

const sorted = (known: ReadonlyMap<number, number | undefined>): Sample[] => [...known].map(([input, off]) => ({ input, off })).toSorted((one, other) => one.input - other.input)

const startOf = (root: Root): number => (root.kind === 'zero' ? root.input : root.kind === 'stretch' ? root.from : root.low)

function zeroAt(roots: Root[], input: number): void {
  roots.push({ kind: 'zero', input })
}

/** Looks between neighbours where the one in the middle lies off the line through the others by more than a share of all that the function does. */
function bend(known: ReadonlyMap<number, number | undefined>, at: (input: number) => number | undefined): void {
  for (let round = 0, left = MOST_REFINED; round < ROUNDS && left > 0; round++) {
    const samples = sorted(known)
    const offs = samples.flatMap(({ off }) => off ?? [])
    const span = Math.max(...offs) - Math.min(...offs)
    const wanted = new Set<number>()
    for (let i = 1; i < samples.length - 1; i++) {
      const [one, middle, other] = [samples[i - 1], samples[i], samples[i + 1]]
      if (one?.off === undefined || middle?.off === undefined || other?.off === undefined) continue
      const onLine = one.off + ((middle.input - one.input) / (other.input - one.input)) * (other.off - one.off)
      if (!(Math.abs(middle.off - onLine) > BENT * span)) continue
      wanted.add((one.input + middle.input) / 2)
      wanted.add((middle.input + other.input) / 2)
    }
    for (const input of [...wanted].slice(0, left)) at(input)
    left -= wanted.size
  }
}
const BENT = 0.02

/** To the last number on either side of where there is none. */
function edges(known: ReadonlyMap<number, number | undefined>, at: (input: number) => number | undefined, span: number): void {
  const samples = sorted(known)
  let count = 0
  for (let i = 1; i < samples.length && count < MOST_EDGES; i++) {
    const [one, other] = [samples[i - 1], samples[i]]
    if (one === undefined || other === undefined || (one.off === undefined) === (other.off === undefined)) continue
    count++
    if (one.off === undefined) edge(at, other.input, one.input, span)
    else edge(at, one.input, other.input, span)
  }
}

/** The last number, seen from `good`, at which the function has one. */
const edge = (at: (input: number) => number | undefined, good: number, bad: number, span: number): number =>
  refineTurn(good, bad, (input) => at(input) !== undefined, Math.min(1, (1e-9 * span) / Math.abs(bad - good))).last

/** Where the function comes near 0 and turns back between two looks, it may have reached it. */
function dips(known: ReadonlyMap<number, number | undefined>, at: (input: number) => number | undefined): void {
  const samples = sorted(known)
  const found: { readonly low: number; readonly high: number; readonly size: number; readonly sign: number }[] = []
  for (let i = 1; i < samples.length - 1; i++) {
    const [one, middle, other] = [samples[i - 1], samples[i], samples[i + 1]]
    if (!one?.off || !middle?.off || !other?.off) continue
    const sign = Math.sign(middle.off)
    if (Math.sign(one.off) !== sign || Math.sign(other.off) !== sign) continue
    const isDip = Math.abs(middle.off) <= Math.abs(one.off) && Math.abs(middle.off) <= Math.abs(other.off) && Math.abs(one.off) + Math.abs(other.off) > 2 * Math.abs(middle.off)
    if (isDip) found.push({ low: one.input, high: other.input, size: Math.abs(middle.off), sign })
  }
  for (const { low, high, sign } of found.toSorted((one, other) => one.size - other.size).slice(0, MOST_DIPS)) nearestToZero(at, low, high, sign)
}

function gapsOf(samples: readonly Sample[]): Gap[] {
  const gaps: Gap[] = []
  let from: number | undefined
  let last: number | undefined
  for (const { input, off } of samples) {
    if (off === undefined) {
      from ??= input
      last = input
    } else if (from !== undefined && last !== undefined) {
      gaps.push({ from, to: last })
      from = undefined
    }
  }
  return from === undefined || last === undefined ? gaps : [...gaps, { from, to: last }]
}
