import { describe, expect, it } from 'vitest'
import { catalogue, functionByName } from '../../functions/catalogue.ts'
import { argumentLabel, signature, type FunctionDefinition } from '../../functions/define.ts'
import { units } from '../../functions/units/units.ts'
import { calls } from '../../src/workbook/formula/calls.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { evaluate, expectPrinted } from './catalogue-examples.ts'

/** Final names: workbooks that were saved call them. One is added here when a function is; none is renamed or taken away. */
const NAMES = new Set(`
  UNIT.CONVERT SITE.PRESSURE
  SAT.PRESSURE SAT.TEMPERATURE SAT.SLOPE LIQUID.DENSITY VAPOR.DENSITY LIQUID.ENTHALPY VAPOR.ENTHALPY LATENT.HEAT LIQUID.VISCOSITY VAPOR.VISCOSITY SURFACE.TENSION
  FLASH.FRACTION FEED.FLOW SUCTION.FLOW BOILING.FLOW
  DROPLET.VELOCITY DROPLET.DIAMETER SEPARATION.VELOCITY SEPARATION.FACTOR DEMISTER.FACTOR DRUM.DIAMETER LIQUID.AREA VAPOR.AREA DRUM.TRAVEL
  HEAD.PRESSURE HEAD.TEMPERATURE HEAD.RISE HEAD.DRUM CIRCULATION.NUMBER CIRCULATION.PART CIRCULATION.LOSS
  VESSEL.VOLUME VESSEL.LIQUID VESSEL.LEVEL VESSEL.CHARGE VESSEL.SURFACE VOID.FRACTION HOLDUP.MASS PIPE.VOLUME PIPE.BORE PIPE.NEXT
  PIPE.VELOCITY FRICTION.FACTOR PIPE.LOSS WETRETURN.LOSS LINE.PENALTY VALVE.LIQUID VALVE.CHOKE VALVE.VAPOR
  RELIEF.CAPACITY RELIEF.SCFM RELIEF.AMMONIA RELIEF.PIPE RELIEF.FIRE`.trim().split(/\s+/))

const each = catalogue.map((definition) => [definition.name, definition] as const)

/** The signatures that templates, documents and saved workbooks rely on, of the functions of these groups. */
const SIGNATURES = [
  'UNIT.CONVERT(quantity, unit, [site])', 'SITE.PRESSURE(elevation, unit)',
  'SAT.PRESSURE(temperature, unit, [site])', 'SAT.TEMPERATURE(pressure, unit, [site])', 'SAT.SLOPE(temperature, unit)',
  'LIQUID.DENSITY(temperature, unit)', 'VAPOR.DENSITY(temperature, unit)', 'LIQUID.ENTHALPY(temperature, unit)', 'VAPOR.ENTHALPY(temperature, unit)',
  'LATENT.HEAT(temperature, unit)', 'LIQUID.VISCOSITY(temperature, unit)', 'VAPOR.VISCOSITY(temperature, unit)', 'SURFACE.TENSION(temperature, unit)',
  'FLASH.FRACTION(liquid, drum)', 'FEED.FLOW(load, drum, liquid, unit)', 'SUCTION.FLOW(load, drum, liquid, unit)', 'BOILING.FLOW(load, drum, unit)',
  'HEAD.PRESSURE(height, temperature, unit)', 'HEAD.TEMPERATURE(drum, height, unit)', 'HEAD.RISE(drum, height, unit)', 'HEAD.DRUM(coil, height, unit)',
]

describe('the catalogue', () => {
  it('has each name once, and finds it in any capitals', () => {
    expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length)
    for (const definition of catalogue) expect(functionByName(definition.name.toLowerCase())).toBe(definition)
    expect(functionByName('SAT')).toBeUndefined()
  })

  it.each(SIGNATURES)('%s', (expected) => {
    const definition = functionByName(expected.slice(0, expected.indexOf('(')))
    expect(definition && signature(definition)).toBe(expected)
  })

  it('argument names read as words, symbols stay', () => {
    expect(['drumDiameter', 'liquidLevelAboveFoot', 'K', 'FL', 'xT', 'unit', 'sumK'].map(argumentLabel))
      .toEqual(['drum diameter', 'liquid level above foot', 'K', 'FL', 'xT', 'unit', 'sum k'])
  })
})

/** Every text that a definition shows to people. */
const wordsOf = ({ gives, use, equation, group, sources, cautions = [], arguments: given }: FunctionDefinition): string[] => [
  gives, use, equation, group, ...cautions, ...sources.map(({ cite }) => cite), ...Object.values(given).flatMap(({ words, accepts }) => [words, accepts]),
]

describe.each(each)('%s', (name, definition) => {
  const given = Object.entries(definition.arguments)

  it('has one of the final names', () => {
    expect(name).toMatch(/^[A-Z]+\.[A-Z]+$/)
    expect(NAMES).toContain(name)
  })

  it('has words: not empty, no stray blanks, no leftovers', () => {
    for (const words of wordsOf(definition)) {
      expect(words.trim().length, words).toBeGreaterThan(2)
      expect(words).toBe(words.trim())
      expect(words).not.toMatch(/ {2}|undefined|NaN|\[object|TODO/)
    }
    expect(definition.gives).not.toMatch(/^[A-Z][a-z]|\.$/)
    expect(definition.use).toMatch(/[.!]$/)
    for (const caution of definition.cautions ?? []) expect(caution).toMatch(/[.!]$/)
  })

  it('has at least one source, and says how sure each is', () => {
    expect(definition.sources.length).toBeGreaterThan(0)
    for (const { confidence } of definition.sources) expect(['confirmed', 'common practice', 'from memory']).toContain(confidence)
  })

  it('takes required arguments before optional ones; the unit of the result is the last required one, the site the last of all', () => {
    const flags = given.map(([, { optional }]) => optional)
    expect(flags).toEqual(flags.toSorted((a, b) => Number(a) - Number(b)))
    const required = given.filter(([, { optional }]) => !optional).map(([key]) => key)
    expect(given.filter(([, { kind }]) => kind === 'unit').map(([key]) => key)).toEqual(required.includes('unit') ? ['unit'] : [])
    if (required.includes('unit')) expect(required.at(-1)).toBe('unit')
    if ('site' in definition.arguments) expect(given.at(-1)?.[0]).toBe('site')
  })

  it('states its result in a unit of the right dimension, or needs none', () => {
    const unit = definition.arguments['unit']
    const plain = definition.result === 'number' || definition.result === 'text'
    expect(unit === undefined).toBe(plain)
    if (unit !== undefined && definition.result !== 'as asked') expect(unit.dimensions[0]).toBe(definition.result)
    for (const dimension of given.flatMap(([, argument]) => argument.dimensions)) expect(units.map((one) => one.dimension)).toContain(dimension)
  })

  it.each(definition.examples)('$formula is $value', (example) => {
    expect(calls(tokenise(example.formula)).map((call) => call.name)).toContain(name)
    expectPrinted(evaluate(example.formula), example, definition)
  })
})
