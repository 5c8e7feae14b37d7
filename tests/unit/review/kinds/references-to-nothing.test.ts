import { describe, expect, it } from 'vitest'
import { numbersAsText } from '../../../../src/review/kinds/numbers-as-text.ts'
import { referencesToNothing } from '../../../../src/review/kinds/references-to-nothing.ts'
import type { Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

const unit = (text: string): Put => [text, 'unit']
const cells: Readonly<Record<string, Put>> = { B1: ['Load', 'label'], C1: 85, D1: unit('TR'), B2: ['Margin', 'label'], C2: [null, 'input'], D2: unit('%'), B3: ['Position', 'label'], C3: ['vertical', 'input'], C4: ['12', 'input'], C5: '=""' }
const said = (formula: string, further: Readonly<Record<string, Put>> = {}) => findOf(referencesToNothing, surveyOf({ Duty: { ...cells, C9: formula, D9: unit('TR'), ...further } })).map(({ reason }) => reason)

describe('references to empty cells', () => {
  it('count as 0 in arithmetic, in functions of numbers and in comparisons', () => {
    expect(said('=C1+C2')).toEqual(['C2, which the formula computes with, is empty: it counts as 0.'])
    expect(said('=C1*(1+C20/100)')).toEqual(['C20, which the formula computes with, is empty: it counts as 0.'])
    expect(said('=SQRT(C2)')).toEqual(['C2, which the formula computes with, is empty: it counts as 0.'])
    expect(said('=C1>C2')).toEqual(['C2, which the formula compares, is empty: it counts as 0.'])
    expect(said('=-C2')).toHaveLength(1)
    expect(said('=Empty!C5', {})).toHaveLength(0)
  })

  it('are found where one is taken over, looked up, or picked from a list', () => {
    expect(said('=C20')).toEqual(['C20, which the formula takes over, is empty: there is nothing to show.'])
    expect(said('=INDEX(C1:C8,2)*3')).toEqual(['C2, which the formula computes with, is empty: it counts as 0.'])
    expect(said('=IFERROR(0,1)+MATCH(C2,C1:C5,0)')).toEqual(['C2, which the formula looks up, is empty: there is nothing to look up.'])
    expect(said('=SUM(F1:F6)')).toEqual(['The range from F1 on, which the formula takes together, is empty.'])
  })

  it('are none where the formula looks first, or takes another way', () => {
    for (const formula of ['=IF(C2="",C1,C1+C2)', '=IF(ISNUMBER(C2),C1*C2,0)', '=IF(ISBLANK(C2),0,C2)', '=COUNTA(C1:C5)', '=SUM(C1:C2)', '=IFERROR(C1/C2,0)', '=IF(C1>100,C1*C2,0)', '=C2=""', '=N(C2)+1', '=SUMPRODUCT((C1:C5="")*1)', '=C3&" drum"', '=MAX(C1,C2)']) {
      expect([formula, said(formula)]).toEqual([formula, []])
    }
  })

  it('are one finding for a column, with the cells that cause it', () => {
    const rows = Object.fromEntries([1, 2, 3].flatMap((row): [string, Put][] => [[`A${row}`, row], [`C${row}`, `=A${row}*B${row}`]]))
    const [only, ...others] = findOf(referencesToNothing, surveyOf({ Duty: rows }))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'warning', area: { top: 0, bottom: 2, left: 2, right: 2 }, causes: [{ row: 0, column: 1 }, { row: 1, column: 1 }, { row: 2, column: 1 }] })
  })
})

describe('references to text', () => {
  it('are named with the text, be it a word, a number or nothing', () => {
    expect(said('=C1+C3')).toEqual(['C3, which the formula computes with, holds text and no number: “vertical”.'])
    expect(said('=C1+B1')).toEqual(['B1, which the formula computes with, holds text and no number: “Load”.'])
    expect(said('=C1*C4')).toEqual(['C4, which the formula computes with, holds text and no number: “12”.'])
    expect(said('=C1<C4')).toEqual(['C4, which the formula compares, holds text and no number: “12”.'])
    expect(said('=C1+C5')).toEqual(['C5, which the formula computes with, holds text and no number: “”.'])
  })

  it('are none where text is wanted', () => {
    for (const formula of ['=IF(C3="vertical",1,2)*C1', '=C3&B1', '=IF(C5="",0,C5)', '=PIPE.BORE(C4,"40","in")']) expect([formula, said(formula)]).toEqual([formula, []])
  })
})

describe('numbers stored as text', () => {
  const list = (second: Put) => surveyOf({ Charge: { A1: ['Charge', 'heading'], A2: unit('lb'), A3: 120, A4: second, A5: 80, A7: '=SUM(A3:A5)', A8: '=UNIT.CONVERT(SUMIFS(A3:A5,B3:B5,"x")&A2,"kg")' } })

  it('are found where a sum passes over them', () => {
    const [only, ...others] = findOf(numbersAsText, list(["'95", 'input']))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'warning', area: { top: 3, left: 0 }, reason: '“95” is text, not a number: the formula in A7 passes over A4.', causes: [{ row: 6, column: 0 }] })
    for (const text of ['95 lb', '1,200', '12.5', '−4 °F']) expect([text, placesOf(numbersAsText, list([text, 'input']))]).toEqual([text, ['Charge!A4']])
  })

  it('can be made numbers where the text says no more than the cell', () => {
    const mended = (text: string) => findOf(numbersAsText, list([text, 'input'])).map(({ mend }) => mend && [mend.words, mend.edits])
    const edits = (content: number) => [{ kind: 'cells', sheet: 'Charge', cells: [{ row: 3, column: 0, cell: { content, role: 'input' } }] }]
    expect(mended("'95")).toEqual([['Make it the number 95', edits(95)]])
    expect(mended('1,200')).toEqual([['Make it the number 1200', edits(1200)]])
    expect(mended('−4.5 lb')).toEqual([['Make it the number -4.5', edits(-4.5)]])
    expect(mended('95 kg')).toEqual([undefined])
  })

  it('are no names, sizes, ratios or remarks', () => {
    for (const text of ['Drum 2', '1/2', '2:1', 'none', '3 of 5 parts', '–']) expect([text, placesOf(numbersAsText, list([text, 'input']))]).toEqual([text, []])
    expect(placesOf(numbersAsText, list(95))).toEqual([])
  })
})
