import { NO_REVIEW, type RecordEntry, type Review } from '../review-record.ts'
import { acceptanceHolds, entryHash, markHolds } from './review-hash.ts'
import { reviewPlace } from './review-words.ts'

/** Whether the record is what was written, line after line, and tells of the marks that there are. */
export interface RecordVerdict {
  /** Position of the first line that does not fit the one before it, or was changed itself; undefined if all fit. */
  readonly brokenAt: number | undefined
  /** Marks and acceptances that the record does not tell of as they are, or that it tells of and are not there. A sentence each, without its full stop. */
  readonly unrecorded: readonly string[]
  /** Of the last line; undefined where there is none. Lines that were taken off the end are known by this alone, against a copy of it. */
  readonly lastHash: string | undefined
}

export function verifyRecord(review: Review = NO_REVIEW): RecordVerdict {
  const { record } = review
  const brokenAt = record.findIndex((entry, index) => entry.hash !== entryHash(record[index - 1]?.hash ?? '', entry))
  return { brokenAt: brokenAt < 0 ? undefined : brokenAt, unrecorded: [...marksAgainst(review), ...acceptancesAgainst(review)], lastHash: record.at(-1)?.hash }
}

/** In a sentence or more, for whoever is to sign under it. */
export function verdictWords(verdict: RecordVerdict, record: readonly RecordEntry[]): string {
  const { brokenAt, unrecorded } = verdict
  if (record.length === 0 && unrecorded.length === 0) return 'Nothing is on the record yet.'
  const chain = brokenAt === undefined ? (record.length === 1 ? 'Its one line fits.' : `All ${record.length.toLocaleString('en')} lines fit.`) : brokenWords(brokenAt, record)
  return [chain, ...unrecorded.map((one) => `${one.charAt(0).toUpperCase()}${one.slice(1)}.`)].join(' ')
}

/** What the last hash is for. */
export const LAST_HASH_WORDS = 'Write the last hash beside the signature: lines taken off the end of the record show by nothing else.'

export function brokenWords(at: number, record: readonly RecordEntry[]): string {
  const entry = record[at]
  return `Line ${(at + 1).toLocaleString('en')} of the record${entry ? ` (${entry.what}, ${entry.place}, ${entry.at})` : ''} does not fit: it, or what stood before it, was changed outside Lowside.`
}

function marksAgainst({ marks, record }: Review): string[] {
  const last = new Map<string, RecordEntry>()
  for (const entry of record) if (entry.what === 'marked' || entry.what === 'mark changed' || entry.what === 'mark withdrawn') last.set(entry.of, entry)
  const wrong = marks.flatMap((mark) => {
    const entry = last.get(mark.id)
    const called = `mark ${mark.id} on ${reviewPlace(mark)} by ${mark.by}`
    if (!entry) return [`${called} is not on the record`]
    if (entry.what === 'mark withdrawn') return [`${called} was withdrawn, says the record`]
    return entry.holds === markHolds(mark) ? [] : [`${called} is not as the record has it: the mark or what it covers was changed outside Lowside`]
  })
  const there = new Set(marks.map(({ id }) => id))
  const missing = [...last.values()].filter(({ what, of }) => what !== 'mark withdrawn' && !there.has(of))
  return [...wrong, ...missing.map(({ of, place, by }) => `mark ${of} on ${place}${by === '' ? '' : ` by ${by}`} is on the record, but not in the workbook`)]
}

/** How often each was accepted, less how often withdrawn, is how often it is there. What came with a template may be there without a line. */
function acceptancesAgainst({ accepted, record }: Review): string[] {
  const told = new Map<string, { net: number; readonly first: RecordEntry }>()
  for (const entry of record) {
    if (entry.what !== 'finding accepted' && entry.what !== 'acceptance withdrawn') continue
    const known = told.get(entry.holds) ?? { net: entry.what === 'acceptance withdrawn' ? 1 : 0, first: entry }
    told.set(entry.holds, { ...known, net: known.net + (entry.what === 'finding accepted' ? 1 : -1) })
  }
  const there = new Map<string, number>()
  const wrong = accepted.flatMap((one) => {
    const holds = acceptanceHolds(one)
    const count = (there.get(holds) ?? 0) + 1
    there.set(holds, count)
    if (one.by === undefined || count <= (told.get(holds)?.net ?? 0)) return []
    return [`the accepted finding ${one.kind} on ${reviewPlace(one)} by ${one.by} is not on the record as it is`]
  })
  const missing = [...told].filter(([holds, { net }]) => net > (there.get(holds) ?? 0))
  return [...wrong, ...missing.map(([, { first }]) => `the acceptance of ${first.of} on ${first.place}${first.by === '' ? '' : ` by ${first.by}`} is on the record, but not in the workbook`)]
}
