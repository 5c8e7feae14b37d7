import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import { isFault } from '../../functions/fault.ts'
import { separationFunctions } from '../../functions/separation/definitions.ts'

const named = (name: string): FunctionDefinition => {
  const found = separationFunctions.find((one) => one.name === name)
  if (found === undefined) throw new Error(`no function ${name}`)
  return found
}
const call = (name: string, ...given: Given[]) => named(name).call(given)

describe('a separation function says what is wrong', () => {
  it.each<[string, Given[], string, RegExp]>([
    ['DROPLET.VELOCITY', [150, '20 °F', 'ft/s'], '#VALUE!', /diameter needs a unit/],
    ['DROPLET.VELOCITY', ['150 µm', 20, 'ft/s'], '#VALUE!', /temperature needs a unit/],
    ['DROPLET.VELOCITY', ['150 psia', '20 °F', 'ft/s'], '#VALUE!', /diameter is in psia, a pressure; accepted is m, mm/],
    ['DROPLET.VELOCITY', ['150 µm', '20 Δ°F', 'ft/s'], '#VALUE!', /temperature is in Δ°F, a difference of temperature/],
    ['DROPLET.VELOCITY', ['150 µm', '20 °F', 'ft'], '#VALUE!', /unit of the result is ft, a length; accepted is m\/s/],
    ['DROPLET.VELOCITY', ['150 µm', '20 °F', null], '#VALUE!', /unit of the result is missing/],
    ['DROPLET.VELOCITY', ['150 µm', '20 °F', 'ft/s', 'Newton'], '#VALUE!', /unknown law "Newton": accepted is one of "Haider", "Clift", "Cheng", "Stokes"/],
    ['DROPLET.VELOCITY', ['0.5 µm', '20 °F', 'ft/s'], '#NUM!', /diameter is 0\.5 µm; accepted is 1 µm to 5000 µm/],
    ['DROPLET.VELOCITY', ['6 mm', '20 °F', 'ft/s'], '#NUM!', /diameter is 6 mm; accepted is 0\.001 mm to 5 mm .*from memory/],
    ['DROPLET.VELOCITY', ['150 µm', '250 °F', 'ft/s'], '#NUM!', /temperature is 250 °F; accepted is .*°F to 212 °F .*Gao et al\. 2023/],
    ['DROPLET.DIAMETER', ['0 ft/min', '20 °F', 'µm'], '#NUM!', /velocity is 0 ft\/min; accepted is more than 0 ft\/min/],
    ['DROPLET.DIAMETER', ['3000 ft/min', '20 °F', 'µm'], '#NUM!', /velocity is 3000 ft\/min; accepted at this temperature is .* to .* ft\/min \(droplets of 1 µm to 5 mm; from memory\)/],
    ['DROPLET.DIAMETER', ['0.001 ft/min', '20 °F', 'µm'], '#NUM!', /velocity is 0\.001 ft\/min; accepted at this temperature/],
    ['SEPARATION.VELOCITY', [0.18, '20 °F', 'ft/min'], '#VALUE!', /K needs a unit/],
    ['SEPARATION.VELOCITY', ['-0.18 ft/s', '20 °F', 'ft/min'], '#NUM!', /K is -0\.18 ft\/s; accepted is more than 0 ft\/s/],
    ['SEPARATION.FACTOR', ['172 cfm', '20 °F', 'ft/s'], '#VALUE!', /velocity is in cfm, a volume flow/],
    ['DEMISTER.FACTOR', ['0.9 psia', 'ft/s'], '#NUM!', /pressure is 0\.9 psia; accepted is 1 psia to 5500 psia .*York/],
    ['DEMISTER.FACTOR', ['6000 psia', 'ft/s'], '#NUM!', /pressure is 6000 psia/],
    ['DEMISTER.FACTOR', ['48.2', 'ft/s'], '#VALUE!', /pressure needs a unit/],
    ['DRUM.DIAMETER', ['126 lb/min', '170 ft/min', 'in'], '#VALUE!', /vapour flow is in lb\/min, a mass flow/],
    ['DRUM.DIAMETER', ['126 cfm', '0 ft/min', 'in'], '#NUM!', /velocity is 0 ft\/min/],
    ['LIQUID.AREA', ['36 in', '37 in', 'ft2'], '#NUM!', /level is 37 in; accepted is 0 to 36 in \(the inside diameter\)/],
    ['LIQUID.AREA', ['36 in', '-1 in', 'ft2'], '#NUM!', /level is -1 in; accepted is at least 0 in/],
    ['VAPOR.AREA', ['0 in', '0 in', 'ft2'], '#NUM!', /diameter is 0 in; accepted is more than 0 in/],
    ['VAPOR.AREA', ['36 in', '37 in', 'ft2'], '#NUM!', /level is 37 in/],
    ['DRUM.TRAVEL', ['36 in', '3 ft', '126 cfm', '112 ft/min', 'in'], '#NUM!', /level is 3 ft; accepted is less than 3 ft \(the inside diameter: a full drum has no gas space\)/],
    ['DRUM.TRAVEL', ['36 in', '18 in', '126 cfm', '0 ft/min', 'in'], '#NUM!', /droplet velocity is 0 ft\/min/],
    ['DRUM.TRAVEL', ['36 in', '18 in', '126 cfm', '112 ft/min', 'in', 3], '#NUM!', /inlets is 3; accepted is 1 to 2/],
    ['DRUM.TRAVEL', ['36 in', '18 in', '126 cfm', '112 ft/min', 'in', 1.5], '#NUM!', /inlets is 1\.5; accepted is 1 or 2/],
  ])('%s %j: %s', (name, given, fault, message) => {
    expect(call(name, ...given)).toEqual({ fault, message: expect.stringMatching(message) })
  })

  it.each([
    ['DROPLET.VELOCITY', 'DROPLET.VELOCITY takes 3 to 4 arguments: DROPLET.VELOCITY(diameter, temperature, unit, [law])'],
    ['DROPLET.DIAMETER', 'DROPLET.DIAMETER takes 3 to 4 arguments: DROPLET.DIAMETER(velocity, temperature, unit, [law])'],
    ['SEPARATION.VELOCITY', 'SEPARATION.VELOCITY takes 3 arguments: SEPARATION.VELOCITY(K, temperature, unit)'],
    ['SEPARATION.FACTOR', 'SEPARATION.FACTOR takes 3 arguments: SEPARATION.FACTOR(velocity, temperature, unit)'],
    ['DEMISTER.FACTOR', 'DEMISTER.FACTOR takes 2 to 3 arguments: DEMISTER.FACTOR(pressure, unit, [site])'],
    ['DRUM.DIAMETER', 'DRUM.DIAMETER takes 3 arguments: DRUM.DIAMETER(vapour flow, velocity, unit)'],
    ['LIQUID.AREA', 'LIQUID.AREA takes 3 arguments: LIQUID.AREA(diameter, level, unit)'],
    ['VAPOR.AREA', 'VAPOR.AREA takes 3 arguments: VAPOR.AREA(diameter, level, unit)'],
    ['DRUM.TRAVEL', 'DRUM.TRAVEL takes 5 to 6 arguments: DRUM.TRAVEL(diameter, level, vapour flow, droplet velocity, unit, [inlets])'],
  ])('%s with one argument, or with seven, shows its signature', (name, message) => {
    expect(call(name, '1 m')).toEqual({ fault: '#N/A', message })
    expect(call(name, 1, 2, 3, 4, 5, 6, 7)).toEqual({ fault: '#N/A', message })
  })
})

describe('a separation function takes what is right', () => {
  it('Stokes is an accepted law in any capitals, and at any droplet', () => {
    expect(call('DROPLET.VELOCITY', '5 mm', '20 °F', 'm/s', 'stokes')).toBeGreaterThan(100)
  })

  it('a full drum is full, whichever unit says so', () => {
    expect(call('LIQUID.AREA', '36 in', '3 ft', 'ft2')).toBeCloseTo((Math.PI / 4) * 9, 12)
    expect(call('VAPOR.AREA', '36 in', '3 ft', 'ft2')).toBe(0)
  })

  it('pairs of cells serve as texts do', () => {
    const pair = (value: number, unit: string): Given => ({ rows: [[value, unit]] })
    expect(call('DROPLET.VELOCITY', pair(150, 'µm'), pair(20, '°F'), 'ft/min')).toBe(call('DROPLET.VELOCITY', '150 µm', '20 °F', 'ft/min'))
  })

  it('no flow needs no drum', () => {
    expect(call('DRUM.DIAMETER', '0 cfm', '170 ft/min', 'in')).toBe(0)
  })
})

describe('a separation function never throws and never gives NaN or infinity', () => {
  const anyUnit = fc.constantFrom('°F', 'Δ°F', 'K', 'µm', 'in', 'm', 'ft/min', 'm/s', 'psia', 'psig', 'inHg vac', 'cfm', 'm3/s', 'ft2', '-', '%', 'furlong', '')
  const anyNumber = fc.oneof(fc.double(), fc.constantFrom(0, -0, 5e-324, 1e308, -1e308), fc.double({ min: -500, max: 500, noNaN: true }))
  const anyText = fc.oneof(fc.tuple(anyNumber, anyUnit).map(([value, unit]) => `${value} ${unit}`), anyUnit, fc.string(), fc.constantFrom('Haider', 'Stokes'))
  const anyScalar = fc.oneof(anyNumber, anyText, fc.boolean(), fc.constant(null))
  const anyRange = fc.oneof(
    fc.tuple(anyNumber, anyUnit).map((row) => ({ rows: [row] })),
    fc.array(fc.array(anyScalar, { maxLength: 3 }), { maxLength: 3 }).map((rows) => ({ rows })),
  )
  const anything: fc.Arbitrary<Given> = fc.oneof(anyScalar, anyRange, fc.constant(undefined))

  const expectSound = (result: number | string | object) => {
    if (isFault(result)) expect(result.message).not.toBe('')
    else expect(result).toSatisfy(Number.isFinite)
  }

  it.each(separationFunctions.map((one) => [one.name, one] as const))('%s, over garbage', (_, definition) => {
    fc.assert(fc.property(fc.array(anything, { maxLength: 7 }), (given) => expectSound(definition.call(given))), { numRuns: 2000 })
  })

  // Garbage seldom passes the door: here each argument has a dimension it accepts, and only the numbers are wild.
  it.each(separationFunctions.map((one) => [one.name, one] as const))('%s, over wild numbers with fitting units', (_, definition) => {
    const UNITS: Readonly<Record<string, string>> = { length: 'm', temperature: 'K', velocity: 'm/s', pressure: 'Pa', 'volume flow': 'm3/s', area: 'm2' }
    const magnitude = fc.oneof(fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }), fc.double({ min: 1e-7, max: 400, noNaN: true }))
    const given = Object.values(definition.arguments)
      .filter(({ optional }) => !optional)
      .map(({ kind, dimensions }) => {
        const unit = UNITS[dimensions[0] ?? ''] ?? ''
        return kind === 'unit' ? fc.constant(unit) : magnitude.map((value) => `${value} ${unit}`)
      })
    fc.assert(fc.property(fc.tuple(...given), (values) => expectSound(definition.call(values))), { numRuns: 2000 })
  })
})
