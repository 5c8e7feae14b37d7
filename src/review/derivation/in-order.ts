import type { Workbook } from '../../workbook/document.ts'
import type { Bundle } from './row-runs.ts'

/** A bundle in its place of the order. */
export interface Ordered {
  readonly bundle: Bundle
  /** It hangs on itself, so that it stands somewhere. */
  readonly isCircular: boolean
}

/**
 * What is given first, sheet by sheet; then what is computed, each after all that it is computed from, as long as possible on one sheet before going on to
 * another, and there in the order of reading.
 */
export function inOrder({ sheets }: Workbook, bundles: readonly Bundle[]): readonly Ordered[] {
  const sheetAt = new Map(sheets.map(({ name }, index) => [name, index]))
  const place = ({ nodes }: Bundle): readonly [number, number, number] => {
    const first = nodes[0]
    return first === undefined ? [0, 0, 0] : [sheetAt.get(first.sheet.name) ?? 0, first.area.top, first.area.left]
  }
  const byReading = (one: Bundle, other: Bundle): number => {
    const [first, second] = [place(one), place(other)]
    return first[0] - second[0] || first[1] - second[1] || first[2] - second[2]
  }
  const isGiven = ({ nodes, uses }: Bundle): boolean => uses.length === 0 && nodes.every(({ formula }) => formula === undefined)
  const done = new Set<string>()
  const ordered: Ordered[] = []
  const take = (bundle: Bundle, isCircular: boolean): void => {
    done.add(bundle.key)
    ordered.push({ bundle, isCircular })
  }
  for (const bundle of bundles.filter(isGiven).toSorted(byReading)) take(bundle, false)

  const waiting = new Map(bundles.filter((bundle) => !done.has(bundle.key)).toSorted(byReading).map((bundle) => [bundle.key, bundle]))
  const users = new Map<string, string[]>()
  const missing = new Map<string, number>()
  const isWaiting = (key: string): boolean => waiting.has(key)
  for (const { key, uses } of waiting.values()) {
    missing.set(key, uses.filter(isWaiting).length)
    for (const used of uses) {
      const known = users.get(used)
      if (known === undefined) users.set(used, [key])
      else known.push(key)
    }
  }
  const ready = new Set([...waiting.values()].filter(({ key }) => missing.get(key) === 0))
  let here: number | undefined
  while (waiting.size > 0) {
    const [first] = ready.size > 0 ? bestOf(ready) : [...waiting.values()]
    if (first === undefined) break
    take(first, ready.size === 0)
    waiting.delete(first.key)
    ready.delete(first)
    here = place(first)[0]
    for (const key of users.get(first.key) ?? []) {
      const left = (missing.get(key) ?? 0) - 1
      missing.set(key, left)
      const user = waiting.get(key)
      if (left === 0 && user !== undefined) ready.add(user)
    }
  }
  return ordered

  function bestOf(some: ReadonlySet<Bundle>): readonly Bundle[] {
    let best: Bundle | undefined
    for (const one of some) {
      if (best === undefined) best = one
      else {
        const [isHere, wasHere] = [place(one)[0] === here, place(best)[0] === here]
        if (isHere !== wasHere ? isHere : byReading(one, best) < 0) best = one
      }
    }
    return best === undefined ? [] : [best]
  }
}
