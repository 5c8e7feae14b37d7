import { choice, type Argument } from '../arguments.ts'
import type { Given } from '../given.ts'
import { pipeSizes, type PipeSize } from './pipe-sizes.ts'

const nominal = choice('nominal pipe size', pipeSizes)

/** A nominal pipe size in the ways people write it: "1-1/2", "1 1/2", "NPS 1½", 1.5, "2 in", or 2 and in in two cells. */
export const pipeSizeArgument: Argument<PipeSize> = {
  ...nominal,
  kind: 'text',
  resolve: (given, label, sitePa) => nominal.resolve(sizeAsListed(given) ?? given, label, sitePa),
}

function sizeAsListed(given: Given): PipeSize | undefined {
  const cells = typeof given === 'object' && given !== null ? given.rows.flat() : [given]
  const inches = inchesIn(cells.join(' '))
  return pipeSizes.find((size) => inchesIn(size) === inches)
}

const FRACTIONS: Readonly<Record<string, string>> = { '¼': ' 1/4', '½': ' 1/2', '¾': ' 3/4' }
const WORDS_AROUND = /^\s*(?:NPS)?\s*|\s*(?:in\.?|inch|inches|["″]|NPS)?\s*$/gi
const WHOLE_AND_FRACTION = /^(\d*\.?\d*)(?:(?:^|[\s-]+)(\d+)\/(\d+))?$/

/** The number of inches that a nominal size is called after; undefined where the text is none. */
export function inchesIn(text: string): number | undefined {
  const bare = text.replace(/[¼½¾]/g, (sign) => FRACTIONS[sign] ?? '').replace(WORDS_AROUND, '')
  const match = WHOLE_AND_FRACTION.exec(bare)
  if (match === null) return undefined
  const [, whole = '', over = '0', under = '1'] = match
  return Number(whole) + Number(over) / Number(under)
}
