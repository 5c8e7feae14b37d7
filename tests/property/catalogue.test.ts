import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Argument } from '../../functions/arguments.ts'
import type { Given } from '../../functions/given.ts'
import { catalogue } from '../../functions/catalogue.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import { isFault } from '../../functions/fault.ts'
import { units, type Dimension } from '../../functions/units/units.ts'
import { exampleArguments } from '../unit/catalogue-examples.ts'

const each = catalogue.map((definition) => [definition.name, definition] as const)

/** A number that is finite, a text, or a fault that says something. */
function expectSound(result: unknown): void {
  if (isFault(result)) {
    expect(['#VALUE!', '#NUM!', '#N/A']).toContain(result.fault)
    expect(result.message).toMatch(/\S+ \S+/)
    // What was given is quoted, whatever it is.
    expect(result.message.replace(/".*"/s, '')).not.toMatch(/undefined|NaN|Infinity|\[object/)
  } else if (typeof result === 'number') expect(result).toSatisfy(Number.isFinite)
  else expect(result).toEqual(expect.any(String))
}

describe('garbage of all kinds', () => {
  const anyNumber = fc.oneof(fc.double(), fc.integer(), fc.constantFrom(0, -0, 5e-324, 1e-300, 1e308, -1e308, NaN, Infinity, -Infinity))
  const anyUnit = fc.oneof(fc.constantFrom(...units.flatMap(({ code, aliases }) => [code, ...aliases])), fc.constantFrom('', 'furlong', '°', 'Δ', ' '))
  const anyWord = fc.oneof(fc.string(), anyUnit, fc.constantFrom('__proto__', 'constructor', 'toString', '#REF!', '=1', '2:1', 'horizontal'), fc.string({ unit: 'binary' }))
  const anyText = fc.oneof(fc.tuple(anyNumber, anyUnit).map(([value, unit]) => `${value} ${unit}`), anyWord)
  const anyScalar = fc.oneof(anyNumber, anyText, fc.boolean(), fc.constant(null))
  const anyRange = fc.oneof(
    fc.tuple(anyNumber, anyUnit).map((row) => ({ rows: [row] })),
    fc.array(fc.array(anyScalar, { maxLength: 3 }), { maxLength: 4 }).map((rows) => ({ rows })),
  )
  const anything: fc.Arbitrary<Given> = fc.oneof(anyScalar, anyText, anyRange, fc.constant(undefined))

  it.each(each)('%s gives a number, a text or a fault', (_, definition) => {
    const count = Object.keys(definition.arguments).length
    fc.assert(fc.property(fc.array(anything, { maxLength: count + 2 }), (given) => expectSound(definition.call(given))), { numRuns: 300 })
  })

  // Pure garbage seldom comes past the first argument: here one or two of the right ones are spoiled.
  it.each(each)('%s gives a number, a text or a fault where some arguments are right', (_, definition) => {
    const given = exampleArguments(definition).map((right) => fc.oneof({ weight: 3, arbitrary: fc.constant(right) }, { weight: 1, arbitrary: anything }))
    fc.assert(fc.property(fc.tuple(...given), (values) => expectSound(definition.call(values))), { numRuns: 300 })
  })
})

describe('values that each argument accepts', () => {
  /** From what to what a value of the dimension is tried, in SI: wider than the trade's needs. */
  const TRIED: Partial<Record<Dimension, readonly [number, number]>> = {
    'temperature': [195.55, 373.15], 'temperature difference': [0.01, 50], 'pressure': [7e3, 6e6], 'length': [1e-4, 30], 'area': [1e-4, 100], 'volume': [1e-4, 100],
    'mass': [1e-2, 1e5], 'mass flow': [1e-4, 100], 'volume flow': [1e-5, 100], 'velocity': [1e-3, 60], 'power': [10, 1e7], 'share': [0, 1],
  }
  const inUnits = (dimension: Dimension) => {
    const [from, to] = TRIED[dimension] ?? [1e-3, 1e3]
    const si = fc.double({ min: from, max: to, noNaN: true })
    // Written with all digits of a double, in a unit whose zero is that of SI.
    return fc.tuple(si, fc.constantFrom(...units.filter((one) => one.dimension === dimension && !one.gauge && one.offset === 0))).map(([value, unit]) => `${value / unit.factor} ${unit.code}`)
  }
  const accepted = ({ kind, dimensions, choices }: Argument<unknown>, right: Given): fc.Arbitrary<Given> => {
    if (choices.length > 0) return fc.constantFrom(...choices)
    if (kind === 'unit') return dimensions.length === 0 ? fc.constant(right) : fc.constantFrom(...units.filter((one) => dimensions.includes(one.dimension) && !one.gauge)).map(({ code }) => code)
    const spread = dimensions.map(inUnits)
    return fc.oneof({ weight: 2, arbitrary: fc.constant(right) }, ...spread.map((arbitrary) => ({ weight: 1, arbitrary })))
  }

  it.each(each)('%s gives a finite number, a text, or a fault that says what it cannot do', (_, definition) => {
    const right = exampleArguments(definition)
    const given = Object.values(definition.arguments).slice(0, right.length).map((argument, i) => accepted(argument, right[i]))
    let computed = 0
    fc.assert(
      fc.property(fc.tuple(...given), (values) => {
        const result = definition.call(values)
        expectSound(result)
        if (!isFault(result)) computed++
        else expect(result.fault).not.toBe('#N/A')
      }),
      { numRuns: 300 },
    )
    expect(computed).toBeGreaterThan(30)
  })

  /** The example's quantities as pairs of cells; a block, a plain number or a name stays. */
  const paired = (definition: FunctionDefinition): Given[] =>
    exampleArguments(definition).map((given, i) => {
      const kind = Object.values(definition.arguments)[i]?.kind
      const match = kind === 'quantity' && typeof given === 'string' ? /^(\S+) (.*)$/.exec(given) : null
      return match === null ? given : { rows: [[Number(match[1]), match[2] ?? '']] }
    })
  const withQuantities = each.filter(([, { arguments: named }]) => Object.values(named)[0]?.kind === 'quantity')

  it.each(withQuantities)('%s gives the same for a text and for a pair of cells', (_, definition) => {
    const [pairs, texts] = [paired(definition), exampleArguments(definition)]
    expect(pairs).not.toEqual(texts)
    expect(definition.call(pairs)).toEqual(definition.call(texts))
  })
})
