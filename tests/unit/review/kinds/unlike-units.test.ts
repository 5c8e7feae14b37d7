import { describe, expect, it } from 'vitest'
import { unlikeUnits } from '../../../../src/review/kinds/unlike-units.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'
import { kindsFound, mended, reasonsOf, unitFindings } from '../unit-fixture.ts'

describe('unlike quantities put together', () => {
  it('are named with their cells, their units and the unit of the result', () => {
    expect(reasonsOf(unlikeUnits, '=C1+C2', 'ft', ['3 ft', '4 in'])).toEqual(['Adds C2 in in to C1 in ft: in and ft are not converted into one unit; the result is declared in ft (D9).'])
    expect(reasonsOf(unlikeUnits, '=C1-C2', 'psi', ['30 psi', '4 ft'])).toEqual(['Subtracts C2 in ft from C1 in psi: ft is a length, psi a pressure; the result is declared in psi (D9).'])
    expect(reasonsOf(unlikeUnits, '=C1>=C2', undefined, ['3 ft', '40 in'], { C9: ['=C1>=C2', 'check'] })).toEqual(['Compares C1 in ft with C2 in in: in and ft are not converted into one unit.'])
    expect(reasonsOf(unlikeUnits, '=MAX(C1,C2)', 'lb', ['3 lb', '4 kg'])).toEqual(['Takes C1 in lb and C2 in kg together in MAX: kg and lb are not converted into one unit.'])
    expect(unitFindings('=C1+C2', 'ft', ['3 ft', '4 in'])[0]).toMatchObject({ severity: 'warning', key: 'adds in, ft', causes: [{ sheet: 'Duty', row: 0, column: 2 }, { sheet: 'Duty', row: 1, column: 2 }] })
  })

  it('are found in flows, masses, temperatures, choices, lookups and steps of rounding', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1+C2', 'gpm', '30 gpm', '4 cfm'], ['=C1+C2+C3', 'lb', '1 lb', '2 lb', '3 kg'], ['=(C1+C2)/C3', 'h', '1 lb', '2 kg', '3 lb/h'], ['=IF(C3>0,C1,C2)', 'ft', '3 ft', '4 in', '2'],
      ['=IFERROR(C1,C2)', 'psi', '3 psi', '4 kPa'], ['=C1-C2', 'Δ°F', '30 °F', '4 °C'], ['=CEILING(C1,C2)', 'ft', '3 ft', '6 in'], ['=CHOOSE(2,C1,C2)', 'TR', '3 TR', '4 kW'],
      ['=SUM(C1,C2)', 'ft3', '3 ft3', '4 gal'], ['=C1*C2+C3', 'ft2', '3 ft', '4 ft', '5 ft'], ['=C1^2+C2', 'ft2', '3 ft', '4 ft'], ['=MATCH(C1,C2:C3,1)', undefined, '3 ft', '4 in', '5 in'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs.filter((one) => one !== undefined))]).toEqual([formula, 'unlike-units'])
  })

  it('are not what is converted, by a function or by a factor, nor numbers without unit', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1+C2/12', 'ft', '3 ft', '4 in'], ['=C1*12+C2', 'in', '3 ft', '4 in'], ['=(C1*12+C2)/12', 'ft', '3 ft', '4 in'], ['=C1+UNIT.CONVERT(C2:D2,"ft")', 'ft', '3 ft', '4 in'],
      ['=C1+C2*2.2046', 'lb', '3 lb', '4 kg'], ['=C1+C2*2.2', 'lb', '3 lb', '4 kg'], ['=C1+2', 'ft', '3 ft'], ['=C1+C2', 'ft', '3 ft', '4'], ['=IF(C2>3,C1,0)', 'ft', '3 ft', '4'], ['=C1*C2/144+C3', 'psi', '3 ft', '40 lb/ft3', '2 psi'],
      ['=C1+C2*7.48', 'gpm', '30 gpm', '4 cfm'], ['=IF(C1>2,C1,"too low")', 'ft', '3 ft'], ['=C1*(C2-C3)/(C4-C3)', 'ft', '3 ft', '50 °F', '20 °F', '80 °F'], ['=MAX(0,C1-C2)', 'ft', '3 ft', '1 ft'], ['=C1+C2*C3', 'ft', '3 ft', '1 ft/s', '4 s'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula])
  })

  it('are mended by converting the one that is not in the unit of the result', () => {
    expect(mended('=C1+C2', 'ft', ['3 ft', '4 in'])).toBe('=C1+UNIT.CONVERT(C2:D2,"ft")')
    expect(mended('=C1+C2', 'in', ['3 ft', '4 in'])).toBe('=UNIT.CONVERT(C1:D1,"in")+C2')
    expect(mended('=C1+C2', 'ft', ['3 ft', '4 psi'])).toBeUndefined()
  })

  it('in a table are one finding, and one mend', () => {
    const table = surveyOf({ List: { B4: ['lb', 'unit'], C4: ['kg', 'unit'], D4: ['lb', 'unit'], B5: 3, C5: 4, D5: '=B5+C5', B6: 3, C6: 4, D6: '=B6+C6', B7: 3, C7: 4, D7: '=B7+C7' } })
    expect(placesOf(unlikeUnits, table)).toEqual(['List!D5:D7'])
    expect(findOf(unlikeUnits, table)[0]?.mend?.edits.map((edit) => edit.kind === 'cells' && edit.cells[0]?.cell?.content)).toEqual([
      '=B5+UNIT.CONVERT(C5&C$4,"lb")', '=B6+UNIT.CONVERT(C6&C$4,"lb")', '=B7+UNIT.CONVERT(C7&C$4,"lb")',
    ])
  })

  it('are not looked for where a cell says no unit', () => expect(kindsFound('=C1+C2', 'ft', ['3', '4'])).toEqual([]))
})
