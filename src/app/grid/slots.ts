import type { Span } from './viewport.ts'

/**
 * What slot `slot` of a pool shows: the item of the span whose number has that remainder, or undefined.
 * Scrolling by one item then changes one slot only.
 */
export function itemInSlot(slot: number, pool: number, { first, last }: Span): number | undefined {
  const item = first + ((((slot - first) % pool) + pool) % pool)
  return item <= last ? item : undefined
}

/** Slots needed for spans of that many items; never fewer than before, so that slots are kept while sizes vary. */
export const poolFor = (span: Span, before: number): number => Math.max(before, span.last - span.first + 1)
