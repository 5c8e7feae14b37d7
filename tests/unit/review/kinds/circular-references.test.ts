import { describe, expect, it } from 'vitest'
import { circularReferences } from '../../../../src/review/kinds/circular-references.ts'
import { findOf, surveyOf } from '../survey-of.ts'

const reasons = (sheets: Parameters<typeof surveyOf>[0], names?: Record<string, string>): string[] => findOf(circularReferences, surveyOf(sheets, names)).map(({ reason }) => reason)

describe('formulas that depend on their own result', () => {
  it('are named loop by loop, cell by cell, over sheets, names and ranges', () => {
    expect(reasons({ Duty: { C5: '=D9+1', D9: '=Result!A1', E1: '=C5' }, Result: { A1: '=SUM(Duty!B1:C6)' } })).toEqual(
      ['Depends on its own result: C5 uses D9, which uses Result!A1, which uses C5. A cell that uses it has no value either.'])
    expect(reasons({ S: { A1: '=Load', B1: '=A1*2' } }, { Load: 'S!$B$1' })).toEqual(['Depends on its own result: A1 uses B1, which uses A1.'])
  })

  it('are as many as there are loops', () => {
    expect(reasons({ S: { A1: '=A1+1', B1: '=B2', B2: '=B3', B3: '=B1', C1: '=B1+A1' } })).toEqual(['Depends on its own result: A1 uses itself.', 'Depends on its own result: B1 uses B2, which uses B3, which uses B1.'])
  })

  it('are named by the shortest way round', () => {
    expect(reasons({ S: { A1: '=A2+A3', A2: '=A3', A3: '=A1' } })).toEqual(['Depends on its own result: A1 uses A3, which uses A1.'])
  })

  it('are walked through however long the loop is', () => {
    const cells = Object.fromEntries(Array.from({ length: 3000 }, (_, row) => [`A${row + 1}`, `=A${row === 2999 ? 1 : row + 2}`] as const))
    const [only] = findOf(circularReferences, surveyOf({ S: cells }))
    expect(only?.reason).toBe('Depends on its own result: A1 uses A2, which uses A3, which uses A4, which uses A5, which uses A6, which uses A7, which uses 2993 cells more, which uses A1.')
    expect(only?.key).toBe('loop of 3000')
  })

  it('are none in a workbook that has values', () => {
    expect(reasons({ S: { A1: 1, A2: '=A1', A3: '=SUM(A1:A2)', A4: '=1/0' } })).toEqual([])
  })
})
