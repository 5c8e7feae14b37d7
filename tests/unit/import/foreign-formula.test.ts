import { HyperFormula } from 'hyperformula'
import { describe, expect, it } from 'vitest'
import { catalogue } from '../../../functions/catalogue.ts'
import { LINES_OF_COMPUTED } from '../../../src/calc/lines-of-computed.ts'
import { createEngine } from '../../../src/calc/engine.ts'
import { ENGINE_ONLY } from '../../../src/exchange/function-names.ts'
import { translateFormula, type ImportedNames } from '../../../src/exchange/import/foreign-formula.ts'
import { standardFunctions } from '../../../src/exchange/import/known-functions.ts'

const NAMES: ImportedNames = {
  sheets: new Map([['duty', 'Duty 2'], ['my: sheet', 'My sheet'], ["it's", "It's"], ['größe', 'Größe'], ['温度', '温度'], ['s', 'S']]),
  otherSheets: new Set(['left']),
  names: new Map([['load', 'Load'], ['c', '_c'], ['δp', '_p']]),
  lostNames: new Map([['area', 'it stands for OFFSET(S!A1,1,1): a name here stands for cells, a number or a text']]),
}

const translated = (formula: string, array?: string): string => {
  const result = translateFormula(formula, NAMES, array)
  return 'reason' in result ? `! ${result.reason}` : result.formula
}

describe('a formula of a file', () => {
  it.each([
    ['SUM(A1:A3)*2', '=SUM(A1:A3)*2'],
    ['_xlfn.IFS(A1>1,"a",TRUE,"b")', '=IFS(A1>1,"a",TRUE,"b")'],
    ['_xlfn._xlws.SORT(A1:A3)', '=SORT(A1:A3)'],
    ['_xlfn.CONCAT(A1,A2)', '=CONCATENATE(A1,A2)'],
    ['Duty!C5+duty!$C$6', "='Duty 2'!C5+'Duty 2'!$C$6"],
    ["'It''s'!A1", "='It''s'!A1"],
    ['Größe!A1', "='Größe'!A1"],
    ['温度!A1', "='温度'!A1"],
    ['S!A1:S!B2', '=S!A1:B2'],
    ['SUM(S!$A$1:S!$B$2)', '=SUM(S!$A$1:$B$2)'],
    ['load*2+c', '=Load*2+_c'],
    ['Δp*2', '=_p*2'],
    ['"Duty!A1 load c"&load', '="Duty!A1 load c"&Load'],
    ['SAT.PRESSURE("31 °F","psig")', '=SAT.PRESSURE("31 °F","psig")'],
    ['"[1]X!A1 @ | Table[a]"', '="[1]X!A1 @ | Table[a]"'],
    ['SUM({1,2;3,4})', '=SUM({1,2;3,4})'],
    ['LOG10(A1)+C5', '=LOG10(A1)+C5'],
    ['5%', '=5%'],
    ['c/c', '=_c/_c'],
  ])('%s becomes %s', (formula, expected) => {
    expect(translated(formula)).toBe(expected)
  })

  it.each([
    ['LET(x,1,x+1)', 'LET is not known here'],
    ['_xlfn.LET(_xlpm.x,1,_xlpm.x+1)', 'LET is not known here'],
    ['INDIRECT("A1")', 'INDIRECT is not known here'],
    ['MyMacro(A1)', 'MYMACRO is not known here'],
    ["'[1]Sheet 1'!A1", 'it refers to another file'],
    ['[1]Sheet1!A1', 'it refers to another file'],
    ['[Prices.xlsx]Sheet1!A1', 'it refers to another file'],
    ["'file:///c:/x.ods'#$Sheet1.A1", 'it refers to another file'],
    ["cmd|'/c calc'!A0", 'it asks another program for data'],
    ['Table1[Volume]', 'it refers to a table by its name and columns'],
    ['SUM(Table1[[#This Row],[Volume]])', 'it refers to a table by its name and columns'],
    ['@A1:A5', 'it takes the cell of its own row or column out of a range (@)'],
    ['_xlfn.SINGLE(A1:A5)', 'it takes the cell of its own row or column out of a range (@)'],
    ['SUM(A1#)', 'it refers to the cells that another formula fills (#)'],
    ['_xlfn.ANCHORARRAY(A1)', 'it refers to the cells that another formula fills (#)'],
    ['SUM(Duty:S!A1)', 'it refers to the same cells of several sheets'],
    ["SUM('Duty:S'!A1)", 'it refers to the same cells of several sheets'],
    ['A1:INDEX(A1:A9,3)', 'a corner of a range is computed (:)'],
    ['R1C1*2', 'R1C1 is an address by numbers of row and column'],
    ['Left!A1', 'it refers to the sheet "Left", which is not brought in'],
    ['Gone!A1', 'the file has no sheet "Gone"'],
    ['price*2', 'the file has no name price'],
    ['area*2', 'the name area is not brought in: it stands for OFFSET(S!A1,1,1): a name here stands for cells, a number or a text'],
    ['#REF!+1', 'a cell that it refers to was gone in the file already (#REF!)'],
    ['SUM(A:XFD)', 'A:XFD is 16384 whole columns; accepted: up to 26 of the first 1024, or a range such as A1:B100, at character 6'],
    ['SUM(A1', 'the closing ) of SUM is missing'],
    ['', 'the formula is empty: write something after ='],
  ])('%s is kept as text: %s', (formula, reason) => {
    expect(translated(formula)).toBe(`! ${reason}`)
  })

  it('brackets deeper than 64 and more than 8192 characters are kept as text', () => {
    expect(translated(`${'('.repeat(65)}1${')'.repeat(65)}`)).toMatch(/^! the formula has brackets nested deeper than 64/)
    expect(translated(`1${'+1'.repeat(4200)}`)).toMatch(/^! the formula is longer than 8192 characters/)
  })

  it('an array formula of one cell stays, as the engine computes whole ranges anyway; of several cells it is kept as text', () => {
    expect(translated('SUM(A1:A2*2)', 'C5')).toBe('=SUM(A1:A2*2)')
    expect(translated('SUM(A1:A2*2)', 'C5:C5')).toBe('=SUM(A1:A2*2)')
    expect(translated('A1:A2*2', 'C5:C6')).toBe('! it fills the cells C5:C6: here a cell has one value')
  })
})

describe('the list of standard functions', () => {
  it('is what the engine has, without what the engine alone has, and without what Lowside adds', () => {
    createEngine()
    const own = new Set([...catalogue.map(({ name }) => name), 'UNREADABLE.FORMULA', 'ONE.VALUE', ...Object.values(LINES_OF_COMPUTED)])
    // Of those that a file of ours is spared since they come to blocks, other programs' files have these.
    const blocks = new Set(['FILTER', 'HSTACK', 'SEQUENCE', 'SORT', 'UNIQUE', 'VSTACK'])
    const expected = HyperFormula.getRegisteredFunctionNames('enGB').filter((name) => !own.has(name) && (!ENGINE_ONLY.has(name) || blocks.has(name)))
    expect([...standardFunctions].toSorted()).toEqual(expected.toSorted())
  })
})
