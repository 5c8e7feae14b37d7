import { describe, expect, it } from 'vitest'
import { checksNotMet } from '../../../../src/review/kinds/checks-not-met.ts'
import { checksWithoutVerdict } from '../../../../src/review/kinds/checks-without-verdict.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

describe('checks not met', () => {
  it('say by how much, and which cells they compare', () => {
    const found = findOf(checksNotMet, surveyOf({ Duty: { A1: ['Load', 'label'], B1: 125, C1: ['TR', 'unit'], A2: ['Load within reach', 'label'], B2: ['=B1<=100', 'check'] } }))
    expect(found).toMatchObject([{ severity: 'error', label: 'Load within reach', reason: 'Check not met by 25 TR (25 %).', key: 'not met by 25 TR (25 %)', causes: [{ sheet: 'Duty', row: 0, column: 1 }] }])
  })

  it('are told of once, with the checks that only gather them', () => {
    const found = findOf(checksNotMet, surveyOf({ Drum: { A1: ['=1>2', 'check'], A2: ['=3>2', 'check'], A3: ['=AND(A1:A2)', 'check'] }, Front: { A1: ['=Drum!A3', 'check'] } }))
    expect(found.map(({ reason }) => reason)).toEqual(['Check not met by 1; with it A3.'])
    expect(placesOf(checksNotMet, surveyOf({ Drum: { A1: ['=1>2', 'check'], A3: ['=AND(A1,TRUE())', 'check'] } }))).toEqual(['Drum!A1'])
  })

  it('are none where all are met, or give no verdict', () => {
    expect(findOf(checksNotMet, surveyOf({ Drum: { A1: ['=2>1', 'check'], A2: ['="–"', 'check'], A3: '=1>2' } }))).toEqual([])
  })
})

describe('checks without a verdict', () => {
  it('are those that come to neither TRUE nor FALSE', () => {
    const found = findOf(checksWithoutVerdict, surveyOf({ Drum: { A1: ['="ok"', 'check'], A3: [null, 'check'], A5: [3, 'check'], A7: ['=1>2', 'check'], A9: ['=1/0', 'check'] } }))
    expect(found.map(({ severity, area: { top }, reason }) => [severity, top, reason])).toEqual([
      ['warning', 0, 'Check without a verdict: it gives neither TRUE nor FALSE, but “ok”.'],
      ['warning', 2, 'Check without a verdict: it gives neither TRUE nor FALSE.'],
      ['warning', 4, 'Check without a verdict: it gives neither TRUE nor FALSE, but 3.'],
    ])
  })

  it('are one where they stand one below the other for the same reason', () => {
    expect(placesOf(checksWithoutVerdict, surveyOf({ Drum: { A1: 1, A2: 2, A3: 3, B1: ['=IF(A1>0,"–",A1<9)', 'check'], B2: ['=IF(A2>0,"–",A2<9)', 'check'], B3: ['=IF(A3>0,"–",A3<9)', 'check'] } }))).toEqual(['Drum!B1:B3'])
  })

  it('are none in empty rows of a list', () => {
    expect(placesOf(checksWithoutVerdict, surveyOf({ Drum: { A2: 3, A3: 5, C3: 1, B1: ['=IF(A1="","",A1>0)', 'check'], B2: ['=IF(A2="","",A2>0)', 'check'], B3: ['=IF(A3=5,"",A3>0)', 'check'] } }))).toEqual(['Drum!B3'])
  })
})
