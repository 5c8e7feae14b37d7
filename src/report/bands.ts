import type { Paper } from '../workbook/report-settings.ts'
import { printableWidth, type Orientation } from '../pages/paper.ts'

/** What a column asks for, in CSS px of the page. */
export interface ColumnNeed {
  readonly column: number
  readonly wanted: number
  /** Below this a number would be cut off, or a text be torn into too short lines. */
  readonly least: number
  /** Holds no texts that could be broken into lines: it gives way first, since nothing becomes longer by it. */
  readonly isShort: boolean
  /** Not to be parted from the column before it: the units of its numbers. */
  readonly followsOn: boolean
}

/** Columns that are printed side by side on a page, with their widths. */
export interface Band {
  readonly columns: readonly { readonly column: number; readonly width: number }[]
  /** How many columns at its left only repeat, for their names, those of the first band. */
  readonly repeated: number
  /** What is left of the page at the right. */
  readonly rest: number
}

export interface Layout {
  readonly orientation: Orientation
  /** More than one where even the turned page is too narrow: they follow each other on further pages. */
  readonly bands: readonly Band[]
}

/** More of the page than this is too much to repeat. */
const MOST_REPEATED = 0.5

/** Upright if the columns fit, else the page turned, else on several pages with the columns that stay in view repeated. */
export function layOut(needs: readonly ColumnNeed[], frozenColumns: number, paper: Paper): Layout {
  for (const orientation of ['portrait', 'landscape'] as const) {
    const width = printableWidth(paper, orientation)
    if (sumOf(needs, 'least') <= width) return { orientation, bands: [{ ...fitted(needs, width), repeated: 0 }] }
  }
  const width = printableWidth(paper, 'landscape')
  const frozen = needs.filter(({ column }) => column < frozenColumns)
  const repeated = sumOf(frozen, 'least') <= width * MOST_REPEATED ? frozen : []
  const bands = evenShares(needs.slice(repeated.length), width - sumOf(repeated, 'least'))
  return { orientation: 'landscape', bands: bands.map((band, index) => ({ ...fitted([...repeated, ...band], width), repeated: index === 0 ? 0 : repeated.length })) }
}

const STEPS = 20

/** In as few bands as can be, and those as even as can be: no column alone on a page. */
function evenShares(needs: readonly ColumnNeed[], width: number): ColumnNeed[][] {
  const fewest = shares(needs, width)
  const even = sumOf(needs, 'least') / fewest.length
  for (let step = 0; step < STEPS; step++) {
    const tried = shares(needs, even + ((width - even) * step) / STEPS)
    if (tried.length === fewest.length) return tried
  }
  return fewest
}

/** In order, as many at a time as fit; one that is too wide alone stands alone. */
function shares(needs: readonly ColumnNeed[], width: number): ColumnNeed[][] {
  const bands: ColumnNeed[][] = []
  let used = 0
  for (const need of needs) {
    const band = bands.at(-1)
    if (band && used + need.least <= width) {
      band.push(need)
      used += need.least
      continue
    }
    const before = need.followsOn && band && band.length > 1 ? band.pop() : undefined
    const begun = before ? [before, need] : [need]
    bands.push(begun)
    used = sumOf(begun, 'least')
  }
  return bands
}

/** What all want, as far as the page goes; where it does not, first the short columns give way, then those of texts, each by the same share. */
function fitted(needs: readonly ColumnNeed[], width: number): Omit<Band, 'repeated'> {
  const [short, long] = [needs.filter(({ isShort }) => isShort), needs.filter(({ isShort }) => !isShort)]
  const shortShare = shareOf(short, width - sumOf(long, 'wanted'))
  const longShare = shareOf(long, width - shareWidth(short, shortShare))
  const columns = needs.map((need) => ({ column: need.column, width: shareWidth([need], need.isShort ? shortShare : longShare) }))
  // One column wider than the page is made as wide as that.
  const used = columns.reduce((sum, column) => sum + column.width, 0)
  if (used <= width + 0.5) return { columns, rest: Math.max(0, width - used) }
  return { columns: columns.map((column) => ({ ...column, width: column.width * (width / used) })), rest: 0 }
}

/** How much of what they want beyond the least they get, 0 to 1. */
function shareOf(needs: readonly ColumnNeed[], width: number): number {
  const [wanted, least] = [sumOf(needs, 'wanted'), sumOf(needs, 'least')]
  return wanted <= width ? 1 : Math.max(0, (width - least) / (wanted - least))
}

const shareWidth = (needs: readonly ColumnNeed[], share: number): number => needs.reduce((sum, { wanted, least }) => sum + least + (wanted - least) * share, 0)

const sumOf = (needs: readonly ColumnNeed[], what: 'wanted' | 'least'): number => needs.reduce((sum, need) => sum + need[what], 0)
