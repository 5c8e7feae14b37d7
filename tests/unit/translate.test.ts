import fc from 'fast-check'
import { HyperFormula } from 'hyperformula'
import { describe, expect, it } from 'vitest'
import { cellValue, createEngine } from '../../src/calc/engine.ts'
import { engineContent, engineFormula, engineName, UNREADABLE } from '../../src/calc/translate.ts'

const engine = createEngine()
const sheet = engine.getSheetId(engine.addSheet('S')) ?? 0
const valueOf = (formula: string) => engine.calculateFormula(engineFormula(formula), sheet)
/** The engine gives a block of one value for what is an array to it. */
const reasonOf = (formula: string): string => /"(.*)"/s.exec(engineFormula(formula))?.[1] ?? ''

describe('what the engine cannot read as typed comes to what was meant', () => {
  it.each([
    ['=1E-5', 0.00001], ['=1E5', 100000], ['=1e+5', 100000], ['=2.5E+2*2', 500], ['=.5', 0.5], ['=5.', 5], ['=007', 7], ['=1.50+1', 2.5],
    ['=TRUE', true], ['=false', false], ['=NOT(True)', false], ['=IF(TRUE,1,2)', 1],
    ['="3/4"" NPS"', '3/4" NPS'], ['=""""', '"'], ['=""', ''], ['="C:\\"', 'C:\\'], ['="a\\b"', 'a\\b'], ['="\\""x"', '\\"x'],
    ['=1\u00a0+\u00a01', 2], ['=1\t+\r\n1', 2], ['= 1 + 1 ', 2], ['=SUM(1;2)', 3], ['=SUM(1,2)', 3], ['=SUM({1,2;3,4})', 10], ['="1;2"', '1;2'], ['="TRUE"', 'TRUE'],
    ['=LEN("a""b\\c")', 5], ['="x"="x"', true],
  ])('%s', (formula, expected) => expect(valueOf(formula)).toBe(expected))

  it('a formula that the engine reads anyway is left as typed', () => {
    for (const formula of ['=C5*2+SUM(A1:B2)', "=SAT.PRESSURE(C5:D5,'My sheet'!D9)", '=1+2*3', '="text"', '=A1&" "&B1', '=A1%']) expect(engineFormula(formula)).toBe(formula)
  })

  it.each(['=SUM(A1:B2*2)', '=SAT.PRESSURE(C5:D5,D9)+UNIT.CONVERT(C6:D6,D9)', '=SUMPRODUCT((A1:A9<C3)*1)', '=INDEX(A1,1)', '=AND(A1:A3)'])('%s comes to one value and is left so', (formula) => {
    expect(engineFormula(formula)).toBe(formula)
  })

  it.each(['=$A$1:B$2', '=A1:B1*2', '=ABS(A1:B2)', '={1,2}', '=load*2', '=SUM(A1:A2)+A1:A2', '=INDEX(A1:B9,2)', '=sequence(3)', '=1:1'])('%s may come to a block and is held to one value', (formula) => {
    expect(engineFormula(formula)).toBe(`=ONE.VALUE(${formula.slice(1)})`)
  })

  it('any text in quotes comes to itself', () => {
    const characters = fc.constantFrom('"', '\\', 'a', ' ', ',', ';', '(', '°', '\ue000', '\ue001', '{', "'", '=', '\n')
    fc.assert(
      fc.property(fc.array(characters, { maxLength: 40 }).map((list) => list.join('')), (text) => {
        expect(valueOf(`="${text.replaceAll('"', '""')}"`)).toBe(text)
      }),
    )
  })

  it('a text of thousands of quotes does not run the engine out of stack', () => {
    expect(valueOf(`="${'""\\'.repeat(2500)}"`)).toBe('"\\'.repeat(2500))
  })

  it('any number comes to itself, to the digits that the engine gives', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }), fc.constantFrom('e', 'E'), (value, e) => {
        const typed = String(value).replace('e', e)
        const read = Number(cellValue(valueOf(`=${typed}`)))
        expect(Math.abs(read - value)).toBeLessThanOrEqual(1e-14 * value + 1e-290)
      }),
      { examples: [[Number.MIN_VALUE, 'e'], [Number.MAX_VALUE, 'E'], [1e-300, 'E']] },
    )
  })
})

describe('contents of cells', () => {
  it.each([
    [5, 5], [null, null], [true, true], ['text', "'text"], ["'=1+1", "'=1+1"], ['5%', "'5%"], ['1/2/2024', "'1/2/2024"], ['$5', "'$5"], ["'", "'"], ['=1E3', '=1000'],
  ])('%j is handed over as %j', (content, expected) => expect(engineContent(content)).toBe(expected))
})

describe('a formula that cannot be read says why', () => {
  it.each([
    ['=', /the formula is empty: write something after =/],
    ['=  ', /the formula is empty/],
    ['="abc', /text without its closing .*, at character 2/],
    ['=(1+2', /^the closing \) of \( is missing$/],
    ['=SUM((1+2)', /^the closing \) of SUM is missing$/],
    ['={1,2', /^the closing \} of \{ is missing$/],
    ['=1+2)', /a closing bracket without its opening one, at character 5/],
    ['=1..2', /an operator is missing between 1\. and \.2, at character 4/],
    ['=1+*2', /a value is missing between \+ and \*, at character 4/],
    ['=1e999', /1e999 is too large for a number, at character 2/],
    ['=A1+€5', /"€" has no meaning in a formula, at character 5/],
    ["='My sheet'", /a sheet name without ! and a cell after it, at character 2/],
    ['=XFE1', /XFE1 is off the sheet/],
    ['=SUM(A1:CZZ1000)', /A1:CZZ1000 covers 2730000 cells; accepted: up to 1000000, at character 6/],
    ['=SUM(A:XFD)', /A:XFD is 16384 whole columns; accepted: up to 26 of the first 1024, or a range such as A1:B100, at character 6/],
    ['=SUM(1:20000)', /1:20000 is 20000 whole rows; accepted: up to 100 of the first 100000, or a range such as A1:B100, at character 6/],
    [`=${'('.repeat(65)}1${')'.repeat(65)}`, /brackets nested deeper than 64: split it over several cells/],
    [`=${'{'.repeat(3000)}`, /brackets nested deeper than 64/],
    [`=1${'+1'.repeat(401)}`, /more than 400 operators: split it over several cells/],
    [`="${'x'.repeat(9000)}"`, /longer than 8192 characters: split it over several cells/],
  ])('%s', (formula, reason) => {
    expect(engineFormula(formula)).toContain(`${UNREADABLE}(`)
    expect(reasonOf(formula).replace(/[\ue000-\ue0ff]/g, '"')).toMatch(reason)
    expect(valueOf(formula)).toMatchObject({ value: '#ERROR!', message: expect.stringMatching(reason) })
  })

  it.each([`=${'('.repeat(64)}1${')'.repeat(64)}`, `=1${'+1'.repeat(400)}`, `=${'-'.repeat(400)}1`, `=1${'^1'.repeat(400)}`, `=${'ABS('.repeat(64)}1${')'.repeat(64)}`])('%s is just within', (formula) => {
    expect(valueOf(formula)).toEqual(expect.any(Number))
  })

  it('whatever is typed after "=", the engine takes it without throwing', () => {
    const pieces = fc.constantFrom('1', '.5', '1.', 'A1', 'B2:C3', '"', '"x"', '(', ')', '{', '}', ',', ';', '+', '-', '%', '^', '<', '>=', '&', ':', '!', "'S'!A1", 'SUM(', 'SAT.PRESSURE(', 'name', '#REF!', '#N/A', ' ', 'TRUE', '\\', '€', '1E5', 'S!A1', '$')
    fc.assert(
      fc.property(fc.oneof(fc.array(pieces, { maxLength: 25 }).map((list) => list.join('')), fc.string()), (typed) => {
        // An engine of its own: a reference far out makes the sheet as long, and whole columns after it as large.
        const fresh = createEngine()
        const at = { sheet: fresh.getSheetId(fresh.addSheet('S')) ?? 0, row: 9, col: 9 }
        fresh.setCellContents(at, engineContent(`=${typed}`))
        expect(() => fresh.getCellValue(at)).not.toThrow()
        fresh.destroy()
      }),
      { numRuns: 2000 },
    )
  })
})

describe('what a name refers to', () => {
  it('is absolute for the engine, which refuses anything else', () => {
    expect(engineName('load', 'Duty!$C$5')).toBe('=Duty!$C$5')
    expect(engineName('load', 'Duty!C5')).toBe('=Duty!$C$5')
    expect(engineName('table', "'Zone 1'!A$1:$B2")).toBe("='Zone 1'!$A$1:$B$2")
    expect(() => engine.addNamedExpression('relative', '=S!C5')).toThrow(/[Rr]elative/)
    expect(HyperFormula.version).toBe('3.5.0')
  })

  it('must name its sheet', () => {
    expect(engineName('load', '$C$5')).toMatch(/the name load refers to \$C\$5 of no sheet: write for example Duty!\$C\$5/)
  })
})
