import { describe, expect, it } from 'vitest'
import { overwrittenFormulas } from '../../../../src/review/kinds/overwritten-formulas.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import { clear, setEntry } from '../../../../src/workbook/commands.ts'
import { cellAt, type Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at, type Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf, surveyOfWorkbook } from '../survey-of.ts'

const feed = readTemplate('templates/feed-valves.lowside.json')
const withEntries = (workbook: Workbook, sheet: string, entries: Readonly<Record<string, string>>): Workbook =>
  Object.entries(entries).reduce((before, [address, typed]) => applyEdits(before, setEntry(before, sheet, at(address), typed)).workbook, workbook)
const againstTemplate = (workbook: Workbook) => findOf(overwrittenFormulas, surveyOfWorkbook(workbook, matchTemplate(workbook, [feed])))

/** A column of one formula, some of its cells otherwise. */
const column = (rows: number, others: Readonly<Record<string, Put>> = {}) => ({
  Drums: { ...Object.fromEntries(Array.from({ length: rows }, (_, row) => [[`A${row + 2}`, row + 10], [`B${row + 2}`, `=A${row + 2}*1.1`]] as const).flat()), ...others },
})

describe('values typed where a formula belongs', () => {
  it('are found by the template, which has the formula to put back', () => {
    const workbook = withEntries(feed, 'Feed', { E29: '8.5' })
    const [only, ...others] = againstTemplate(workbook)
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'warning', sheet: 'Feed', area: { top: 28, bottom: 28, left: 4, right: 4 }, key: 'typed 8.5' })
    expect(only?.label).toContain('Drum 4')
    expect(only?.reason).toBe('8.5 is typed where the template “Feed of the drums” has a formula, =FEED.FLOW(C29&C$25,D29&D$25,liquid_temperature,E$25)*(1+UNIT.CONVERT(load_margin,"-")).')
    const mended = applyEdits(workbook, only?.mend?.edits ?? []).workbook
    expect(cellAt(mended, 'Feed', 28, 4)).toEqual(cellAt(feed, 'Feed', 28, 4))
    expect(againstTemplate(mended)).toEqual([])
  })

  it('are found where nothing is left of a formula, but not where a whole row of a list was emptied', () => {
    const gone = applyEdits(feed, clear(feed, 'Feed', { from: at('E29') })).workbook
    expect(againstTemplate(gone).map(({ reason, key }) => [reason.slice(0, 56), key])).toEqual([['Nothing stands where the template “Feed of the drums” ha', 'nothing']])
    expect(againstTemplate(applyEdits(feed, clear(feed, 'Feed', { from: at('A29'), to: at('W29') })).workbook)).toEqual([])
  })

  it('are found among formulas of one kind, whatever their role', () => {
    const found = findOf(overwrittenFormulas, surveyOf(column(8, { B5: 14.3 })))
    expect(found.map(({ reason, mend }) => [reason, mend?.edits])).toEqual([[
      '14.3 is typed where the cells above and below have a formula, here =A5*1.1.',
      [{ kind: 'cells', sheet: 'Drums', cells: [{ row: 4, column: 1, cell: { content: '=A5*1.1', role: 'result' } }] }],
    ]])
    expect(placesOf(overwrittenFormulas, surveyOf(column(8, { B5: 14.3, B6: 15.4 })))).toEqual(['Drums!B5:B6'])
  })

  it('are found at the end of a column too, where the row is filled as the others are, but not where these go on from it', () => {
    const rows = (last: Put, first: Put = '=C1+B2') => ({
      Drums: { ...Object.fromEntries(Array.from({ length: 6 }, (_, index) => index + 2).flatMap((row): [string, Put][] => [[`A${row}`, row], [`B${row}`, `=A${row}*2`], [`C${row}`, `=C${row - 1}+B${row}`], [`D${row}`, `=B${row}/A${row}`], [`E${row}`, `=D${row}*3`]])), C2: first, B7: last },
    })
    expect(findOf(overwrittenFormulas, surveyOf(rows(14))).map(({ reason }) => reason)).toEqual(['14 is typed where the other cells of the column have a formula, here =A7*2.'])
    expect(findOf(overwrittenFormulas, surveyOf(rows('=A7*2', 100)))).toEqual([])
  })

  it('are found across a row of values with their units between', () => {
    const row = { A1: ['Load', 'label'] as const, B1: 10, C1: ['TR', 'unit'] as const, D1: 20, E1: ['TR', 'unit'] as const, F1: 30, G1: ['TR', 'unit'] as const, H1: 40, I1: ['TR', 'unit'] as const }
    expect(placesOf(overwrittenFormulas, surveyOf({ Drums: { ...row, A2: ['Twice', 'label'], B2: '=B1*2', C2: ['=C1', 'unit'], D2: '=D1*2', E2: ['=E1', 'unit'], F2: 61, G2: ['=G1', 'unit'], H2: '=H1*2', I2: ['=I1', 'unit'] } }))).toEqual(['Drums!F2'])
  })

  it('are found in cells for results and checks, which follow from nothing then', () => {
    expect(placesOf(overwrittenFormulas, surveyOf({ Duty: { A1: 3, A2: [4, 'result'], A4: [true, 'check'], A6: [null, 'check'] } }))).toEqual(['Duty!A2', 'Duty!A4'])
  })

  it('are no inputs at the ends of a column, nor beside formulas that are not of one kind', () => {
    expect(findOf(overwrittenFormulas, surveyOf(column(8, { B1: 3, B10: 99 })))).toEqual([])
    expect(findOf(overwrittenFormulas, surveyOf({ Duty: { A1: 1, B1: '=A1', B2: 5, B3: '=A1*3', B4: 6, B5: '=B4+B3' } }))).toEqual([])
    expect(againstTemplate(withEntries(feed, 'Feed', { C29: '44', I29: '7', C6: '=2+1' }))).toEqual([])
  })
})
