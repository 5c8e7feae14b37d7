import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { makeCase } from '../../../src/workbook/case-commands.ts'
import { switchCase } from '../../../src/workbook/case-switching.ts'
import { removeSheet, renameSheet, setEntry, setUnit } from '../../../src/workbook/commands.ts'
import { cellAt, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { perform, redo, startHistory, undo } from '../../../src/workbook/history.ts'
import { deleteLines, insertLines } from '../../../src/workbook/line-commands.ts'
import { restate } from '../../../src/workbook/restate.ts'
import { NO_REVIEW } from '../../../src/workbook/review-record.ts'
import { checkedShares, shareWords } from '../../../src/workbook/review/checked-share.ts'
import { markStates } from '../../../src/workbook/review/mark-states.ts'
import { acceptFinding, checkAgain, markChecked, withdrawAcceptance, withdrawMark, type Checking } from '../../../src/workbook/review/review-commands.ts'
import { hashOf } from '../../../src/workbook/review/review-hash.ts'
import { timestamp } from '../../../src/workbook/review/timestamp.ts'
import { brokenWords, verdictWords, verifyRecord } from '../../../src/workbook/review/verify-record.ts'
import { duplicateSheet } from '../../../src/workbook/sheet-commands.ts'
import { changeUnits, unitPlace } from '../../../src/workbook/unit-change.ts'
import { at, workbookOf } from '../workbook-of.ts'

const AT = '2026-03-02T14:05:00Z'
const LATER = '2026-03-03T09:00:00Z'

/** A load in tons of refrigeration, and what comes of it on another sheet. */
const start = workbookOf({
  Duty: { A5: ['Load', 'label'], B5: 42, C5: ['TR', 'unit'], A6: ['Margin', 'label'], B6: 1.1, A7: ['Design load', 'label'], B7: '=B5*B6', C7: ['TR', 'unit'], A8: ['Spare', 'label'], B8: 3 },
  Drum: { A2: ['Flow', 'label'], B2: '=Duty!B7*0.3+House', C2: ['lb/min', 'unit'], A3: ['Served', 'label'], B3: ['=B2<20', 'check'] },
}, { House: 'Duty!$B$8' })

const now = (workbook: Workbook, ...commands: readonly ((workbook: Workbook) => readonly Edit[])[]): Workbook => commands.reduce((current, make) => applyEdits(current, make(current)).workbook, workbook)

const checking = (sheet: string, from?: string, to = from): Checking => {
  const area = from === undefined ? null : { top: at(from).row, left: at(from).column, bottom: at(to ?? from).row, right: at(to ?? from).column }
  return { sheet, area, by: 'R. Smith', at: AT, method: 'by hand', note: 'against the load list' }
}
const mark = (sheet: string, from?: string, to = from) => (workbook: Workbook) => markChecked(workbook, checking(sheet, from, to), () => 46.2)
const type = (sheet: string, address: string, typed: string) => (workbook: Workbook) => setEntry(workbook, sheet, at(address), typed)
const news = (workbook: Workbook, ...values: Parameters<typeof markStates>[1][]): string[] => markStates(workbook, values[0]).flatMap(({ changes }) => changes.map(({ words }) => words))
const whats = ({ review = NO_REVIEW }: Workbook): string[] => review.record.map(({ what, of, by, words }) => [what, of, by, words].join(' | '))
const fits = { brokenAt: undefined, unrecorded: [] }

describe('a check mark', () => {
  const marked = now(start, mark('Drum', 'B2'))

  it('covers the cell and all upstream of it, by references and names, with the units of the numbers', () => {
    const [one] = marked.review?.marks ?? []
    expect(one?.covers.map(({ sheet, row, column, content }) => `${sheet} ${row + 1}:${column + 1} ${content}`)).toEqual([
      'Duty 5:2 42', 'Duty 5:3 TR', 'Duty 6:2 1.1', 'Duty 7:2 =B5*B6', 'Duty 7:3 TR', 'Duty 8:2 3', 'Drum 2:2 =Duty!B7*0.3+House', 'Drum 2:3 lb/min',
    ])
    expect(one).toMatchObject({ id: '1', sheet: 'Drum', by: 'R. Smith', at: AT, method: 'by hand', names: [['House', 'Duty!$B$8']], values: [{ value: 46.2 }] })
    expect(markStates(marked)).toMatchObject([{ isGood: true, changes: [], count: 0 }])
  })

  it.each([
    ['a number', type('Duty', 'B5', '48'), ['Load (Duty!B5) was 42 TR, is 48 TR']],
    ['a formula', type('Duty', 'B7', '=B5*B6*2'), ['the formula of Design load (Duty!B7) was =B5*B6, is =B5*B6*2']],
    ['a number over a formula', type('Duty', 'B7', '50'), ['Design load (Duty!B7) was the formula =B5*B6, is 50 TR']],
    ['a unit', (workbook: Workbook) => setUnit(workbook, 'Duty', at('B5'), 'kW'), ['the unit beside Load (Duty!C5) was “TR”, is “kW”']],
    ['nothing', type('Duty', 'B6', ''), ['Margin (Duty!B6) was 1.1, is empty']],
    ['a name', (): Edit[] => [{ kind: 'name', name: 'House', refersTo: 'Duty!$B$6' }], ['the name House stood for Duty!$B$8, stands for Duty!$B$6']],
    ['a unit where there was none', (): Edit[] => [{ kind: 'cells', sheet: 'Duty', cells: [{ ...at('C6'), cell: { content: '%', role: 'unit' } }] }], ['the unit beside Margin (Duty!C6) is new: “%”']],
    ['rows taken away', (workbook: Workbook) => deleteLines(workbook, 'Duty', { axis: 'rows', at: 5, count: 1 }), ['the formula of Design load (Duty!B6) was =B5*B6, is =B5*#REF!', 'Duty!B6, which held 1.1, is gone from what was checked']],
    ['the sheet upstream', (workbook: Workbook) => removeSheet(workbook, 'Duty'), ['Duty!B5, which held 42, is gone with its sheet']],
  ] as const)('goes stale by %s, and says what changed', (_what, change, words) => {
    const changed = now(marked, change)
    expect(news(changed).slice(0, words.length)).toEqual(words)
    expect(markStates(changed)).toMatchObject([{ isGood: false }])
    expect(verifyRecord(changed.review)).toMatchObject(fits)
  })

  it.each([
    ['something beside', type('Duty', 'B9', '7')], ['a label', type('Duty', 'A5', 'Refrigeration load')],
    ['rows that move it', (workbook: Workbook) => insertLines(workbook, 'Duty', { axis: 'rows', at: 5, count: 2 })],
    ['columns', (workbook: Workbook) => insertLines(workbook, 'Drum', { axis: 'columns', at: 0, count: 1 })],
    ['the name of a sheet', (workbook: Workbook) => renameSheet(workbook, 'Duty', 'Zone duty')],
    ['the same units restated', (workbook: Workbook) => restate(workbook, 'SI')],
    ['a unit with its number', (workbook: Workbook) => {
      const sheet = workbook.sheets[0]
      const place = sheet && unitPlace(sheet, at('B5'))
      return place ? changeUnits(workbook, 'Duty', [place], 'kW', true) : []
    }],
    ['a copy of a sheet', (workbook: Workbook) => duplicateSheet(workbook, 'Duty').edits],
  ] as const)('stays good by %s', (_what, change) => {
    const changed = now(marked, change)
    expect(changed).not.toBe(marked)
    expect(news(changed)).toEqual([])
    expect(verifyRecord(changed.review)).toMatchObject(fits)
    expect(changed.review?.marks).toHaveLength(1)
  })

  it('comes back good when what changed is put back, and when its sheet comes back', () => {
    expect(news(now(marked, type('Duty', 'B5', '48'), type('Duty', 'B5', '42')))).toEqual([])
    const [duty] = start.sheets
    expect(news(now(marked, (workbook) => removeSheet(workbook, 'Duty'), () => (duty ? [{ kind: 'addSheet', at: 0, sheet: duty }] : [])))).toEqual([])
  })

  it('knows of a cell that was empty among what feeds it', () => {
    const sum = now(workbookOf({ Charge: { A1: ['Vessels', 'label'], B1: 2, B4: '=SUM(B1:B3)' } }), mark('Charge', 'B4'))
    expect(news(now(sum, type('Charge', 'B2', '5')))).toEqual(['Charge!B2 was empty, holds 5'])
    expect(news(now(sum, (workbook) => insertLines(workbook, 'Charge', { axis: 'rows', at: 1, count: 1 })))).toEqual([])
    expect(news(now(sum, (workbook) => insertLines(workbook, 'Charge', { axis: 'rows', at: 1, count: 1 }), type('Charge', 'B2', '5')))).toEqual(['Charge!B2 was empty, holds 5'])
  })

  it('of a sheet covers all that stands on it, and goes stale by a cell more', () => {
    const sheet = now(start, mark('Duty'))
    expect(news(sheet)).toEqual([])
    expect(news(now(sheet, type('Duty', 'A5', 'Refrigeration load')))).toEqual(['Duty!A5 was “Load”, is “Refrigeration load”'])
    expect(news(now(sheet, type('Duty', 'B20', '7')))).toEqual(['Duty!B20 was empty, holds 7'])
    expect(news(now(sheet, (workbook) => removeSheet(workbook, 'Duty')))[0]).toBe('the sheet Duty is gone')
  })

  it('whose cells are all gone stays on the list and says so', () => {
    const gone = now(marked, (workbook) => deleteLines(workbook, 'Drum', { axis: 'rows', at: 1, count: 1 }))
    expect(gone.review?.marks).toMatchObject([{ gone: true }])
    expect(news(gone)[0]).toBe('the cells that were checked are gone')
    expect(() => checkAgain(gone, '1', checking('Drum', 'B2'), () => 1)).toThrow('the cells of mark 1 are gone; accepted: to withdraw it')
  })

  it('tells where the same contents come to something else, to 9 digits', () => {
    expect(news(marked, () => 46.2 * (1 + 1e-11))).toEqual([])
    expect(news(marked, () => 47)).toEqual(['Flow (Drum!B2) came to 46.2, comes to 47, though nothing that it is made of has changed'])
    expect(news(marked, () => undefined)).toEqual([])
  })

  it('of a case goes by what the cells held, and says which case that was', () => {
    const inCase = now(start, (workbook) => makeCase(workbook, 'Winter', null), type('Duty', 'B5', '20'), mark('Duty', 'B7'))
    // The base has what it had: an edit in a case is the case's own.
    const history = perform(startHistory(now(start, (workbook) => makeCase(workbook, 'Winter', null))), setEntry(start, 'Duty', at('B5'), '20'), 'x').history
    const winter = now(history.workbook, mark('Duty', 'B7'))
    expect(inCase.review?.marks[0]?.inCase).toBe('Winter')
    expect(markStates(winter)).toMatchObject([{ isGood: true }])
    const base = now(winter, (workbook) => switchCase(workbook, null))
    expect(markStates(base)).toMatchObject([{ isGood: false, changes: [{ words: 'Load (Duty!B5) was 20 TR, is 42 TR' }], remark: 'It was checked in the case Winter; the cells hold Base.' }])
    const read = readWorkbook(writeWorkbook(winter))
    expect('workbook' in read && markStates(read.workbook)).toMatchObject([{ isGood: true }])
  })

  it('made again by the same person takes the place of the one before; made again by another, of that too', () => {
    const again = now(marked, type('Duty', 'B5', '48'), mark('Drum', 'B2'))
    expect(again.review?.marks.map(({ id }) => id)).toEqual(['2'])
    const byOther = now(again, (workbook) => checkAgain(workbook, '2', { by: 'A. Jones', at: LATER, method: 'inspection', note: '' }, () => 1))
    expect(byOther.review?.marks).toMatchObject([{ id: '3', by: 'A. Jones', method: 'inspection' }])
    expect(whats(byOther)).toEqual([
      'marked | 1 | R. Smith | by hand: against the load list', 'mark withdrawn | 1 | R. Smith | checked again: mark 2', 'marked | 2 | R. Smith | by hand: against the load list',
      'mark withdrawn | 2 | A. Jones | checked again: mark 3', 'marked | 3 | A. Jones | inspection',
    ])
    expect(verifyRecord(byOther.review)).toMatchObject(fits)
  })

  it('needs a name, something to check, and is refused where it covers too much', () => {
    const refused = (by: string) => () => markChecked(start, { ...checking('Duty', 'B5'), by }, () => 1)
    expect(refused('')).toThrow('"" is no name of a reviewer; accepted: 1 to 100 characters, no blank at either end')
    expect(refused('x'.repeat(101))).toThrow('accepted: 1 to 100 characters')
    expect(() => markChecked(start, checking('Duty', 'H5'), () => 1)).toThrow('Duty!H5 is empty: there is nothing to check; accepted: cells that hold something')
    const large: Workbook = { ...start, sheets: [{ name: 'Duty', columns: [], frozen: [0, 0], rows: Array.from({ length: 50_001 }, (_, row) => [{ content: row, role: 'input' }, { content: row, role: 'input' }]) }] }
    expect(() => markChecked(large, checking('Duty'), () => 1)).toThrow('a mark on Duty would cover 100,002 cells with all that feeds them; accepted: up to 100,000, so check it in parts')
  })
})

describe('the record', () => {
  it('grows by undo and redo, while marks are as they were', () => {
    const step = perform(startHistory(start), mark('Drum', 'B2')(start), 'Check').history
    const back = undo(step, LATER).history
    expect({ ...back.workbook, review: undefined }).toEqual({ ...start, review: undefined })
    expect(back.workbook.review).toMatchObject({ marks: [], accepted: [] })
    const again = redo(back, LATER).history
    expect(again.workbook.review?.marks).toEqual(step.workbook.review?.marks)
    expect(whats(again.workbook)).toEqual(['marked | 1 | R. Smith | by hand: against the load list', 'mark withdrawn | 1 | R. Smith | by Undo', 'marked | 1 | R. Smith | by hand: against the load list; by Redo'])
    expect(again.workbook.review?.record.map((entry) => entry.at)).toEqual([AT, LATER, LATER])
    expect(verifyRecord(again.workbook.review)).toMatchObject(fits)
  })

  it('has a line where what a mark covers is restated, and where cells of it go', () => {
    const marked = now(start, mark('Drum', 'B2'))
    expect(whats(now(marked, (workbook) => restate(workbook, 'SI')))[1]).toBe('mark changed | 1 |  | the same quantities in other units')
    expect(whats(now(marked, (workbook) => deleteLines(workbook, 'Duty', { axis: 'rows', at: 5, count: 1 })))[1]).toBe('mark changed | 1 |  | cells that it covers are gone, or were moved apart')
    expect(whats(now(marked, (workbook) => insertLines(workbook, 'Duty', { axis: 'rows', at: 5, count: 1 })))).toHaveLength(1)
    const there = now(marked, (workbook) => restate(workbook, 'SI'))
    // 1 ton of refrigeration is 12 000 Btu/h of the international table, 3.5168528 kW (NIST SP 811, appendix B).
    expect(there.review?.marks[0]?.covers.slice(0, 2)).toMatchObject([{ content: expect.closeTo(42 * 3.5168528, 4) as number }, { content: 'kW' }])
    expect(there.review?.marks[0]?.covers.map(({ sheet, row, column }) => cellAt(there, sheet, row, column)?.content)).toEqual(there.review?.marks[0]?.covers.map(({ content }) => content))
    expect(now(there, (workbook) => restate(workbook, 'US')).review?.marks[0]?.covers.map(({ content }) => content)).toEqual(marked.review?.marks[0]?.covers.map(({ content }) => content))
  })

  it('is a chain of SHA-256 that anyone can work out', () => {
    // FIPS 180-4, and its examples: the one-block message "abc".
    expect(hashOf('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
    const { record } = now(start, mark('Drum', 'B2'), mark('Duty', 'B7')).review ?? NO_REVIEW
    let before = ''
    for (const { what, of, place, by, at: time, words, holds, hash } of record) {
      before = createHash('sha256').update(JSON.stringify([before, what, of, place, by, time, words, holds]), 'utf8').digest('hex')
      expect(hash).toBe(before)
    }
    expect(verifyRecord({ ...NO_REVIEW, record }).lastHash).toBe(before)
  })

  it('says in words what does not fit', () => {
    const { review = NO_REVIEW } = now(start, mark('Drum', 'B2'), mark('Duty', 'B7'))
    expect(verdictWords(verifyRecord(review), review.record)).toBe('All 2 lines fit.')
    const record = review.record.map((entry, index) => (index === 1 ? { ...entry, by: 'Someone' } : entry))
    expect(verifyRecord({ ...review, record }).brokenAt).toBe(1)
    expect(brokenWords(1, record)).toBe(`Line 2 of the record (marked, Duty!B7, ${AT}) does not fit: it, or what stood before it, was changed outside Lowside.`)
    expect(verdictWords(verifyRecord({ ...review, record: [] }), [])).toBe('All 0 lines fit. Mark 1 on Drum!B2 by R. Smith is not on the record. Mark 2 on Duty!B7 by R. Smith is not on the record.')
    expect(verdictWords(verifyRecord(), [])).toBe('Nothing is on the record yet.')
  })
})

describe('an accepted finding', () => {
  const area = { top: 4, bottom: 4, left: 1, right: 1 }
  const found = { kind: 'buried-numbers', sheet: 'Duty', area, key: '0.3' }
  const accepted = now(start, (workbook) => acceptFinding(workbook, found, 'agreed with the owner', 'R. Smith', AT))

  it('stands in the workbook with who, when and why, and follows its cells', () => {
    expect(accepted.review?.accepted).toEqual([{ ...found, note: 'agreed with the owner', by: 'R. Smith', at: AT }])
    expect(whats(accepted)).toEqual(['finding accepted | buried-numbers | R. Smith | agreed with the owner (0.3)'])
    const moved = now(accepted, (workbook) => insertLines(workbook, 'Duty', { axis: 'rows', at: 0, count: 2 }), (workbook) => renameSheet(workbook, 'Duty', 'Load'))
    expect(moved.review?.accepted).toMatchObject([{ sheet: 'Load', area: { top: 6, bottom: 6, left: 1, right: 1 } }])
    expect(whats(moved)).toHaveLength(1)
  })

  it('goes with its cells, as the record says, and comes back by Undo', () => {
    const history = perform(startHistory(accepted), deleteLines(accepted, 'Duty', { axis: 'rows', at: 4, count: 1 }), 'x').history
    expect(history.workbook.review?.accepted).toEqual([])
    expect(whats(history.workbook)[1]).toBe('acceptance withdrawn | buried-numbers |  | its cells are gone')
    const back = undo(history, LATER).history.workbook
    expect(back.review?.accepted).toEqual(accepted.review?.accepted)
    expect(verifyRecord(back.review)).toMatchObject(fits)
  })

  it('is withdrawn with a reason, needs a note, and takes the place of one for the same', () => {
    const one = accepted.review?.accepted[0]
    if (!one) throw new Error('none')
    const withdrawn = now(accepted, (workbook) => withdrawAcceptance(workbook, one, 'A. Jones', LATER, 'is to be an input'))
    expect(withdrawn.review?.accepted).toEqual([])
    expect(whats(withdrawn)[1]).toBe('acceptance withdrawn | buried-numbers | A. Jones | is to be an input')
    expect(() => acceptFinding(start, found, '  ', 'R. Smith', AT)).toThrow('accepting a finding needs a note that says why it may stand; accepted: a few words')
    const again = now(accepted, (workbook) => acceptFinding(workbook, found, 'seen again', 'A. Jones', LATER))
    expect(again.review?.accepted).toMatchObject([{ by: 'A. Jones' }])
    expect(verifyRecord(again.review)).toMatchObject(fits)
  })

  it('of a template has no name, needs no line, and is doubled with its sheet, where a reviewer’s is not', () => {
    const own = now(accepted, (workbook) => [{ kind: 'review', accepted: [...(workbook.review?.accepted ?? []), { ...found, key: '1.1', note: 'usual' }], by: '', at: AT }])
    expect(whats(own)).toHaveLength(1)
    const doubled = now(own, (workbook) => duplicateSheet(workbook, 'Duty').edits)
    expect(doubled.review?.accepted.map(({ sheet, key }) => `${sheet} ${key}`)).toEqual(['Duty 0.3', 'Duty 1.1', 'Duty 2 1.1'])
    expect(verifyRecord(doubled.review)).toMatchObject(fits)
  })
})

describe('in the file', () => {
  const full = now(start, mark('Drum', 'B2'), mark('Duty'), (workbook) => acceptFinding(workbook, { kind: 'k', sheet: 'Duty', area: { top: 0, bottom: 1, left: 0, right: 1 }, key: 'x' }, 'because', 'R. Smith', AT),
    (workbook) => deleteLines(workbook, 'Duty', { axis: 'rows', at: 5, count: 1 }), (workbook) => withdrawMark(workbook, '2', { by: 'R. Smith', at: LATER, why: 'too early' }))

  it('marks, acceptances and record come back as they were, a line each', () => {
    const text = writeWorkbook(full)
    const read = readWorkbook(text)
    if (!('workbook' in read)) throw new Error(JSON.stringify(read.problems))
    expect(read.workbook.review).toEqual(full.review)
    expect(writeWorkbook(read.workbook)).toBe(text)
    expect(text).toContain('\n     "Duty!B5": 42,\n')
    expect(text).toContain('\n     ["Duty!B6", 1.1]\n')
    expect(text.split('\n').filter((line) => line.includes('"hash": '))).toHaveLength(full.review?.record.length ?? 0)
    expect(writeWorkbook(start)).not.toMatch(/marks|accepted|record/)
  })

  const text = writeWorkbook(full)
  it.each([
    ['"method": "by hand"', '"method": "by eye"', /^line \d+, mark 1: unknown method "by eye"; accepted: by hand, other tool, inspection$/],
    ['"at": "2026-03-02T14:05:00Z", "method"', '"at": "yesterday", "method"', /^line \d+, mark 1: "yesterday" is no time; accepted: such as 2026-03-02T14:05:00Z$/],
    ['"by": "R. Smith", "at": "2026-03-02T14:05:00Z", "method"', '"by": " ", "at": "2026-03-02T14:05:00Z", "method"', /mark 1: " " is no name of a reviewer; accepted: 1 to 100 characters, no blank at either end/],
    ['"Duty!B5": 42', '"B5": 42', /mark 1: "B5" is no cell; accepted: a sheet and an address, as in Drum!C5/],
    ['"cells": "Drum!B2"', '"cells": "Duty!B2"', /mark 1: "Duty!B2" are no cells of the sheet "Drum"; accepted: as in Drum!C5:C9/],
    ['"id": "1"', '"id": "one"', /mark 1: "one" is no number of a mark; accepted: whole numbers from 1 as text, such as "7"/],
    ['"cells": "Duty!A1:B2"', '"cells": "Duty!B2:A1"', /accepted finding 1: "Duty!B2:A1" is no cell or range; accepted: with its sheet, as in Drum!C5 or Drum!C5:C9/],
    ['"what": "marked"', '"what": "signed"', /line of the record 1: unknown "signed" in the record; accepted: marked, mark changed, mark withdrawn, finding accepted, acceptance withdrawn/],
    ['"words": ', '"word": ', /line of the record 1: unknown "word" in a line of the record; accepted: what, of, place, by, at, words, holds, hash/],
  ])('%s as %s is refused with its place', (before, after, message) => {
    expect(text).toContain(before)
    const read = readWorkbook(text.replace(before, after))
    expect('problems' in read ? read.problems.map((one) => one.message).join('\n') : '').toMatch(new RegExp(message.source, `${message.flags}m`))
  })
})

it('the share of a sheet that is checked counts what good marks cover, and tells of stale ones', () => {
  const marked = now(start, mark('Drum', 'B2'))
  const words = (workbook: Workbook) => [...checkedShares(workbook, markStates(workbook))].map(([sheet, share]) => `${sheet}: ${shareWords(share) ?? ''}`)
  expect(words(start)).toEqual(['Duty: ', 'Drum: '])
  // Load, margin, design load and spare feed the flow; the check beside it does not.
  expect(words(marked)).toEqual(['Duty: all 4 checked', 'Drum: 1 of 2 checked'])
  expect(words(now(marked, type('Duty', 'B5', '48')))).toEqual(['Duty: 0 of 4 checked, 4 stale', 'Drum: 0 of 2 checked, 1 mark stale'])
  expect(words(now(marked, type('Duty', 'B5', '48'), mark('Duty', 'B5', 'B8')))).toEqual(['Duty: all 4 checked', 'Drum: 0 of 2 checked, 1 mark stale'])
})

it('the time of a mark is to the second, UTC', () => {
  expect(timestamp(new Date('2026-03-02T14:05:00.999Z'))).toBe(AT)
})
