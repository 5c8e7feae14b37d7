import { describe, expect, it } from 'vitest'
import { readBounds, readNumber, readRange } from '../../../src/whatif/range-text.ts'
import { spaced } from '../../../src/whatif/spacing.ts'

describe('the numbers of a sweep', () => {
  it('steps of 0.1 are the decimals that one would write, both ends included', () => {
    expect(spaced({ from: 0, to: 1, step: 0.1 })).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1])
    expect(spaced({ from: -0.3, to: 0.3, step: 0.1 })).toEqual([-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3])
    expect(spaced({ from: 1e-5, to: 5e-5, step: 1e-5 })).toEqual([1e-5, 2e-5, 3e-5, 4e-5, 5e-5])
    const many = spaced({ from: 0, to: 1000, step: 0.1 })
    expect([many.length, many[3], many[9999], many.at(-1)]).toEqual([10001, 0.3, 999.9, 1000])
  })

  it('does not go beyond the end where the steps miss it', () => expect(spaced({ from: 10, to: 30, step: 7 })).toEqual([10, 17, 24]))

  it('runs downwards, whatever the sign of the step', () => {
    expect(spaced({ from: 3, to: 1, step: 1 })).toEqual([3, 2, 1])
    expect(spaced({ from: 3, to: 1, step: -1 })).toEqual([3, 2, 1])
  })

  it('so many points, in equal steps or in equal ratios, with exact ends', () => {
    expect(spaced({ from: 0, to: 1, points: 11 })).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1])
    expect(spaced({ from: 1, to: 1000, points: 4, ratio: true })).toEqual([1, 10, 100, 1000])
    expect(spaced({ from: -8, to: -1, points: 4, ratio: true })).toEqual([-8, -4, -2, -1])
    expect(spaced({ from: 5, to: 9, points: 1 })).toEqual([5])
  })

  it.each([
    [{ from: 0, to: 1, step: 0 }, 'a step of 0 leads nowhere'],
    [{ from: 0, to: 1, step: 1e-9 }, '1000000001 points along one input; accepted: up to 100000'],
    [{ from: 0, to: 10, points: 3, ratio: true }, 'there are no equal ratios; accepted: two numbers above 0'],
    [{ from: 0, to: 10, points: 2.5 }, '2.5 points; accepted: a whole number'],
    [{ from: 0, to: Number.POSITIVE_INFINITY, points: 3 }, 'Infinity is no number'],
    [{ list: [] }, 'there is no value to vary over'],
    [{ list: [1, Number.NaN] }, 'NaN is no number'],
  ])('refuses %j', (spacing, words) => expect(() => spaced(spacing)).toThrow(words))
})

describe('numbers as typed', () => {
  it('reads ranges, lists and units', () => {
    expect(readRange('10:100:10', 5)).toEqual({ spacing: { from: 10, to: 100, step: 10 }, unit: undefined })
    expect(readRange('-40:20:10 °F', 5)).toMatchObject({ spacing: { from: -40, to: 20, step: 10 }, unit: { code: '°F' } })
    expect(readRange(' 1 : 2 ', 5)).toMatchObject({ spacing: { from: 1, to: 2, points: 5 } })
    expect(readRange('1:1000:log kW', 7)).toMatchObject({ spacing: { from: 1, to: 1000, points: 7, ratio: true }, unit: { code: 'kW' } })
    expect(readRange('1,2.5,-3e2 m', 5)).toMatchObject({ spacing: { list: [1, 2.5, -300] }, unit: { code: 'm' } })
    expect(readRange('7', 5)).toMatchObject({ spacing: { list: [7] } })
    expect(readBounds('10:200 psig')).toMatchObject({ from: 10, to: 200, unit: { code: 'psig', gauge: true } })
    expect(readNumber('-3.5e-2')).toEqual({ number: -0.035 })
    expect(readNumber('36 m3')).toMatchObject({ number: 36, unit: { code: 'm3' } })
  })

  it.each(['', 'a:b', '1:2:3:4', '1:2,3', '1,,2', '1:', '::'])('refuses %j as a range', (text) => expect(() => readRange(text, 5)).toThrow('does not say which numbers; accepted: FROM:TO:STEP'))

  it('refuses units that are none, bounds and numbers that are none', () => {
    expect(() => readRange('1:2 furlong', 5)).toThrow('unknown unit "furlong"')
    expect(() => readRange('1:2 KW', 5)).toThrow('did you mean kW?')
    expect(() => readBounds('1:2:3')).toThrow('are no bounds')
    expect(() => readNumber('high')).toThrow()
  })
})
