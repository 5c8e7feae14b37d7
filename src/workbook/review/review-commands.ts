import type { Area } from '../address.ts'
import { casesOf, caseName } from '../cases.ts'
import type { CellPlace } from '../cell-place.ts'
import { sheetOf } from '../commands.ts'
import type { Workbook } from '../document.ts'
import type { Edit } from '../edits.ts'
import { MAX_COVERED, MAX_RECORD } from '../limits.ts'
import { WorkbookProblem } from '../problem.ts'
import { NO_REVIEW, type AcceptedFinding, type CheckedValue, type CheckMark, type CheckMethod } from '../review-record.ts'
import { coversOf, filledCells, formulaCells } from './covers.ts'
import { nameProblem } from './review-edit.ts'
import { reviewPlace } from './review-words.ts'

/** What a reviewer does. Each is a list of edits that can be undone; the record gains a line by either. */

/** Who checks what, when and how. */
export interface Checking {
  readonly sheet: string
  /** `null` for the whole sheet. */
  readonly area: Area | null
  readonly by: string
  /** As `timestamp` gives it. */
  readonly at: string
  readonly method: CheckMethod
  readonly note: string
}

/** What a cell comes to; of an error its sign. */
export type ValueAt = (place: CellPlace) => CheckedValue['value']

/**
 * Marks cells as checked. The mark covers what stands in them and in all that feeds them. Marks that the same person has on just these cells are
 * withdrawn by it: it is made again.
 */
export function markChecked(workbook: Workbook, { sheet: sheetName, area, by, at, method, note }: Checking, value: ValueAt): Edit[] {
  refuseReviewer(workbook, by)
  const sheet = sheetOf(workbook, sheetName).name
  const places = filledCells(workbook, sheet, area)
  if (places.length === 0) throw new WorkbookProblem(`${reviewPlace({ sheet, area })} is empty: there is nothing to check; accepted: cells that hold something`)
  const { covers, names } = coversOf(workbook, places)
  if (covers.length > MAX_COVERED) {
    throw new WorkbookProblem(`a mark on ${reviewPlace({ sheet, area })} would cover ${covers.length.toLocaleString('en')} cells with all that feeds them; accepted: up to ${MAX_COVERED.toLocaleString('en')}, so check it in parts`)
  }
  const { current } = casesOf(workbook)
  const id = nextId(workbook)
  const mark: CheckMark = {
    id, sheet, area, by, at, ...(current === null ? {} : { inCase: caseName(workbook, current) }), method, note: note.trim(), covers, names,
    values: formulaCells(covers, places).map((place) => ({ ...place, value: shortened(value(place)) })),
  }
  const before = (workbook.review ?? NO_REVIEW).marks.filter((one) => one.by === by && reviewPlace(one) === reviewPlace(mark))
  return [
    ...(before.length === 0 ? [] : [{ kind: 'review' as const, marks: before.map((one) => ({ id: one.id, mark: null })), by, at, words: `checked again: mark ${id}` }]),
    { kind: 'review', marks: [{ id, mark }], by, at },
  ]
}

/** Checks what a mark stands on once more, as whoever does it now. What the mark was before is withdrawn. */
export function checkAgain(workbook: Workbook, id: string, { by, at, method, note }: Omit<Checking, 'sheet' | 'area'>, value: ValueAt): Edit[] {
  const mark = markOf(workbook, id)
  if (mark.gone) throw new WorkbookProblem(`the cells of mark ${id} are gone; accepted: to withdraw it`)
  const edits = markChecked(workbook, { sheet: mark.sheet, area: mark.area, by, at, method, note }, value)
  const isWithdrawn = edits.some((edit) => edit.kind === 'review' && edit.marks?.some((change) => change.id === id))
  return isWithdrawn ? edits : [{ kind: 'review', marks: [{ id, mark: null }], by, at, words: `checked again: mark ${nextId(workbook)}` }, ...edits]
}

/** @param why for the record */
export function withdrawMark(workbook: Workbook, id: string, { by, at, why = '' }: { readonly by: string; readonly at: string; readonly why?: string }): Edit[] {
  refuseReviewer(workbook, by)
  return [{ kind: 'review', marks: [{ id: markOf(workbook, id).id, mark: null }], by, at, words: why.trim() }]
}

/** Lets findings of a kind stand, within their cells, with the reason. Those accepted before within the same cells, and for the same, are so anew. */
export function acceptFinding(workbook: Workbook, { kind, sheet, area, key }: Pick<AcceptedFinding, 'kind' | 'sheet' | 'area' | 'key'>, note: string, by: string, at: string): Edit[] {
  refuseReviewer(workbook, by)
  if (note.trim() === '') throw new WorkbookProblem('accepting a finding needs a note that says why it may stand; accepted: a few words')
  const one: AcceptedFinding = { kind, sheet: sheetOf(workbook, sheet).name, area, key, note: note.trim(), by, at }
  const others = (workbook.review ?? NO_REVIEW).accepted.filter((other) => !isSameFinding(other, one))
  return [{ kind: 'review', accepted: [...others, one], by, at }]
}

/** Takes back that a finding was accepted: it is open again. */
export function withdrawAcceptance(workbook: Workbook, accepted: AcceptedFinding, by: string, at: string, why = ''): Edit[] {
  refuseReviewer(workbook, by)
  const before = (workbook.review ?? NO_REVIEW).accepted
  const others = before.filter((other) => !(isSameFinding(other, accepted) && other.note === accepted.note && other.by === accepted.by && other.at === accepted.at))
  if (others.length === before.length) throw new WorkbookProblem(`what is accepted of ${reviewPlace(accepted)} is not in the workbook any more`)
  return [{ kind: 'review', accepted: others, by, at, words: why.trim() }]
}

const isSameFinding = (one: AcceptedFinding, other: AcceptedFinding): boolean => one.kind === other.kind && one.key === other.key && reviewPlace(one) === reviewPlace(other)

function refuseReviewer({ review }: Workbook, by: string): void {
  const problem = nameProblem(by)
  if (problem !== undefined) throw new WorkbookProblem(problem)
  if ((review?.record.length ?? 0) >= MAX_RECORD) throw new WorkbookProblem(`the record has ${MAX_RECORD.toLocaleString('en')} lines, which is all that it takes`)
}

function markOf({ review = NO_REVIEW }: Workbook, id: string): CheckMark {
  const mark = review.marks.find((one) => one.id === id)
  if (!mark) throw new WorkbookProblem(`there is no mark ${id}; there are ${review.marks.length === 0 ? 'none' : review.marks.map((one) => one.id).join(', ')}`)
  return mark
}

/** No number that a mark has, or had as the record tells. */
function nextId({ review = NO_REVIEW }: Workbook): string {
  const ids = [...review.marks.map((mark) => mark.id), ...review.record.filter(({ what }) => what === 'marked').map(({ of }) => of)].map(Number)
  return String(1 + ids.reduce((most, id) => (id > most ? id : most), 0))
}

/** Numbers to 12 digits: beyond that results differ by the order of the arithmetic. */
const shortened = (value: CheckedValue['value']): CheckedValue['value'] => (typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(12)) : value)
