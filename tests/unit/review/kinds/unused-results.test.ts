import { describe, expect, it } from 'vitest'
import { unusedResults } from '../../../../src/review/kinds/unused-results.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import { setEntry } from '../../../../src/workbook/commands.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at, type Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf, surveyOfWorkbook } from '../survey-of.ts'

const label = (text: string): Put => [text, 'label']
const unit = (text: string): Put => [text, 'unit']

const duty = (flow: string) => surveyOf({
  Duty: {
    B1: label('Load'), C1: 85, D1: unit('TR'), B2: label('Margin'), C2: 10, D2: unit('%'), B3: label('Drum'), C3: 20, D3: unit('°F'),
    B4: label('Load with margin'), C4: '=UNIT.CONVERT(C1:D1,D4)*(1+UNIT.CONVERT(C2:D2,"-"))', D4: unit('TR'),
    B5: label('Liquid fed'), C5: flow, D5: unit('lb/min'),
  },
})

describe('results used by nothing', () => {
  it('are steps that the calculation passes by: it goes on with the value from which they were made', () => {
    const [only, ...others] = findOf(unusedResults, duty('=FEED.FLOW(C1:D1,C3:D3,"90 °F",D5)'))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'warning', area: { top: 3, left: 2 }, reason: 'Nothing uses it: it is C1 with a factor, and C5 goes on with C1 itself.' })
    expect(placesOf(unusedResults, duty('=FEED.FLOW(C4:D4,C3:D3,"90 °F",D5)'))).toEqual([])
  })

  it('are results of a list that a sum does not reach', () => {
    const list = (last: number) => surveyOf({
      Charge: { ...Object.fromEntries([1, 2, 3, 4].flatMap((row): [string, Put][] => [[`A${row}`, row * 3], [`B${row}`, `=A${row}*2`]])), B9: `=SUM(B1:B${last})` },
    })
    expect(findOf(unusedResults, list(3)).map(({ area: { top }, reason }) => [top, reason])).toEqual([
      [3, 'Nothing uses it, though the results beside it, of the same formula, are used: a range may end before it.'],
    ])
    expect(placesOf(unusedResults, list(4))).toEqual([])
  })

  it('are not ends of a calculation, the same value in another unit, or a list that nothing adds up', () => {
    const survey = surveyOf({
      Duty: {
        B1: label('Load'), C1: 85, D1: unit('TR'), B2: label('The same'), C2: '=UNIT.CONVERT(C1:D1,D2)', D2: unit('kW'), B3: label('Drum'), C3: 20, D3: unit('°F'),
        B4: label('Liquid fed'), C4: '=FEED.FLOW(C1:D1,C3:D3,"90 °F",D4)', D4: unit('lb/min'), B5: label('Pressure'), C5: '=SAT.PRESSURE(C3:D3,D5)', D5: unit('psia'),
      },
    })
    expect(placesOf(unusedResults, survey)).toEqual([])
  })

  it('are results that the template goes on with, and the workbook no more', () => {
    const template = readTemplate('templates/feed-valves.lowside.json')
    // The make-up flow of Drum 1 is typed over: nothing uses its valve's flow coefficient wanted in the drop over the solenoid.
    const workbook = applyEdits(template, [...setEntry(template, 'Feed', at('K26'), '1.3'), ...setEntry(template, 'Feed', at('J26'), '=TRUE')]).workbook
    const found = findOf(unusedResults, surveyOfWorkbook(workbook, matchTemplate(workbook, [template])))
    expect(found.map(({ area: { top, left }, reason }) => [top, left, reason])).toEqual([[25, 7, 'Nothing uses it, though formulas of the template “Feed of the drums” do.']])
    expect(placesOf(unusedResults, surveyOfWorkbook(template, matchTemplate(template, [template])))).toEqual([])
  })
})
