import { describe, expect, it } from 'vitest'
import { unitInExponent } from '../../../../src/review/kinds/unit-in-exponent.ts'
import { kindsFound, reasonsOf, unitFindings } from '../unit-fixture.ts'

describe('logarithms and powers of something with a unit', () => {
  it('are remarked on', () => {
    expect(unitFindings('=0.35+0.046*LN(C1)', 'ft/s', ['48 psia'])).toMatchObject([{ kind: 'unit-in-exponent', severity: 'remark' }])
    expect(reasonsOf(unitInExponent, '=LN(C1)', undefined, ['48 psia'])).toEqual(['Takes the logarithm of C1, in psia: it comes out otherwise in every other unit, so the formula holds for psia only, or the value should be divided by another in psia first.'])
    expect(kindsFound('=EXP(-C1)', '-', ['3 s'])).toEqual(['unit-in-exponent'])
    expect(kindsFound('=2^C1', '-', ['3 ft'])).toEqual(['unit-in-exponent'])
  })

  it('are none of ratios and plain numbers', () => {
    for (const [formula, ...inputs] of [['=LN(C1/C2)', '48 psia', '14.7 psia'], ['=EXP(-C1/C2)', '3 s', '4 s'], ['=LN(C1)', '48'], ['=1.1^C1', '3 -'], ['=SIN(RADIANS(C1))', '30'], ['=(C1-C2)/LN((C1-C3)/(C2-C3))', '40 °F', '30 °F', '20 °F']] as const) {
      expect([formula, ...kindsFound(formula, undefined, inputs)]).toEqual([formula])
    }
  })
})
