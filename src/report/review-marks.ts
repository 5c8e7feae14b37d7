import { isCellError, type AreaValues } from '../calc/values.ts'
import { isInArea } from '../workbook/areas.ts'
import type { Workbook } from '../workbook/document.ts'
import { NO_REVIEW, type CheckMark } from '../workbook/review-record.ts'
import { checkedWords, newsWords } from '../workbook/review/marks-in-words.ts'
import { markStates, type MarkState } from '../workbook/review/mark-states.ts'
import { reviewPlace } from '../workbook/review/review-words.ts'
import { LAST_HASH_WORDS, verdictWords, verifyRecord } from '../workbook/review/verify-record.ts'
import { element, type Html } from '../pages/html.ts'
import { listing } from '../pages/listing.ts'
import { mark } from '../pages/marks.ts'

/** Changes that are told of a stale mark. */
const TOLD = 5
/** Lines of the record that are printed, the latest of more. */
const PRINTED = 200

/** The check marks as a report has them, given what it knows of the values. */
export const reportedMarks = (workbook: Workbook, values: ReadonlyMap<string, AreaValues>): readonly MarkState[] =>
  markStates(workbook, ({ sheet, row, column }) => {
    const value = values.get(sheet)?.values[row]?.[column]
    return isCellError(value) ? value.error : value
  })

/** Whether a cell of a sheet is marked, and how the mark stands: as it is printed at the cell. */
export function markedCells(states: readonly MarkState[], sheet: string): (row: number, column: number) => 'good' | 'stale' | undefined {
  const here = states.filter(({ mark: one }) => one.sheet === sheet && !one.gone)
  if (here.length === 0) return () => undefined
  return (row, column) => {
    const own = here.filter(({ mark: one }) => isMarked(one, row, column))
    return own.length === 0 ? undefined : own.some(({ isGood }) => isGood) ? 'good' : 'stale'
  }
}

/** All check marks with their state, and what has changed since they were made; then the record, and whether it fits. Nothing where nobody has reviewed anything. */
export function marksPart({ review = NO_REVIEW }: Pick<Workbook, 'review'>, states: readonly MarkState[]): readonly Html[] {
  const verdict = verifyRecord(review)
  const rows = states.map((state) => element(
    'tr', {},
    element('td', { class: state.isGood ? 'checked-state' : 'not-met' }, mark(state.isGood ? 'checked' : 'stale'), state.isGood ? 'good' : 'stale'),
    ...[reviewPlace(state.mark), checkedWords(state), newsWords(state, TOLD)].map((text) => element('td', {}, text)),
  ))
  const lines = review.record.map(({ what, of, place, by, at, words, hash }, index) => element(
    'tr', { class: index === verdict.brokenAt ? 'not-met' : undefined },
    ...[String(index + 1), what.startsWith('mark') ? `${what} ${of}` : `${what}: ${of}`, place, [by, at.slice(0, 16).replace('T', ' ')].filter((text) => text !== '').join(', '), words].map((text) => element('td', {}, text)),
    element('td', { class: 'hash' }, index === verdict.brokenAt ? 'does not fit' : hash.slice(0, 16)),
  ))
  return [
    ...(rows.length === 0 ? [] : [listing('Check marks', 'check-marks', ['State', 'Cells', 'Checked by', 'Changed since'], rows), element('p', { class: 'legend' }, LEGEND)]),
    ...(lines.length === 0 ? [] : [listing('Record of the review', 'record', ['', 'What', 'Where', 'Who and when (UTC)', 'In words', 'Hash, first 16'], lines.slice(-PRINTED))]),
    ...(lines.length > PRINTED ? [element('p', { class: 'legend' }, `The first ${lines.length - PRINTED} lines are in the workbook.`)] : []),
    ...(verdict.lastHash === undefined && verdict.unrecorded.length === 0 ? [] : [
      element('p', { class: verdict.brokenAt === undefined && verdict.unrecorded.length === 0 ? 'legend' : 'legend not-met' }, verdictWords(verdict, review.record)),
      verdict.lastHash === undefined ? undefined : element('p', { class: 'legend' }, 'Last hash (SHA-256): ', element('b', { class: 'hash' }, verdict.lastHash), `. ${LAST_HASH_WORDS}`),
    ].filter((part) => part !== undefined)),
  ]
}

const LEGEND = 'At the left edge of a cell that was checked stands a double line; a broken one where its mark is stale.'

const isMarked = ({ area }: CheckMark, row: number, column: number): boolean =>
  area === null || isInArea({ row, column }, area)
