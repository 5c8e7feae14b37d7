import { describe, expect, it } from 'vitest'
import { unlikeNeighbours } from '../../../../src/review/kinds/unlike-neighbours.ts'
import type { Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

/** Rows 2 to 9 of a table, filled down from a formula of its row; some cells otherwise. */
function table(formula: (row: number) => string, others: Readonly<Record<string, Put>> = {}) {
  const rows = Array.from({ length: 8 }, (_, index) => index + 2)
  return surveyOf({ Drums: { ...Object.fromEntries(rows.flatMap((row): [string, Put][] => [[`A${row}`, row * 10], [`B${row}`, row], [`C${row}`, formula(row)]])), ...others } })
}
const reasonsOf = (survey: ReturnType<typeof table>): string[] => findOf(unlikeNeighbours, survey).map(({ reason }) => reason)

describe('a formula unlike its neighbours', () => {
  it('is one that refers elsewhere, by an address that stays or one that moves along', () => {
    expect(reasonsOf(table((row) => `=A${row}*H$6`, { C5: '=A5*H$7' }))).toEqual(['Not as the formulas above and below: refers to H$7 instead of H$6.'])
    const [only] = findOf(unlikeNeighbours, table((row) => `=VLOOKUP(A${row},$J$1:$L$9,2)`, { C6: '=VLOOKUP(A6,$J$1:$L$9,3)' }))
    expect(only).toMatchObject({ severity: 'warning', reason: 'Not as the formulas above and below: has 3 instead of 2.', key: '3 for 2' })
    expect(reasonsOf(table((row) => `=A${row}+B${row}`, { C6: '=A5+B6' }))).toEqual(['Not as the formulas above and below: refers to A5 instead of A6.'])
  })

  it('is one that does something else; two of them are two, or one where they are alike', () => {
    expect(reasonsOf(table((row) => `=A${row}*B${row}`, { C4: '=A4/B4', C5: '=MAX(A5,B5)' }))).toEqual([
      'Not as the formulas above and below: has / instead of *.', 'Not as the formulas above and below: is =MAX(A5,B5) instead of =A5*B5.',
    ])
    expect(placesOf(unlikeNeighbours, table((row) => `=A${row}*B${row}`, { C4: '=A4/B4', C5: '=A5/B5' }))).toEqual(['Drums!C4:C5'])
  })

  it('at the end of a column is one that is built as they are', () => {
    expect(placesOf(unlikeNeighbours, table((row) => `=A${row}*H$6`, { C9: '=A9*H$5' }))).toEqual(['Drums!C9'])
    expect(reasonsOf(table((row) => `=A${row}*H$6`, { C9: '=A9*H$5' }))).toEqual(['Not as the formulas of its column: refers to H$5 instead of H$6.'])
    expect(reasonsOf(table((row) => `=A${row}*H$6`, { C10: '=SUM(C2:C9)' }))).toEqual([])
    expect(reasonsOf(table((row) => `=C${row - 1}+A${row}`, { C2: '=A2' }))).toEqual([])
  })

  it('is found across a row', () => {
    const across = Object.fromEntries(['B', 'C', 'D', 'E', 'F'].map((letter) => [`${letter}3`, `=${letter}1*${letter}2`] as const))
    const found = findOf(unlikeNeighbours, surveyOf({ Months: { ...across, D3: '=D1*C2' } }))
    expect(found.map(({ area: { left }, reason }) => [left, reason])).toEqual([[3, 'Not as the formulas on both sides: refers to C2 instead of D2.']])
  })

  it('is mended by filling in the neighbours’ formula', () => {
    expect(findOf(unlikeNeighbours, table((row) => `=A${row}*H$6`, { C5: '=A5*H$7' }))[0]?.mend).toEqual({
      words: 'Fill in the neighbours’ formula', edits: [{ kind: 'cells', sheet: 'Drums', cells: [{ row: 4, column: 2, cell: { content: '=A5*H$6', role: 'result' } }] }],
    })
  })

  it('is none of a pattern, of a row that goes across, of a $ more, or of calculations that each have their own', () => {
    expect(reasonsOf(table((row) => (row % 3 === 0 ? `=A${row}` : `=A${row}*2`)))).toEqual([])
    const totals = Object.fromEntries(['C', 'D', 'E', 'F'].flatMap((letter) => Array.from({ length: 7 }, (_, row) => [`${letter}${row + 2}`, row === 3 ? `=SUM(${letter}2:${letter}4)` : `=${letter}$1*$A${row + 2}`] as const)))
    expect(placesOf(unlikeNeighbours, surveyOf({ Drums: totals }))).toEqual([])
    expect(reasonsOf(table((row) => `=A${row}*H$6`, { C5: '=$A5*$H$6' }))).toEqual([])
    expect(placesOf(unlikeNeighbours, surveyOf({ Duty: { A1: 1, B1: '=A1*2', B2: '=B1+3', B3: '=B2/B1', B4: '=SQRT(B3)', B5: '=B4*A1', B6: '=B1' } }))).toEqual([])
  })
})
