import { describe, expect, it } from 'vitest'
import type { CellObject } from 'xlsx'
import type { Recalculated } from './recalculated.ts'
import { recalculatedOtherwise } from './recalculated-otherwise.ts'

/** What the second engine makes of a formula that stands in E1 beside A1:B3, an array formula where asked. */
function inSheet(formula: string, array = false): Recalculated {
  const number = (v: number): CellObject => ({ t: 'n', v })
  const text = (v: string): CellObject => ({ t: 's', v })
  const under: CellObject = { t: 'n', f: formula, ...(array ? { F: 'E1' } : {}) }
  const rows = [[number(1), text('Drum 1'), undefined, undefined, under], [number(2), text('drum 2')], [number(3), text('Coil')]]
  return recalculatedOtherwise({ sheets: new Map([['S', rows], ['Its own', [[number(7)]]]]), names: new Map([['all', 'S!$A$1:$A$3']]) }).get('S')?.[0]?.[4] ?? null
}

// By the rules of OpenFormula 1.3, part 4, whose sections stand beside; results worked out by hand.
describe('the second engine', () => {
  it.each<[string, string, Recalculated]>([
    ['arithmetic with areas in SUMPRODUCT (3.3)', 'SUMPRODUCT((A1:A3>1)*A1:A3^2)', 13],
    ['a row with a column (3.3)', 'SUMPRODUCT(A1:A3*{1,10})', 66],
    ['one cell of an area where no array is computed (3.3)', 'A1:A3*2', 2],
    ['a name of cells', 'SUM(all)', 6],
    ['another sheet', "'Its own'!A1+1", 8],
    ['capitals that do not count (6.4.7)', 'IF(B2="DRUM 2","yes","no")', 'yes'],
    ['EXACT, where they do', 'EXACT(B2,"DRUM 2")', false],
    ['a pattern in COUNTIF (4.11.8)', 'COUNTIF(B1:B3,"drum*")', 2],
    ['one letter in a pattern', 'MATCH("DRUM ?",B1:B3,0)', 1],
    ['two conditions', 'SUMIFS(A1:A3,B1:B3,"drum*",A1:A3,">1")', 2],
    ['a branch that is not taken', 'IF(A1=1,5,NA())', 5],
    ['an error that is caught', 'IFERROR(1/0,"none")', 'none'],
    ['an error that is not', 'A1+NA()', '#N/A'],
    ['an empty cell as 0 and as ""', 'IF(AND(C1=0,C1=""),1,2)', 1],
    ['a text that is no number', '"x"+1', '#VALUE!'],
    ['a number in the midst of a text, which is none', 'ISERROR(VALUE("at 5 ft"))', true],
    ['a sign before a power (6.4.2)', '-2^2', 4],
    ['percent', '50%*A2', 1],
  ])('takes %s', (_, formula, value) => expect(inSheet(formula)).toBe(value))

  it('computes with areas in an array formula', () => {
    expect(inSheet('SUM(A1:A3*2)', true)).toBe(12)
    expect(inSheet('SUM(A1:A3*2)')).toBe(2)
  })
})
