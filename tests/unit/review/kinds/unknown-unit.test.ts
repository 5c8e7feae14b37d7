import { describe, expect, it } from 'vitest'
import { unknownUnit } from '../../../../src/review/kinds/unknown-unit.ts'
import { kindsFound, unitFindings } from '../unit-fixture.ts'
import { findOf, surveyOf } from '../survey-of.ts'

describe('units that are not known', () => {
  it('are named where their numbers are computed with, with the unit that is meant if it is clear', () => {
    expect(unitFindings('=C1*2', 'lb', ['3 lbs'])).toMatchObject([{ kind: 'unknown-unit', severity: 'warning', area: { top: 0, left: 3 }, reason: '“lbs” is not a known unit; lb is. C1 is computed with, and its unit cannot be checked.', mend: { words: 'Write lb' } }])
    expect(unitFindings('=C1*2', 'psi', ['3 PSI'])).toMatchObject([{ reason: '“PSI” is not a known unit; psi is. C1 is computed with, and its unit cannot be checked.' }])
    expect(unitFindings('=C1*2', 'torr', ['3'])).toMatchObject([{ severity: 'remark', reason: '“torr” is not a known unit. C9 is computed with, and its unit cannot be checked.' }])
  })

  it('are named as well where the arithmetic can be checked with them, but no function nor Restate takes them', () => {
    for (const [typed, code] of [
      ['kg/sec', 'kg/s'], ['lb/hr', 'lb/h'], ['lbs/min', 'lb/min'], ['deg F', '°F'], ['Deg. C', '°C'], ['sqft', 'ft2'], ['sq. ft.', 'ft2'], ['cu ft', 'ft3'], ['PSIG', 'psig'], ['CFM', 'cfm'], ['GPM', 'gpm'], ['kPaG', 'kPa(g)'], ['hrs', 'h'], ['hr', 'h'],
      ['days', 'd'], ['ft3/min', 'cfm'], ['gal/min', 'gpm'], ['gallons per minute', 'gpm'], ['BTU/HR', 'Btu/h'], ['Lbs/Hr', 'lb/h'], ['lb/cu ft', 'lb/ft3'], ['lbf/in2', 'psi'], ['lbm', 'lb'], ['kJ/s', 'kW'], ['Tons R', 'TR'], ['KG', 'kg'],
    ] as const) {
      const [finding, ...others] = findOf(unknownUnit, surveyOf({ Duty: { C1: 3, D1: [typed, 'unit'], C2: '=C1*2', D2: [code, 'unit'] } }))
      expect([typed, finding?.severity, finding?.mend?.words, others.length]).toEqual([typed, 'warning', `Write ${code}`, 0])
    }
    expect(unitFindings('=C1*2', 'kg/s', ['3 kg/sec'])).toMatchObject([{ kind: 'unknown-unit', reason: '“kg/sec” is not a known unit; kg/s is. Functions and Restate will not take C1 with it.' }])
  })

  it('leave tons open where nothing beside them says of what', () => {
    const tons = (label: string) => findOf(unknownUnit, surveyOf({ Duty: { B1: [label, 'label'], C1: 3, D1: ['tons', 'unit'], C2: '=C1*2' } }))
    expect(tons('Refrigeration load')).toMatchObject([{ severity: 'warning', mend: { words: 'Write TR' } }])
    expect(tons('Ammonia charge')).toMatchObject([{ severity: 'warning', mend: { words: 'Write ton' } }])
    expect(tons('Zone 1')[0]?.mend).toBeUndefined()
    expect(tons('Zone 1')).toMatchObject([{ severity: 'warning', reason: '“tons” is not a known unit: TR is a ton of refrigeration, ton a mass of 2000 lb. C1 is computed with, and its unit cannot be checked.' }])
  })

  it('are none of units made of units, of money, of counts, and of numbers that nothing is computed from', () => {
    for (const unit of ['Btu/(lb·°F)', 'kWh/yr', '$/kWh', '€', 'psi/100 ft', 'ft·lbf', 'drums', 'pcs', 'each', 'no.', '1/h', 'kWh', 'MW', 'scfm', 'lb/lb', 'W/(m2·K)', 'rpm', 'L/min']) expect([unit, ...kindsFound('=C1*2', unit, [`3 ${unit}`])]).toEqual([unit])
    expect(findOf(unknownUnit, surveyOf({ Duty: { C1: 3, D1: ['lbs', 'unit'], C2: '=C1', D2: ['lbs', 'unit'] } }))).toEqual([])
  })
})
