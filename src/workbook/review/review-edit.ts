import { isOnSheet, type Area } from '../address.ts'
import { MAX_ACCEPTED, MAX_COVERED, MAX_COVERED_TOGETHER, MAX_MARKS, MAX_REVIEWER, MAX_TEXT } from '../limits.ts'
import { CHECK_METHODS, NO_REVIEW, type AcceptedFinding, type CheckMark, type RecordEntry, type Review } from '../review-record.ts'
import { acceptanceHolds, entryHash, markHolds } from './review-hash.ts'
import { acceptanceWords, markWords, reviewPlace } from './review-words.ts'

export interface MarkChange {
  readonly id: string
  /** As it is to be; `null` takes it away. */
  readonly mark: CheckMark | null
}

/** What a reviewer does, or what becomes of it as cells move. */
export interface ReviewChange {
  readonly marks?: readonly MarkChange[]
  /** All acceptances there are to be. */
  readonly accepted?: readonly AcceptedFinding[]
  /** Who does it; empty where nobody in particular does. */
  readonly by: string
  /** ISO 8601, to the second, UTC. */
  readonly at: string
  /** For the lines of the record: why a mark goes, or comes back. */
  readonly words?: string
  /** All that changes is where things stand, or that they are gone: marks that stay need no line. */
  readonly moved?: true
}

/** The very same review if nothing changes. The record is what it was and a line for whatever came, went or was restated; `inverse` takes back all but the record. */
export function changeReview(before: Review | undefined, change: ReviewChange): { readonly review: Review | undefined; readonly inverse: ReviewChange } {
  const { marks: old, accepted: oldAccepted, record } = before ?? NO_REVIEW
  const byId = new Map(old.map((mark) => [mark.id, mark]))
  const lines: Line[] = []
  const undone: MarkChange[] = []
  for (const { id, mark } of change.marks ?? []) {
    const was = byId.get(id)
    if (sameMark(was, mark)) continue
    undone.push({ id, mark: was ?? null })
    lines.push(...markLines(was, mark, change))
    if (mark) byId.set(id, mark)
    else byId.delete(id)
  }
  const accepted = change.accepted === undefined ? oldAccepted : normalAcceptances(change.accepted)
  lines.push(...acceptanceLines(oldAccepted, accepted, record, change))
  const sameAccepted = JSON.stringify(accepted) === JSON.stringify(oldAccepted)
  const inverse: ReviewChange = { ...change, ...(change.marks ? { marks: undone.toReversed() } : {}), ...(change.accepted ? { accepted: oldAccepted } : {}) }
  if (undone.length === 0 && sameAccepted) return { review: before, inverse }
  const marks = undone.length === 0 ? old : normalMarks([...byId.values()])
  const grown = withLines(record, lines)
  return { review: marks.length + accepted.length + grown.length === 0 ? undefined : { marks, accepted, record: grown }, inverse }
}

/** What of a review no file accepts, with what is accepted; undefined if nothing. */
export function reviewProblem({ marks, accepted }: Pick<Review, 'marks' | 'accepted'>): { readonly message: string; readonly path: readonly ['marks' | 'accepted', number?] } | undefined {
  if (marks.length > MAX_MARKS) return { message: `${counted(marks.length)} check marks; accepted: up to ${counted(MAX_MARKS)}`, path: ['marks'] }
  if (accepted.length > MAX_ACCEPTED) return { message: `${counted(accepted.length)} accepted findings; accepted: up to ${counted(MAX_ACCEPTED)}`, path: ['accepted'] }
  const ids = new Set<string>()
  for (const [index, mark] of marks.entries()) {
    const problem = ids.has(mark.id) ? `there are two marks ${JSON.stringify(mark.id)}; accepted: one` : markProblem(mark)
    if (problem !== undefined) return { message: problem, path: ['marks', index] }
    ids.add(mark.id)
  }
  for (const [index, one] of accepted.entries()) {
    const problem = acceptanceProblem(one)
    if (problem !== undefined) return { message: problem, path: ['accepted', index] }
  }
  const covered = marks.reduce((sum, { covers }) => sum + covers.length, 0)
  return covered > MAX_COVERED_TOGETHER ? { message: `the marks cover ${counted(covered)} cells together; accepted: up to ${counted(MAX_COVERED_TOGETHER)}`, path: ['marks'] } : undefined
}

/** In an order that depends on nothing but what they say; what is said twice, once. */
export function normalAcceptances(accepted: readonly AcceptedFinding[]): readonly AcceptedFinding[] {
  const normal = accepted.map(({ kind, sheet, area: { top, bottom, left, right }, key, note, by, at }): AcceptedFinding => ({
    kind, sheet, area: { top, bottom, left, right }, key, note, ...(by === undefined ? {} : { by }), ...(at === undefined ? {} : { at }),
  }))
  return [...new Map(normal.map((one) => [JSON.stringify(one), one])).values()].toSorted(
    (one, other) => compared(one.sheet, other.sheet) || one.area.top - other.area.top || one.area.left - other.area.left || compared(JSON.stringify(one), JSON.stringify(other)),
  )
}

/** In the order of their numbers. */
export const normalMarks = (marks: readonly CheckMark[]): readonly CheckMark[] => marks.toSorted((one, other) => one.id.length - other.id.length || compared(one.id, other.id))

export const ISO_SECOND = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/

type Line = Omit<RecordEntry, 'hash'>

function withLines(record: readonly RecordEntry[], lines: readonly Line[]): readonly RecordEntry[] {
  const grown = [...record]
  for (const line of lines) grown.push({ ...line, hash: entryHash(grown.at(-1)?.hash ?? '', line) })
  return lines.length === 0 ? record : grown
}

function markLines(was: CheckMark | undefined, mark: CheckMark | null, { by, at, words = '', moved }: ReviewChange): Line[] {
  if (mark && !was) return [{ what: 'marked', of: mark.id, place: reviewPlace(mark), by, at, words: [markWords(mark), ...(words === '' ? [] : [words])].join('; '), holds: markHolds(mark) }]
  if (!was) return []
  if (!mark) return [{ what: 'mark withdrawn', of: was.id, place: reviewPlace(was), by, at, words, holds: '' }]
  // Whatever the edit says of itself: marks that hold something else are told.
  if (moved || markHolds(was) === markHolds(mark)) return []
  return [{ what: 'mark changed', of: mark.id, place: reviewPlace(mark), by, at, words: words === '' ? 'the same quantities in other units' : words, holds: markHolds(mark) }]
}

/** What came with a template has nobody who accepted it: it comes, and goes with its cells, without a word. */
function acceptanceLines(before: readonly AcceptedFinding[], after: readonly AcceptedFinding[], record: readonly RecordEntry[], { by, at, words = '', moved }: ReviewChange): Line[] {
  if (before === after) return []
  const lineOf = (what: Line['what'], one: AcceptedFinding, said: string): Line => ({ what, of: one.kind, place: reviewPlace(one), by, at, words: said, holds: acceptanceHolds(one) })
  const isTold = (one: AcceptedFinding): boolean => one.by !== undefined || record.some(({ holds }) => holds === acceptanceHolds(one))
  return [
    ...beyond(before, after).filter((one) => !moved || isTold(one)).map((one) => lineOf('acceptance withdrawn', one, words === '' && moved ? 'its cells are gone' : words)),
    ...beyond(after, before).filter(isTold).map((one) => lineOf('finding accepted', one, [acceptanceWords(one), ...(words === '' ? [] : [words])].join('; '))),
  ]
}

/** What of some holds what none of the others does, counting those that hold the same. */
function beyond(some: readonly AcceptedFinding[], others: readonly AcceptedFinding[]): AcceptedFinding[] {
  const left = new Map<string, number>()
  for (const holds of others.map(acceptanceHolds)) left.set(holds, (left.get(holds) ?? 0) + 1)
  return some.filter((one) => {
    const holds = acceptanceHolds(one)
    const count = left.get(holds) ?? 0
    left.set(holds, count - 1)
    return count <= 0
  })
}

function sameMark(one: CheckMark | undefined, other: CheckMark | null): boolean {
  if (!one || !other) return !one && !other
  return one === other || (one.covers.length === other.covers.length && one.area?.top === other.area?.top && JSON.stringify(one) === JSON.stringify(other))
}

function markProblem({ id, area, by, at, method, note, covers, values }: CheckMark): string | undefined {
  if (!/^[1-9][0-9]{0,8}$/.test(id)) return `${JSON.stringify(id)} is no number of a mark; accepted: whole numbers from 1 as text, such as "7"`
  if (!CHECK_METHODS.includes(method)) return `method ${JSON.stringify(method)}; accepted: ${CHECK_METHODS.join(', ')}`
  if (covers.length > MAX_COVERED || values.length > MAX_COVERED) return `mark ${id} covers ${counted(covers.length)} cells; accepted: up to ${counted(MAX_COVERED)}`
  return nameProblem(by) ?? timeProblem(at) ?? noteProblem(note) ?? (area === null ? undefined : areaProblem(area))
}

function acceptanceProblem({ kind, area, key, note, by, at }: AcceptedFinding): string | undefined {
  if (kind === '') return 'a finding without a kind; accepted: the kind as findings are named, such as error-cells'
  if (key.length > MAX_TEXT) return `a key of ${counted(key.length)} characters; accepted: up to ${counted(MAX_TEXT)}`
  if ((by === undefined) !== (at === undefined)) return 'accepted: who accepted a finding and when, or neither for what came with a template'
  return areaProblem(area) ?? noteProblem(note) ?? (by === undefined ? undefined : nameProblem(by)) ?? (at === undefined ? undefined : timeProblem(at))
}

/** What is wrong with the name of a reviewer. */
export const nameProblem = (by: string): string | undefined =>
  by.trim() === by && by !== '' && by.length <= MAX_REVIEWER ? undefined : `${JSON.stringify(by)} is no name of a reviewer; accepted: 1 to ${MAX_REVIEWER} characters, no blank at either end`

const timeProblem = (at: string): string | undefined => (ISO_SECOND.test(at) && !Number.isNaN(Date.parse(at)) ? undefined : `${JSON.stringify(at)} is no time; accepted: such as 2026-03-02T14:05:00Z`)

const noteProblem = (note: string): string | undefined => (note.length <= MAX_TEXT ? undefined : `a note of ${counted(note.length)} characters; accepted: up to ${counted(MAX_TEXT)}`)

const areaProblem = ({ top, left, bottom, right }: Area): string | undefined =>
  isOnSheet(top, left) && isOnSheet(bottom, right) && top <= bottom && left <= right ? undefined : 'cells off the sheet; accepted: an area of the sheet from its upper left to its lower right'

const compared = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0)

const counted = (count: number): string => count.toLocaleString('en')
