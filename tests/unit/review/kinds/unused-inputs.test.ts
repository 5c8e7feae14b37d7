import { describe, expect, it } from 'vitest'
import { unusedInputs } from '../../../../src/review/kinds/unused-inputs.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import { setEntry } from '../../../../src/workbook/commands.ts'
import type { Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at, workbookOf, type Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf, surveyOfWorkbook } from '../survey-of.ts'

const label = (text: string): Put => [text, 'label']
const unit = (text: string): Put => [text, 'unit']

/** Load, margin and drum; the formula uses what it is given. */
const duty = (formula: string) => ({
  Duty: { B1: label('Load'), C1: 85, D1: unit('TR'), B2: label('Margin'), C2: 10, D2: unit('%'), B3: label('Drum'), C3: 20, D3: unit('°F'), B5: label('Pressure'), C5: formula, D5: unit('psia') },
})

/** A table of drums whose sum goes down to a row. */
const table = (last: number, cells: Readonly<Record<string, Put>> = {}) => surveyOf({
  Drums: {
    B1: ['Drum', 'heading'], C1: ['Load', 'heading'], D1: ['Built', 'heading'], C2: unit('TR'),
    ...Object.fromEntries([3, 4, 5, 6].flatMap((row): [string, Put][] => [[`B${row}`, [`Drum ${row - 2}`, 'input']], [`C${row}`, row * 10], [`D${row}`, 1990 + row]])),
    B9: label('Together'), C9: `=SUM(C3:C${last})`, D9: unit('TR'), ...cells,
  },
})

describe('inputs that feed nothing', () => {
  it('are numbers that no formula uses', () => {
    const found = findOf(unusedInputs, surveyOf(duty('=SAT.PRESSURE(C3:D3,D5)')))
    expect(found.map(({ severity, area: { top }, reason }) => [severity, top, reason])).toEqual([
      ['warning', 0, 'Nothing uses it: no formula, figure or case compared. Changing it changes nothing.'],
      ['warning', 1, 'Nothing uses it: no formula, figure or case compared. Changing it changes nothing.'],
    ])
    expect(placesOf(unusedInputs, surveyOf(duty('=FEED.FLOW(C1:D1,C3:D3,"90 °F","lb/min")*(1+UNIT.CONVERT(C2:D2,"-"))')))).toEqual([])
  })

  it('are not those that a name, a figure or the comparison of cases shows', () => {
    const workbook = workbookOf(duty('=SAT.PRESSURE(C3:D3,D5)'), { load: 'Duty!$C$1:$D$1' })
    const compared: Workbook = { ...workbook, cases: { list: [], current: null, compared: [{ sheet: 'Duty', row: 1, column: 2 }] } }
    expect(placesOf(unusedInputs, surveyOfWorkbook(compared))).toEqual([])
    const drawn: Workbook = { ...workbook, names: new Map(), figures: [{ kind: 'charge-bars', title: '', options: {}, bindings: { charge: 'Duty!$C$1:$D$2' } } as unknown as Workbook['figures'][number]] }
    expect(placesOf(unusedInputs, surveyOfWorkbook(drawn))).toEqual([])
  })

  it('are the rows that a sum does not reach; years and names in a list are none', () => {
    const [only, ...others] = findOf(unusedInputs, table(5))
    expect(others).toEqual([])
    expect(only).toMatchObject({ area: { top: 5, bottom: 5, left: 2 }, reason: 'Nothing uses it, though most of its column is used: a range may end before it.' })
    expect(placesOf(unusedInputs, table(6))).toEqual([])
  })

  it('are choices that nothing reads, not names, dates and remarks', () => {
    const survey = surveyOf({
      Basis: { B1: label('Project'), C1: ['Cold store', 'input'], B2: label('Drag law (Haider, Clift, Cheng)'), C2: ['Haider', 'input'], B3: label('Levels (entered or sized)'), C3: ['sized', 'input'], B4: label('Remark'), C4: ['to be confirmed', 'input'] },
    })
    expect(placesOf(unusedInputs, survey)).toEqual(['Basis!C2:C3'])
  })

  it('are those whose formula in the template was changed so that it no longer reads them', () => {
    const template = readTemplate('templates/zone-setpoints.lowside.json')
    const workbook = applyEdits(template, setEntry(template, 'Zones', at('J8'), '20')).workbook
    expect(placesOf(unusedInputs, surveyOfWorkbook(template, matchTemplate(template, [template])))).toEqual([])
    const changed = applyEdits(workbook, setEntry(workbook, 'Basis', at('C7'), '14.7')).workbook
    const survey = surveyOfWorkbook({ ...changed, names: new Map([...changed.names].filter(([name]) => name !== 'site_elevation')) }, matchTemplate(workbook, [template]))
    expect(placesOf(unusedInputs, survey)).toContain('Basis!C6')
  })
})
