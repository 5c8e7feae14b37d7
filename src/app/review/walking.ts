/** A position in a list that one walks through: the next or the previous one, round from the last to the first. Undefined of an empty list. */
export function stepFrom(at: number, way: 1 | -1, count: number): number | undefined {
  if (count === 0) return undefined
  if (at < 0) return way === 1 ? 0 : count - 1
  return (at + way + count) % count
}

/** What keys do in a list that one walks through; undefined for all other keys. */
export function walkedTo(key: string, at: number, count: number): number | undefined {
  if (count === 0) return undefined
  if (key === 'ArrowDown') return stepFrom(at, 1, count)
  if (key === 'ArrowUp') return stepFrom(at, -1, count)
  if (key === 'Home') return 0
  return key === 'End' ? count - 1 : undefined
}

/** A part of a long list, of which only so much is shown at once. */
export interface Page<T> {
  readonly items: readonly T[]
  /** Of the first one shown, from 0. */
  readonly from: number
  readonly count: number
  readonly size: number
}

export const PAGE = 25

export function pageOf<T>(all: readonly T[], page: number, size = PAGE): Page<T> {
  const last = Math.max(0, Math.ceil(all.length / size) - 1)
  const from = Math.min(Math.max(0, page), last) * size
  return { items: all.slice(from, from + size), from, count: all.length, size }
}
