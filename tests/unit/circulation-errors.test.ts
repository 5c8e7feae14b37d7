import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Given, Scalar } from '../../functions/given.ts'
import { circulationFunctions } from '../../functions/circulation/circulation-definitions.ts'
import { isFault, type Fault } from '../../functions/fault.ts'

type Row = readonly [value: Scalar, unit: Scalar]

// An invented coil; the names are those of the rows, in order.
const ROWS: readonly (readonly [name: string, value: number, unit: string])[] = [
  ['load', 20, 'TR'], ['drum temperature', 14, '°F'], ['level above coil bottom', 8.2, 'ft'], ['leg bore', 2.067, 'in'], ['leg length', 13, 'ft'], ['leg ΣK', 2.5, '-'],
  ['coil height', 4, 'ft'], ['circuits', 12, '-'], ['circuit bore', 0.83, 'in'], ['circuit length', 59, 'ft'], ['return bore', 4.026, 'in'], ['return length', 10, 'ft'],
  ['return ΣK', 2, '-'], ['return rise', 4.2, 'ft'], ['roughness', 0.00015, 'ft'],
]
const NAMES = ROWS.map(([name]) => name)

const blockWith = (changed: Readonly<Record<string, Row>> = {}): { readonly rows: readonly Row[] } => ({ rows: ROWS.map(([name, value, unit]) => changed[name] ?? [value, unit]) })

const call = (name: string, ...given: Given[]) => {
  const definition = circulationFunctions.find((one) => one.name === name)
  if (definition === undefined) throw new Error(`no function ${name}`)
  return definition.call(given)
}
const number = (...given: Given[]) => call('CIRCULATION.NUMBER', ...given)

const fault = (result: unknown): Fault => {
  if (!isFault(result)) throw new Error(`${String(result)} is not a fault`)
  return result
}

describe('the block', () => {
  it('with too few or too many rows: the rows that are expected, in order', () => {
    for (const rows of [blockWith().rows.slice(1), [...blockWith().rows, [1, 'm'] as const], []]) {
      const { fault: kind, message } = fault(number({ rows }))
      expect(kind).toBe('#VALUE!')
      expect(message).toContain(`block is ${rows.length} × ${rows.length === 0 ? 0 : 2} cells: accepted is a range of 15 rows, value and unit side by side`)
      expect(message).toContain(NAMES.map((name, index) => `${index + 1} ${name}`).join(', '))
    }
  })

  it('of three columns, or one', () => {
    expect(fault(number({ rows: blockWith().rows.map((row) => [...row, 'note']) })).message).toContain('block is 15 × 3 cells')
    expect(fault(number({ rows: blockWith().rows.map(([value]) => [value]) })).message).toContain('block is 15 × 1 cells')
  })

  it('that is no range', () => {
    for (const given of ['20 TR', 5, null, true, undefined]) expect(fault(number(given))).toEqual({ fault: '#VALUE!', message: expect.stringMatching(/^block is no range: accepted is a range of 15 rows/) })
  })

  it.each(ROWS.map(([name], index) => ({ name, row: index + 1 })))('row $row, $name: is named where its value is no number', ({ name, row }) => {
    for (const value of ['wide', null, true]) {
      const { fault: kind, message } = fault(number(blockWith({ [name]: [value, ROWS[row - 1]?.[2] ?? null] })))
      expect(kind).toBe('#VALUE!')
      expect(message).toContain(`row ${row}, ${name}`)
    }
  })

  it.each(ROWS.map(([name, , unit], index) => ({ name, row: index + 1, unit })))('row $row, $name: is named where its value is out of range', ({ name, row, unit }) => {
    for (const value of [-1e6, 1e12]) expect(fault(number(blockWith({ [name]: [value, unit] })))).toEqual({ fault: '#NUM!', message: expect.stringContaining(`row ${row}, ${name} is `) })
  })

  it.each(ROWS.filter(([, , unit]) => unit !== '-').map(([name]) => name))('%s without unit, or in lb', (name) => {
    expect(fault(number(blockWith({ [name]: [1, null] }))).message).toMatch(new RegExp(`row \\d+, ${name} needs a unit: its second cell is empty`))
    expect(fault(number(blockWith({ [name]: [1, 'lb'] }))).message).toMatch(new RegExp(`row \\d+, ${name} is in lb, a mass; accepted is`))
  })

  it.each(['leg ΣK', 'circuits', 'return ΣK'])('%s is a plain number: its unit may be empty, - or %%', (name) => {
    const value = 6
    const plain = number(blockWith({ [name]: [value, '-'] }))
    expect(plain).toEqual(expect.any(Number))
    for (const unit of [null, '']) expect(number(blockWith({ [name]: [value, unit] }))).toBe(plain)
    expect(number(blockWith({ [name]: [value * 100, '%'] }))).toBe(plain)
    expect(fault(number(blockWith({ [name]: [value, 'm'] }))).message).toContain(`${name} is in m, a length; accepted is -, %`)
  })

  it('a roughness that the narrowest bore does not bear', () => {
    expect(fault(number(blockWith({ roughness: [2, 'mm'] })))).toEqual({ fault: '#NUM!', message: expect.stringMatching(/row 15, roughness is 2 mm; accepted is at most 1\.0541 mm \(relative roughness 0\.05/) })
  })
})

describe('circulation that is not', () => {
  it('no load', () => {
    expect(fault(number(blockWith({ load: [0, 'TR'] })))).toEqual({ fault: '#NUM!', message: expect.stringMatching(/row 1, load is 0 TR; accepted is .*more than 0 TR.*without load nothing boils and nothing circulates/) })
  })

  it('a level that cannot drive the load: how much is missing, and what would help', () => {
    const { fault: kind, message } = fault(number(blockWith({ load: [100, 'TR'] })))
    expect(kind).toBe('#NUM!')
    // 8.2 ft of liquid of 14 °F, hydrostatics; the rest is the balance's own.
    expect(message).toMatch(/the level cannot drive this load: .*circulation number 1.* takes? up 19\.8 kPa and the level gives 16 kPa; missing at best are 3\.83 kPa, 0\.6 m or 1\.97 ft of liquid.*dry out.*higher level/)
  })

  it('the same words for every part', () => {
    expect(call('CIRCULATION.PART', blockWith({ load: [100, 'TR'] }), 'coil friction', 'psi')).toEqual(number(blockWith({ load: [100, 'TR'] })))
  })

  it('a load so small that the loop is one of liquid', () => {
    expect(fault(number(blockWith({ load: [0.01, 'TR'] })))).toEqual({ fault: '#NUM!', message: expect.stringMatching(/fed more than 1000 times what it evaporates.*higher load/) })
  })
})

describe('CIRCULATION.PART says what is wrong', () => {
  it('an unknown part: those there are', () => {
    const { fault: kind, message } = fault(call('CIRCULATION.PART', blockWith(), 'return loss', 'psi'))
    expect(kind).toBe('#VALUE!')
    for (const words of ['unknown part "return loss"', '"driving head"', '"leg loss"', '"coil friction"', '"coil acceleration"', '"coil column"', '"return friction"', '"return column"', '"leg velocity"', '"return velocity"', '"fed flow"']) {
      expect(message).toContain(words)
    }
  })

  it.each([['fed flow', 'psi', 'mass flow', 'kg/s'], ['leg velocity', 'lb/min', 'velocity', 'm/s'], ['coil column', 'ft/s', 'pressure', 'Pa']])('%s in %s', (part, unit, dimension, accepted) => {
    const { fault: kind, message } = fault(call('CIRCULATION.PART', blockWith(), part, unit))
    expect(kind).toBe('#VALUE!')
    expect(message).toMatch(new RegExp(`unit of the result is ${unit}, .*but ${part} is a ${dimension}: accepted is ${accepted}`))
    expect(message).not.toMatch(/psig|vac/)
  })

  it('a pressure counted from the atmosphere, a length, or no unit', () => {
    expect(fault(call('CIRCULATION.PART', blockWith(), 'leg loss', 'psig')).message).toContain('difference of pressure')
    expect(fault(call('CIRCULATION.PART', blockWith(), 'leg loss', 'ft')).message).toContain('unit of the result is ft')
    expect(fault(call('CIRCULATION.PART', blockWith(), 'leg loss', null)).message).toContain('unit of the result is missing')
  })

  it('another void model than the two', () => {
    expect(fault(number(blockWith(), 'Smith'))).toEqual({ fault: '#VALUE!', message: 'unknown void "Smith": accepted is one of "Zivi", "homogeneous"' })
  })

  it('a wrong count of arguments: the signature', () => {
    expect(fault(number())).toEqual({ fault: '#N/A', message: expect.stringContaining('CIRCULATION.NUMBER(block, [void])') })
    expect(fault(call('CIRCULATION.PART', blockWith(), 'leg loss'))).toEqual({ fault: '#N/A', message: expect.stringContaining('CIRCULATION.PART(block, part, unit, [void])') })
  })
})

describe('whatever is given', () => {
  const scalar: fc.Arbitrary<Scalar> = fc.oneof(fc.constant(null), fc.boolean(), fc.double(), fc.string(), fc.constantFrom('m', 'TR', '°F', '-', '%', '5 m', 'leg loss', 'psi', 'Zivi'))
  const isNumberOrFault = (result: unknown) => (isFault(result) ? result.message.length > 0 && !/NaN|undefined/.test(result.message.replace(/".*"/s, '')) : Number.isFinite(result))

  it('a result is a finite number or a fault with words, never an exception or NaN', () => {
    const given: fc.Arbitrary<Given> = fc.oneof(scalar, fc.constant(undefined), fc.constant(blockWith()), fc.array(fc.array(scalar, { maxLength: 3 }), { maxLength: 16 }).map((rows) => ({ rows })))
    fc.assert(fc.property(fc.constantFrom(...circulationFunctions), fc.array(given, { maxLength: 5 }), ({ call: evaluate }, those) => isNumberOrFault(evaluate(those))), { numRuns: 1000 })
  })

  it('with any value in any row, and with all rows somewhere in their range', () => {
    const anyRow = fc.tuple(fc.constantFrom(...NAMES), fc.tuple(scalar, scalar))
    fc.assert(fc.property(fc.array(anyRow, { maxLength: 2 }), (changes) => isNumberOrFault(number(blockWith(Object.fromEntries(changes))))), { numRuns: 1000 })

    const bounds: Readonly<Record<string, readonly [number, number]>> = {
      'load': [1e-300, 1e8], 'drum temperature': [195.55, 373.15], 'level above coil bottom': [1e-300, 30], 'leg bore': [3e-3, 2], 'leg length': [0, 300], 'leg ΣK': [0, 1000],
      'coil height': [0, 30], 'circuits': [1, 1e4], 'circuit bore': [3e-3, 2], 'circuit length': [1e-300, 300], 'return bore': [3e-3, 2], 'return length': [0, 300],
      'return ΣK': [0, 1000], 'return rise': [0, 30], 'roughness': [0, 1.5e-4],
    }
    const units: Readonly<Record<string, string>> = { 'load': 'W', 'drum temperature': 'K', 'leg ΣK': '-', 'circuits': '-', 'return ΣK': '-' }
    const values = fc.tuple(...Object.values(bounds).map(([min, max]) => fc.oneof(fc.double({ min, max, noNaN: true }), fc.constantFrom(min, max))))
    fc.assert(fc.property(values, fc.constantFrom('Zivi', 'homogeneous'), (drawn, model) => {
      const rows = NAMES.map((name, index): Row => [drawn[index] ?? null, units[name] ?? 'm'])
      return isNumberOrFault(number({ rows }, model)) && isNumberOrFault(call('CIRCULATION.PART', { rows }, 'coil friction', 'psi', model))
    }), { numRuns: 2000 })
  })
})
