import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseTabular, printTabular } from '../../src/app/grid/tabular-text.ts'

describe('tab-separated text', () => {
  it('reads rows and cells, whichever line break ends them', () => {
    expect(parseTabular('a\t12\r\nb\t\r\n')).toEqual([['a', '12'], ['b', '']])
    expect(parseTabular('a\nb\rc')).toEqual([['a'], ['b'], ['c']])
  })

  it('reads quoted cells with line breaks, tabs and quotation marks', () => {
    expect(parseTabular('"two\r\nlines"\t"tab\there"\t"say ""ice"""\nnext')).toEqual([['two\nlines', 'tab\there', 'say "ice"'], ['next']])
  })

  it('takes a quotation mark that is not closed, or closed too early, as text', () => {
    expect(parseTabular('"open\tb')).toEqual([['"open', 'b']])
    expect(parseTabular('"3/4" pipe\tb')).toEqual([['"3/4" pipe', 'b']])
  })

  it('reads a single cell and an empty row', () => {
    expect(parseTabular('x')).toEqual([['x']])
    expect(parseTabular('a\n\nb')).toEqual([['a'], [''], ['b']])
  })

  it('gives back what was written', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '1', '"', '\t', '\n', ' ', 'é', '=') })
    const rectangle = fc.integer({ min: 1, max: 4 }).chain((columns) => fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: 1, maxLength: 5 }))
    // A text that ends with a line break loses it, as every program's clipboard does: a last row of one empty cell is not told apart.
    fc.assert(fc.property(rectangle.filter((rows) => !(rows.length > 1 && rows.at(-1)?.length === 1 && rows.at(-1)?.[0] === '')), (rows) => {
      expect(parseTabular(printTabular(rows))).toEqual(rows)
    }))
  })
})
