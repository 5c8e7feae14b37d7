import { describe, expect, it } from 'vitest'
import { resultUnit } from '../../../../src/review/kinds/result-unit.ts'
import { kindsFound, reasonsOf } from '../unit-fixture.ts'

/** Factors as NIST SP 811 (2008), appendix B.8, prints them. */
const SP811: readonly (readonly [from: string, factor: string, to: string])[] = [
  ['ft', '0.3048', 'm'], ['in', '25.4', 'mm'], ['ft2', '0.09290304', 'm2'], ['ft3', '0.02831685', 'm3'], ['gal', '3.785412', 'L'], ['lb', '0.4535924', 'kg'], ['ton', '907.1847', 'kg'],
  ['psi', '6.894757', 'kPa'], ['atm', '101.325', 'kPa'], ['inHg', '3386.389', 'Pa'], ['inH2O', '249.0889', 'Pa'], ['Btu/h', '0.2930711', 'W'], ['TR', '3516.853', 'W'], ['hp', '745.6999', 'W'],
  ['cfm', '0.0004719474', 'm3/s'], ['gpm', '0.0000630902', 'm3/s'], ['lb/min', '0.007559873', 'kg/s'], ['lb/h', '0.0001259979', 'kg/s'], ['lb/ft3', '16.01846', 'kg/m3'],
  ['Btu/lb', '2326', 'J/kg'], ['ft/min', '0.00508', 'm/s'], ['lb/(ft·s)', '1.488164', 'Pa·s'], ['Btu/(h·ft2)', '3.154591', 'W/m2'], ['lb/(ft2·s)', '4.882428', 'kg/(m2·s)'],
]

describe('results in another unit than declared', () => {
  it('are none where the factor is that of NIST SP 811, and are some without it, or with it the wrong way round', () => {
    for (const [from, factor, to] of SP811) {
      expect([from, ...kindsFound(`=C1*${factor}`, to, [`5 ${from}`])]).toEqual([from])
      expect([from, ...kindsFound(`=2*C1/(2/${factor})`, to, [`5 ${from}`])]).toEqual([from])
      expect([from, ...kindsFound('=C1*2', to, [`5 ${from}`])]).toEqual([from, 'result-unit'])
      expect([from, ...kindsFound(`=C1/${factor}`, to, [`5 ${from}`])]).toEqual([from, 'result-unit'])
    }
  })

  it('name the factor that is missing, too many, or the wrong way round', () => {
    expect(reasonsOf(resultUnit, '=C1*2', 'lb/h', ['5 lb/min'])).toEqual(['Gives a number in lb/min, and is declared in lb/h (D9): a factor 60 (60 min are 1 h, 60 s are 1 min) is missing.'])
    expect(reasonsOf(resultUnit, '=C1*C2', 'cfm', ['500 ft/min', '40 in2'])).toEqual(['Gives a number in (ft/min)·in2, and is declared in cfm (D9): it is 144 times too large (144 in2 are 1 ft2).'])
    expect(reasonsOf(resultUnit, '=C1*60', 'lb/min', ['5 lb/min'])).toEqual(['Gives a number in lb/min, and is declared in lb/min (D9): the factor 60 (60 min are 1 h, 60 s are 1 min) is one too many.'])
    expect(reasonsOf(resultUnit, '=C1/60', 'lb/h', ['5 lb/min'])).toEqual(['Gives a number in lb/min, and is declared in lb/h (D9): 60 (60 min are 1 h, 60 s are 1 min) divides where it should multiply.'])
    expect(reasonsOf(resultUnit, '=C1*C2', 'Pa', ['3 m', '640 kg/m3'])).toEqual(['Gives a number in m·(kg/m3), and is declared in Pa (D9): a factor 9.8066 (standard gravity, 9.80665 m/s2) is missing.'])
    expect(reasonsOf(resultUnit, '=C1/C2', 'gal', ['3 lb', '40 lb/ft3'])[0]).toContain('a factor 7.4805 (7.48 gal are 1 ft3) is missing')
    expect(reasonsOf(resultUnit, '=C1*12000/C2', 'lb/min', ['85 TR', '540 Btu/lb'])[0]).toContain('it is 60 times too large')
    expect(reasonsOf(resultUnit, '=C1*2', 'ft3', ['3 ft2'])).toEqual(['Gives a number in ft2, and is declared in ft3 (D9): an area is no number in ft3, a volume.'])
  })

  it('are found through powers, roots, products of units and cells without unit between', () => {
    for (const [formula, unit, ...inputs] of [
      ['=PI()/4*C1^2', 'ft2', '30 in'], ['=C1*C2', 'psi', '3 ft', '40 lb/ft3'], ['=C1*C2*9.81', 'kPa', '3 m', '640 kg/m3'], ['=C1*SQRT((C2-C3)/C3)', 'ft/min', '0.2 ft/s', '40 lb/ft3', '0.2 lb/ft3'],
      ['=SQRT(4*C1/PI()/C2)', 'in', '500 cfm', '40 ft/min'], ['=C1/C2', 'lb/min', '85 TR', '540 Btu/lb'], ['=C1*C2', 'kW', '3 kg/s', '5 kJ/(kg·K)'], ['=C1*SQRT(0.64/C2)', 'Cv', '20 cfm', '30 psi'],
      ['=SQRT(2*32.2*C1)', 'ft/min', '3 ft'], ['=C1/C2/C3', 'lb/TR', '300 kg', '20 TR', '2'], ['=SUM(C1:C2)*2', 'kg', '3 lb', '4 lb'], ['=AVERAGE(C1:C2)', 'm', '3 ft', '4 ft'], ['=ROUND(C1*C2,1)', 'gal', '3 ft', '4 ft2'],
      ['=INDEX(C1:C3,2)', 'kg', '3 lb', '4 lb', '5 lb'], ['=C1/C2', undefined, '3 ft', '4 in'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula, 'result-unit'])
    expect(kindsFound('=C8*2', 'ft3', ['3 ft', '4 ft'], { C8: '=C1*C2' })).toEqual(['result-unit'])
    expect(kindsFound('=C8*C2', 'ft3', ['3 ft', '4 ft'], { C8: '=C1*C2' })).toEqual([])
  })

  it('are not what comes out right, with conversions in any of the ways people write them', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1*60', 'lb/h', '5 lb/min'], ['=C1*C2/144', 'psi', '3 ft', '40 lb/ft3'], ['=C1*C2*9.81/1000', 'kPa', '3 m', '640 kg/m3'], ['=C1*C2*32.174/32.174/144', 'psi', '3 ft', '40 lb/ft3'], ['=C2*C1^2/(2*32.174*144)', 'psi', '20 ft/s', '0.2 lb/ft3'],
      ['=PI()/4*(C1/12)^2', 'ft2', '30 in'], ['=PI()*C1^2/4/144', 'ft2', '30 in'], ['=C1*12000/C2/60', 'lb/min', '85 TR', '540 Btu/lb'], ['=C1*200/C2', 'lb/min', '85 TR', '540 Btu/lb'], ['=C1*3.517/C2', 'kg/s', '85 TR', '1250 kJ/kg'],
      ['=C1*C2', 'cfm', '500 ft/min', '4 ft2'], ['=C1*C2*7.48', 'gal', '3 ft', '4 ft2'], ['=C1/C2*60', 'cfm', '5 lb/s', '0.2 lb/ft3'], ['=C1*SQRT(0.64/C2)', 'Cv', '20 gpm', '30 psi'], ['=SQRT(2*32.2*C1)*60', 'ft/min', '3 ft'],
      ['=C1*C2/C3', '-', '3 ft/s', '4 ft', '5 ft2/s'], ['=C1*C2*C3/C4', '-', '3 ft/s', '0.3 ft', '40 lb/ft3', '2e-4 lb/(ft·s)'], ['=C1*1.15', 'TR', '85 TR'], ['=C1*12', 'lb', '85 lb'], ['=C1*C2*24*365/1000', 'MWh', '30 kW', '0.7'],
      ['=C1*C2', 'ft', '3 ft', '6'], ['=C1*C2', 'lb/h', '3 lb/min', '60'], ['=C1/C2', 'm', '3 ft', '3.28084'], ['=C1^0.56*C2', 'ft/s', '3 ft', '4 ft/s'], ['=COUNT(C1:C2)*C1', 'ft', '3 ft', '4 ft'], ['=C1*(C2>3)', 'ft', '3 ft', '4 ft'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula])
  })

  it('are not held against a number that may have a unit of its own, as those of empirical formulas have', () => {
    for (const [formula, unit, ...inputs] of [
      ['=0.35-0.0029*C1', 'ft/s', '48 psia'], ['=C1*25', 'lb', '12 ft'], ['=0.0408*C1*C2', 'lb/min', '3 ft', '10 ft'], ['=1.08*C1*C2', 'Btu/h', '900 cfm', '12 Δ°F'], ['=C1*C2/1714', 'hp', '30 gpm', '40 psi'], ['=C1*C2', 'lb', '12 ft', '6.3'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula])
  })
})
