import { describe, expect, it } from 'vitest'
import { areaOf, parseAddress, parseReference, printAddress, quoteSheetName } from '../../../src/workbook/address.ts'
import { calls } from '../../../src/workbook/formula/calls.ts'
import { namesIn, referencesIn, renameSheetInFormula, shiftReferences } from '../../../src/workbook/formula/references.ts'
import { tokenise } from '../../../src/workbook/formula/tokenise.ts'

const kinds = (text: string) => tokenise(text).map((token) => `${token.kind}:${token.text}`)

describe('tokens', () => {
  it.each<[string, string[]]>([
    ['=A1', ['start:=', 'reference:A1']],
    ['=SAT.PRESSURE(C5:D5,"psia")', ['start:=', 'function:SAT.PRESSURE', 'open:(', 'range:C5:D5', 'separator:,', 'string:"psia"', 'close:)']],
    ['=$B$2+Duty!c5', ['start:=', 'reference:$B$2', 'operator:+', 'reference:Duty!c5']],
    ["='It''s, (one)'!$A$1:B2", ['start:=', "range:'It''s, (one)'!$A$1:B2"]],
    ['=SUM(A:A,$1:2)', ['start:=', 'function:SUM', 'open:(', 'wholeColumns:A:A', 'separator:,', 'wholeRows:$1:2', 'close:)']],
    ['="say ""hi"", ok"&1E-5', ['start:=', 'string:"say ""hi"", ok"', 'operator:&', 'number:1E-5']],
    ['=.5*1.5e+3%', ['start:=', 'number:.5', 'operator:*', 'number:1.5e+3', 'operator:%']],
    ['=true<>FALSE', ['start:=', 'boolean:true', 'operator:<>', 'boolean:FALSE']],
    ['=TRUE()', ['start:=', 'function:TRUE', 'open:(', 'close:)']],
    ['=LOG10(LOG10)', ['start:=', 'function:LOG10', 'open:(', 'reference:LOG10', 'close:)']],
    ['=house_suction*K.value', ['start:=', 'name:house_suction', 'operator:*', 'name:K.value']],
    ['={1,2;3,4}', ['start:=', 'openBrace:{', 'number:1', 'separator:,', 'number:2', 'separator:;', 'number:3', 'separator:,', 'number:4', 'closeBrace:}']],
    ['=#REF!+#N/A+#DIV/0!', ['start:=', 'error:#REF!', 'operator:+', 'error:#N/A', 'operator:+', 'error:#DIV/0!']],
    ['=A1 : B2', ['start:=', 'reference:A1', 'whitespace: ', 'operator::', 'whitespace: ', 'reference:B2']],
    ['=C5-2', ['start:=', 'reference:C5', 'operator:-', 'number:2']],
    ['1+1', ['number:1', 'operator:+', 'number:1']],
    ['', []],
  ])('%s', (text, expected) => {
    expect(kinds(text)).toEqual(expected)
  })

  it.each([
    ['="open', 'string', /without its closing "/, 1],
    ["=1+'My sheet", 'unknown', /without its closing '/, 3],
    ["='My sheet'", 'unknown', /without ! and a cell/, 1],
    ['=XFE1', 'reference', /XFE1 is off the sheet; the last cell is XFD1048576/, 1],
    ['=A0', 'reference', /off the sheet/, 1],
    ['=A1?', 'unknown', /"\?" has no meaning/, 3],
  ])('%s has a problem at its place', (text, kind, problem, start) => {
    expect(tokenise(text).filter((token) => token.problem !== undefined)).toEqual([expect.objectContaining({ kind, start, problem: expect.stringMatching(problem) })])
  })
})

describe('calls', () => {
  const described = (text: string) =>
    calls(tokenise(text)).map((call) => `${call.depth} ${call.name} [${call.arguments.map(({ start, end }) => text.slice(start, end)).join('|')}]${call.closed ? '' : ' open'}`)

  it.each<[string, string[]]>([
    ['=F()', ['0 F []']],
    ['=F( )', ['0 F []']],
    ['=F(,)', ['0 F [|]']],
    ['=F(A1, G("a,b)",{1,2;3}), (1,2))+H(1)', ['0 F [A1| G("a,b)",{1,2;3})| (1,2)]', '1 G ["a,b)"|{1,2;3}]', '0 H [1]']],
    ["=F('a,b'!A1)", ["0 F ['a,b'!A1]"]],
    ['=F(1,G(2', ['0 F [1|G(2] open', '1 G [2] open']],
    ['=F(', ['0 F [] open']],
    ['=F({1,2)', ['0 F [{1,2]']],
    ['=1)+F(2)', ['0 F [2]']],
    ['="F(1)"', []],
  ])('%s', (text, expected) => {
    expect(described(text)).toEqual(expected)
  })

  it('a call with nothing typed yet has one empty argument where the cursor is', () => {
    expect(calls(tokenise('=F('))[0]).toEqual({ name: 'F', start: 1, end: 3, depth: 0, closed: false, arguments: [{ start: 3, end: 3 }] })
  })
})

describe('references', () => {
  it('are data: sheet, rows, columns, which parts are absolute', () => {
    expect(referencesIn(tokenise("=SUM('My sheet'!$C5:D$9)*load")).map(({ reference }) => reference)).toEqual([
      {
        sheet: 'My sheet',
        from: { row: 4, column: 2, rowAbsolute: false, columnAbsolute: true },
        to: { row: 8, column: 3, rowAbsolute: true, columnAbsolute: false },
      },
    ])
    expect(namesIn(tokenise('=SUM(A1)*load&"name"'))).toEqual(['load'])
  })

  it('cover whole columns and rows to the end, and are ordered whichever corner is first', () => {
    const area = (text: string) => areaOf(parseReference(text) ?? { sheet: null, from: { row: 0, column: 0, rowAbsolute: false, columnAbsolute: false }, to: null })
    expect(area('B:A')).toEqual({ top: 0, bottom: 1_048_575, left: 0, right: 1 })
    expect(area('2:3')).toEqual({ top: 1, bottom: 2, left: 0, right: 16_383 })
    expect(area('C5:A1')).toEqual({ top: 0, bottom: 4, left: 0, right: 2 })
  })

  it.each([
    ['=A1+$A1+A$1+$A$1', 2, 1, '=B3+$A3+B$1+$A$1'],
    ['=A1+B2', -1, 0, '=#REF!+B1'],
    ['=SUM(A1:B2)', 0, -1, '=SUM(#REF!)'],
    ['=SUM(B2:$C$3)', 5, 5, '=SUM($C$3:G7)'],
    ['=SUM(A:B)+SUM(1:$2)', 1, 1, '=SUM(B:C)+SUM(2:$2)'],
    ["='My sheet'!a1&\"A1\"", 1, 0, "='My sheet'!A2&\"A1\""],
    ['=A1048576', 1, 0, '=#REF!'],
    ['=1.50 * load', 3, 3, '=1.50 * load'],
  ])('%s shifted by %i rows and %i columns is %s', (formula, rows, columns, expected) => {
    expect(shiftReferences(formula, rows, columns)).toBe(expected)
  })

  it('a renamed sheet keeps what is written around it', () => {
    expect(renameSheetInFormula('= duty!A1 *  1.50+Duty2!A1+"Duty!A1"', 'Duty', 'A1')).toBe("= 'A1'!A1 *  1.50+Duty2!A1+\"Duty!A1\"")
    expect(renameSheetInFormula('Duty!$C$5', 'Duty', 'Basis')).toBe('Basis!$C$5')
  })
})

describe('addresses', () => {
  it('run from A1 to XFD1048576', () => {
    expect(printAddress(0, 0)).toBe('A1')
    expect(printAddress(1_048_575, 16_383)).toBe('XFD1048576')
    expect(parseAddress('aa10')).toEqual({ row: 9, column: 26 })
    expect(['A0', 'XFE1', 'A1048577', '$A$1', 'A', '1', 'A1:B2', 'AAAA1', ''].filter((text) => parseAddress(text) !== undefined)).toEqual([])
  })

  it('sheet names are quoted where any spreadsheet program needs it', () => {
    expect(['Duty', 'Duty_2', 'My sheet', "It's", 'A1', 'r1c1', 'true', '2nd', 'Größe'].map(quoteSheetName)).toEqual([
      'Duty', 'Duty_2', "'My sheet'", "'It''s'", "'A1'", "'r1c1'", "'true'", "'2nd'", "'Größe'",
    ])
  })
})
