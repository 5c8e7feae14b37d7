import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { alignmentPads } from '../../../src/workbook/decimal-alignment.ts'

describe('decimal alignment', () => {
  it('gives the numbers of a run the same length after the point', () => {
    expect(alignmentPads(['84', '16.5', '0.125'])).toEqual(['.000', '00', ''])
  })

  it('begins anew after a cell without a number', () => {
    expect(alignmentPads(['1', '2.5', undefined, '7'])).toEqual(['.0', '', '', ''])
  })

  it('lets more than four places stand out', () => {
    expect(alignmentPads(['1', '0.123456'])).toEqual(['.0000', ''])
  })

  it('leaves whole numbers alone', () => {
    expect(alignmentPads(['1', '20', '300'])).toEqual(['', '', ''])
  })

  it('puts every point of a run of up to four places at the same distance from the end', () => {
    const number = fc.tuple(fc.nat(9999), fc.integer({ min: 0, max: 4 })).map(([value, places]) => value.toFixed(places))
    fc.assert(fc.property(fc.array(number, { minLength: 1 }), (numbers) => {
      const places = alignmentPads(numbers).map((pad, index) => `${numbers[index]}${pad}`.split('.')[1]?.length ?? 0)
      expect(new Set(places).size).toBe(1)
    }))
  })
})
