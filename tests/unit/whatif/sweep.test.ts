import { describe, expect, it } from 'vitest'
import { findUnit } from '../../../functions/units/units.ts'
import { runSweep, sweep, type SweepRequest, type Swept } from '../../../src/whatif/sweep.ts'
import { failuresInOrder } from '../../../src/whatif/sweep-words.ts'
import { at, workbookOf } from '../workbook-of.ts'

const place = (address: string) => ({ sheet: 'S', ...at(address) })
const sheet = () => workbookOf({
  S: {
    A1: ['x', 'label'], B1: 5, C1: ['m', 'unit'], A2: ['y', 'label'], B2: 2, A3: ['product', 'label'], B3: '=B1*B2', C3: ['m', 'unit'],
    A4: ['small', 'label'], B4: ['=B3<=20', 'check'], A5: ['not near 3', 'label'], B5: ['=1/(B1-3)<2', 'check'], A6: ['later', 'label'], B6: ['=B1<8.5', 'check'], A7: ['root', 'label'], B7: '=SQRT(B1-2)',
  },
})
const run = (request: SweepRequest): Promise<Swept> => runSweep(sweep(sheet(), request))
const x = { place: place('B1'), spacing: { from: 0, to: 20, step: 2 } }

describe('a sweep', () => {
  it('gives a point for each number, with what was watched', async () => {
    const { axes, points } = await run({ vary: [x], watch: [place('B3'), place('B7')] })
    expect(axes).toMatchObject([{ unitText: 'm', input: { label: 'x' } }])
    expect(points.map(({ given: [one], readings: [product] }) => [one, product?.value])).toEqual([0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20].map((one) => [one, one * 2]))
    expect(points[0]?.readings[1]?.value).toMatchObject({ error: '#NUM!' })
  })

  it('finds where checks turn, to 1e-9 of a step', async () => {
    const { limits } = await run({ vary: [x], watch: [place('B3'), place('B4'), place('B6')] })
    expect(limits).toMatchObject([{ watched: 2, from: 'met', to: 'not met', between: [4, 5] }, { watched: 1, from: 'met', to: 'not met', between: [5, 6] }])
    const [later, small] = limits
    expect(Math.abs((later?.last ?? 0) - 8.5)).toBeLessThanOrEqual(2e-9)
    expect(Math.abs((small?.first ?? 0) - 10)).toBeLessThanOrEqual(2e-9)
    expect((later?.first ?? 0) - (later?.last ?? 0)).toBeGreaterThan(0)
  })

  it('finds where a check has no verdict, and where it has one again', async () => {
    const { limits } = await run({ vary: [{ place: place('B1'), spacing: { list: [2, 3, 4] } }], watch: [place('B5')] })
    expect(limits).toMatchObject([{ from: 'met', to: 'none', first: 3 }, { from: 'none', to: 'met' }])
  })

  it('takes the numbers in another unit, and tells limits in it', async () => {
    const { axes, points, limits } = await run({ vary: [{ place: place('B1'), spacing: { from: 800, to: 900, step: 25 }, unit: findUnit('cm') }], watch: [place('B3'), place('B6')] })
    expect(axes[0]?.unitText).toBe('cm')
    expect(points.map(({ readings: [product] }) => product?.value)).toEqual([16, 16.5, 17, 17.5, 18])
    expect(limits[0]?.first).toBeCloseTo(850, 7)
  })

  it('of two inputs goes along the first for each number of the second, with the limits of each row', async () => {
    const { points, limits } = await run({ vary: [x, { place: place('B2'), spacing: { list: [1, 2, 4, 50] } }], watch: [place('B4')] })
    expect(points.slice(0, 12).map(({ at: position }) => position)).toEqual([...Array.from({ length: 11 }, (_, i) => [i, 0]), [0, 1]])
    expect(limits.map(({ row, last }) => [row, Math.round(last * 1e6) / 1e6])).toEqual([[1, 10], [2, 5], [3, 0.4]])
  })

  it('says which check fails first, whichever way it runs', async () => {
    const watch = [place('B4'), place('B6')]
    const failures = ({ axes: [axis], limits }: Swept) => axis && failuresInOrder(axis, limits)
    expect(failures(await run({ vary: [x], watch }))?.[0]).toMatchObject({ watched: 1 })
    expect(failures(await run({ vary: [{ place: place('B1'), spacing: { from: 20, to: 0, step: 2 } }], watch }))).toEqual([])
  })

  it('can be stopped between points', async () => {
    let last = 0
    const stopped = runSweep(sweep(sheet(), { vary: [x], watch: [place('B3')] }), (points) => {
      last = points
      if (points === 4) throw new Error('stopped')
      return undefined
    })
    await expect(stopped).rejects.toThrow('stopped')
    expect(last).toBe(4)
  })

  it.each<[string, SweepRequest]>([
    ['0 inputs are varied; accepted: one or two', { vary: [], watch: [place('B3')] }],
    ['no cell is watched; accepted: one to 200', { vary: [x], watch: [] }],
    ['points; accepted: up to 100000', { vary: [{ ...x, spacing: { from: 0, to: 1, points: 1000 } }, { place: place('B2'), spacing: { from: 0, to: 1, points: 1000 } }], watch: [place('B3')] }],
    ['up to 2000000 values', { vary: [{ ...x, spacing: { from: 0, to: 1, points: 100_000 } }], watch: Array.from({ length: 30 }, () => place('B3')) }],
    ['which is in m', { vary: [{ ...x, unit: findUnit('kW') }], watch: [place('B3')] }],
    ['which has no unit; accepted: a number alone', { vary: [{ place: place('B2'), spacing: { list: [1] }, unit: findUnit('kW') }], watch: [place('B3')] }],
    ["'S'!B3 (product) cannot be varied", { vary: [{ ...x, place: place('B3') }], watch: [place('B3')] }],
  ])('refuses: %s', (words, request) => expect(() => sweep(sheet(), request)).toThrow(words))
})
