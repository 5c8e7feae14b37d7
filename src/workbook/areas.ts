import type { Area, CellAddress } from './address.ts'

/** The same cells in rectangles that do not overlap, so that what is done to each is done to a cell once. */
export function disjoint(areas: readonly Area[]): readonly Area[] {
  return areas.reduce<readonly Area[]>((apart, area) => [...apart, ...apart.reduce<readonly Area[]>((rest, taken) => rest.flatMap((part) => without(part, taken)), [area])], [])
}

/** Whether a cell is one of an area's. */
export const isInArea = ({ row, column }: CellAddress, { top, left, bottom, right }: Area): boolean => row >= top && row <= bottom && column >= left && column <= right

/** Whether an area lies wholly in another. */
export const isWithin = (inner: Area, outer: Area): boolean => inner.top >= outer.top && inner.bottom <= outer.bottom && inner.left >= outer.left && inner.right <= outer.right

/** Rows and columns that make up a block, in order; they need not lie next to each other. */
export interface LinedUp {
  readonly rows: readonly number[]
  readonly columns: readonly number[]
}

/** The block that areas make together, if each of its rows meets each of its columns in one of them; undefined where they do not line up. */
export function lineUp(areas: readonly Area[]): LinedUp | undefined {
  const rows = spans(areas.map(({ top, bottom }) => ({ first: top, last: bottom }))).flatMap(numbersOf)
  const columns = spans(areas.map(({ left, right }) => ({ first: left, last: right }))).flatMap(numbersOf)
  return cellCount(areas) === rows.length * columns.length ? { rows, columns } : undefined
}

/** How many cells there are in areas, each counted once. */
export const cellCount = (areas: readonly Area[]): number =>
  disjoint(areas).reduce((sum, { top, left, bottom, right }) => sum + (bottom - top + 1) * (right - left + 1), 0)

export interface Span {
  readonly first: number
  /** Included. */
  readonly last: number
}

/** In order, those that touch or overlap made one. */
export function spans(some: readonly Span[]): Span[] {
  const merged: Span[] = []
  for (const span of some.toSorted((one, other) => one.first - other.first)) {
    const before = merged.at(-1)
    if (before && span.first <= before.last + 1) merged[merged.length - 1] = { first: before.first, last: Math.max(before.last, span.last) }
    else merged.push(span)
  }
  return merged
}

const numbersOf = ({ first, last }: Span): number[] => Array.from({ length: last - first + 1 }, (_, index) => first + index)

/** Up to four rectangles: above, below, on the left and on the right of what is taken. */
function without(area: Area, taken: Area): Area[] {
  const middle = { top: Math.max(area.top, taken.top), bottom: Math.min(area.bottom, taken.bottom) }
  const isApart = middle.top > middle.bottom || taken.right < area.left || taken.left > area.right
  if (isApart) return [area]
  return [
    { ...area, bottom: middle.top - 1 },
    { ...area, top: middle.bottom + 1 },
    { ...area, ...middle, right: taken.left - 1 },
    { ...area, ...middle, left: taken.right + 1 },
  ].filter(({ top, left, bottom, right }) => top <= bottom && left <= right)
}
