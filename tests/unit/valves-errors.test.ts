import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { valveFunctions } from '../../functions/valves/valves-definitions.ts'
import { expectSound, garbage, wildButFitting } from './sound-results.ts'

const call = (name: string, ...given: Given[]) => valveFunctions.find((one) => one.name === name)?.call(given)

describe('a valve function says what is wrong', () => {
  it.each<[string, Given[], string, RegExp]>([
    ['VALVE.LIQUID', [20, '169.2 psia', '48 psia', '86 °F', 0.9, 'Cv'], '#VALUE!', /mass flow needs a unit/],
    ['VALVE.LIQUID', ['20 lb/min', '169.2 psia', '48 psia', '86 °F', 0.9, 'gpm'], '#VALUE!', /unit of the result is gpm, a volume flow; accepted is Kv, Cv/],
    ['VALVE.LIQUID', ['20 lb/min', '160 psia', '48 psia', '86 °F', 0.9, 'Cv'], '#NUM!', /inlet is 160 psia; accepted is at least 169\.1\d* psia \(the saturation pressure of the liquid: below it the liquid would flash before the valve\)/],
    ['VALVE.LIQUID', ['20 lb/min', '140 psig', '33 psig', '86 °F', 0.9, 'Cv', '12.2 psia'], '#NUM!', /inlet is 140 psig; accepted is at least 156\.9\d* psig/],
    ['VALVE.LIQUID', ['20 lb/min', '180 psia', '180 psia', '86 °F', 0.9, 'Cv'], '#NUM!', /outlet is 180 psia; accepted is less than 180 psia \(the pressure before the valve\)/],
    ['VALVE.LIQUID', ['20 lb/min', '170 psig', '13 bar', '86 °F', 0.9, 'Cv'], '#NUM!', /outlet is 13 bar; accepted is less than 12\.73\d* bar/],
    ['VALVE.LIQUID', ['20 lb/min', '180 psia', '0 psia', '86 °F', 0.9, 'Cv'], '#NUM!', /outlet is 0 psia; accepted is .*more than 0 psia/],
    ['VALVE.LIQUID', ['20 lb/min', '180 psia', '48 psia', '86 °F', 1.1, 'Cv'], '#NUM!', /FL is 1\.1; accepted is at most 1 and more than 0 \(IEC 60534-2-1\)/],
    ['VALVE.CHOKE', ['160 psia', '86 °F', 0.9, 'psi'], '#NUM!', /inlet is 160 psia; accepted is at least/],
    ['VALVE.CHOKE', ['180 psia', '86 °F', 0.9, 'psig'], '#VALUE!', /unit of the result is a difference of pressure, which psig/],
    ['VALVE.CHOKE', ['180 psia', '86 °F', 0, 'psi'], '#NUM!', /FL is 0; accepted is/],
    ['VALVE.VAPOR', ['20 lb/min', '20 °F', '2 psig', 0.7, 'Cv'], '#VALUE!', /drop is a difference of pressure, which psig/],
    ['VALVE.VAPOR', ['20 lb/min', '20 °F', '0 psi', 0.7, 'Cv'], '#NUM!', /drop is 0 psi; accepted is more than 0 psi \(without a drop nothing flows\)/],
    ['VALVE.VAPOR', ['20 lb/min', '20 °F', '50 psi', 0.7, 'Cv'], '#NUM!', /drop is 50 psi; accepted is less than 48\.18\d* psi \(the saturation pressure before the valve\)/],
    ['VALVE.VAPOR', ['20 lb/min', '20 °F', '2 psi', 0, 'Cv'], '#NUM!', /xT is 0; accepted is/],
    ['VALVE.VAPOR', ['20 lb/min', '250 °F', '2 psi', 0.7, 'Cv'], '#NUM!', /temperature is 250 °F/],
  ])('%s %j: %s', (name, given, fault, message) => {
    expect(call(name, ...given)).toEqual({ fault, message: expect.stringMatching(message) })
  })

  it.each([
    ['VALVE.LIQUID', 'VALVE.LIQUID takes 6 to 7 arguments: VALVE.LIQUID(mass flow, inlet, outlet, liquid, FL, unit, [site])'],
    ['VALVE.CHOKE', 'VALVE.CHOKE takes 4 to 5 arguments: VALVE.CHOKE(inlet, liquid, FL, unit, [site])'],
    ['VALVE.VAPOR', 'VALVE.VAPOR takes 5 arguments: VALVE.VAPOR(mass flow, temperature, drop, xT, unit)'],
  ])('%s with one argument, or with eight, shows its signature', (name, message) => {
    expect(call(name, '1 kg/s')).toEqual({ fault: '#N/A', message })
    expect(call(name, 1, 2, 3, 4, 5, 6, 7, 8)).toEqual({ fault: '#N/A', message })
  })
})

describe('a valve function takes what is right', () => {
  it('an inlet printed to five figures counts as saturated', () => {
    expect(call('VALVE.LIQUID', '0.16 kg/s', '169.18 psia', '48.18 psia', '86 °F', 0.9, 'Kv')).toBeTypeOf('number')
    expect(call('VALVE.LIQUID', '0.16 kg/s', '169.1 psia', '48.18 psia', '86 °F', 0.9, 'Kv')).toMatchObject({ fault: '#NUM!' })
  })

  it('no flow needs no valve', () => {
    expect(call('VALVE.LIQUID', '0 kg/s', '180 psia', '48.18 psia', '86 °F', 0.9, 'Kv')).toBe(0)
    expect(call('VALVE.VAPOR', '0 kg/s', '20 °F', '2 psi', 0.7, 'Kv')).toBe(0)
  })
})

describe('a valve function never throws and never gives NaN or infinity', () => {
  it.each(valveFunctions.map((one) => [one.name, one] as const))('%s, over garbage', (_, definition) => {
    fc.assert(fc.property(garbage, (given) => expectSound(definition.call(given))), { numRuns: 2000 })
  })

  it.each(valveFunctions.map((one) => [one.name, one] as const))('%s, over wild numbers with fitting units', (_, definition) => {
    fc.assert(fc.property(wildButFitting(definition), (given) => expectSound(definition.call(given))), { numRuns: 2000 })
  })
})
