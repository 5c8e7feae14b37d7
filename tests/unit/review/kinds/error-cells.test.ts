import { describe, expect, it } from 'vitest'
import { errorCells } from '../../../../src/review/kinds/error-cells.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

describe('cells with errors', () => {
  it('are told of where the error begins, with the cells that only hand it on', () => {
    const [only, ...others] = findOf(errorCells, surveyOf({
      Duty: { A1: ['Load', 'label'], B1: 0, A2: ['Share', 'label'], B2: '=10/B1', B3: '=B2*2', B4: '=SUM(B1:B3)' }, Result: { A1: '=Duty!B4+1' },
    }))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'error', label: 'Share', key: '#DIV/0!', causes: [{ sheet: 'Duty', row: 0, column: 1 }] })
    expect(only?.reason).toBe('#DIV/0!: division by zero, or by an empty cell. 3 cells that use it show the error too: B3, B4 and Result!A1.')
  })

  it('are several where errors have different sources, or begin anew with another sign', () => {
    const survey = surveyOf({ Drum: { A1: '=1/0', A2: '=NA()', B1: '=A1+1', B2: '=A2+1', C1: '=MATCH(7,D1:D2,0)', D1: '=A1' } })
    expect(placesOf(errorCells, survey)).toEqual(['Drum!A1', 'Drum!C1', 'Drum!A2'])
  })

  it('are one where the same formula fails in cells side by side', () => {
    const cells = Object.fromEntries(Array.from({ length: 5 }, (_, row) => [`B${row + 1}`, `=1/A${row + 1}`] as const))
    const found = findOf(errorCells, surveyOf({ S: cells }))
    expect(found.map(({ area }) => area)).toEqual([{ top: 0, bottom: 4, left: 1, right: 1 }])
    expect(found[0]?.reason).toContain('empty cell. The same goes for the 4 cells next to it.')
  })

  it('are none where all have values, or an error is caught', () => {
    expect(findOf(errorCells, surveyOf({ S: { A1: 1, A2: '=A1/2', A3: '=IFERROR(1/0,"–")', A4: '#N/A' } }))).toEqual([])
  })

  it('are not loops: these are a kind of their own', () => {
    expect(findOf(errorCells, surveyOf({ S: { A1: '=A2', A2: '=A1' } }))).toEqual([])
  })
})
