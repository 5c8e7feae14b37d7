import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { lossDefinitions } from '../../functions/lines/loss-definitions.ts'
import { pipeDefinitions } from '../../functions/lines/pipe-definitions.ts'
import { expectSound, garbage, wildButFitting } from './sound-results.ts'

const lineFunctions = [...pipeDefinitions, ...lossDefinitions]
const call = (name: string, ...given: Given[]) => lineFunctions.find((one) => one.name === name)?.call(given)

const DRY: Given[] = ['25 lb/min', '4.026 in', '100 ft', '20 °F', 'vapor', 'psi']
const WET: Given[] = ['72 lb/min', 0.25, '4.026 in', '100 ft', '20 °F', 'psi']
const swapped = (given: readonly Given[], at: number, value: Given): Given[] => given.map((one, i) => (i === at ? value : one))

describe('a line function says what is wrong', () => {
  it.each<[string, Given[], string, RegExp]>([
    ['PIPE.VOLUME', [4, '100 ft', 'ft3'], '#VALUE!', /bore needs a unit: write C5:D5 or "10 ft"/],
    ['PIPE.VOLUME', ['4 in', '-1 ft', 'ft3'], '#NUM!', /length is -1 ft; accepted is 0 ft to .* ft \(the lines of refrigerating plants\)/],
    ['PIPE.VOLUME', ['0 in', '1 ft', 'ft3'], '#NUM!', /bore is 0 in; accepted is 0\.0393701 in to 78\.7402 in/],
    ['PIPE.BORE', ['7', '40', 'in'], '#VALUE!', /unknown size "7": accepted is one of "1\/2", "3\/4", .* "24"/],
    ['PIPE.BORE', ['DN 50', '40', 'in'], '#VALUE!', /unknown size "DN 50": accepted is one of/],
    ['PIPE.BORE', [null, '40', 'in'], '#VALUE!', /unknown size ""/],
    ['PIPE.BORE', ['2', '160', 'in'], '#VALUE!', /unknown schedule "160": accepted is one of "40", "80", "STD", "XS"/],
    ['PIPE.BORE', ['22', 40, 'in'], '#NUM!', /schedule is 40; accepted for size 22 is 80, STD, XS \(ASME B36\.10M/],
    ['PIPE.NEXT', ['24 in', 'XS'], '#NUM!', /bore is 24 in; accepted is at most 23 in \(size 24, the largest listed, in schedule XS\)/],
    ['PIPE.NEXT', ['700 mm', '40'], '#NUM!', /bore is 700 mm; accepted is at most 574\.65 mm/],
    ['PIPE.NEXT', ['0 in', '40'], '#NUM!', /bore is 0 in; accepted is more than 0 in/],
    ['PIPE.VELOCITY', ['25 lb/min', '4 in', 'ft/s'], '#VALUE!', /volume flow is in lb\/min, a mass flow; accepted is m3\/s/],
    ['FRICTION.FACTOR', [0, 0.001], '#NUM!', /Reynolds is 0; accepted is at most 100000000 and more than 0 \(Moody’s chart, 1944\)/],
    ['FRICTION.FACTOR', [1e5, 0.06], '#NUM!', /relative roughness is 0\.06; accepted is 0 to 0\.05/],
    ['FRICTION.FACTOR', ['1e5 ft', 0.001], '#VALUE!', /Reynolds is in ft, a length/],
    ['PIPE.LOSS', swapped(DRY, 0, '-1 lb/min'), '#NUM!', /mass flow is -1 lb\/min; accepted is 0 lb\/min to/],
    ['PIPE.LOSS', swapped(DRY, 3, '250 °F'), '#NUM!', /temperature is 250 °F; accepted is .*Gao et al\. 2023/],
    ['PIPE.LOSS', swapped(DRY, 4, 'steam'), '#VALUE!', /unknown phase "steam": accepted is one of "liquid", "vapor"/],
    ['PIPE.LOSS', swapped(DRY, 5, 'psig'), '#VALUE!', /unit of the result is a difference of pressure, which psig, counted from the atmosphere, cannot state/],
    ['PIPE.LOSS', [...DRY, '1 in'], '#NUM!', /roughness is 1 in; accepted is at most 0\.2013 in in this bore \(relative roughness 0\.05, where Moody’s chart ends\)/],
    ['PIPE.LOSS', [...DRY, '0.00015 ft', -1], '#NUM!', /ΣK is -1; accepted is 0 to 10000/],
    ['PIPE.LOSS', swapped(DRY, 0, '3000 lb/min'), '#NUM!', /mass flow is 3000 lb\/min; accepted is at most \d+\.?\d* lb\/min in this bore \(the vapour would choke/],
    ['PIPE.LOSS', swapped(swapped(DRY, 0, '400 lb/min'), 2, '1000 ft'), '#NUM!', /the loss at inlet density would be .* psi; accepted is at most 24\.\d+ psi \(half the saturation pressure at the inlet.*take a larger bore/],
    ['PIPE.LOSS', ['50 kg/s', '1 in', '100 m', '20 °F', 'liquid', 'bar'], '#NUM!', /the loss would be .* bar; accepted is at most 113\.\d+ bar \(the critical pressure of ammonia/],
    ['WETRETURN.LOSS', swapped(WET, 1, 1.2), '#NUM!', /quality is 1\.2; accepted is 0 to 1 \(0 is liquid alone, 1 vapour alone\)/],
    ['WETRETURN.LOSS', swapped(WET, 1, '25 lb'), '#VALUE!', /quality is in lb/],
    ['WETRETURN.LOSS', [...WET, 'Martinelli'], '#VALUE!', /unknown model "Martinelli": accepted is one of "MSH", "Friedel"/],
    ['WETRETURN.LOSS', swapped(WET, 0, '5000 lb/min'), '#NUM!', /mass flow is 5000 lb\/min; accepted is at most/],
    ['LINE.PENALTY', ['20 °F', '1 psig', 'Δ°F'], '#VALUE!', /loss is a difference of pressure, which psig/],
    ['LINE.PENALTY', ['20 °F', '1 psi', '°F'], '#VALUE!', /unit of the result is °F, a temperature; accepted is Δ°F/],
    ['LINE.PENALTY', ['20 °F', '-1 psi', 'Δ°F'], '#NUM!', /loss is -1 psi; accepted is at least 0 psi \(a loss, not a gain\)/],
    ['LINE.PENALTY', ['20 °F', '48 psi', 'Δ°F'], '#NUM!', /loss is 48 psi; accepted is at most 47\.\d+ psi \(saturation pressure at the inlet less that at −77\.6 °C/],
  ])('%s %j: %s', (name, given, fault, message) => {
    expect(call(name, ...given)).toEqual({ fault, message: expect.stringMatching(message) })
  })

  it.each([
    ['PIPE.VOLUME', 'PIPE.VOLUME takes 3 arguments: PIPE.VOLUME(bore, length, unit)'],
    ['PIPE.BORE', 'PIPE.BORE takes 3 arguments: PIPE.BORE(size, schedule, unit)'],
    ['PIPE.NEXT', 'PIPE.NEXT takes 2 arguments: PIPE.NEXT(bore, schedule)'],
    ['PIPE.VELOCITY', 'PIPE.VELOCITY takes 3 arguments: PIPE.VELOCITY(volume flow, bore, unit)'],
    ['FRICTION.FACTOR', 'FRICTION.FACTOR takes 2 arguments: FRICTION.FACTOR(Reynolds, relative roughness)'],
    ['PIPE.LOSS', 'PIPE.LOSS takes 6 to 8 arguments: PIPE.LOSS(mass flow, bore, length, temperature, phase, unit, [roughness], [ΣK])'],
    ['WETRETURN.LOSS', 'WETRETURN.LOSS takes 6 to 8 arguments: WETRETURN.LOSS(mass flow, quality, bore, length, temperature, unit, [model], [roughness])'],
    ['LINE.PENALTY', 'LINE.PENALTY takes 3 arguments: LINE.PENALTY(temperature, loss, unit)'],
  ])('%s with one argument, or with nine, shows its signature', (name, message) => {
    expect(call(name, '1 m')).toEqual({ fault: '#N/A', message })
    expect(call(name, 1, 2, 3, 4, 5, 6, 7, 8, 9)).toEqual({ fault: '#N/A', message })
  })
})

describe('a line function never throws and never gives NaN or infinity', () => {
  it.each(lineFunctions.map((one) => [one.name, one] as const))('%s, over garbage', (_, definition) => {
    fc.assert(fc.property(garbage, (given) => expectSound(definition.call(given))), { numRuns: 2000 })
  })

  it.each(lineFunctions.map((one) => [one.name, one] as const))('%s, over wild numbers with fitting units', (_, definition) => {
    fc.assert(fc.property(wildButFitting(definition), (given) => expectSound(definition.call(given))), { numRuns: 2000 })
  })
})

it('a quality of nothing below zero is one of nothing: all liquid', () => {
  expect(call('WETRETURN.LOSS', ...swapped(WET, 1, -0))).toBe(call('WETRETURN.LOSS', ...swapped(WET, 1, 0)))
  expect(call('WETRETURN.LOSS', ...swapped(WET, 1, 0))).toEqual(expect.any(Number))
})
