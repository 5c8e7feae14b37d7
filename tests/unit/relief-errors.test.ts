import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { reliefFunctions } from '../../functions/relief/relief-definitions.ts'
import { expectSound, garbage, wildButFitting } from './sound-results.ts'

const call = (name: string, ...given: Given[]) => reliefFunctions.find((one) => one.name === name)?.call(given)

describe('a relief function says what is wrong', () => {
  it.each<[string, Given[], string, RegExp]>([
    ['RELIEF.CAPACITY', [3, '10 ft', 'lb/min'], '#VALUE!', /outside diameter needs a unit/],
    ['RELIEF.CAPACITY', ['3 ft', '0 ft', 'lb/min'], '#NUM!', /length is 0 ft; accepted is .*more than 0 ft/],
    ['RELIEF.CAPACITY', ['40 ft', '10 ft', 'lb/min'], '#NUM!', /outside diameter is 40 ft; accepted is at most 32\.8084 ft/],
    ['RELIEF.CAPACITY', ['3 ft', '10 ft', 'cfm'], '#VALUE!', /unit of the result is cfm, a volume flow; accepted is kg\/s/],
    ['RELIEF.CAPACITY', ['3 ft', '10 ft', 'lb/min', 'near'], '#VALUE!', /unknown combustibles "near": accepted is one of "clear", "within 20 ft"/],
    ['RELIEF.SCFM', ['196.5 cfm'], '#VALUE!', /air flow is in cfm, a volume flow; accepted is kg\/s/],
    ['RELIEF.SCFM', [15], '#VALUE!', /air flow needs a unit: write C5:D5 or "20 lb\/min"/],
    ['RELIEF.AMMONIA', ['24 lb/min', '14.6 psia', 'lb/min'], '#NUM!', /set pressure is 14\.6 psia; accepted is more than 14\.6959 psia \(the atmosphere into which the valve relieves; psi, bar and kPa are absolute, psig is not\)/],
    ['RELIEF.AMMONIA', ['24 lb/min', '0 psig', 'lb/min', '12 psia'], '#NUM!', /set pressure is 0 psig; accepted is more than 0 psig/],
    ['RELIEF.AMMONIA', ['24 lb/min', '850 psig', 'lb/min'], '#NUM!', /set pressure is 850 psig; accepted is at most 81\d\.?\d* psig \(10 % above it ammonia boils at 100 °C, where the property range ends\)/],
    ['RELIEF.AMMONIA', ['0 lb/min', '250 psig', 'lb/min'], '#NUM!', /air flow is 0 lb\/min/],
    ['RELIEF.PIPE', ['1.61 in', '24 lb/min', '250 psi Δ', 'ft'], '#VALUE!', /set pressure: unknown unit/],
    ['RELIEF.PIPE', ['1.61 in', '24 lb/min', '10 inHg vac', 'ft'], '#NUM!', /set pressure is 10 inHg vac; accepted is more than/],
    ['RELIEF.PIPE', ['1.61 in', '24 lb/min', '250 psig', 'ft', 0.6], '#NUM!', /back pressure is 0\.6; accepted is at most 0\.5 and more than 0 \(ASHRAE 15-2004 Appendix H/],
    ['RELIEF.PIPE', ['1.61 in', '24 lb/min', '250 psig', 'ft', '37 psig'], '#VALUE!', /back pressure is in psig, a pressure/],
    ['RELIEF.PIPE', ['0.824 in', '100 lb/min', '150 psig', 'ft'], '#NUM!', /rated capacity is 100 lb\/min: at the outlet of this bore alone it stands at 77\.0\d* psig, against an allowed back pressure of 22\.5 psig: no pipe is short enough, take a larger bore/],
    ['RELIEF.FIRE', ['11.6 m3', '21 bar(g)', 'kg/h'], '#VALUE!', /surface is in m3, a volume/],
    ['RELIEF.FIRE', ['11.6 m2', '21 bar(g)', 'kg/h', '0 kW/m2'], '#NUM!', /heat flux is 0 kW\/m2; accepted is at most 200 kW\/m2 and more than 0 kW\/m2/],
    ['RELIEF.FIRE', ['11.6 m2', '21 bar(g)', 'kg/h', '10 kW'], '#VALUE!', /heat flux is in kW, a power/],
    ['RELIEF.FIRE', ['11.6 m2', '60 bar(g)', 'kg/h'], '#NUM!', /set pressure is 60 bar\(g\); accepted is at most 55\.9\d* bar\(g\)/],
    ['RELIEF.FIRE', ['11.6 m2', '21 bar(g)', 'kg/h', '10 kW/m2', '0 psig'], '#VALUE!', /site is the pressure of the atmosphere itself/],
  ])('%s %j: %s', (name, given, fault, message) => {
    expect(call(name, ...given)).toEqual({ fault, message: expect.stringMatching(message) })
  })

  it.each([
    ['RELIEF.CAPACITY', 'RELIEF.CAPACITY takes 3 to 4 arguments: RELIEF.CAPACITY(outside diameter, length, unit, [combustibles])'],
    ['RELIEF.SCFM', 'RELIEF.SCFM takes 1 argument: RELIEF.SCFM(air flow)'],
    ['RELIEF.AMMONIA', 'RELIEF.AMMONIA takes 3 to 4 arguments: RELIEF.AMMONIA(air flow, set pressure, unit, [site])'],
    ['RELIEF.PIPE', 'RELIEF.PIPE takes 4 to 6 arguments: RELIEF.PIPE(bore, rated capacity, set pressure, unit, [back pressure], [site])'],
    ['RELIEF.FIRE', 'RELIEF.FIRE takes 3 to 5 arguments: RELIEF.FIRE(surface, set pressure, unit, [heat flux], [site])'],
  ])('%s with no argument, or with seven, shows its signature', (name, message) => {
    expect(call(name)).toEqual({ fault: '#N/A', message })
    expect(call(name, 1, 2, 3, 4, 5, 6, 7)).toEqual({ fault: '#N/A', message })
  })
})

describe('a relief function warns where it is read', () => {
  it.each(reliefFunctions.map((one) => [one.name, one.cautions ?? []] as const))('%s defers to the code and a licensed person', (_, cautions) => {
    expect(cautions.join(' ')).toMatch(/no compliance finding.*adopted edition of the code.*MAWP.*licensed person/)
  })

  it('required capacity and fire flow are each valve’s of a dual set; IIAR 2 is cited as the rule, ASHRAE 15-2022 as excluding ammonia', () => {
    const definition = (name: string) => reliefFunctions.find((one) => one.name === name)
    for (const name of ['RELIEF.CAPACITY', 'RELIEF.FIRE']) expect(definition(name)?.cautions?.join(' ')).toMatch(/Each valve of a dual set must carry the full capacity/)
    const sources = definition('RELIEF.CAPACITY')?.sources.map(({ cite }) => cite).join(' ')
    expect(sources).toMatch(/ANSI\/IIAR 2: the rule/)
    expect(sources).toMatch(/ASHRAE 15-2022 excludes ammonia/)
    expect(definition('RELIEF.CAPACITY')?.cautions?.join(' ')).toMatch(/2\.5 near combustible material is from memory/)
  })
})

describe('a relief function never throws and never gives NaN or infinity', () => {
  it.each(reliefFunctions.map((one) => [one.name, one] as const))('%s, over garbage', (_, definition) => {
    fc.assert(fc.property(garbage, (given) => expectSound(definition.call(given))), { numRuns: 2000 })
  })

  it.each(reliefFunctions.map((one) => [one.name, one] as const))('%s, over wild numbers with fitting units', (_, definition) => {
    fc.assert(fc.property(wildButFitting(definition), (given) => expectSound(definition.call(given))), { numRuns: 2000 })
  })
})
