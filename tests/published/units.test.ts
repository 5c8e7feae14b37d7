import { describe, expect, it } from 'vitest'
import { functionByName } from '../../functions/catalogue.ts'
import { toSi } from '../../functions/units/convert.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'
import { printedGap } from './ammonia-printed.ts'

const named = (code: string): Unit => {
  const found = findUnit(code)
  if (found === undefined) throw new Error(`no unit ${code}`)
  return found
}
const convert = (quantity: string, unit: string, ...site: string[]) => functionByName('UNIT.CONVERT')?.call([quantity, unit, ...site])

describe('NIST SP 811, appendix B: one unit in SI, to the printed digits', () => {
  it.each([
    ['in', '0.0254'], ['ft', '0.3048'], ['ft3', '0.02831685'], ['gal', '3.785411784e-3'], ['lb', '0.45359237'], ['lb/ft3', '16.018463'],
    ['lb/min', '7.559873e-3'], ['ft/min', '5.08e-3'], ['cfm', '4.719474e-4'], ['gpm', '6.309020e-5'], ['TR', '3516.853'],
    ['psi', '6894.757'], ['psia', '6894.757'], ['inHg', '3386.389'], ['inH2O', '249.0889'], ['atm', '101325'], ['bar', '1e5'], ['kgf/cm2', '98066.5'],
    ['mmHg', '133.3224'], ['Btu/lb', '2326'], ['Btu/h', '0.2930711'], ['hp', '745.6999'],
    ['lb/h', '1.259979e-4'], ['in2', '6.4516e-4'], ['ft2', '9.290304e-2'], ['in3', '1.638706e-5'], ['ft3/lb', '6.242796e-2'], ['lb/(ft·s)', '1.488164'],
    ['ton', '907.1847'], ['Btu/(h·ft2)', '3.154591'], ['dyn/cm', '1e-3'], ['cP', '1e-3'],
  ])('1 %s is %s', (code, printed) => {
    expect(printedGap(named(code).factor, printed)).toBeLessThanOrEqual(1)
  })

  it('what SP 811 defines exactly is exact', () => {
    expect([named('in').factor, named('ft').factor, named('lb').factor, named('Btu/lb').factor, named('atm').factor, named('bar').factor, named('kgf/cm2').factor])
      .toEqual([0.0254, 0.3048, 0.45359237, 2326, 101325, 1e5, 98066.5])
  })

  it('a Btu (International Table) is 1055.056 J: MBH is 1000 of them an hour', () => {
    expect(printedGap((named('MBH').factor * 3600) / 1000, '1055.056')).toBeLessThanOrEqual(1)
  })

  it('1 in.Hg is 0.491154 psi', () => {
    expect(printedGap(Number(convert('1 inHg', 'psi')), '0.491154')).toBeLessThanOrEqual(1)
  })
})

describe('derived from SP 811 factors', () => {
  // Cv is water at 60 °F through 1 psi in US gal/min, Kv through 1 bar in m³/h; derived, closed form.
  it('1 Cv is 0.864978 Kv', () => expect(printedGap(Number(convert('1 Cv', 'Kv')), '0.864978')).toBeLessThanOrEqual(1))
  // IARW white paper 2014: 23 and 7.5 lb/TR, whose exact SI values are 2.966 and 0.9673.
  it.each([['23 lb/TR', '2.966'], ['7.5 lb/TR', '0.9673']])('%s is %s kg/kW', (given, printed) => {
    expect(printedGap(Number(convert(given, 'kg/kW')), printed)).toBeLessThanOrEqual(1)
  })
})

describe('conversions, 1e-5 relative (NIST SP 811 factors, derived by hand)', () => {
  it.each([
    ['15 lb/min', 'kg/s', 0.1133981],
    ['29.921 inHg', 'Pa', 101324],
    ['100 fpm', 'm/s', 0.508],
    ['50 gpm', 'm3/s', 3.15451e-3],
    ['50 TR', 'kW', 175.8426],
    ['1 lb/TR', 'kg/kW', 0.128978],
    ['10 Δ°F', 'ΔK', 5.5555556],
  ])('%s in %s is %d', (given, unit, expected) => {
    expect(Math.abs(Number(convert(given, unit)) / expected - 1)).toBeLessThan(1e-5)
  })

  it('one standard cubic foot a minute of air at 60 °F, 0.07633 lb/min, is 5.770e-4 kg/s, to the printed digits', () => {
    expect(printedGap(Number(convert('0.07633 lb/min', 'kg/s')), '5.770e-4')).toBeLessThanOrEqual(1)
  })

  it('12 in.Hg vacuum at sea level is 8.802 psia, to the printed digits', () => {
    expect(printedGap(Number(convert('12 inHg vac', 'psia')), '8.802')).toBeLessThanOrEqual(1)
  })

  it('ice melts at 32 °F = 273.15 K and −40 is the same on both scales (definitions of the scales)', () => {
    expect(toSi(32, named('°F'))).toBeCloseTo(273.15, 10)
    expect(toSi(-40, named('°F'))).toBeCloseTo(toSi(-40, named('°C')), 10)
    expect(toSi(0, named('°R'))).toBe(0)
  })
})

describe('trap: a temperature difference that gets the 32 of a temperature', () => {
  it('a difference of 10 °F is 5.556 K, where a temperature of 10 °F would be −12.2 °C', () => {
    expect(convert('10 Δ°F', 'Δ°C')).toBeCloseTo(5.5556, 4)
    expect(convert('10 °F', '°C')).toBeCloseTo(-12.2222, 4)
  })

  it('a temperature is refused as a difference and a difference as a temperature', () => {
    expect(convert('10 °F', 'Δ°C')).toMatchObject({ fault: '#VALUE!', message: expect.stringMatching(/°F \(temperature\).*Δ°C \(temperature difference\)/) })
    expect(convert('10 Δ°F', '°C')).toMatchObject({ fault: '#VALUE!' })
    expect(functionByName('SAT.PRESSURE')?.call(['10 Δ°F', 'psia'])).toMatchObject({ fault: '#VALUE!', message: expect.stringMatching(/a difference of temperature, not a temperature/) })
  })
})

describe('nothing lies below absolute zero', () => {
  it.each([['-459.68 °F', 'K'], ['-0.1 K', '°F'], ['-14.7 psig', 'psia'], ['29.93 inHg vac', 'psia'], ['-1 psia', 'psig']])('%s in %s is refused', (given, unit) => {
    expect(convert(given, unit)).toMatchObject({ fault: '#NUM!', message: expect.stringMatching(/absolute zero/) })
  })

  it('a difference of pressure may be negative', () => expect(convert('-1 psi', 'kPa')).toBeCloseTo(-6.894757, 6))
})
