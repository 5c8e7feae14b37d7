import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { evaluate } from './catalogue-examples.ts'
import { workbookOf } from './workbook-of.ts'

// ECMA-376 number formats; the engine's own TEXT gives "0.3%", "1235,##0.00" and the format itself for these.
describe('TEXT', () => {
  it.each([
    ['=TEXT(0.256,"0.0%")', '25.6%'], ['=TEXT(1234.5,"#,##0.00")', '1,234.50'], ['=TEXT(0.000123,"0.00E+00")', '1.23E-04'], ['=TEXT(5,"000")', '005'],
    ['=TEXT(1234567,"#,##0")', '1,234,567'], ['=TEXT(-3.14159,"0.00")', '-3.14'], ['=TEXT(0.5,"0 %")', '50 %'], ['=TEXT(31,"0.0"" °F""")', '31.0 °F'],
    ['=TEXT(0,"0.00;-0.00;""none""")', 'none'], ['=TEXT("word","0.00")', 'word'], ['=TEXT(2.5,"# ?/?")', '2 1/2'],
  ])('%s is %s', (formula, expected) => expect(evaluate(formula)).toBe(expected))

  it('a format that makes no sense is an error with words', () => {
    expect(evaluate('=TEXT(1,"0.0[")')).toMatchObject({ error: '#VALUE!', message: expect.stringMatching(/is not a number format: write for example "0\.00"/) })
  })

  it('passes an error on', () => expect(evaluate('=TEXT(1/0,"0.0")')).toMatchObject({ error: '#DIV/0!' }))
})

// Decimal arithmetic by hand; the engine's own functions give 2.8, 0.2, 0.4, 28, 1 and 2 for the first six.
describe('rounding that does not take the last bit of a double for a difference', () => {
  it.each([
    ['=CEILING(2.1,0.7)', 2.1], ['=FLOOR(0.3,0.1)', 0.3], ['=ROUNDUP(0.1+0.2,1)', 0.3], ['=ROUNDDOWN(0.29*100,0)', 29], ['=ROUND(1.005,2)', 1.01], ['=QUOTIENT(0.3,0.1)', 3],
    ['=CEILING(2.2,0.7)', 2.8], ['=CEILING(7,6)', 12], ['=CEILING(6,6)', 6], ['=CEILING(-2.5,1)', -2], ['=CEILING(-2.5,-1)', -3], ['=CEILING(0,5)', 0], ['=CEILING(5,0)', 0], ['=CEILING(2.3)', 3],
    ['=FLOOR(2.9)', 2], ['=FLOOR(-2.5,1)', -3], ['=FLOOR(-2.5,-1)', -2], ['=FLOOR(12.6,6)', 12], ['=FLOOR(0.7,0.1)', 0.7],
    ['=ROUND(2.5,0)', 3], ['=ROUND(-2.5,0)', -3], ['=ROUND(2.5)', 3], ['=ROUND(1234.5,-2)', 1200], ['=ROUND(1250,-2)', 1300], ['=ROUND(0.1+0.7,1)', 0.8], ['=ROUND(1E22,5)', 1e22], ['=ROUND(2.345,2)', 2.35],
    ['=ROUNDUP(2.1,0)', 3], ['=ROUNDUP(-2.1,0)', -3], ['=ROUNDUP(1201,-2)', 1300], ['=ROUNDDOWN(2.9,0)', 2], ['=ROUNDDOWN(-2.9,0)', -2], ['=ROUNDDOWN(1299,-2)', 1200], ['=ROUNDUP(3,0)', 3],
    ['=QUOTIENT(7,2)', 3], ['=QUOTIENT(-7,2)', -3], ['=QUOTIENT(0.9,0.3)', 3],
  ])('%s is %d', (formula, expected) => expect(evaluate(formula)).toBe(expected))

  it('errors keep their kind', () => {
    expect(evaluate('=QUOTIENT(1,0)')).toMatchObject({ error: '#DIV/0!' })
    expect(evaluate('=CEILING(2.5,-1)')).toMatchObject({ error: '#NUM!', message: expect.stringMatching(/negative step/) })
    expect(evaluate('=FLOOR(2.5,-1)')).toMatchObject({ error: '#NUM!' })
    expect(evaluate('=ROUND("x",1)')).toMatchObject({ error: '#VALUE!' })
    expect(evaluate('=ROUND(1/0,1)')).toMatchObject({ error: '#DIV/0!' })
    expect(evaluate('=CEILING()')).toMatchObject({ error: '#N/A' })
  })

  it('ROUND gives back what toFixed prints of a decimal number', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 6 }), (units, places) => {
        // A number of that many places is its own rounding, up and down as well.
        const value = Number((units / 10 ** places).toFixed(places))
        for (const name of ['ROUND', 'ROUNDUP', 'ROUNDDOWN']) expect(evaluate(`=${name}(${value},${places})`)).toBe(value)
      }),
    )
  })

  it('CEILING and FLOOR leave a multiple of the step, within one step on their own side', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(0.1, 0.25, 0.7, 1, 2.5, 6, 12), (thousandths, step) => {
        const value = thousandths / 1000
        const [up, down] = [Number(evaluate(`=CEILING(${value},${step})`)), Number(evaluate(`=FLOOR(${value},${step})`))]
        for (const multiple of [up, down]) expect(Math.abs(multiple / step - Math.round(multiple / step))).toBeLessThan(1e-9)
        expect(up - value).toBeGreaterThanOrEqual(-1e-9)
        expect(up - value).toBeLessThan(step * (1 - 1e-9))
        expect(value - down).toBeGreaterThanOrEqual(-1e-9)
        expect(value - down).toBeLessThan(step * (1 - 1e-9))
      }),
    )
  })
})

describe('ROWS and COLUMNS', () => {
  // The engine ends in the attempt to size a name, or what a function gives, before it is computed.
  it('size a defined name whose cells wait for the result, and what a function gives', () => {
    const graph = new Graph(workbookOf({ S: { A1: '=ROWS(pair)', A2: '=A1', B1: '=columns( pair )', B2: '=ROWS(INDEX(A2:A4,0,1))', A4: 1 } }, { pair: 'S!$A$2:$B$3' }))
    expect(graph.value('S', 0, 1)).toMatchObject({ error: '#CYCLE!' })
    expect(graph.value('S', 0, 0)).toMatchObject({ error: '#CYCLE!' })
    const other = new Graph(workbookOf({ S: { A1: '=ROWS(pair)', B1: '=Columns( pair )', C1: '=A1+B1', A2: '=1+1', B3: '=A2' } }, { pair: 'S!$A$2:$C$3' }))
    expect([other.value('S', 0, 0), other.value('S', 0, 1), other.value('S', 0, 2)]).toEqual([2, 3, 5])
  })

  it('size a reference wherever they stand in it', () => {
    const graph = new Graph(workbookOf({ S: { A1: '=ROWS(A$1:A1)', A2: '=ROWS(A$1:A2)', A3: '=ROWS($A$1:$B3)+COLUMNS($A:C)', B1: '=COLUMNS((A1:C1))', C1: '=ROWS(B2)', D1: '=ROWS(A:A)', E1: '=COLUMNS(1:2)', F1: '=ROWS(A1:A2,B1)' } }))
    expect([[0, 0], [1, 0], [2, 0], [0, 1], [0, 2], [0, 3], [0, 4]].map(([row = 0, column = 0]) => graph.value('S', row, column))).toEqual([1, 2, 6, 3, 1, 1_048_576, 16_384])
    expect(graph.value('S', 0, 5)).toMatchObject({ error: '#N/A' })
  })
})
