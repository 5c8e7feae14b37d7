import { samePlace } from '../../workbook/cell-place.ts'
import type { Step } from './derivation.ts'

/** The formula in words, where that says more than the value. */
export const shownWords = ({ formula, value }: Step): readonly string[] => (formula === undefined || formula.words === '' || bare(formula.words) === value ? [] : [formula.words])

/** Values put in where that says more than the words, each equal to the next, and at last what they come to; of a range or of rows that is the first one's. */
export function shownEqualities({ kind, formula, value, rows }: Step): readonly string[] {
  if (formula === undefined || formula.equalities.length === 0) return []
  const result = kind === 'computed' ? value : rows.find(({ place }) => samePlace(place, formula.at))?.value
  if (result === undefined) return formula.equalities
  return [...formula.equalities.filter((line) => bare(line) !== result && line !== formula.words), result]
}

/** A text without its quotes. */
const bare = (text: string): string => text.replace(/^“(.*)”$/, '$1')
