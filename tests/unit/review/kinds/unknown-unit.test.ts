import { describe, expect, it } from 'vitest'
import { unknownUnit } from '../../../../src/review/kinds/unknown-unit.ts'
import { kindsFound, unitFindings } from '../unit-fixture.ts'
import { findOf, surveyOf } from '../survey-of.ts'

describe('units that are not known', () => {
  it('are named where their numbers are computed with, with the unit that is meant if it is clear', () => {
    expect(unitFindings('=C1*2', 'lb', ['3 lbs'])).toMatchObject([{ kind: 'unknown-unit', severity: 'warning', area: { top: 0, left: 3 }, reason: '“lbs” is no unit that is known; lb is: C1 is computed with, and its unit cannot be checked.', mend: { words: 'Write lb' } }])
    expect(unitFindings('=C1*2', 'psi', ['3 PSI'])).toMatchObject([{ reason: '“PSI” is no unit that is known; psi is: C1 is computed with, and its unit cannot be checked.' }])
    expect(unitFindings('=C1*2', 'torr', ['3'])).toMatchObject([{ severity: 'remark', reason: '“torr” is no unit that is known: C9 is computed with, and its unit cannot be checked.' }])
  })

  it('are none of units made of units, of money, of counts, and of numbers that nothing is computed from', () => {
    for (const unit of ['Btu/(lb·°F)', 'kWh/yr', '$/kWh', '€', 'psi/100 ft', 'ft·lbf', 'drums', 'pcs', 'each', 'no.', '1/h', 'lb/hr']) expect([unit, ...kindsFound('=C1*2', unit, [`3 ${unit}`])]).toEqual([unit])
    expect(findOf(unknownUnit, surveyOf({ Duty: { C1: 3, D1: ['lbs', 'unit'], C2: '=C1', D2: ['lbs', 'unit'] } }))).toEqual([])
  })
})
