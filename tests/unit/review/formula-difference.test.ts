import { describe, expect, it } from 'vitest'
import { formulaDifference } from '../../../src/review/formula-difference.ts'
import { sameFormula } from '../../../src/review/plain-formula.ts'

const words = (own: string, expected: string): string => formulaDifference(own, expected, 'Drum').words
const key = (own: string, expected: string): string => formulaDifference(own, expected, 'Drum').key

describe('the difference of two formulas', () => {
  it('is told by the parts that differ', () => {
    expect(words('=A1*H$6', '=A1*H$7')).toBe('refers to H$6 instead of H$7')
    expect(words('=MAX(A1,B1)*1.1', '=MIN(A1,B1)*1.2')).toBe('uses MAX instead of MIN and has 1.1 instead of 1.2')
    expect(words('=A1+C1+C1', '=A1+B1+B1')).toBe('refers to C1 instead of B1')
    expect(words('=UNIT.CONVERT(A1&"ft","in")', '=UNIT.CONVERT(A1&"ft","mm")')).toBe('has "in" instead of "mm"')
    expect(words('=Load*2', '=Duty!C5*2')).toBe('has Load instead of Duty!C5')
  })

  it('is what is lacking or there besides, where they are not as long', () => {
    expect(words('=SUM(A1:A9)', '=SUM(A1:A9)*(1+margin)')).toBe('lacks “*(1+margin)”: =SUM(A1:A9)')
    expect(words('=SUM(A1:A9)*1.15', '=SUM(A1:A9)')).toBe('has “*1.15” besides: =SUM(A1:A9)*1.15')
    expect(words('=SUM(A1:A9)-B1', '=SUM(A1:A9)*(1+margin)')).toBe('has “-B1” instead of “*(1+margin)”')
    expect(words('=7', '=SUM(A1:A9)*(1+margin)')).toBe('is =7 instead of =SUM(A1:A9)*(1+margin)')
  })

  it('is accepted by what it is, wherever both stand', () => {
    expect(key('=A7*H$6', '=A7*H$7')).toBe(key('=A19*H$16', '=A19*H$17'))
    expect(key('=A7*H$6', '=A7*H$7')).not.toBe(key('=A7*H$5', '=A7*H$7'))
    expect(key('=A7*1.2', '=A7*1.1')).not.toBe(key('=A7*1.3', '=A7*1.1'))
  })

  it('names the cells that are taken instead', () => {
    expect(formulaDifference('=A1*Basis!C6', '=A1*Basis!C7', 'Drum').cells).toEqual([{ sheet: 'Basis', row: 5, column: 2 }])
  })
})

it('formulas are the same however they are spelt, where they stand', () => {
  for (const [one, other] of [['=a1+sum( B1:B2 )', '=$A$1+SUM(B1:B2)'], ["='Drum'!A1*1.0", '=A1*1'], ['=LOAD+TRUE', '=load+true'], ['=MAX(A1;2)', '=MAX(A1,2)']] as const) expect(sameFormula(one, other, 'Drum'), one).toBe(true)
  for (const [one, other] of [['=A1', '=A2'], ['=Basis!A1', '=A1'], ['="ft"', '="FT"'], ['=A1-B1', '=B1-A1']] as const) expect(sameFormula(one, other, 'Drum'), one).toBe(false)
})
