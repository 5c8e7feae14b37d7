import { pointParts } from './number-format.ts'

/** More places than these would push the number away from its unit; the numbers beyond stand out to the right. */
const MOST_PLACES = 4

/**
 * What stands unseen after each number so that the decimal points of neighbouring rows lie under each other:
 * the places that the longest one of the run has more. `undefined` (no number) ends a run.
 */
export function alignmentPads(numbers: readonly (string | undefined)[]): string[] {
  const pads = numbers.map(() => '')
  let start = 0
  while (start < numbers.length) {
    let end = start
    while (end < numbers.length && numbers[end] !== undefined) end++
    const afters = numbers.slice(start, end).map((text) => pointParts(text ?? '').after)
    // `after` counts the point itself.
    const longest = Math.min(MOST_PLACES + 1, afters.reduce((most, after) => Math.max(most, after), 0))
    for (const [offset, after] of afters.entries()) pads[start + offset] = padOf(after, longest)
    start = end + 1
  }
  return pads
}

const padOf = (after: number, longest: number): string => {
  if (after >= longest) return ''
  return after === 0 ? `.${'0'.repeat(longest - 1)}` : '0'.repeat(longest - after)
}
