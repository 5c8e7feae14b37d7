import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { isFault } from '../../functions/fault.ts'
import { holdupFunctions } from '../../functions/holdup/holdup-definitions.ts'
import { callsOf } from './function-calls.ts'

const { call, fault } = callsOf(holdupFunctions)

describe('VOID.FRACTION says what is wrong', () => {
  it.each(['Rouhani', 'Steiner', 'Premoli'])('%s without mass flux: that it is missing, why, and what else there is', (model) => {
    expect(fault('VOID.FRACTION', 0.25, '20 °F', model)).toEqual({
      fault: '#VALUE!', message: expect.stringMatching(new RegExp(`^mass flux is missing: "${model}" lets the vapour drift|^mass flux is missing: "${model}"`)),
    })
    expect(fault('VOID.FRACTION', 0.25, '20 °F', model).message).toContain('"Zivi"')
  })

  it('Premoli without bore', () => {
    expect(fault('VOID.FRACTION', 0.25, '20 °F', 'Premoli', '25 kg/(m2·s)')).toEqual({
      fault: '#VALUE!', message: 'bore is missing: "Premoli" depends on the Reynolds and Weber numbers of the line; give it, or take a model without it, such as "Zivi"',
    })
  })

  it('an unknown model, among them the second form of Rouhani’s: those offered are listed', () => {
    const { fault: kind, message } = fault('VOID.FRACTION', 0.25, '20 °F', 'Rouhani II', '25 kg/(m2·s)')
    expect(kind).toBe('#VALUE!')
    for (const words of ['unknown model "Rouhani II"', '"Zivi"', '"homogeneous"', '"Chisholm"', '"Smith"', '"Baroczy"', '"Lockhart"', '"Rouhani"', '"Steiner"', '"Premoli"']) expect(message).toContain(words)
  })

  it('a quality above 1, or below 0', () => {
    expect(fault('VOID.FRACTION', 1.2, '20 °F')).toEqual({ fault: '#NUM!', message: 'quality is 1.2; accepted is 0 to 1 (from liquid alone to vapour alone)' })
    expect(fault('VOID.FRACTION', '-5 %', '20 °F').message).toContain('quality is -5 %; accepted is 0 % to 100 %')
  })

  it('a mass flux in kg/s, or of nothing', () => {
    expect(fault('VOID.FRACTION', 0.25, '20 °F', 'Rouhani', '25 kg/s')).toEqual({ fault: '#VALUE!', message: expect.stringMatching(/mass flux is in kg\/s, a mass flow; accepted is kg\/\(m2·s\)/) })
    expect(fault('VOID.FRACTION', 0.25, '20 °F', 'Rouhani', '0 kg/(m2·s)')).toEqual({ fault: '#NUM!', message: expect.stringContaining('mass flux is 0 kg/(m2·s); accepted is 0.1') })
  })

  it('what it does not need, it still reads', () => {
    expect(fault('VOID.FRACTION', 0.25, '20 °F', 'Zivi', '25 kg/(m2·s)', '4 lb').message).toContain('bore is in lb')
    expect(call('VOID.FRACTION', 0.25, '20 °F', 'Zivi', '25 kg/(m2·s)', '4 in')).toBe(call('VOID.FRACTION', 0.25, '20 °F'))
    expect(call('VOID.FRACTION', 0.25, '20 °F', undefined, undefined, '4 in')).toBe(call('VOID.FRACTION', 0.25, '20 °F'))
  })

  it('a temperature outside the property range, and a wrong count of arguments', () => {
    expect(fault('VOID.FRACTION', 0.25, '300 °F')).toEqual({ fault: '#NUM!', message: expect.stringContaining('temperature is 300 °F') })
    expect(fault('VOID.FRACTION', 0.25)).toEqual({ fault: '#N/A', message: expect.stringContaining('VOID.FRACTION(quality, temperature, [model], [mass flux], [bore])') })
  })
})

describe('HOLDUP.MASS says what is wrong', () => {
  it('a liquid share above all', () => {
    expect(fault('HOLDUP.MASS', '1 m3', '120 %', '20 °F', 'lb')).toEqual({ fault: '#NUM!', message: 'liquid share is 120 %; accepted is 0 % to 100 % (from vapour alone to liquid alone)' })
  })

  it('a volume in another kind of unit, or below nothing', () => {
    expect(fault('HOLDUP.MASS', '1 m2', 0.5, '20 °F', 'lb')).toEqual({ fault: '#VALUE!', message: expect.stringContaining('volume is in m2, an area; accepted is m3') })
    expect(fault('HOLDUP.MASS', '-1 m3', 0.5, '20 °F', 'lb')).toEqual({ fault: '#NUM!', message: expect.stringContaining('volume is -1 m3; accepted is 0 m3 to 10000 m3') })
  })

  it('a unit of the result that is no mass', () => {
    expect(fault('HOLDUP.MASS', '1 m3', 0.5, '20 °F', 'ft3')).toEqual({ fault: '#VALUE!', message: expect.stringMatching(/unit of the result is ft3, a volume; accepted is kg, g, lb/) })
  })
})

describe('whatever is given', () => {
  const scalar = fc.oneof(
    fc.constant(null), fc.boolean(), fc.double(), fc.double({ min: 0, max: 1 }), fc.string(),
    fc.constantFrom('20 °F', '-40 °C', 'Rouhani', 'Premoli', 'Zivi', '25 kg/(m2·s)', '1e308 kg/(m2·s)', '4 in', '1e-300 m', '1 m3', '50 %', 'lb', 'kg'),
  )
  const given: fc.Arbitrary<Given> = fc.oneof(
    { weight: 4, arbitrary: scalar },
    { weight: 1, arbitrary: fc.constant(undefined) },
    { weight: 2, arbitrary: fc.array(fc.array(scalar, { maxLength: 3 }), { maxLength: 3 }).map((rows) => ({ rows })) },
  )
  const isNumberOrFault = (result: unknown) => (isFault(result) ? result.message.length > 0 && !/NaN|undefined/.test(result.message.replace(/".*"/s, '')) : Number.isFinite(result))

  it('a result is a finite number or a fault with words, never an exception or NaN', () => {
    fc.assert(fc.property(fc.constantFrom(...holdupFunctions), fc.array(given, { maxLength: 6 }), ({ call: evaluate }, those) => isNumberOrFault(evaluate(those))), { numRuns: 2000 })
  })

  it('with every argument of the right kind, whatever its size', () => {
    const size = fc.oneof(fc.double({ noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 1, 5e-324, 1e-300))
    const model = fc.constantFrom('Zivi', 'homogeneous', 'Chisholm', 'Smith', 'Baroczy', 'Lockhart', 'Rouhani', 'Steiner', 'Premoli')
    const pair = (unit: string) => size.map((value): Given => ({ rows: [[value, unit]] }))
    fc.assert(fc.property(size, model, pair('kg/(m2·s)'), pair('m'), pair('m3'), (quality, name, massFlux, bore, volume) =>
      [call('VOID.FRACTION', quality, '20 °F', name, massFlux, bore), call('HOLDUP.MASS', volume, quality, '20 °F', 'lb')].every(isNumberOrFault)), { numRuns: 2000 })
  })
})
