import { describe, expect, it, vi } from 'vitest'
import { functionByName } from '../../functions/catalogue.ts'
import { Graph } from '../../src/calc/graph.ts'
import { isCellError, type CellValue } from '../../src/calc/values.ts'
import type { Edit } from '../../src/workbook/edits.ts'
import { at, cellOf, sheetOf, workbookOf, type Put } from './workbook-of.ts'

/** A graph of one sheet S, and what its cells come to. */
function sheet(cells: Readonly<Record<string, Put>>, names: Readonly<Record<string, string>> = {}) {
  const graph = new Graph(workbookOf({ S: cells }, names))
  return { graph, value: (address: string) => valueAt(graph, 'S', address), enter: (entered: Readonly<Record<string, Put | undefined>>) => graph.apply([edit('S', entered)]) }
}

const valueAt = (graph: Graph, name: string, address: string): CellValue => graph.value(name, at(address).row, at(address).column)

const edit = (name: string, cells: Readonly<Record<string, Put | undefined>>): Edit => ({
  kind: 'cells', sheet: name, cells: Object.entries(cells).map(([address, put]) => ({ ...at(address), cell: put === undefined ? null : cellOf(put) })),
})

const errorOf = (value: CellValue): { error: string; message: string } => {
  if (!isCellError(value)) throw new Error(`${String(value)} is no error`)
  return value
}

// Gao et al. 2023, independent library: saturation at 5 °F.
const PSIA_AT_5F = 34.2445

describe('a quantity in cells', () => {
  it('is a value and its unit in adjacent cells, a joined text, or a text', () => {
    const { value } = sheet({
      C5: 5, D5: '°F', D9: 'psia', A1: '=SAT.PRESSURE(C5:D5,D9)', A2: '=SAT.PRESSURE(C5&D5,D9:D9)', A3: '=SAT.PRESSURE("5 °F","psia")', A4: '=sat.pressure(C5:D5,"psia")',
      A5: '=SAT.PRESSURE(C5&" "&D$5,D9)', A6: '=SAT.PRESSURE({5,"°F"},D9)', A7: "=SAT.PRESSURE(S!C5:D5,'S'!D9)",
    })
    for (const address of ['A1', 'A2', 'A3', 'A4', 'A5', 'A6', 'A7']) expect(value(address)).toBeCloseTo(PSIA_AT_5F, 4)
  })

  it('follows its value, its unit, and the unit of the result', () => {
    const { value, enter } = sheet({ C5: 5, D5: '°F', D9: 'psia', A1: '=SAT.PRESSURE(C5:D5,D9)' })
    enter({ C5: -15 })
    expect(value('A1')).toBeCloseTo(Number(functionByName('SAT.PRESSURE')?.call(['-15 °F', 'psia'])), 10)
    enter({ D5: '°C' })
    expect(value('A1')).toBeCloseTo(Number(functionByName('SAT.PRESSURE')?.call(['-15 °C', 'psia'])), 10)
    enter({ D9: 'kPa' })
    expect(value('A1')).toBeCloseTo(Number(functionByName('SAT.PRESSURE')?.call(['-15 °C', 'kPa'])), 10)
  })

  it('loses no digit in a joined text', () => {
    const { value } = sheet({ C5: '=10/3', D5: '°F', A1: '=SAT.PRESSURE(C5&D5,"Pa")', A2: '=SAT.PRESSURE(C5:D5,"Pa")' })
    expect(value('A1')).toBe(value('A2'))
  })

  it('takes percentages, empty places and texts of numbers for what they are', () => {
    const { value } = sheet({
      C5: 200, D5: '%', A1: '=DRUM.TRAVEL("36 in","18 in","126 cfm","112 ft/min","in",C5%)', A2: '=DRUM.TRAVEL("36 in","18 in","126 cfm","112 ft/min","in",C5:D5)',
      A3: '=DRUM.TRAVEL("36 in","18 in","126 cfm","112 ft/min","in",2)', A4: '=DRUM.TRAVEL("36 in","18 in","126 cfm","112 ft/min","in",)', A5: '=DRUM.TRAVEL("36 in","18 in","126 cfm","112 ft/min","in")',
      B1: '=DRUM.TRAVEL("36 in","18 in","126 cfm","112 ft/min","in",Z1)',
    })
    expect([value('A1'), value('A2')]).toEqual([value('A3'), value('A3')])
    expect(value('A4')).toBe(value('A5'))
    expect(value('B1')).toMatchObject({ error: '#VALUE!', message: expect.stringMatching(/inlets is empty/) })
  })
})

describe('an error on its way', () => {
  const refused = { error: '#VALUE!', message: 'temperature needs a unit: write C5:D5 or "31 °F"' }

  it('carries its message through sums, operators, choices and other functions, our own too', () => {
    const { value } = sheet({
      A1: '=SAT.PRESSURE(5,"psia")', B1: '=A1', B2: '=A1+1', B3: '=SUM(A1:A9)', B4: '=MAX(1,A1)', B5: '=IF(TRUE,A1,0)', B6: '=A1&" psia"', B7: '=SAT.TEMPERATURE(A1&" psia","°F")',
      B8: '=SAT.TEMPERATURE(A1:A2,"°F")', B9: '=-A1', B10: '=A1<5', B11: '=B7', B12: '=ROUND(A1,2)', B13: '=TEXT(A1,"0.0")', B14: '=SAT.PRESSURE("5 °F",A1)', B15: '=CEILING(A1,6)',
    })
    for (let row = 1; row <= 15; row++) expect(value(`B${row}`), `B${row}`).toEqual(refused)
  })

  it('is passed on unchanged by our functions, whichever kind it is', () => {
    const { value } = sheet({ A1: '=1/0', A2: '=NA()', A3: '=nowhere', A4: '=Gone!A1', A5: '=SQRT(-1)', D1: '°F', ...Object.fromEntries([1, 2, 3, 4, 5].flatMap((row) => [[`B${row}`, `=SAT.PRESSURE(A${row}&"°F","psia")`], [`C${row}`, `=SAT.PRESSURE("5 °F",A${row})`]])) })
    for (let row = 1; row <= 5; row++) for (const column of ['B', 'C']) expect(value(`${column}${row}`)).toEqual(value(`A${row}`))
    expect(['A1', 'A2', 'A3', 'A4', 'A5'].map((address) => errorOf(value(address)).error)).toEqual(['#DIV/0!', '#N/A', '#NAME?', '#REF!', '#NUM!'])
  })

  it('the first one in an argument’s range, or among the arguments, is the one passed on', () => {
    const { value } = sheet({ A1: '=1/0', B1: '=NA()', A2: 5, B2: '=NA()', C1: '=SAT.PRESSURE(A1:B1,"psia")', C2: '=SAT.PRESSURE(A2:B2,B1)', C3: '=SAT.PRESSURE("5 °F",B1,A1&"kPa")' })
    expect(['C1', 'C2', 'C3'].map((address) => errorOf(value(address)).error)).toEqual(['#DIV/0!', '#N/A', '#N/A'])
  })

  it('can be caught', () => {
    const { value } = sheet({ A1: '=IFERROR(SAT.PRESSURE(5,"psia"),"none")', A2: '=ISERROR(SAT.PRESSURE(5,"psia"))', A3: '=IFNA(SAT.PRESSURE(),7)' })
    expect([value('A1'), value('A2'), value('A3')]).toEqual(['none', true, 7])
  })

  it('goes when its cause does, all the way down', () => {
    const { graph, value, enter } = sheet({ C5: 5, A1: '=SAT.PRESSURE(C5:D5,"psia")', A2: '=A1*2', A3: '=SUM(A1:A2)' })
    expect(errorOf(value('A3')).message).toMatch(/needs a unit: its second cell is empty/)
    expect(graph.states()[0]?.errors).toBe(3)
    enter({ D5: '°F' })
    expect(value('A3')).toBeCloseTo(3 * PSIA_AT_5F, 3)
    expect(graph.states()[0]?.errors).toBe(0)
    enter({ D5: 'bar' })
    expect(errorOf(value('A3')).message).toMatch(/temperature is in bar, a pressure/)
    enter({ A1: 4 })
    expect(value('A3')).toBe(12)
    enter({ A1: undefined })
    expect(value('A3')).toBe(0)
    expect(graph.errors()).toEqual([])
  })

  it.each([
    ['=SAT.PRESSURE()', '#N/A', /SAT\.PRESSURE takes 2 to 3 arguments: SAT\.PRESSURE\(temperature, unit, \[site\]\)/],
    ['=SAT.PRESSURE("5 °F","psia",,)', '#N/A', /takes 2 to 3/],
    ['=SAT.PRESSURE("500 °F","psia")', '#NUM!', /temperature is 500 °F; accepted is -107\.68 °F to 212 °F \(.*Gao et al\. 2023\)/],
    ['=NO.SUCH(1)', '#NAME?', /there is no function NO\.SUCH: the guide lists them/],
    ['=nowhere+1', '#NAME?', /nothing here is called nowhere: a text stands in quotes/],
    ['=Gone!A1', '#REF!', /./],
    ['=#REF!*2', '#REF!', /is not there any more/],
    ['=1/0', '#DIV/0!', /division by zero/],
    ['=A1 B1', '#ERROR!', /an operator is missing between A1 and B1, at character 5/],
    ['=SUM(1', '#ERROR!', /the closing \) of SUM is missing/],
    ['=*', '#ERROR!', /a value is missing before \*, at character 2/],
    ['=Z26', '#CYCLE!', /depends on its own result/],
  ])('%s is %s with words', (formula, error, message) => {
    const { value, graph } = sheet({ Z26: formula, Y1: '=Z26' })
    expect(value('Z26')).toEqual({ error, message: expect.stringMatching(message) })
    expect(errorOf(value('Z26')).message).not.toMatch(/Parsing error|Token/)
    expect(value('Y1')).toEqual(value('Z26'))
    expect(graph.errors().map(({ row, column }) => [row, column])).toEqual([[0, 24], [25, 25]])
    expect(graph.states()[0]?.errors).toBe(2)
  })
})

describe('the engine stays usable', () => {
  it('where one of our functions throws: the cell shows it, the rest goes on', () => {
    const definition = functionByName('SAT.PRESSURE')
    if (definition === undefined) throw new Error('no SAT.PRESSURE')
    const thrown = vi.spyOn(definition, 'call').mockImplementation(() => { throw new Error('broken inside') })
    const { value, enter } = sheet({ C5: 5, D5: '°F', A1: '=SAT.PRESSURE(C5:D5,"psia")', A2: '=A1+1', A3: '=C5*2' })
    expect(value('A2')).toEqual({ error: '#VALUE!', message: 'SAT.PRESSURE failed: broken inside' })
    thrown.mockRestore()
    enter({ C5: 6 })
    expect(value('A3')).toBe(12)
    expect(value('A1')).toBeGreaterThan(PSIA_AT_5F)
  })

  it('with formulas that would run it out of stack, alone and beside others', () => {
    const deep = `=${'('.repeat(3000)}1${')'.repeat(3000)}`
    const { value, enter } = sheet({ A1: deep, A2: `=1${'+1'.repeat(3000)}`, A3: `="${'""'.repeat(3000)}"`, A4: `={${'{'.repeat(3000)}`, B1: 1, B2: '=B1+1' })
    expect(errorOf(value('A1')).message).toMatch(/nested deeper than 64/)
    expect(errorOf(value('A2')).message).toMatch(/more than 400 operators/)
    expect(value('A3')).toBe('"'.repeat(3000))
    expect(errorOf(value('A4')).error).toBe('#ERROR!')
    enter({ B1: 5, B3: deep })
    expect(value('B2')).toBe(6)
  })

  it('where a name refers to nothing it can take', () => {
    const names = { relative: 'S!A1', unsheeted: '$A$1', gone: 'Gone!$A$1', nonsense: '((', number: '1E-5' }
    const { value } = sheet({ A1: 5, B1: '=relative', B2: '=unsheeted', B3: '=gone', B4: '=nonsense', B5: '=number', B6: '=A1+1' }, names)
    expect(value('B1')).toBe(5)
    expect(errorOf(value('B2')).message).toMatch(/the name unsheeted refers to \$A\$1 of no sheet/)
    expect(errorOf(value('B3')).error).toBe('#REF!')
    expect(errorOf(value('B4')).message).toBe('a value is missing after (')
    expect(value('B5')).toBe(1e-5)
    expect(value('B6')).toBe(6)
  })

  it('in a cycle, which ends when it is broken', () => {
    const { value, enter, graph } = sheet({ A1: '=B1+1', B1: '=A1+1', C1: '=SUM(A1:B1)', D1: '=SAT.PRESSURE(D1:E1,"psia")', E1: '°F' })
    for (const address of ['A1', 'B1', 'C1', 'D1']) expect(errorOf(value(address)).error).toBe('#CYCLE!')
    enter({ B1: 1 })
    expect([value('A1'), value('C1')]).toEqual([2, 3])
    expect(graph.errors()).toHaveLength(1)
  })

  it('at either end of what a number can be', () => {
    const { value } = sheet({ A1: 5e-324, A2: 1.7976931348623157e308, A3: '=A1/2', A4: '=A2*10', A5: '=A2' })
    expect([value('A1'), value('A3')]).toEqual([0, 0])
    expect(value('A2')).toBe(Number.MAX_VALUE)
    expect(errorOf(value('A4')).error).toBe('#NUM!')
  })

  it('an edit that the workbook refuses changes neither document nor values', () => {
    const { graph, value } = sheet({ A1: 5, B1: '=A1' })
    const before = graph.workbook
    expect(() => graph.apply([edit('S', { A1: 6 }), edit('Gone', { A1: 6 })])).toThrow(/there is no sheet "Gone"/)
    expect(graph.workbook).toBe(before)
    expect(value('B1')).toBe(5)
  })
})

describe('text and numbers are what they are in the document', () => {
  it.each(['5%', '$5', '1/2/2024', '12:30', '1.2.3', '007', "=text'", 'TRUE ', '+5', '1e5', '#REF!'])('the text %s stays that text', (text) => {
    const { value } = sheet({ A1: text.startsWith('=') ? `'${text}` : text, B1: '=A1&""', B2: '=ISTEXT(A1)' })
    expect([value('A1'), value('B1'), value('B2')]).toEqual([text, text, true])
  })

  it('arrays are summed element by element', () => {
    const { value } = sheet({ A1: 1, B1: 2, C1: 3, A2: 4, B2: 5, C2: 6, D1: '=SUM(A1:C1*2)', D2: '=SUMPRODUCT(A1:C1*A2:C2)', D3: '=SQRT(SUM(A1:C1^2))' })
    expect([value('D1'), value('D2')]).toEqual([12, 32])
    expect(value('D3')).toBeCloseTo(Math.sqrt(14), 12)
  })
})

describe('several sheets', () => {
  it('refer to each other in either order', () => {
    const sheets = { First: { A1: '=Second!A1*2', A2: 3 }, Second: { A1: '=First!A2+1', A2: "='First'!A1" } }
    const graph = new Graph(workbookOf(sheets))
    expect([valueAt(graph, 'First', 'A1'), valueAt(graph, 'Second', 'A2')]).toEqual([8, 8])
    graph.apply([edit('First', { A2: 10 })])
    expect([valueAt(graph, 'First', 'A1'), valueAt(graph, 'Second', 'A2')]).toEqual([22, 22])
  })

  it('one that is missing is an error, and is found when it comes', () => {
    const graph = new Graph(workbookOf({ S: { A1: '=Later!A1+1' } }))
    expect(errorOf(valueAt(graph, 'S', 'A1')).error).toBe('#REF!')
    graph.apply([{ kind: 'addSheet', at: 0, sheet: sheetOf('Later', { A1: 41 }) }])
    expect(valueAt(graph, 'S', 'A1')).toBe(42)
    graph.apply([{ kind: 'removeSheet', sheet: 'Later' }])
    expect(errorOf(valueAt(graph, 'S', 'A1')).error).toBe('#REF!')
  })

  it('names reach from sheet to sheet, and follow a change of what they refer to', () => {
    const graph = new Graph(workbookOf({ Basis: { C5: 12.1, D5: 'psia', C6: 14.7 }, S: { A1: '=SAT.PRESSURE("0 °F","psig",site&"psia")', A2: '=site*2', A3: '=SAT.PRESSURE("0 °F","psig",pair)' } }, { site: 'Basis!$C$5', pair: 'Basis!$C$5:$D$5' }))
    expect(valueAt(graph, 'S', 'A1')).toBeCloseTo(18.29, 2)
    expect(valueAt(graph, 'S', 'A3')).toBe(valueAt(graph, 'S', 'A1'))
    graph.apply([{ kind: 'name', name: 'site', refersTo: 'Basis!$C$6' }])
    expect(valueAt(graph, 'S', 'A2')).toBe(29.4)
    graph.apply([{ kind: 'name', name: 'site', refersTo: null }])
    expect(errorOf(valueAt(graph, 'S', 'A2')).message).toMatch(/nothing here is called site/)
  })

  it('a sheet that is not there is told to the caller', () => {
    const graph = new Graph(workbookOf({ S: {} }))
    expect(() => graph.value('Gone', 0, 0)).toThrow(/there is no sheet called Gone/)
    expect(() => graph.evaluate('=1', 'Gone')).toThrow(/there is no sheet called Gone/)
  })
})

describe('states, checks and areas', () => {
  const cells: Readonly<Record<string, Put>> = {
    C5: 150, D5: ['ft/min', 'unit'], C6: 170, D6: ['ft/min', 'unit'], E5: ['=C5<=C6', 'check'], E6: ['=C5>C6', 'check'], E7: ['=AND(C5>1,C6>1)', 'check'], E8: [null, 'check'], E9: ['=1/0<5', 'check'], F5: '=C5<=C6',
  }

  it('count the checks of a sheet, those not met, and its errors', () => {
    const { graph, enter } = sheet(cells)
    expect(graph.states()).toEqual([{ sheet: 'S', checks: 5, notMet: 1, errors: 1 }])
    enter({ C5: 200 })
    expect(graph.states()).toEqual([{ sheet: 'S', checks: 5, notMet: 1, errors: 1 }])
    enter({ E5: undefined, E6: undefined, E9: undefined })
    expect(graph.states()).toEqual([{ sheet: 'S', checks: 2, notMet: 0, errors: 0 }])
  })

  it('errors count once for every formula that shows one; a formula that would give a block of values is one', () => {
    const { graph } = sheet({ A1: 5, A2: 6, C1: '=A1:A2', D1: '=C1', E1: '=ABS({-1,"x"})' })
    expect(graph.states()[0]?.errors).toBe(graph.errors().length)
    expect(graph.errors().map(({ column }) => column)).toEqual([2, 3, 4])
    expect(graph.value('S', 0, 2)).toEqual({ error: '#VALUE!', message: 'the formula gives a block of values, not one: take one with INDEX, add them up with SUM, or write a formula for each cell' })
  })

  it('say in words how far a check is met, in the unit beside the compared cell', () => {
    const { graph } = sheet(cells)
    const check = (address: string) => graph.check('S', at(address).row, at(address).column)
    expect(check('E5')).toEqual({ met: true, margin: 20 / 170, words: 'met, 20 ft/min (12 %) to spare' })
    expect(check('E6')).toEqual({ met: false, margin: -20 / 170, words: 'not met by 20 ft/min (12 %)' })
    expect(check('E7')).toEqual({ met: true, words: 'met' })
    expect(check('E8')).toBeUndefined()
    expect(check('E9')).toBeUndefined()
  })

  it('an area gives its values, and the checks among its cells by address', () => {
    const { graph } = sheet(cells)
    const { values, checks } = graph.read('S', { top: 4, left: 2, bottom: 8, right: 5 })
    expect(values[0]).toEqual([150, 'ft/min', true, true])
    expect(values[4]).toEqual([null, null, { error: '#DIV/0!', message: 'division by zero, or by an empty cell' }, null])
    expect([...checks.keys()]).toEqual(['E5', 'E6', 'E7'])
    expect(graph.read('S', { top: 500, left: 50, bottom: 500, right: 51 }).values).toEqual([[null, null]])
  })

  it('all values come sheet by sheet, as far as cells are in use', () => {
    const graph = new Graph(workbookOf({ S: { B2: '=1+1' }, Empty: {} }))
    expect([...graph.allValues()]).toEqual([['S', [[null, null], [null, 2]]], ['Empty', []]])
  })
})

describe('evaluate', () => {
  it('gives the value that a formula would have, and enters nothing', () => {
    const { graph, value } = sheet({ A1: 5, B1: '=A1*2', C5: 5, D5: '°F' }, { five: 'S!$A$1' })
    const before = [...graph.allValues()]
    expect(graph.evaluate('=A1+B1', 'S')).toBe(15)
    expect(graph.evaluate('=SAT.PRESSURE(C5:D5,"psia")', 'S')).toBeCloseTo(PSIA_AT_5F, 4)
    expect(graph.evaluate('=five*2', 'S')).toBe(10)
    expect(graph.evaluate('=1E-5', 'S')).toBe(1e-5)
    expect(graph.evaluate('=A1:B1', 'S')).toMatchObject({ error: '#VALUE!', message: expect.stringMatching(/a block of values/) })
    expect(graph.evaluate('=1+', 'S')).toMatchObject({ error: '#ERROR!' })
    expect(graph.evaluate('no formula', 'S')).toMatchObject({ error: '#ERROR!' })
    expect([...graph.allValues()]).toEqual(before)
    graph.apply([edit('S', { A1: 6 })])
    expect(value('B1')).toBe(12)
    expect(graph.evaluate('=A1+B1', 'S')).toBe(18)
  })
})
