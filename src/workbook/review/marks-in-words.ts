import { NO_REVIEW, type Review } from '../review-record.ts'
import { markWords } from './review-words.ts'
import { moreWords, type MarkState } from './mark-states.ts'
import { verdictWords, verifyRecord } from './verify-record.ts'

/** How it stands with check marks, in a line: `3 check marks: 2 good, 1 stale`. */
export function marksInWords(states: readonly MarkState[]): string {
  const stale = states.filter(({ isGood }) => !isGood).length
  if (states.length === 0) return 'none'
  const count = states.length === 1 ? '1 check mark' : `${states.length.toLocaleString('en')} check marks`
  return stale === 0 ? `${count}, ${states.length === 1 ? 'good' : 'all good'}` : stale === states.length ? `${count}, ${states.length === 1 ? 'stale' : 'all stale'}` : `${count}: ${states.length - stale} good, ${stale} stale`
}

/** How it stands with the record, in a line, with its last hash: nothing where there is none. */
export function recordInWords(review: Review = NO_REVIEW): string | undefined {
  const verdict = verifyRecord(review)
  if (review.record.length === 0 && verdict.unrecorded.length === 0) return undefined
  return `${verdictWords(verdict, review.record)}${verdict.lastHash === undefined ? '' : ` Last hash ${verdict.lastHash}.`}`
}

/** Who checked it when, and how: `R. Smith, 2026-03-02, by hand: against the load list`. */
export const checkedWords = ({ mark }: Pick<MarkState, 'mark'>): string => `${mark.by}, ${mark.at.slice(0, 10)}, ${markWords(mark)}`

/** What has changed since, the first so many of it; nothing of a good mark. @param most that are told */
export function newsWords(state: MarkState, most: number): string {
  const shown = state.changes.slice(0, most)
  const rest = moreWords({ changes: shown, count: state.count })
  return [...shown.map(({ words }) => words), ...(rest === undefined ? [] : [rest]), ...(state.remark === undefined ? [] : [state.remark])].join('; ')
}
