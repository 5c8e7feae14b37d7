import { describe, expect, it } from 'vitest'
import { describeCheck, sidesOf, type Comparison } from '../../src/calc/check.ts'

describe('the two sides of a check', () => {
  it.each([
    ['=C5<=C6', '=C5', '<=', '=C6'],
    ['=C5 >= 1.2*C6', '=C5 ', '>=', '= 1.2*C6'],
    ['=SUM(C5:C9)<D5', '=SUM(C5:C9)', '<', '=D5'],
    ['=IF(A1>5,1,2)=1', '=IF(A1>5,1,2)', '=', '=1'],
    ['="a<b"<>B1', '="a<b"', '<>', '=B1'],
    ["='a<b'!C5>-1", "='a<b'!C5", '>', '=-1'],
    ['=SUM({1,2})>2', '=SUM({1,2})', '>', '=2'],
  ])('%s', (formula, left, comparison, right) => expect(sidesOf(formula)).toEqual({ left, comparison, right }))

  it.each(['=AND(C5<C6,C7<C8)', '=C5', '=1<C5<3', '=TRUE', '=(C5<C6)', '=IF(C5<C6,TRUE,FALSE)'])('%s is no single comparison', (formula) => {
    expect(sidesOf(formula)).toBeUndefined()
  })
})

describe('a check in words', () => {
  const words = (met: boolean, left: number, comparison: Comparison, right: number, unit?: string) => describeCheck(met, left, comparison, right, unit).words

  it.each<[string, boolean, number, Comparison, number, string | undefined]>([
    ['met, 20 ft/min (12 %) to spare', true, 150, '<=', 170, 'ft/min'],
    ['not met by 30 ft/min (18 %)', false, 200, '<=', 170, 'ft/min'],
    ['met, 2 in (5.6 %) to spare', true, 38, '>=', 36, 'in'],
    ['not met by 0.333 in (0.93 %)', false, 35.6666, '>', 36, 'in'],
    ['met, 4 to spare', true, 1, '<', 5, undefined],
    ['met, exactly at the limit', true, 36, '>=', 36, 'in'],
    ['not met, exactly at the limit', false, 36, '>', 36, 'in'],
    // Zero on these scales means nothing of the thing, so a share of it neither.
    ['met, 3 Δ°F to spare', true, 28, '<=', 31, '°F'],
    ['met, 3 Δ°C to spare', true, -3, '<=', 0, '°C'],
    ['not met by 2.5 psi', false, 20, '<=', 17.5, 'psig'],
    ['met, 10 kPa to spare', true, 90, '<', 100, 'kPa(g)'],
    ['met, 4 inHg to spare', true, 6, '<', 10, 'inHg vac'],
    ['met, 10 psi (20 %) to spare', true, 40, '<', 50, 'psia'],
    ['met, 0.2 (25 %) to spare', true, 0.6, '<=', 0.8, '-'],
    ['met, 5 to spare', true, -5, '<', 0, undefined],
    // A share of a share, or one of many times the limit, says less than the size.
    ['met, 17.2 % to spare', true, 62.8, '<=', 80, '%'],
    ['met, 6.33 ft3 to spare', true, 6.91, '>=', 0.58, 'ft3'],
    ['met, 5 lb to spare', true, -5, '<', 0, 'lb'],
    ['met, 5 widgets to spare', true, 0, '<', 5, 'widgets'],
    ['met', true, 5, '=', 5, 'ft'],
    ['not met', false, 5, '<>', 5, 'ft'],
  ])('%s', (expected, met, left, comparison, right, unit) => expect(words(met, left, comparison, right, unit)).toBe(expected))

  it('the margin is a share of the limit, positive on the side that meets the check', () => {
    expect(describeCheck(true, 150, '<=', 200, 'ft/min').margin).toBe(0.25)
    expect(describeCheck(false, 250, '<=', 200, 'ft/min').margin).toBe(-0.25)
    expect(describeCheck(true, 250, '>=', 200, 'ft/min').margin).toBe(0.25)
    expect(describeCheck(true, -150, '>', -200, 'lb').margin).toBe(0.25)
    expect(describeCheck(true, 28, '<=', 31, '°F').margin).toBeUndefined()
    expect(describeCheck(true, 5, '=', 5, 'ft').margin).toBeUndefined()
  })

  it('last digits that the engine takes for equal do not contradict the verdict', () => {
    expect(describeCheck(true, 1 + 1e-14, '<=', 1, 'ft')).toEqual({ met: true, words: 'met, exactly at the limit', margin: 0 })
    expect(describeCheck(false, 1 - 1e-14, '<', 1, 'ft')).toEqual({ met: false, words: 'not met, exactly at the limit', margin: 0 })
  })
})
