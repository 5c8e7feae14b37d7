import { describe, expect, it } from 'vitest'
import type { Argument } from '../../functions/arguments.ts'
import type { Given, Scalar } from '../../functions/given.ts'
import { catalogue } from '../../functions/catalogue.ts'
import { argumentLabel, signature } from '../../functions/define.ts'
import { isFault, type Fault, type FaultKind } from '../../functions/fault.ts'
import { unitCodes, units, type Dimension } from '../../functions/units/units.ts'
import { exampleArguments } from './catalogue-examples.ts'

/** What is put at an argument's place, and what the call must then say. */
interface Spoiled {
  readonly given: Given
  readonly fault: FaultKind
  readonly says: readonly (RegExp | string)[]
}

const row = (...cells: Scalar[]): Given => ({ rows: [cells] })
const value = (given: Given, ...says: (RegExp | string)[]): Spoiled => ({ given, fault: '#VALUE!', says })
const codesOf = (dimensions: readonly Dimension[]) => dimensions.flatMap(unitCodes)
const foreignUnit = (dimensions: readonly Dimension[]) => units.find(({ dimension }) => !dimensions.includes(dimension) && !/^(temperature|share)/.test(dimension))?.code ?? ''

/** Far beyond any range that is stated; a range is stated with its reason in brackets. */
function outOfRange({ accepts, dimensions }: Argument<unknown>, unit = unitCodes(dimensions[0] ?? 'share')[0] ?? ''): Spoiled[] {
  const limit = /(?:at least|at most|more than|less than| to ).* \((.*)\)$/.exec(accepts)?.[1]
  if (limit === undefined) return []
  const tooLow = /at least|more than| to /.test(accepts) ? '-1e30' : '1e30'
  return [{ given: `${tooLow} ${unit}`, fault: '#NUM!', says: [/; accepted is (at least|more than|at most|less than|-?\d)/, limit, unit === '-' ? '' : ` ${unit}`] }]
}

const SPOILED: Readonly<Record<Argument<unknown>['kind'], (argument: Argument<unknown>) => Spoiled[]>> = {
  quantity: (argument) => {
    const { dimensions, accepts } = argument
    const good = codesOf(dimensions)[0] ?? 'ft'
    return [
      value(5, /needs a unit: write C5:D5 or "/),
      value('5', /needs a unit: write C5:D5 or "/),
      value(row(5), /needs a unit: write C5:D5 or "/),
      value(row(5, null), /needs a unit: its second cell is empty/),
      value(row(5, ''), /needs a unit: its second cell is empty/),
      value(row(5, 7), /its second cell holds 7, not a unit/),
      value(row(5, true), /its second cell holds TRUE, not a unit/),
      value(row(null, good), /has no number: its first cell is empty/),
      value(row('x', good), /is not a number: its first cell holds "x"/),
      value(row(false, good), /is not a number: its first cell holds FALSE/),
      value(row(5, 'furlong'), /unknown unit "furlong"/),
      value('5 furlong', /unknown unit "furlong"/),
      value('nothing', /"nothing" is not a number with a unit/),
      value(null, /is empty: write C5:D5 or "/),
      value('', /is not a number with a unit/),
      value(true, /is TRUE: write C5:D5 or "/),
      value({ rows: [[5, good], [6, good]] }, /two adjacent cells in a row, value then unit \(C5:D5\); given are 2 × 2 cells/),
      value(row(5, good, 7), /given are 1 × 3 cells/),
      value({ rows: [[5], [good]] }, /given are 2 × 1 cells/),
      value({ rows: [] }, /given are 0 × 0 cells/),
      ...(dimensions.length === 0 ? [] : [value(`5 ${foreignUnit(dimensions)}`, foreignUnit(dimensions), 'accepted is', ...codesOf(dimensions))]),
      ...(dimensions.includes('temperature') ? [value('5 Δ°F', /a difference of temperature, not a temperature/)] : []),
      ...(dimensions.includes('temperature difference') ? [value('5 °F', /a temperature, not a difference of temperature/)] : []),
      ...outOfRange(argument),
      ...(/^a (difference of )?pressure/.test(accepts) ? outOfRange(argument, 'kPa') : []),
    ]
  },
  number: (argument) => [
    value(null, /is empty: a number is needed/),
    value(true, /is not a number: write 0\.25 or "25 %"/),
    value('some', /is not a number: write 0\.25 or "25 %"/),
    value(row(5, null), /is not a number/),
    value({ rows: [[1, '-'], [2, '-']] }, /is not a number/),
    value('5 ft', /is in ft, a length; accepted is -, %/),
    ...outOfRange(argument, '-'),
  ],
  choice: ({ choices }) =>
    [value('nonsense', 'unknown', '"nonsense"'), value(null, 'unknown'), value(17, 'unknown', '"17"'), value(true, 'unknown', '"true"'), value(row('a', 'b'), 'unknown')]
      .map((spoiled) => ({ ...spoiled, says: [...spoiled.says, 'accepted is one of', ...choices.map((name) => `"${name}"`)] })),
  text: () => [value(null), value('nonsense')],
  block: ({ rows }) => [
    ...[value(null, 'is no range'), value(5, 'is no range'), value('5 ft', 'is no range'), value({ rows: [[5, 'ft', 7]] }, 'is 1 × 3 cells'), value({ rows: [] }, 'is 0 × 0 cells')]
      .map((spoiled) => ({ ...spoiled, says: [...spoiled.says, `accepted is a range of ${rows.length} rows`, ...rows.map(({ name }, i) => `${i + 1} ${name}`)] })),
    value({ rows: rows.map(() => [null, null]) }, 'row 1,', rows[0]?.name ?? ''),
  ],
  unit: ({ dimensions }) => [
    value(null, /unit of the result is missing: write "/),
    value('', /unit of the result is missing: write "/),
    value(5, /unit of the result is missing/),
    value(false, /unit of the result is missing/),
    value(row('kg', 'm'), /unit of the result is missing/),
    value('furlong', /unknown unit "furlong"/),
    ...(dimensions.length === 0 ? [] : [value(foreignUnit(dimensions), `unit of the result is ${foreignUnit(dimensions)}`, 'accepted is', ...codesOf(dimensions))]),
  ],
}

const expectFault = (result: unknown, fault: FaultKind): Fault => {
  expect(result).toMatchObject({ fault, message: expect.any(String) })
  if (!isFault(result)) throw new Error('no fault')
  expect(result.message).not.toMatch(/undefined|NaN|Infinity|\[object/)
  return result
}

describe.each(catalogue.map((definition) => [definition.name, definition] as const))('%s', (_, definition) => {
  const right = exampleArguments(definition)
  const given = Object.entries(definition.arguments)
  const required = given.filter(([, { optional }]) => !optional).length

  it('takes the arguments of its own example', () => {
    expect(isFault(definition.call(right))).toBe(false)
    expect(right.length).toBeGreaterThanOrEqual(required)
  })

  describe.each(given.map(([key, argument], index) => ({ label: argumentLabel(key), argument, index })))('$label', ({ label, argument, index }) => {
    const call = (spoiled: Given) => definition.call(Array.from({ length: Math.max(right.length, index + 1) }, (__, i) => (i === index ? spoiled : right[i])))

    it.each(SPOILED[argument.kind](argument).map((spoiled) => [JSON.stringify(spoiled.given), spoiled] as const))('refuses %s', (__, spoiled) => {
      const { message } = expectFault(call(spoiled.given), spoiled.fault)
      for (const words of spoiled.says) expect(message).toEqual(typeof words === 'string' ? expect.stringContaining(words) : expect.stringMatching(words))
      if (!message.startsWith('unknown unit')) expect(message).toContain(label)
    })

    if (argument.optional) it('may be left out', () => expect(isFault(call(undefined))).toBe(false))
    else it('must be given', () => expectFault(call(undefined), '#VALUE!'))

    if (argument.kind !== 'quantity') {
      it('may stand in a cell', () => {
        const here = right[index]
        if (here === undefined || typeof here === 'object') return
        expect(call({ rows: [[here]] })).toEqual(definition.call(right))
      })
    }
  })

  it('shows its signature where arguments are too few or too many', () => {
    for (const count of new Set([0, required - 1, given.length + 1, given.length + 5])) {
      const { message } = expectFault(definition.call(Array.from({ length: count }, () => 1)), '#N/A')
      expect(message).toContain(signature(definition))
      expect(message).toMatch(/ takes \d+( to \d+)? arguments?: /)
    }
  })
})

describe('arguments that only some functions take', () => {
  const byName = (name: string) => catalogue.find((one) => one.name === name)

  it('a pressure of the atmosphere, or a difference of pressure, is not counted from the atmosphere', () => {
    expect(byName('SAT.PRESSURE')?.call(['0 °F', 'psig', '0 psig'])).toMatchObject({ fault: '#VALUE!', message: expect.stringMatching(/site is the pressure of the atmosphere itself, which psig/) })
    expect(byName('SITE.PRESSURE')?.call(['0 ft', 'inHg vac'])).toMatchObject({ fault: '#VALUE!', message: expect.stringMatching(/unit of the result is the pressure of the atmosphere itself, which inHg vac/) })
    expect(byName('HEAD.PRESSURE')?.call(['10 ft', '0 °F', 'psig'])).toMatchObject({ fault: '#VALUE!', message: expect.stringMatching(/a difference of pressure, which psig/) })
  })

  it('a plain number may be a share in a cell pair, a text, or per cent', () => {
    const travel = (inlets: Given) => byName('DRUM.TRAVEL')?.call(['36 in', '18 in', '126 cfm', '112 ft/min', 'in', inlets])
    for (const two of [2, '2', '200 %', '2 -', row(2, '-'), row(200, '%'), row(2)]) expect(travel(two)).toBe(travel(2))
    expect(travel(2)).toEqual(expect.any(Number))
  })

  it('a result too large for a number is an error, not infinity', () => {
    expect(byName('UNIT.CONVERT')?.call(['1e308 m', 'µm'])).toMatchObject({ fault: '#NUM!', message: expect.stringMatching(/no finite result/) })
    expect(byName('UNIT.CONVERT')?.call(['1e308 TR', 'kW'])).toMatchObject({ fault: '#NUM!', message: expect.stringMatching(/quantity is too large to compute with/) })
  })

  it('a message quotes no more than the beginning of a long text', () => {
    const long = 'x'.repeat(30_000)
    for (const spoiled of [long, `5 ${long}`, row(long, '°F'), row(5, long)]) {
      const result = byName('SAT.PRESSURE')?.call([spoiled, 'psia'])
      expect(isFault(result) && result.message.length).toBeLessThan(250)
    }
    const law = byName('DROPLET.VELOCITY')?.call(['150 µm', '20 °F', 'm/s', long])
    expect(isFault(law) && law.message.length).toBeLessThan(250)
  })
})
