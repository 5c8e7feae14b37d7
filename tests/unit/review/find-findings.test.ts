import { describe, expect, it } from 'vitest'
import { findFindings } from '../../../src/review/find-findings.ts'
import { cellsWords, countWords, findingPlace, findingWords } from '../../../src/review/finding-words.ts'
import type { FindingKind, Found } from '../../../src/review/finding.ts'
import { merge } from '../../../src/review/merge.ts'
import type { Area } from '../../../src/workbook/address.ts'
import { NO_REVIEW, type AcceptedFinding } from '../../../src/workbook/review-record.ts'
import { workbookOf } from '../workbook-of.ts'
import { surveyOf, surveyOfWorkbook } from './survey-of.ts'

const areaAt = (row: number, column: number, bottom = row, right = column): Area => ({ top: row, bottom, left: column, right })
const foundAt = (sheet: string, area: Area, rest: Partial<Found> = {}): Found => ({ severity: 'warning', sheet, area, reason: 'so', key: 'k', ...rest })
const kindOf = (kind: string, founds: readonly Found[]): FindingKind => ({ kind, heading: `Kind ${kind}`, about: '', find: () => founds })

const CELLS = { Drum: { A1: ['Load', 'label'], B1: 42, A2: ['Twice', 'label'], B2: '=B1*2' }, Basis: { A1: ['Site', 'label'], B1: 1 } } as const

describe('findings', () => {
  it('come in the order of the sheets, then of reading, then the worst first, with what their cells are called', () => {
    const found = findFindings(surveyOf(CELLS), undefined, [
      kindOf('a', [foundAt('Basis', areaAt(0, 1), { severity: 'error' }), foundAt('Drum', areaAt(1, 1))]),
      kindOf('b', [foundAt('Drum', areaAt(1, 1), { severity: 'error' }), foundAt('Drum', areaAt(0, 1), { severity: 'remark' })]),
    ])
    expect(found.map((one) => [one.kind, findingPlace(one), findingWords(one)])).toEqual([['b', 'Drum!B1', 'Load: so'], ['b', 'Drum!B2', 'Twice: so'], ['a', 'Drum!B2', 'Twice: so'], ['a', 'Basis!B1', 'Site: so']])
    expect(countWords(found)).toBe('2 errors, 1 warning, 1 remark')
  })

  it('go on where one kind fails, and say so', () => {
    const failing: FindingKind = {
      ...kindOf('b', []),
      * find() {
        yield foundAt('Drum', areaAt(0, 1))
        throw new RangeError('no such row')
      },
    }
    const shares: number[] = []
    const found = findFindings(surveyOf(CELLS), (share) => shares.push(share), [failing, kindOf('c', [foundAt('Basis', areaAt(0, 1))])])
    expect(found.map(({ kind, reason }) => [kind, reason])).toEqual([
      ['b', '“Kind b” could not be looked for to the end: no such row. What is wrong is in Lowside, not in the workbook.'], ['b', 'so'], ['c', 'so'],
    ])
    expect(shares).toEqual([0.5, 1])
  })

  it('are accepted where someone has let stand that kind and key in an area around them', () => {
    const accepted: AcceptedFinding = { kind: 'a', sheet: 'DRUM', area: areaAt(0, 0, 4, 1), key: 'k', note: 'As designed' }
    const survey = surveyOfWorkbook({ ...workbookOf(CELLS), review: { ...NO_REVIEW, accepted: [accepted] } })
    const noteOf = (kind: string, found: Found): string | undefined => findFindings(survey, undefined, [kindOf(kind, [found])])[0]?.accepted?.note
    expect(noteOf('a', foundAt('Drum', areaAt(1, 1)))).toBe('As designed')
    expect(noteOf('b', foundAt('Drum', areaAt(1, 1)))).toBeUndefined()
    expect(noteOf('a', foundAt('Drum', areaAt(1, 1), { key: 'other' }))).toBeUndefined()
    expect(noteOf('a', foundAt('Drum', areaAt(1, 1, 5)))).toBeUndefined()
    expect(noteOf('a', foundAt('Basis', areaAt(1, 1)))).toBeUndefined()
  })
})

describe('cells that have the same fault', () => {
  const cell = (row: number, column: number, key: string, alike = 'x') => ({ found: foundAt('S', areaAt(row, column), { key, reason: 'It is so.', mend: { words: 'Mend', edits: [{ kind: 'title', title: key }] } }), alike })

  it('are one finding where they lie side by side, with what is accepted and mended of each', () => {
    const merged = merge([cell(1, 1, 'a'), cell(2, 1, 'b'), cell(1, 2, 'a'), cell(2, 2, 'a'), cell(4, 1, 'a'), cell(3, 1, 'a', 'y')])
    expect(merged.map(({ area, key, reason, mend }) => [area, key, reason, mend?.edits.length])).toEqual([
      [areaAt(1, 1, 2, 2), 'a; b', 'It is so. The same goes for the 3 cells next to it.', 4],
      [areaAt(4, 1), 'a', 'It is so.', 1],
      [areaAt(3, 1), 'a', 'It is so.', 1],
    ])
  })

  it('have a key that stays short and changes with each of theirs', () => {
    const keyOf = (last: string): string => merge(Array.from({ length: 50 }, (_, row) => cell(row, 0, row === 49 ? last : `typed ${row}`)))[0]?.key ?? ''
    expect(keyOf('one').length).toBeLessThan(80)
    expect(keyOf('one')).not.toBe(keyOf('two'))
  })
})

it('cells are named by their sheet only from another one, and not without end', () => {
  const places = Array.from({ length: 12 }, (_, row) => ({ sheet: row === 1 ? 'Wet return' : 'Drum', row, column: 2 }))
  expect(cellsWords(places, 'Drum')).toBe("C1, 'Wet return'!C2, C3, C4 and 8 more")
  expect(cellsWords(places.slice(2, 4), 'Drum')).toBe('C3 and C4')
  expect(cellsWords(places.slice(0, 1), 'Drum')).toBe('C1')
})
