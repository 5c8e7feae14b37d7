import { describe, expect, it } from 'vitest'
import { inputsWithoutLabel } from '../../../../src/review/kinds/inputs-without-label.ts'
import { inputsWithoutSource } from '../../../../src/review/kinds/inputs-without-source.ts'
import { inputsWithoutUnit } from '../../../../src/review/kinds/inputs-without-unit.ts'
import type { Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

type Cells = Readonly<Record<string, Put>>

const heading = (text: string): Put => [text, 'heading']
const label = (text: string): Put => [text, 'label']
const unit = (text: string): Put => [text, 'unit']

/** Rows of label, value, unit and source. */
const block = (cells: Cells) => surveyOf({ Duty: { B1: heading('Drum'), C1: heading('Value'), D1: heading('Unit'), E1: heading('Method'), F1: heading('Source'), ...cells } })

const table = (cells: Cells) =>
  surveyOf({ Drums: { B1: heading('Drum'), C1: heading('Load'), D1: heading('Wet return inlets'), E1: heading('Length'), F1: heading('Source'), C2: unit('TR'), B3: ['Drum 1', 'input'], B4: ['Drum 2', 'input'], ...cells } })

describe('inputs without unit', () => {
  it('are numbers whose words name a quantity, and numbers that are not whole', () => {
    const survey = block({ B2: label('Load'), C2: 85, B3: label('Wall'), C3: 0.375 })
    expect(findOf(inputsWithoutUnit, survey).map(({ severity, area: { top }, reason }) => [severity, top, reason])).toEqual([
      ['warning', 1, '85 has no unit, though “Load” is a quantity: write one beside it, or over its column; “-” for a pure number.'],
      ['warning', 2, '0.375 has no unit, though “Wall” is a quantity: write one beside it, or over its column; “-” for a pure number.'],
    ])
    expect(placesOf(inputsWithoutUnit, block({ B2: label('Spare'), C2: 1.27 }))).toEqual(['Duty!C2'])
  })

  it('are found in a table, whose columns have their units over them, as one finding', () => {
    expect(placesOf(inputsWithoutUnit, table({ C3: 40, C4: 50, D3: 1, D4: 2, E3: 10, E4: 12 }))).toEqual(['Drums!E3:E4'])
  })

  it('are no counts, ratios, years, money, choices, nor what has its unit in words', () => {
    const survey = block({
      B2: label('Load'), C2: 85, D2: unit('TR'), B3: label('Number of drums at the low temperature'), C3: 4, B4: label('Share of the load'), C4: 0.4, B5: label('Circulation number'), C5: 1.2,
      B6: label('Drums'), C6: 8, B7: label('Cost of ammonia'), C7: 1.25, B8: label('Length, ft'), C8: 12, B9: label('Position'), C9: ['vertical', 'input'], B10: label('Elevation'), C10: 30, D10: ['ft', 'text'],
      B11: label('Year of the survey'), C11: 2026, B12: label('Load checked'), C12: true,
    })
    expect(placesOf(inputsWithoutUnit, survey)).toEqual([])
  })
})

describe('inputs without label', () => {
  it('are numbers without a word beside or over them', () => {
    const [only, ...others] = findOf(inputsWithoutLabel, surveyOf({ Duty: { B2: label('Load'), C2: 85, D2: unit('TR'), C7: 31, D7: unit('°F') } }))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'warning', area: { top: 6, left: 2 }, reason: 'Nothing says what this number is: write a label on its left, or a heading over its column.' })
  })

  it('are not those with a label, a heading, a name in their row or a note, nor texts', () => {
    expect(placesOf(inputsWithoutLabel, table({ C3: 40, C4: 50, B5: 12, B9: ['Cooler', 'input'] }))).toEqual([])
    expect(placesOf(inputsWithoutLabel, block({ B2: label('Load'), C2: 85, C9: ['vertical', 'input'] }))).toEqual([])
  })
})

describe('inputs without source', () => {
  it('are numbers whose row leaves the column of sources empty', () => {
    const survey = block({ B2: label('Load'), C2: 85, D2: unit('TR'), E2: 'At design', F2: 'Load calculation', B3: label('Drum'), C3: 20, D3: unit('°F'), E3: 'Saturation' })
    expect(findOf(inputsWithoutSource, survey).map(({ severity, area: { top }, reason }) => [severity, top, reason])).toEqual([
      ['remark', 2, 'Where the number comes from is not said: “Source” is empty in its row, and it has no note.'],
    ])
  })

  it('are not asked for where the sheet has no column for sources, of texts, and where one source stands for a table', () => {
    expect(placesOf(inputsWithoutSource, surveyOf({ Duty: { B1: heading('Drum'), C1: heading('Value'), B2: label('Load'), C2: 85, D2: unit('TR') } }))).toEqual([])
    expect(placesOf(inputsWithoutSource, block({ B2: label('Position'), C2: ['vertical', 'input'] }))).toEqual([])
    expect(placesOf(inputsWithoutSource, table({ C3: 40, C4: 50, F3: 'Load calculation' }))).toEqual([])
    expect(placesOf(inputsWithoutSource, table({ C3: 40, C4: 50 }))).toEqual(['Drums!C3:C4'])
  })

  it('are content with a method where there is no column of sources', () => {
    const cells: Cells = { B1: heading('Drum'), C1: heading('Value'), D1: heading('Unit'), E1: heading('Method'), B2: label('Load'), C2: 85, D2: unit('TR'), B3: label('Drum'), C3: 20, D3: unit('°F'), E3: 'As drawn' }
    expect(placesOf(inputsWithoutSource, surveyOf({ Duty: cells }))).toEqual(['Duty!C2'])
  })
})
