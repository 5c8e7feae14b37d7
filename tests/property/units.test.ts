import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import { convert, fromSi, toSi } from '../../functions/units/convert.ts'
import { formatNumber, shortened } from '../../functions/units/format.ts'
import { parseQuantity } from '../../functions/units/quantity.ts'
import { normaliseUnitText } from '../../functions/units/spelling.ts'
import { findUnit, similarUnit, unitCodes, units, type Dimension, type Unit } from '../../functions/units/units.ts'

const dimensions = [...new Set(units.map(({ dimension }) => dimension))]
const anyUnit = fc.constantFrom(...units)
const anyDimension = fc.constantFrom(...dimensions)
const inDimension = (dimension: Dimension) => fc.constantFrom(...units.filter((one) => one.dimension === dimension))
const anySite = fc.double({ min: 20e3, max: 120e3, noNaN: true })
// Numbers beyond counting among the smallest have no digits left to compare.
const anyNumber = fc.double({ min: -1e9, max: 1e9, noNaN: true }).map((value) => (Math.abs(value) < 1e-200 ? 0 : value))
/** Rounding of a sum is relative to its largest part: the unit's zero point, or the site's pressure, is one. */
const scale = (value: number, unit: Unit, sitePa: number) => Math.abs(value) + Math.abs((unit.offset + (unit.gauge ? sitePa : 0)) / unit.factor)
const spellings = units.flatMap((one) => [one.code, ...one.aliases].map((text) => [text, one.code] as const))

describe('conversion', () => {
  it('comes back from SI to 1e-12, whatever the site', () => {
    fc.assert(
      fc.property(anyUnit, anyNumber, anySite, (unit, value, sitePa) => {
        expect(Math.abs(fromSi(toSi(value, unit, sitePa), unit, sitePa) - value)).toBeLessThanOrEqual(1e-12 * scale(value, unit, sitePa))
      }),
      { numRuns: 2000 },
    )
  })

  it('over a third unit gives the same as straight', () => {
    const three = anyDimension.chain((one) => fc.tuple(inDimension(one), inDimension(one), inDimension(one)))
    fc.assert(
      fc.property(three, anyNumber, anySite, ([a, b, c], value, sitePa) => {
        const over = convert(convert(value, a, b, sitePa), b, c, sitePa)
        const straight = convert(value, a, c, sitePa)
        const largestSi = Math.max(scale(value, a, sitePa) * Math.abs(a.factor), Math.abs(b.offset) + Math.abs(c.offset) + sitePa)
        expect(Math.abs(over - straight)).toBeLessThanOrEqual((1e-12 * largestSi) / Math.abs(c.factor))
      }),
      { numRuns: 2000 },
    )
  })

  it('into the same unit changes no digit', () => {
    fc.assert(
      fc.property(anyUnit, fc.double({ noNaN: true }), (unit, value) => {
        expect(convert(value, unit, unit)).toBe(value)
      }),
    )
  })

  it('between dimensions is refused', () => {
    fc.assert(
      fc.property(anyUnit, anyUnit, (from, to) => {
        fc.pre(from.dimension !== to.dimension)
        expect(() => convert(1, from, to)).toThrow(RangeError)
      }),
    )
  })

  it('never adds a zero point to a temperature difference: twice the difference is twice, nothing is nothing', () => {
    fc.assert(
      fc.property(inDimension('temperature difference'), inDimension('temperature difference'), anyNumber, (from, to, value) => {
        expect(convert(0, from, to)).toBe(0)
        expect(convert(2 * value, from, to)).toBeCloseTo(2 * convert(value, from, to), 5)
        expect(Math.abs(convert(value, from, to) * to.factor - value * from.factor)).toBeLessThanOrEqual(1e-12 * Math.abs(value))
      }),
    )
  })

  it('a gauge reading rises with the pressure and falls with the site; a vacuum reading the other way round', () => {
    fc.assert(
      fc.property(fc.constantFrom(...units.filter(({ gauge }) => gauge)), fc.double({ min: 0, max: 1e7, noNaN: true }), anySite, (unit, pressurePa, sitePa) => {
        const direction = Math.sign(unit.factor)
        expect(direction * (fromSi(pressurePa + 100, unit, sitePa) - fromSi(pressurePa, unit, sitePa))).toBeGreaterThan(0)
        expect(direction * (fromSi(pressurePa, unit, sitePa + 100) - fromSi(pressurePa, unit, sitePa))).toBeLessThan(0)
        expect(fromSi(sitePa, unit, sitePa)).toBeCloseTo(0, 12)
      }),
    )
  })
})

describe('a unit in the wrong place', () => {
  // An argument of each dimension that the catalogue takes as its first: every unit of another dimension must be refused there.
  const doors: Partial<Record<Dimension, (text: string) => unknown>> = {
    'temperature': (text) => functionByName('SAT.PRESSURE')?.call([text, 'Pa']),
    'pressure': (text) => functionByName('SAT.TEMPERATURE')?.call([text, 'K']),
    'length': (text) => functionByName('SITE.PRESSURE')?.call([text, 'Pa']),
    'power': (text) => functionByName('BOILING.FLOW')?.call([text, '20 °F', 'kg/s']),
    'volume flow': (text) => functionByName('DRUM.DIAMETER')?.call([text, '1 m/s', 'm']),
    'velocity': (text) => functionByName('SEPARATION.FACTOR')?.call([text, '20 °F', 'm/s']),
  }
  it.each(Object.entries(doors))('an argument that is a %s takes no other dimension', (dimension, door) => {
    for (const unit of units) {
      const result = door(`1 ${unit.code}`)
      const refused = isFault(result) && result.fault === '#VALUE!' && /accepted is/.test(result.message)
      expect([unit.code, refused]).toEqual([unit.code, unit.dimension !== dimension])
    }
  })

  const results: Partial<Record<Dimension, (unit: string) => unknown>> = {
    'pressure': (unit) => functionByName('SAT.PRESSURE')?.call(['20 °F', unit]),
    'temperature': (unit) => functionByName('SAT.TEMPERATURE')?.call(['1 bar', unit]),
    'temperature difference': (unit) => functionByName('HEAD.RISE')?.call(['20 °F', '1 m', unit]),
    'pressure per temperature difference': (unit) => functionByName('SAT.SLOPE')?.call(['20 °F', unit]),
    'energy per mass': (unit) => functionByName('LATENT.HEAT')?.call(['20 °F', unit]),
    'viscosity': (unit) => functionByName('LIQUID.VISCOSITY')?.call(['20 °F', unit]),
    'surface tension': (unit) => functionByName('SURFACE.TENSION')?.call(['20 °F', unit]),
    'mass flow': (unit) => functionByName('BOILING.FLOW')?.call(['1 TR', '20 °F', unit]),
    'volume flow': (unit) => functionByName('SUCTION.FLOW')?.call(['1 TR', '20 °F', '86 °F', unit]),
    'area': (unit) => functionByName('LIQUID.AREA')?.call(['1 m', '0.5 m', unit]),
    'volume': (unit) => functionByName('VESSEL.VOLUME')?.call(['1 m', '3 m', '2:1', 'vertical', unit]),
    'mass': (unit) => functionByName('VESSEL.CHARGE')?.call(['1 m', '3 m', '2:1', 'vertical', '1 m', '20 °F', unit]),
    'length': (unit) => functionByName('VESSEL.LEVEL')?.call(['1 m', '3 m', '2:1', 'vertical', '1 m3', unit]),
    'velocity': (unit) => functionByName('SEPARATION.VELOCITY')?.call(['0.05 m/s', '20 °F', unit]),
  }
  it.each(Object.entries(results))('a result that is a %s is given in no unit of another', (dimension, result) => {
    for (const unit of units) {
      const given = result(unit.code)
      expect([unit.code, typeof given === 'number']).toEqual([unit.code, unit.dimension === dimension])
      if (isFault(given)) for (const code of unitCodes(dimension as Dimension)) expect(given.message).toContain(code)
    }
  })

  it('a density may be asked for as a specific volume, and as nothing else', () => {
    for (const unit of units) {
      const given = functionByName('LIQUID.DENSITY')?.call(['20 °F', unit.code])
      expect([unit.code, typeof given === 'number']).toEqual([unit.code, ['density', 'specific volume'].includes(unit.dimension)])
    }
    const density = Number(functionByName('LIQUID.DENSITY')?.call(['20 °F', 'lb/ft3']))
    expect(density * Number(functionByName('LIQUID.DENSITY')?.call(['20 °F', 'ft3/lb']))).toBeCloseTo(1, 12)
  })
})

describe('spelling', () => {
  it('no two units share one', () => {
    const codes = new Map<string, Set<string>>()
    for (const [text, code] of spellings) codes.set(normaliseUnitText(text), (codes.get(normaliseUnitText(text)) ?? new Set()).add(code))
    expect([...codes].filter(([, named]) => named.size > 1)).toEqual([])
  })

  it.each(spellings)('"%s" is %s', (text, code) => expect(findUnit(text)?.code).toBe(code))

  // Characters that a person or another program may put for one of ours.
  const VARIANTS: readonly (readonly [RegExp, readonly string[]])[] = [
    [/°/g, ['º', '˚', '° ']],
    [/µ/g, ['μ']],
    [/Δ/g, ['∆', 'Δ']],
    [/·/g, ['.', '⋅', '∙', '·', '•', '‧', '*']],
    [/2/g, ['²', '^2']],
    [/3/g, ['³', '^3']],
    [/°F/g, ['℉']],
    [/°C/g, ['℃']],
    [/ /g, ['\u00a0', '\u202f', '  ']],
    [/%/g, ['％']],
  ]
  const variants = spellings.flatMap(([text, code]) =>
    VARIANTS.flatMap(([pattern, others]) => (text.match(pattern) === null ? [] : others.map((other) => [text.replace(pattern, other), code] as const))),
  )
  it('covers many units', () => expect(variants.length).toBeGreaterThan(60))
  it.each(variants)('"%s" is %s', (text, code) => {
    expect(findUnit(text)?.code).toBe(code)
    expect(findUnit(` ${text}\u00a0`)?.code).toBe(code)
  })

  it('capitals count: mPa·s is no MPa·s, and MW or PSI no unit, though the message helps', () => {
    expect(findUnit('MPa·s')).toBeUndefined()
    expect(findUnit('PSIA')).toBeUndefined()
    expect(similarUnit('PSIA')?.code).toBe('psia')
    expect(similarUnit('LB/MIN')?.code).toBe('lb/min')
    expect(similarUnit('furlong')).toBeUndefined()
    expect(parseQuantity('20 PSIA')).toMatchObject({ fault: '#VALUE!', message: 'unknown unit "PSIA": did you mean psia?' })
  })

  it('a text never makes findUnit throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' })), (text) => {
        expect([undefined, ...units]).toContain(findUnit(text))
      }),
    )
  })
})

describe('a quantity as text', () => {
  it('gives back any number and unit that are printed into it', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), anyUnit, fc.constantFrom('', ' ', '\u00a0', '   '), (value, unit, blank) => {
        // Unit texts that would go on the number ("1e5 d") do not exist; "-" needs no blank either.
        const read = parseQuantity(`${value}${blank}${unit.code}`)
        // A text does not tell −0 from 0.
        expect(read).toEqual({ value: value + 0, unit })
      }),
      { numRuns: 2000 },
    )
  })

  it.each([['−40 °F', -40], ['+5 °F', 5], ['.5 °F', 0.5], ['5. °F', 5], ['1E1 °F', 10], ['1e−1 °F', 0.1], ['  7 °F  ', 7], ['7°F', 7]])('%s is %d', (text, value) => {
    expect(parseQuantity(text)).toMatchObject({ value, unit: { code: '°F' } })
  })

  it.each([
    ['31', /"31" has no unit: write for example "31 °F"/],
    ['°F', /"°F" is not a number with a unit/],
    ['', /is not a number with a unit/],
    ['31 furlong', /unknown unit "furlong": the guide lists the units/],
    ['31 degf', /did you mean °F\?/],
    ['1e999 °F', /"1e999" is too large for a number/],
    ['1,000 ft', /unknown unit ",000 ft"/],
    ['NaN °F', /is not a number with a unit/],
    ['Infinity m', /is not a number with a unit/],
    ['0x10 m', /unknown unit "x10 m"/],
  ])('"%s" is refused with words', (text, message) => {
    expect(parseQuantity(text)).toEqual({ fault: '#VALUE!', message: expect.stringMatching(message) })
  })

  it('any text gives a quantity or a fault with a message of bearable length', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.string().map((text) => `1 ${text.repeat(1000)}`)), (text) => {
        const read = parseQuantity(text)
        if (isFault(read)) expect(read.message.length).toSatisfy((length: number) => length > 10 && length < 250)
        else expect([Number.isFinite(read.value), units.includes(read.unit)]).toEqual([true, true])
      }),
    )
  })

  it('formatNumber shows six digits at most and reads back to that', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e20, max: 1e20 }), (value) => {
        expect(Math.abs(Number(formatNumber(value)) - value)).toBeLessThanOrEqual(5.1e-6 * Math.abs(value))
      }),
    )
    expect(formatNumber(2 / 3)).toBe('0.666667')
    expect(shortened('x'.repeat(100))).toBe(`${'x'.repeat(60)}…`)
  })
})
