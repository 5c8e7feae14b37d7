import { describe, expect, it } from 'vitest'
import { Graph } from '../../../../src/calc/graph.ts'
import { brokenRecord } from '../../../../src/review/kinds/broken-record.ts'
import { staleMarks } from '../../../../src/review/kinds/stale-marks.ts'
import { removeSheet, setEntry } from '../../../../src/workbook/commands.ts'
import type { Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../../src/workbook/edits.ts'
import { insertLines } from '../../../../src/workbook/line-commands.ts'
import { restate } from '../../../../src/workbook/restate.ts'
import { acceptFinding, markChecked } from '../../../../src/workbook/review/review-commands.ts'
import { findOf, placesOf, surveyOfWorkbook } from '../survey-of.ts'
import { at, workbookOf } from '../../workbook-of.ts'

const AT = '2026-03-02T14:05:00Z'
const start = workbookOf({ Duty: { A5: ['Load', 'label'], B5: 42, C5: ['TR', 'unit'], A6: ['In heat flow', 'label'], B6: '=UNIT.CONVERT(B5:C5,C6)', C6: ['TR', 'unit'], A7: ['Twice that', 'label'], B7: '=B5+50', C7: ['TR', 'unit'] }, Drum: { B2: '=Duty!B6*2' } })

const now = (workbook: Workbook, ...commands: readonly ((workbook: Workbook) => readonly Edit[])[]): Workbook => commands.reduce((current, make) => applyEdits(current, make(current)).workbook, workbook)
const mark = (sheet: string, address: string) => (workbook: Workbook) => {
  const { row, column } = at(address)
  const graph = new Graph(workbook)
  return markChecked(workbook, { sheet, area: { top: row, bottom: row, left: column, right: column }, by: 'R. Smith', at: AT, method: 'by hand', note: '' }, (place) => {
    const value = graph.value(place.sheet, place.row, place.column)
    return typeof value === 'object' && value !== null ? value.error : value
  })
}
const type = (sheet: string, address: string, typed: string) => (workbook: Workbook) => setEntry(workbook, sheet, at(address), typed)

describe('stale check marks', () => {
  const marked = now(start, mark('Drum', 'B2'))

  it('are found where the mark is, with what changed and the cells that did', () => {
    const found = findOf(staleMarks, surveyOfWorkbook(now(marked, type('Duty', 'B5', '48'))))
    expect(found).toMatchObject([{
      severity: 'warning', sheet: 'Drum', area: { top: 1, bottom: 1, left: 1, right: 1 }, key: 'mark 1: Load (Duty!#) was 42 TR, is 48 TR', causes: [{ sheet: 'Duty', row: 4, column: 1 }],
      reason: 'Mark 1 on Drum!B2, checked by R. Smith on 2026-03-02, is stale: Load (Duty!B5) was 42 TR, is 48 TR.',
    }])
  })

  it('are none where all is as it was checked, moved or restated', () => {
    for (const workbook of [marked, now(marked, (one) => insertLines(one, 'Duty', { axis: 'rows', at: 2, count: 3 })), now(marked, type('Duty', 'B7', '=B5+51')), now(start, mark('Duty', 'B6'), (one) => restate(one, 'SI'))]) {
      expect(placesOf(staleMarks, surveyOfWorkbook(workbook))).toEqual([])
    }
  })

  it('are told of plain arithmetic whose units were restated under it: the same contents come to another quantity', () => {
    const [found] = findOf(staleMarks, surveyOfWorkbook(now(start, mark('Duty', 'B7'), (one) => restate(one, 'SI'))))
    // 92 TR are 323.55 kW (1 TR = 3.5168528 kW, NIST SP 811, appendix B); 42 TR in kW and 50 more are 197.71.
    expect(found?.reason).toMatch(/^Mark 1 on Duty!B7, checked by R\. Smith on 2026-03-02, is stale: Twice that \(Duty!B7\) came to 323\.55\d*, comes to 197\.70\d*, though nothing that it is made of has changed\.$/)
  })

  it('accepted as they are stay accepted when rows move, and are open when something else changes', () => {
    const stale = now(marked, type('Duty', 'B5', '48'))
    const [found] = findOf(staleMarks, surveyOfWorkbook(stale))
    if (!found) throw new Error('none')
    const accepted = now(stale, (one) => acceptFinding(one, found, 'the load is agreed', 'R. Smith', AT))
    const open = (workbook: Workbook) => findOf(staleMarks, surveyOfWorkbook(workbook)).filter((one) => one.accepted === undefined).length
    expect([open(stale), open(accepted), open(now(accepted, (one) => insertLines(one, 'Duty', { axis: 'rows', at: 0, count: 1 }))), open(now(accepted, type('Duty', 'B5', '50')))]).toEqual([1, 0, 0, 1])
  })

  it('of what is gone are told at the beginning', () => {
    expect(placesOf(staleMarks, surveyOfWorkbook(now(marked, (one) => removeSheet(one, 'Drum'))))).toEqual(['Duty!A1'])
  })
})

describe('a record that does not fit', () => {
  const marked = now(start, mark('Drum', 'B2'), mark('Duty', 'B6'))
  const withReview = (change: (review: NonNullable<Workbook['review']>) => Workbook['review']): Workbook => {
    const review = marked.review && change(marked.review)
    const { review: _before, ...rest } = marked
    return review ? { ...rest, review } : rest
  }

  it('is none where everything was done in Lowside, or nothing at all', () => {
    expect(findOf(brokenRecord, surveyOfWorkbook(start))).toEqual([])
    expect(findOf(brokenRecord, surveyOfWorkbook(marked))).toEqual([])
  })

  it('is found by the first line that was changed', () => {
    const changed = withReview((review) => ({ ...review, record: review.record.map((entry, index) => (index === 0 ? { ...entry, by: 'A. Jones' } : entry)) }))
    expect(findOf(brokenRecord, surveyOfWorkbook(changed))).toMatchObject([{
      severity: 'error', reason: `Line 1 of the record (marked, Drum!B2, ${AT}) does not fit: it, or what stood before it, was changed outside Lowside.`,
    }])
  })

  it('is found by marks that it does not tell of, or tells of otherwise', () => {
    expect(findOf(brokenRecord, surveyOfWorkbook(withReview((review) => ({ ...review, record: review.record.slice(0, 1) })))).map(({ reason }) => reason)).toEqual(['Mark 2 on Duty!B6 by R. Smith is not on the record.'])
    expect(findOf(brokenRecord, surveyOfWorkbook(withReview((review) => ({ ...review, marks: review.marks.map((one) => ({ ...one, note: 'and all else' })) })))).map(({ reason }) => reason)).toEqual([
      'Mark 1 on Drum!B2 by R. Smith is not as the record has it: the mark or what it covers was changed outside Lowside.',
      'Mark 2 on Duty!B6 by R. Smith is not as the record has it: the mark or what it covers was changed outside Lowside.',
    ])
    expect(findOf(brokenRecord, surveyOfWorkbook(withReview((review) => ({ ...review, marks: [] }))))).toHaveLength(2)
  })
})
