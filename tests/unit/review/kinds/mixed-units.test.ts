import { describe, expect, it } from 'vitest'
import { mixedUnits } from '../../../../src/review/kinds/mixed-units.ts'
import { findOf, surveyOf } from '../survey-of.ts'
import { kindsFound, reasonsOf } from '../unit-fixture.ts'

describe('columns of several units taken together', () => {
  it('are named with the first cell of each unit', () => {
    expect(reasonsOf(mixedUnits, '=SUM(C1:C3)', 'lb', ['3 lb', '4 lb', '5 kg'])).toEqual(['Takes C1:C3 together in SUM, and it holds numbers in lb (C1) and in kg (C3).'])
    expect(kindsFound('=MAX(C1:C3)', 'psia', ['3 psia', '4 psia', '5 psig'])).toEqual(['mixed-units'])
    expect(kindsFound('=AVERAGE(C1:C3)', 'ft', ['3 ft', '4 lb', '5 ft'])).toEqual(['mixed-units'])
    expect(kindsFound('=SUMIF(C1:C3,">0",C1:C3)', 'ft', ['3 ft', '4 in', '5 ft'])).toEqual(['mixed-units'])
  })

  it('are none of one unit, with empty cells, texts and numbers without unit between, however the unit is written', () => {
    expect(kindsFound('=SUM(C1:C3)', 'lb', ['3 lb', '4 lb', '5 lb'])).toEqual([])
    expect(kindsFound('=SUM(C1:C4)', 'ft3', ['3 ft3', '4 ft³', '5 ft^3'])).toEqual([])
    expect(kindsFound('=SUM(C1:C8)', 'lb', ['3 lb', '4', '5 lb'])).toEqual([])
  })

  it('are looked for under the head of a table, over two tables too', () => {
    const cells = { B1: ['lb', 'unit'], B2: 3, B3: 4, B5: ['kg', 'unit'], B6: 3, B7: 4, D1: '=SUM(B2:B3)', D2: '=SUM(B2:B7)', E1: ['lb', 'unit'], E2: ['lb', 'unit'] } as const
    expect(findOf(mixedUnits, surveyOf({ List: cells }))).toMatchObject([{ area: { top: 1, left: 3 }, reason: 'Takes B2:B7 together in SUM, and it holds numbers in lb (B2) and in kg (B6).' }])
  })
})
