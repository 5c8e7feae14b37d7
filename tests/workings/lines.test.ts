import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import { pipeSizeSpellings } from '../../functions/lines/pipe-sizes-workings.ts'
import { pipeBore, pipeSizes, schedules, type PipeSize } from '../../functions/lines/pipe-sizes.ts'
import { expectWorkingsToAgree } from './compare.ts'
import { workingsValues } from './plain-engine.ts'

const LINE = { bore: [0.01, 0.3], length: [0, 300], massFlow: [0, 3], roughness: [0, 1e-3] } as const

function both(name: string, calls: readonly (readonly Given[])[]) {
  const definition = functionByName(name)
  if (definition === undefined) throw new Error(`there is no function ${name}`)
  const computed = calls.map((call) => definition.call(call))
  return { computed, written: workingsValues(definition, calls) }
}

describe('workings of pipes in a plain engine against the computation, 1 000 random calls each', () => {
  it('PIPE.VOLUME', () => expectWorkingsToAgree('PIPE.VOLUME'))
  it('PIPE.VELOCITY', () => expectWorkingsToAgree('PIPE.VELOCITY'))
  it('PIPE.BORE in every spelling of a size, and in some of none', () => {
    const none = ['7', '2 mm', 'DN 50', '*', '?', '~', '1-1/8', '']
    expectWorkingsToAgree('PIPE.BORE', { texts: { size: [...pipeSizes.flatMap(pipeSizeSpellings), ...none] } })
  })
  it('PIPE.NEXT', () => expectWorkingsToAgree('PIPE.NEXT', { bounds: { bore: [0.005, 0.62] } }))
})

describe('workings of losses in a plain engine against the computation, 1 000 random calls each', () => {
  it('FRICTION.FACTOR', () => expectWorkingsToAgree('FRICTION.FACTOR'))
  it('FRICTION.FACTOR from laminar to turbulent flow', () => expectWorkingsToAgree('FRICTION.FACTOR', { bounds: { Reynolds: [0.1, 1e5] } }))
  it('PIPE.LOSS', () => expectWorkingsToAgree('PIPE.LOSS', { bounds: { ...LINE, ΣK: [0, 20] } }))
  it('PIPE.LOSS over the whole range of its arguments', () => expectWorkingsToAgree('PIPE.LOSS', { valid: 300 }))
  it('WETRETURN.LOSS', () => expectWorkingsToAgree('WETRETURN.LOSS', { bounds: LINE }))
  it('WETRETURN.LOSS over the whole range of its arguments', () => expectWorkingsToAgree('WETRETURN.LOSS', { valid: 300 }))

  // A fall is a difference of two temperatures near 300 K: engines take differences below 1e-13 of the terms for nothing, so that 1e-11 K is what can be held.
  it('LINE.PENALTY', () => expectWorkingsToAgree('LINE.PENALTY', { bounds: { loss: [0, 300e3] }, scale: () => 0.01 }))
})

describe('pipe sizes in workings', () => {
  it('have every bore of the table, and none where the standard has none', () => {
    const calls = pipeSizes.flatMap((size) => schedules.map((schedule) => ({ size, schedule })))
    const { written } = both('PIPE.BORE', calls.map(({ size, schedule }) => [size, schedule, 'm']))
    for (const [index, { size, schedule }] of calls.entries()) {
      const boreM = pipeBore(size, schedule)
      if (boreM === undefined) expect(written[index]).toBe('#N/A')
      else expect(written[index]).toBeCloseTo(boreM, 14)
    }
  })

  it.each<[PipeSize, Given[]]>([
    ['1/2', ['1/2', '½', 'NPS 1/2', '1/2 in', 0.5, '0.5', '.5', { rows: [[0.5, 'in']] }]],
    ['1-1/2', ['1-1/2', '1 1/2', '1½', ' NPS 1-1/2 ', 'nps1-1/2', '1-1/2"', '1 1/2 inch', 1.5, { rows: [['1-1/2', 'in']] }, { rows: [[1.5]] }]],
    ['2', ['2', 2, '2 in', '2 IN', '2in.', 'NPS 2', '2 NPS', { rows: [[2, 'in']] }, { rows: [['2', 'NPS']] }]],
  ])('%s is found in each of its spellings, in text and number cells, with its unit beside it', (size, spellings) => {
    const { computed, written } = both('PIPE.BORE', spellings.map((spelling) => [spelling, 'STD', 'm']))
    for (const value of [...computed, ...written]) expect(value).toBeCloseTo(pipeBore(size, 'STD') ?? NaN, 14)
  })

  it('are each named by their spellings alone', () => {
    for (const size of pipeSizes) {
      const { computed } = both('PIPE.BORE', pipeSizeSpellings(size).map((spelling) => [spelling, 'XS', 'm']))
      expect(new Set(computed)).toEqual(new Set([pipeBore(size, 'XS')]))
    }
  })

  it('are refused beside a unit other than the inch, or out of the list', () => {
    const { computed, written } = both('PIPE.BORE', [[{ rows: [[2, 'mm']] }, '40', 'm'], [7, '40', 'm'], [null, '40', 'm'], [true, '40', 'm']])
    expect(computed.every(isFault)).toBe(true)
    expect(written).toEqual(computed.map(() => '#N/A'))
  })

  it('take a schedule from a cell that holds a number', () => {
    const { computed, written } = both('PIPE.NEXT', [[{ rows: [[100, 'mm']] }, 40], [{ rows: [[100, 'mm']] }, 80]])
    expect(computed).toEqual(['4', '5'])
    expect(written).toEqual(computed)
  })

  it('come back from their own bores, also through another unit', () => {
    const calls = pipeSizes.flatMap((size) => schedules.flatMap((schedule) => {
      const boreM = pipeBore(size, schedule)
      return boreM === undefined ? [] : [{ size, given: [{ rows: [[boreM, 'm']] }, schedule] }, { size, given: [{ rows: [[boreM / 0.0254, 'in']] }, schedule] }]
    }))
    expect(both('PIPE.NEXT', calls.map(({ given }) => given)).written).toEqual(calls.map(({ size }) => size))
  })
})

describe('workings refuse what the computation refuses', () => {
  const pair = (value: number, unit: string): Given => ({ rows: [[value, unit]] })
  const DRY: Given[] = [pair(25, 'lb/min'), pair(4.026, 'in'), pair(100, 'ft'), pair(20, '°F'), 'vapor', 'psi']
  const swapped = (at: number, value: Given): Given[] => DRY.map((one, i) => (i === at ? value : one))

  it.each<[string, string, Given[]]>([
    ['a flow that chokes', 'PIPE.LOSS', swapped(0, pair(3000, 'lb/min'))],
    ['more than half of the pressure lost', 'PIPE.LOSS', swapped(0, pair(400, 'lb/min')).with(2, pair(1000, 'ft'))],
    ['too rough a pipe', 'PIPE.LOSS', [...DRY, pair(1, 'in')]],
    ['liquid that loses more than the critical pressure', 'PIPE.LOSS', [pair(50, 'kg/s'), pair(1, 'in'), pair(100, 'm'), pair(20, '°F'), 'liquid', 'bar']],
    ['a mixture that chokes', 'WETRETURN.LOSS', [pair(5000, 'lb/min'), 0.25, pair(4.026, 'in'), pair(100, 'ft'), pair(20, '°F'), 'psi']],
    ['a loss to below the property range', 'LINE.PENALTY', [pair(20, '°F'), pair(48, 'psi'), 'Δ°F']],
    ['a bore wider than any', 'PIPE.NEXT', [pair(24, 'in'), 'XS']],
  ])('%s', (_, name, call) => {
    const { computed, written } = both(name, [call])
    expect(isFault(computed[0])).toBe(true)
    expect(written).toEqual(['#N/A'])
  })
})
