import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { isFault } from '../../functions/fault.ts'
import { vesselFunctions } from '../../functions/holdup/vessel-definitions.ts'
import { callsOf } from './function-calls.ts'

const { call, fault } = callsOf(vesselFunctions)

describe('VESSEL functions say what is wrong', () => {
  it('a diameter without unit', () => {
    expect(fault('VESSEL.VOLUME', 36, '10 ft', '2:1', 'horizontal', 'ft3')).toEqual({ fault: '#VALUE!', message: expect.stringContaining('diameter needs a unit') })
  })

  it('a length in pounds', () => {
    expect(fault('VESSEL.VOLUME', '36 in', '10 lb', '2:1', 'horizontal', 'ft3')).toEqual({ fault: '#VALUE!', message: expect.stringMatching(/length is in lb.*accepted is m, mm/) })
  })

  it('a missing unit of the result', () => {
    expect(fault('VESSEL.VOLUME', '36 in', '10 ft', '2:1', 'horizontal', null)).toEqual({ fault: '#VALUE!', message: expect.stringContaining('unit of the result is missing') })
  })

  it('unknown heads: the accepted ones are listed', () => {
    const { fault: kind, message } = fault('VESSEL.VOLUME', '36 in', '10 ft', 'torispherical', 'horizontal', 'ft3')
    expect(kind).toBe('#VALUE!')
    for (const accepted of ['torispherical', '"flat"', '"2:1"', '"hemi"', '"dished 6%"', '"dished 10%"']) expect(message).toContain(accepted)
  })

  it('an unknown position: the accepted ones are listed', () => {
    expect(fault('VESSEL.LIQUID', '36 in', '10 ft', '2:1', 'sideways', '1 ft', 'ft3').message).toMatch(/unknown position "sideways".*"horizontal", "vertical"/)
  })

  it('a diameter above 10 m, and why', () => {
    expect(fault('VESSEL.VOLUME', '40 ft', '10 ft', '2:1', 'horizontal', 'ft3')).toEqual({ fault: '#NUM!', message: expect.stringMatching(/diameter is 40 ft; accepted is .* to 32.8084 ft \(/) })
  })

  it('a level above the top: both are named, in the unit of the level', () => {
    expect(fault('VESSEL.LIQUID', '36 in', '10 ft', '2:1', 'horizontal', '40 in', 'ft3')).toEqual({
      fault: '#NUM!', message: 'level is 40 in; accepted is 0 in to 36 in (the inside height of this vessel)',
    })
  })

  it('a level above the top of a vertical vessel, whose height includes both heads', () => {
    // 120 in + 2 × 36/4 in
    expect(fault('VESSEL.CHARGE', '36 in', '10 ft', '2:1', 'vertical', '140 in', '20 °F', 'lb').message).toContain('0 in to 138 in')
  })

  it('a level above 100 %, with the height it is a share of', () => {
    expect(fault('VESSEL.LIQUID', '36 in', '10 ft', '2:1', 'horizontal', '120 %', 'ft3')).toEqual({
      fault: '#NUM!', message: 'level is 120 %; accepted is 0 % to 100 % (the inside height of this vessel, 0.9144 m)',
    })
  })

  it('a negative level', () => {
    expect(fault('VESSEL.LIQUID', '36 in', '10 ft', '2:1', 'horizontal', '-1 in', 'ft3').message).toBe('level is -1 in; accepted is 0 in to 36 in (the inside height of this vessel)')
  })

  it('a volume above that of the vessel', () => {
    expect(fault('VESSEL.LEVEL', '36 in', '10 ft', '2:1', 'horizontal', '80 ft3', 'in')).toEqual({
      fault: '#NUM!', message: 'liquid volume is 80 ft3; accepted is 0 ft3 to 77.7544 ft3 (the volume of this vessel)',
    })
  })

  it('flat heads without a shell between them', () => {
    for (const result of [fault('VESSEL.VOLUME', '36 in', '0 ft', 'flat', 'horizontal', 'ft3'), fault('VESSEL.SURFACE', '36 in', '0 ft', 'flat', 'ft2')]) {
      expect(result).toEqual({ fault: '#NUM!', message: expect.stringContaining('length is 0 between flat heads') })
    }
  })

  it('a temperature outside the property range', () => {
    expect(fault('VESSEL.CHARGE', '36 in', '10 ft', '2:1', 'horizontal', '40 %', '300 °F', 'lb')).toEqual({ fault: '#NUM!', message: expect.stringContaining('temperature is 300 °F') })
  })

  it.each([
    ['VESSEL.VOLUME', 'VESSEL.VOLUME(diameter, length, heads, position, unit)'],
    ['VESSEL.LIQUID', 'VESSEL.LIQUID(diameter, length, heads, position, level, unit)'],
    ['VESSEL.LEVEL', 'VESSEL.LEVEL(diameter, length, heads, position, liquid volume, unit)'],
    ['VESSEL.CHARGE', 'VESSEL.CHARGE(diameter, length, heads, position, level, temperature, unit)'],
    ['VESSEL.SURFACE', 'VESSEL.SURFACE(diameter, length, heads, unit)'],
  ])('%s with a wrong count of arguments: its signature', (name, words) => {
    expect(fault(name, '36 in')).toEqual({ fault: '#N/A', message: expect.stringContaining(words) })
    expect(fault(name, ...Array.from({ length: 9 }, () => '1 m')).fault).toBe('#N/A')
  })
})

describe('VESSEL functions take what is right', () => {
  it('a sphere: two hemispheres without a shell hold π D³/6', () => {
    expect(call('VESSEL.VOLUME', '2 m', '0 m', 'hemi', 'vertical', 'm3')).toBeCloseTo((Math.PI * 8) / 6, 12)
  })

  it('a full vessel, though its level is written in another unit than its diameter', () => {
    const full = call('VESSEL.VOLUME', '36 in', '10 ft', '2:1', 'horizontal', 'ft3')
    for (const level of ['36 in', '3 ft', '0.9144 m', '914.4 mm', '100 %', '1 -']) expect(call('VESSEL.LIQUID', '36 in', '10 ft', '2:1', 'horizontal', level, 'ft3')).toBe(full)
  })

  it('a volume that was computed as full, in any unit', () => {
    for (const [of, top] of [['gal', '36 in'], ['L', '36 in'], ['ft3', '36 in']] as const) {
      const full = call('VESSEL.VOLUME', top, '10 ft', 'dished 6%', 'horizontal', of)
      expect(call('VESSEL.LEVEL', top, '10 ft', 'dished 6%', 'horizontal', `${String(full)} ${of}`, 'in')).toBeCloseTo(36, 6)
    }
  })

  it('capitals, and a pair of cells', () => {
    const pair = (value: number, unit: string): Given => ({ rows: [[value, unit]] })
    expect(call('VESSEL.LIQUID', pair(36, 'in'), pair(10, 'ft'), 'DISHED 6%', 'Horizontal', pair(40, '%'), 'm3'))
      .toBe(call('VESSEL.LIQUID', '36 in', '10 ft', 'dished 6%', 'horizontal', '40 %', 'm3'))
  })
})

describe('whatever is given', () => {
  const lengths = fc.tuple(fc.oneof(fc.double(), fc.double({ min: 0, max: 12 })), fc.constantFrom('m', 'ft', 'in', '%', '-', 'm3', 'ft3', '°F')).map(([value, unit]) => `${value} ${unit}`)
  const scalar = fc.oneof(
    fc.constant(null), fc.boolean(), fc.double(), fc.string(), lengths,
    fc.constantFrom('flat', '2:1', 'hemi', 'dished 6%', 'dished 10%', 'horizontal', 'vertical', 'ft3', 'm2', 'lb', 'm', '20 °F', '0 m', '1e-300 m', '1e308 m'),
  )
  const given: fc.Arbitrary<Given> = fc.oneof(
    { weight: 4, arbitrary: scalar },
    { weight: 1, arbitrary: fc.constant(undefined) },
    { weight: 2, arbitrary: fc.array(fc.array(scalar, { maxLength: 3 }), { maxLength: 3 }).map((rows) => ({ rows })) },
  )
  const isNumberOrFault = (result: unknown) => isFault(result) ? result.message.length > 0 && !/NaN|undefined/.test(result.message.replace(/".*"/s, '')) : Number.isFinite(result)

  it('a result is a finite number or a fault with words, never an exception or NaN', () => {
    fc.assert(fc.property(fc.constantFrom(...vesselFunctions), fc.array(given, { maxLength: 8 }), ({ call: evaluate }, those) => isNumberOrFault(evaluate(those))), { numRuns: 2000 })
  })

  it('with every argument of the right kind, whatever its size', () => {
    const heads = fc.constantFrom('flat', '2:1', 'hemi', 'dished 6%', 'dished 10%')
    const size = fc.oneof(fc.double({ noNaN: true }), fc.double({ min: 0, max: 12, noNaN: true }), fc.constantFrom(0, 1e-300, 0.01, 10, 100))
    const metres = size.map((value): Given => ({ rows: [[value, 'm']] }))
    const level = fc.tuple(size, fc.constantFrom('m', '%')).map(([value, unit]): Given => ({ rows: [[value, unit]] }))
    fc.assert(fc.property(metres, metres, heads, fc.constantFrom('horizontal', 'vertical'), level, size, (diameter, length, head, position, at, volumeM3) =>
      [
        call('VESSEL.VOLUME', diameter, length, head, position, 'm3'),
        call('VESSEL.LIQUID', diameter, length, head, position, at, 'ft3'),
        call('VESSEL.LEVEL', diameter, length, head, position, { rows: [[volumeM3, 'm3']] }, 'in'),
        call('VESSEL.CHARGE', diameter, length, head, position, at, '20 °F', 'lb'),
        call('VESSEL.SURFACE', diameter, length, head, 'm2'),
      ].every(isNumberOrFault)), { numRuns: 2000 })
  })
})
