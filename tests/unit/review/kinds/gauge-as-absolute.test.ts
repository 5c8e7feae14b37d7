import { describe, expect, it } from 'vitest'
import { gaugeAsAbsolute } from '../../../../src/review/kinds/gauge-as-absolute.ts'
import { kindsFound, mended, reasonsOf } from '../unit-fixture.ts'

describe('gauge and absolute pressure mixed', () => {
  it('is named: as a factor, in a sum, in a comparison, as a result', () => {
    expect(reasonsOf(gaugeAsAbsolute, '=C1/C2', '-', ['150 psig', '30 psig'])).toEqual(['Divides C1 in psig: it counts from the atmosphere, and in a quotient only psia, kPa or bar mean a pressure.'])
    expect(reasonsOf(gaugeAsAbsolute, '=C1-C2', 'psi', ['150 psia', '30 psig'])).toEqual(['Subtracts C2 in psig from C1 in psia: the one counts from the atmosphere, the other does not; the result is declared in psi (D9).'])
    expect(reasonsOf(gaugeAsAbsolute, '=C1>C2', undefined, ['150 psia', '30 psig'], { C9: ['=C1>C2', 'check'] })).toEqual(['Compares C1 in psia with C2 in psig: the one counts from the atmosphere, the other does not.'])
    expect(reasonsOf(gaugeAsAbsolute, '=SAT.PRESSURE(C1:D1,"psia")', 'psig', ['20 °F'])).toEqual(['Asks for psia, and is declared in psig (D9): it does not count from the atmosphere, as a number in psig does.'])
    expect(reasonsOf(gaugeAsAbsolute, '=C1+C2', 'psig', ['30 psig', '12.2 psia'])).toEqual(['Gives a number in psia, and is declared in psig (D9): it does not count from the atmosphere, as a number in psig does.'])
    expect(reasonsOf(gaugeAsAbsolute, '=C1-C2', 'psig', ['80 psia', '30 psia'])).toEqual(['Gives a number in psi, and is declared in psig (D9): it is a difference of two pressures, and does not count from the atmosphere as a number in psig does.'])
  })

  it('is found in every gauge unit, and in powers, means and choices', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1*C2', 'kW', '300 kPa(g)', '2 m3/s'], ['=C1^0.5', undefined, '3 bar(g)'], ['=SQRT(C1/C2)', '-', '3 psia', '30 psig'], ['=C2/C1', 'cfm', '3 psig', '30 cfm'], ['=C1+C2', 'psia', '30 psig', '80 psia'],
      ['=MIN(C1,C2)', 'psig', '30 psig', '80 psia'], ['=IF(C1>3,C1,C2)', 'psig', '30 psig', '80 psia'], ['=C1+C2', 'psig', '30 psig', '8 psig'], ['=C1*6.894757', 'kPa', '30 psig'], ['=C1-C2', 'psig', '80 psig', '30 psig'],
      ['=SAT.PRESSURE(C1:D1,"kPa")-C2', 'kPa', '20 °F', '100 kPa(g)'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula, 'gauge-as-absolute'])
  })

  it('is not what a careful formula does', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1+14.696', 'psia', '30 psig'], ['=C1+14.7', 'psia', '30 psig'], ['=C1-14.7', 'psig', '30 psia'], ['=C1+C2', 'psia', '30 psig', '12.2 psia'], ['=C1-C2', 'psig', '80 psia', '12.2 psia'], ['=C1-C2', 'psi', '80 psig', '30 psig'],
      ['=C1+C2', 'psig', '30 psig', '4 psi'], ['=C1-C2', 'psig', '30 psig', '4 psi'], ['=1.1*C1+14.7', 'psia', '250 psig'], ['=C1*1.1', 'psig', '250 psig'], ['=(C1+C2)/2', 'psig', '30 psig', '40 psig'], ['=AVERAGE(C1:C2)', 'psig', '30 psig', '40 psig'],
      ['=(C1+14.7)/(C2+14.7)', '-', '150 psig', '30 psig'], ['=(C1-C2)*C3*144', 'ft·lbf', '150 psig', '30 psig', '3 ft3'], ['=C1*6.894757', 'kPa(g)', '30 psig'], ['=C1-C2', 'kPa', '300 kPa', '120 kPa'], ['=C1*6.894757+101.325', 'kPa', '30 psig'],
      ['=UNIT.CONVERT(C1:D1,"psia",site_pressure)-UNIT.CONVERT(C2:D2,"psi")', 'psia', '30 psig', '4 psi'], ['=SAT.PRESSURE(C1:D1,D9,site_pressure)', 'psig', '20 °F'], ['=C1>=0', undefined, '3 psig'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula])
  })

  it('is mended where the pressure of the site is known to the workbook', () => {
    expect(mended('=SAT.PRESSURE(C1:D1,"psia")', 'psig', ['20 °F'])).toBe('=SAT.PRESSURE(C1:D1,D9,site_pressure)')
    expect(mended('=C1/C2', '-', ['150 psig', '30 psia'])).toBe('=UNIT.CONVERT(C1:D1,"psia",site_pressure)/C2')
    expect(mended('=C1-C2', 'psia', ['80 psia', '30 psia'])).toBe('psi')
  })
})
