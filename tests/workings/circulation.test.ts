import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import { expectWorkingsToAgree } from './compare.ts'
import { workingsValues } from './plain-engine.ts'
import type { Bounds } from './sample-calls.ts'

/** Loops of ordinary make, SI: invented, and most of them circulate. */
const ORDINARY: Bounds = {
  'load': [2e3, 1e5], 'drum temperature': [220, 300], 'level above coil bottom': [2, 6], 'leg bore': [0.04, 0.15], 'leg length': [2, 10], 'leg ΣK': [0, 6],
  'coil height': [0, 2], 'circuits': [8, 40], 'circuit bore': [0.015, 0.035], 'circuit length': [2, 20], 'return bore': [0.07, 0.25], 'return length': [0, 10],
  'return ΣK': [0, 6], 'return rise': [0, 4], 'roughness': [0, 1e-4],
}

/** As far as the block's ranges go, but for the roughness, which narrow bores would mostly refuse. */
const EXTREME: Bounds = { 'load': [1e-2, 1e8], 'level above coil bottom': [1e-3, 30], 'circuit length': [1e-3, 300], 'roughness': [0, 1.5e-4] }

describe('workings of the circulation in a plain engine against the computation, 1 000 random loops each', () => {
  // A call has some 220 columns, which take the engine longer to read than all else.
  const timeout = 240_000
  for (const name of ['CIRCULATION.NUMBER', 'CIRCULATION.PART']) {
    it(`${name}, 600 ordinary loops`, () => expectWorkingsToAgree(name, { bounds: ORDINARY, valid: 600 }), timeout)
    it(`${name}, 400 from all that the ranges allow`, () => expectWorkingsToAgree(name, { bounds: EXTREME, valid: 400 }), timeout)
  }
  it('CIRCULATION.LOSS, 700 ordinary loops', () => expectWorkingsToAgree('CIRCULATION.LOSS', { bounds: ORDINARY, valid: 700 }), timeout)
  it('CIRCULATION.LOSS, 300 from all that the ranges allow', () => expectWorkingsToAgree('CIRCULATION.LOSS', { bounds: EXTREME, valid: 300 }), timeout)
})

describe('what the computation refuses is an error in the workings', () => {
  // An invented coil.
  const ROWS = {
    'load': [20, 'TR'], 'drum temperature': [14, '°F'], 'level above coil bottom': [8.2, 'ft'], 'leg bore': [2.067, 'in'], 'leg length': [13, 'ft'], 'leg ΣK': [2.5, '-'],
    'coil height': [4, 'ft'], 'circuits': [12, '-'], 'circuit bore': [0.83, 'in'], 'circuit length': [59, 'ft'], 'return bore': [4.026, 'in'], 'return length': [10, 'ft'],
    'return ΣK': [2, '-'], 'return rise': [4.2, 'ft'], 'roughness': [0.00015, 'ft'],
  } as const
  const loop = (changed: Partial<Record<keyof typeof ROWS, readonly [number, string]>> = {}): Given => ({ rows: Object.values({ ...ROWS, ...changed }) })

  const outcome = (name: string, ...call: Given[]): 'value' | 'refused' | 'differs' => {
    const definition = functionByName(name)
    if (definition === undefined) throw new Error(`there is no function ${name}`)
    const refused = isFault(definition.call(call))
    const [written] = workingsValues(definition, [call])
    return refused !== (typeof written === 'string' && written.startsWith('#')) ? 'differs' : refused ? 'refused' : 'value'
  }

  it.each([
    ['a load that the level cannot drive', loop({ load: [100, 'TR'] })],
    ['a load so small that the number would pass 1000', loop({ load: [0.01, 'TR'] })],
    ['no load', loop({ load: [0, 'TR'] })],
    ['no lift: a coil of no height, and the return at its top', loop({ 'coil height': [0, 'ft'], 'return rise': [0, 'ft'] })],
    ['a roughness above 5 % of the narrowest bore', loop({ roughness: [1.06, 'mm'] })],
    ['a drum outside the property range', loop({ 'drum temperature': [101, '°C'] })],
    ['a load in m', loop({ load: [20, 'm'] })],
  ])('%s', (_, block) => {
    expect(outcome('CIRCULATION.NUMBER', block)).toBe('refused')
    expect(outcome('CIRCULATION.PART', block, 'coil friction', 'psi')).toBe('refused')
  })

  it.each([
    ['coil friction', 'ft/s'], ['coil friction', 'kg/s'], ['leg velocity', 'psi'], ['fed flow', 'm/s'], ['return loss', 'psi'], ['leg loss', 'psig'], ['leg loss', 'ft'],
  ])('%s in %s', (part, unit) => {
    expect(outcome('CIRCULATION.PART', loop(), part, unit)).toBe('refused')
  })

  it('beside these: a roughness of 4.9 % of the narrowest bore, the parts in units that fit, and capitals that do not matter', () => {
    expect(outcome('CIRCULATION.NUMBER', loop({ roughness: [1.03, 'mm'] }), 'HOMOGENEOUS')).toBe('value')
    for (const [part, unit] of [['Coil Friction', 'psi'], ['leg velocity', 'ft/s'], ['fed flow', 'lb/min']] as const) expect(outcome('CIRCULATION.PART', loop(), part, unit)).toBe('value')
  })

  it('another void model than the two', () => expect(outcome('CIRCULATION.NUMBER', loop(), 'Smith')).toBe('refused'))
})

it('no formula of a call grows beyond 1 500 characters', () => {
  for (const name of ['CIRCULATION.NUMBER', 'CIRCULATION.PART']) {
    const columns = functionByName(name)?.workings?.columns ?? []
    expect(columns.length).toBeGreaterThan(100)
    for (const { formula = '' } of columns) expect(formula.replace(/⟨\d+⟩/g, 'ABC1234').length).toBeLessThan(1500)
  }
})
