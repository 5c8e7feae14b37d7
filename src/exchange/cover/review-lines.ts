import { isCellError, type CellValue } from '../../calc/values.ts'
import type { Workbook } from '../../workbook/document.ts'
import { checkedWords, marksInWords, newsWords, recordInWords } from '../../workbook/review/marks-in-words.ts'
import { markStates, type MarkState } from '../../workbook/review/mark-states.ts'
import { reviewPlace } from '../../workbook/review/review-words.ts'
import { LAST_HASH_WORDS, verdictWords, verifyRecord } from '../../workbook/review/verify-record.ts'
import { NO_REVIEW } from '../../workbook/review-record.ts'
import { across, EMPTY, fact, headings, line, words, type Line } from './cover-lines.ts'

/** More are in the document that the file carries. */
const LISTED = 300
/** Changes that are told of a stale mark. */
const TOLD = 5

/** The check marks as they stand at export. */
export const exportedMarks = (workbook: Workbook, values: ReadonlyMap<string, readonly (readonly CellValue[])[]>): readonly MarkState[] =>
  markStates(workbook, ({ sheet, row, column }) => {
    const value = values.get(sheet)?.[row]?.[column]
    return isCellError(value) ? value.error : value
  })

/** Check marks with their state, accepted findings, and the record with its hashes; nothing where nobody has reviewed anything. */
export function reviewLines({ review = NO_REVIEW }: Workbook, states: readonly MarkState[]): readonly Line[] {
  const { accepted, record } = review
  const verdict = verifyRecord(review)
  const marks = states.map((state) => line(
    words('label', reviewPlace(state.mark)), words('text', checkedWords(state)), words(state.isGood ? 'text' : 'check', state.isGood ? 'good at export' : 'stale at export'), ...across('text', newsWords(state, TOLD), 3),
  ))
  const findings = accepted.map((one) => line(words('label', reviewPlace(one)), words('text', one.kind), words('text', one.by === undefined ? 'with the template' : `${one.by}, ${(one.at ?? '').slice(0, 10)}`), ...across('text', one.note, 3)))
  const lines = record.map(({ what, of, place, by, at, words: said, hash }, index) => line(
    words('label', `${index + 1}  ${at}`), words('text', what.startsWith('mark') ? `${what} ${of}, ${place}` : `${what}: ${of}, ${place}`), words('text', by), words('text', said), words('note', hash),
  ))
  return [
    ...listing(['Check marks', 'Checked by', 'State', 'Changed since', ''], marks),
    ...listing(['Accepted findings', 'Kind', 'By', 'Lets it stand because', ''], findings),
    ...listing(['Record of the review', 'What', 'By', 'In words', 'SHA-256'], lines),
    ...(verdict.lastHash === undefined && verdict.unrecorded.length === 0 ? [] : [fact('The record', verdictWords(verdict, record))]),
    ...(verdict.lastHash === undefined ? [] : [fact('Last hash', verdict.lastHash), line(undefined, ...across('note', LAST_HASH_WORDS, 1))]),
  ]
}

/** The same in a few sentences, for where no table can be. */
export function reviewInWords(workbook: Workbook, values: Parameters<typeof exportedMarks>[1]): readonly string[] {
  const { review = NO_REVIEW } = workbook
  const states = exportedMarks(workbook, values)
  const record = recordInWords(review)
  return [
    ...(states.length === 0 ? [] : [`${marksInWords(states)}.`]),
    ...states.map((state) => `${reviewPlace(state.mark)}: ${state.isGood ? 'good' : 'stale'}, checked by ${checkedWords(state)}${state.isGood ? '' : `; changed since: ${newsWords(state, TOLD)}`}.`).slice(0, LISTED),
    ...(review.accepted.length === 0 ? [] : [`${review.accepted.length === 1 ? '1 accepted finding' : `${review.accepted.length} accepted findings`}; the spreadsheet files that Lowside exports list them.`]),
    ...(record === undefined ? [] : [`Record of the review: ${record}`]),
  ]
}

/** The latest, where there are many: what came first is told least often. */
const listing = (titles: readonly string[], lines: readonly Line[]): Line[] => (lines.length === 0 ? [] : [
  EMPTY, headings(...titles), ...lines.slice(-LISTED), ...(lines.length > LISTED ? [{ cells: across('note', `and ${lines.length - LISTED} before them`) }] : []),
])
