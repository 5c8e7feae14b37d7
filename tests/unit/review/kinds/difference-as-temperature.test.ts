import { describe, expect, it } from 'vitest'
import { differenceAsTemperature } from '../../../../src/review/kinds/difference-as-temperature.ts'
import { kindsFound, mended, reasonsOf, unitFindings } from '../unit-fixture.ts'

describe('temperature and difference of temperature mixed', () => {
  it('is named: a difference as a temperature, a temperature as a difference or as a factor, degrees without their zero', () => {
    const said = (...given: Parameters<typeof kindsFound>) => reasonsOf(differenceAsTemperature, ...given)
    expect(said('=C1-C2', '°F', ['40 °F', '25 °F'])).toEqual(['Gives a number in Δ°F, and is declared in °F (D9): it is a difference of temperatures, not a temperature in °F.'])
    expect(said('=C1*2-C2', 'Δ°F', ['40 Δ°F', '25 °F'])).toEqual(['Subtracts C2 in °F from C1*2 in Δ°F: the one is a temperature, the other a difference of temperatures; the result is declared in Δ°F (D9).'])
    expect(said('=C1*C2', 'Btu/h', ['850 Btu/(h·°F)', '25 °F'])[0]).toContain('Multiplies C2 in °F: it does not count from absolute zero')
    expect(said('=C1*5/9', '°C', ['40 °F'])[0]).toContain('the degrees count from different zeros: 0 °C is 32 °F')
    expect(said('=C1+C2', '°F', ['40 °F', '10 °F'])).toEqual(['Gives a sum of temperatures in °F, and is declared in °F (D9): it adds temperatures, of which one would have to be a difference.'])
    expect(said('=(C1-32)*5/9', 'ΔK', ['18 Δ°F'])[0]).toContain('Takes 32 from C1 in Δ°F, a difference of temperatures')
  })

  it('is named where 32 is added to a difference that was converted, with the cell it is in', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1*9/5+32', 'Δ°F', '10 ΔK'], ['=C1*9/5+32', 'Δ°F', '10 Δ°C'], ['=32+C1*1.8', 'Δ°F', '10 ΔK'], ['=(C1-C2)*9/5+32', 'Δ°F', '4 °C', '-6 °C'], ['=(C1-32)*5/9', 'Δ°C', '18 Δ°F'], ['=(C1-32)/1.8', 'ΔK', '18 Δ°F'], ['=C1*9/5+32', '°F', '10 ΔK'],
    ] as const) {
      const found = unitFindings(formula, unit, inputs)
      expect([formula, unit, ...found.map(({ kind, severity }) => `${kind} ${severity}`)]).toEqual([formula, unit, 'difference-as-temperature warning'])
      expect(found[0]?.causes).toContainEqual({ sheet: 'Duty', row: 0, column: 2 })
      expect(found[0]?.reason).toContain('32')
    }
    for (const [formula, unit, input] of [['=C1*9/5', 'Δ°F', '10 ΔK'], ['=C1*5/9', 'ΔK', '18 Δ°F'], ['=C1*9/5+32', '°F', '4 °C'], ['=(C1-32)*5/9', '°C', '40 °F'], ['=C1*9/5+3', 'Δ°F', '10 ΔK']] as const) {
      expect([formula, ...kindsFound(formula, unit, [input])]).toEqual([formula])
    }
  })

  it('is found in joined texts, comparisons and results of heat balances', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1>C2', undefined, '40 °F', '10 Δ°F'], ['=MAX(C1,C2)', '°F', '40 °F', '10 Δ°F'], ['=C1/C2', '°F', '4000 Btu/h', '90 Btu/(h·Δ°F)'], ['=UNIT.CONVERT((C1-C2)&" °F",D9)', '°C', '40 °F', '10 °F'], ['=C1/(C2-C3)', 'kW/ΔK', '40 kW', '30 °C', '10 ΔK'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula, 'difference-as-temperature'])
  })

  it('is not what a careful formula does', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1-C2', 'Δ°F', '40 °F', '25 °F'], ['=C1-C2', '°F', '40 °F', '10 Δ°F'], ['=C1+C2', '°F', '40 °F', '10 Δ°F'], ['=(C1+C2)/2', '°F', '40 °F', '20 °F'], ['=AVERAGE(C1:C2)', '°F', '40 °F', '20 °F'], ['=C1+(C2-C1)*C3', '°F', '40 °F', '20 °F', '0.3'],
      ['=(1-C3)*C1+C3*C2', '°F', '40 °F', '20 °F', '0.3'], ['=(C1-32)*5/9', '°C', '40 °F'], ['=(C1-32)/1.8', '°C', '40 °F'], ['=C1*9/5+32', '°F', '4 °C'], ['=32+1.8*C1', '°F', '4 °C'], ['=C1+273.15', 'K', '4 °C'], ['=C1+273', 'K', '4 °C'], ['=C1-273.15', '°C', '300 K'],
      ['=C1+459.67', '°R', '40 °F'], ['=(C1+460)/(C2+460)', '-', '40 °F', '20 °F'], ['=C1*(C2-C3)', 'Btu/h', '90 Btu/(h·°F)', '40 °F', '20 °F'], ['=C1/C2', 'Δ°F', '4000 Btu/h', '90 Btu/(h·Δ°F)'], ['=C1/1.8', 'ΔK', '18 Δ°F'], ['=C1-10', '°F', '40 °F'], ['=C1-32', 'Δ°F', '40 °F'],
      ['=C1*1.8', '°R', '300 K'], ['=C1-C2+C3', '°F', '40 °F', '20 °F', '30 °F'], ['=C3-C1+C2', '°F', '40 Δ°F', '2 Δ°F', '30 °F'], ['=ABS(C1-C2)<=C3', undefined, '40 °F', '20 °F', '30 Δ°F'], ['=C1*C2/(C3+459.67)', undefined, '40 psia', '3 ft3', '20 °F'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula])
  })

  it('is mended by the unit of a difference, where it stands beside the cell alone', () => expect(mended('=C1-C2', '°F', ['40 °F', '25 °F'])).toBe('Δ°F'))
})
