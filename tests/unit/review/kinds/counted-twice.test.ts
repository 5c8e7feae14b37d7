import { expect, it } from 'vitest'
import { countedTwice } from '../../../../src/review/kinds/counted-twice.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

const CHARGES = { B3: 120, B4: 80, B5: 60, B6: '=SUM(B3:B5)', B7: 900, B8: 40 } as const

it('a sum over a range that holds a subtotal of it counts something twice', () => {
  const [only] = findOf(countedTwice, surveyOf({ Charge: { ...CHARGES, A9: ['Charge', 'label'], B9: '=SUM(B3:B8)' } }))
  expect(only).toMatchObject({ severity: 'warning', label: 'Charge', reason: 'Counts something twice: B6, which it takes in, is itself a sum of cells that it takes in, B3:B5.', causes: [{ sheet: 'Charge', row: 5, column: 1 }] })
  expect(placesOf(countedTwice, surveyOf({ Charge: CHARGES, Total: { A1: '=ROUND(SUM(Charge!B3:B8)/2,0)', A2: '=SUM(Charge!B:B)' } }))).toEqual(['Total!A1', 'Total!A2'])
})

it('one that takes subtotals only, or a subtotal of other cells, counts nothing twice', () => {
  expect(findOf(countedTwice, surveyOf({ Charge: { ...CHARGES, B9: '=B6+SUM(B7:B8)', C3: '=SUM(A3:B3)', C4: '=SUM(A4:B4)', C5: '=SUM(C3:C4)', D6: '=MAX(B3:B8)' } }))).toEqual([])
})
