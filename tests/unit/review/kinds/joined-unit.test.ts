import { describe, expect, it } from 'vitest'
import { joinedUnit } from '../../../../src/review/kinds/joined-unit.ts'
import { kindsFound, mended, reasonsOf, unitFindings } from '../unit-fixture.ts'

describe('numbers joined to the wrong unit', () => {
  it('are named with both units', () => {
    expect(reasonsOf(joinedUnit, '=SAT.TEMPERATURE(C1&" psia",D9)', '°F', ['30 psig'])).toEqual(['Joins psia to C1, which is in psig: it counts from the atmosphere, a number in psia does not.'])
    expect(reasonsOf(joinedUnit, '=UNIT.CONVERT(C1&D2,D9)', 'm', ['3 ft', '4 in'])).toEqual(['Joins in (D2) to C1, which is in ft: a factor 12 (12 in are 1 ft) is missing.'])
    expect(reasonsOf(joinedUnit, '=UNIT.CONVERT(C1*C2&" ft2",D9)', 'm2', ['3 ft', '4 in'])[0]).toContain('it is 12 times too large')
    expect(reasonsOf(joinedUnit, '=TEXT(C1,"0.0")&" kg"', undefined, ['3 lb'])[0]).toContain('Joins kg to TEXT(C1,"0.0"), which is in lb')
    expect(reasonsOf(joinedUnit, '="at "&C1&" psia, or less"', undefined, ['3 kPa'])[0]).toContain('Joins psia to C1, which is in kPa')
    expect(reasonsOf(joinedUnit, '=PIPE.VELOCITY(C1/C2&" m3/s",C3:D3,D9)', 'm/s', ['3 lb/min', '0.2 lb/ft3', '4 in'])[0]).toContain('it is 2118.9 times too large')
  })

  it('are a remark where the unit is right, and is that of another cell', () => {
    expect(unitFindings('=UNIT.CONVERT(C1&D2,D9)', 'm', ['3 ft', '4 ft'])).toMatchObject([{ severity: 'remark', reason: 'Takes the unit of C1 from D2, which belongs to another number: right only as long as both are in ft.' }])
    expect(mended('=UNIT.CONVERT(C1&D2,D9)', 'm', ['3 ft', '4 ft'])).toBe('=UNIT.CONVERT(C1&D1,D9)')
  })

  it('are named where a cell beside is taken for the unit, and the column has another', () => {
    const cells = { E1: ['psig', 'unit'], E2: 30, F2: ['psia', 'text'] } as const
    expect(reasonsOf(joinedUnit, '=SAT.TEMPERATURE(E2:F2,D9)', '°F', [], cells)).toEqual(['Takes E2:F2 as a number in psia, and the number is in psig: it counts from the atmosphere, a number in psia does not.'])
    expect(kindsFound('=SAT.TEMPERATURE(E2:F2,D9)', '°F', [], { ...cells, F2: ['psig', 'text'] })).toEqual(['gauge-without-site'])
  })

  it('are none where number and unit belong together, with or without a blank', () => {
    for (const [formula, unit, ...inputs] of [
      ['=UNIT.CONVERT(C1&D1,D9)', 'm', '3 ft'], ['=UNIT.CONVERT(C1&" "&D1,D9)', 'm', '3 ft'], ['=UNIT.CONVERT(C1&" ft",D9)', 'm', '3 ft'], ['=UNIT.CONVERT(C1*C2&" ft2",D9)', 'm2', '3 ft', '4 ft'], ['=C1&" in "&C2', undefined, '3 ft', '4 lb'],
      ['=UNIT.CONVERT(C1/12&" ft",D9)', 'm', '3 in'], ['=UNIT.CONVERT(UNIT.CONVERT(C1:D1,"K")+UNIT.CONVERT(C2:D2,"ΔK")&" K",D9)', '°F', '40 °F', '3 Δ°F'], ['=C1&" drums"', undefined, '3'], ['=CONCATENATE(C1," ",D1)', undefined, '3 ft'],
      ['=ROUND(C1-C2,1)&" "&D1&" short"', undefined, '3 ft', '2 ft'], ['=UNIT.CONVERT(2*C1&" ft",D9)', 'm', '3 ft'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula])
  })

  it('are mended by the unit of the cell itself', () => {
    expect(mended('=SAT.TEMPERATURE(C1&" psia",D9)', '°F', ['30 psig'])).toBe('=SAT.TEMPERATURE(C1&D1,D9)')
  })
})
