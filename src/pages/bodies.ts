import { element, type Html } from './html.ts'

/** So many rows at the start and at the end of a block are not parted by the end of a page: no row stands alone there. */
const KEPT_AT_START = 3
const KEPT_AT_END = 4
/** Of a block of so many rows none is parted from the others. */
export const MOST_KEPT_WHOLE = KEPT_AT_START + KEPT_AT_END

/** The rows of a block in bodies of a table: its first and its last ones each in one that stays together. */
export function bodies(rows: readonly Html[]): readonly Html[] {
  const isSmall = rows.length <= MOST_KEPT_WHOLE
  const together = isSmall ? [rows] : [rows.slice(0, KEPT_AT_START), rows.slice(-KEPT_AT_END)]
  const [start, end] = together.map((some) => element('tbody', { class: 'together' }, some))
  const between = isSmall ? undefined : element('tbody', {}, rows.slice(KEPT_AT_START, -KEPT_AT_END))
  return [start, between, end].filter((body) => body !== undefined)
}
