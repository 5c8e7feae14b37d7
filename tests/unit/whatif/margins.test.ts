import { describe, expect, it } from 'vitest'
import { findUnit } from '../../../functions/units/units.ts'
import { margins, runAllMargins } from '../../../src/whatif/margins.ts'
import { toleranceWords, usualTolerance } from '../../../src/whatif/tolerances.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import type { GivenTolerance } from '../../../src/workbook/given-tolerances.ts'
import { at, workbookOf } from '../workbook-of.ts'

const place = (address: string) => ({ sheet: 'S', ...at(address) })
const size = (address: string, one: number): GivenTolerance => ({ place: place(address), tolerance: { kind: 'size', size: one } })
const of = (workbook: Workbook, address: string, given: readonly GivenTolerance[] = []) => runAllMargins(margins(workbook, place(address), given))

describe('margins of a result', () => {
  it('calibration of a 50 mm end gauge: 25, 9.7, 2.9 and 16.6 nm come to 32 nm (GUM, JCGM 100:2008, H.1; from memory)', async () => {
    // l = l_s + d − l_s (δα θ + α_s δθ), in nm, 1/K and K.
    const gauge = workbookOf({ S: { A1: 50000623, A2: 215, A3: 0, A4: -0.1, A5: 11.5e-6, A6: 0, A7: '=A1+A2-A1*(A3*A4+A5*A6)' } })
    const found = await of(gauge, 'A7', [size('A1', 25), size('A2', 9.7), size('A3', 0.58e-6), size('A4', 0.41), size('A5', 1.2e-6), size('A6', 0.029)])
    expect(found.base).toBeCloseTo(50000838, 6)
    const reach = (address: string): number => found.moving.find(({ input }) => input.row === at(address).row)?.reach ?? 0
    expect(reach('A1')).toBeCloseTo(25, 3)
    expect(reach('A2')).toBeCloseTo(9.7, 6)
    expect(reach('A3')).toBeCloseTo(2.9, 1)
    expect(reach('A6')).toBeCloseTo(16.6, 0)
    expect(Math.round(found.rootSumSquare.up)).toBe(32)
    expect(Math.round(-found.rootSumSquare.down)).toBe(32)
    // Neither θ nor α_s move the length while the differences they go with are 0.
    expect(found.still.map(({ input: { row } }) => row)).toEqual([at('A4').row, at('A5').row])
  })

  it('a product: changes both ways, ranked; sum, root of squares, and all at once, which is more than the sum', async () => {
    const box = workbookOf({ S: { A1: 3, A2: 4, A3: 5, A4: '=A1*A2*A3', A5: 100 } })
    const found = await of(box, 'A4', [size('A1', 0.3), size('A2', 0.2), size('A3', 0.1)])
    expect(found.moving.map(({ input: { value }, less, more }) => [value, less.change, more.change])).toEqual([[3, expect.closeTo(-6, 9), expect.closeTo(6, 9)], [4, expect.closeTo(-3, 9), expect.closeTo(3, 9)], [5, expect.closeTo(-1.2, 9), expect.closeTo(1.2, 9)]])
    expect(found.sum.up).toBeCloseTo(10.2, 9)
    expect(found.rootSumSquare.up).toBeCloseTo(Math.sqrt(36 + 9 + 1.44), 9)
    expect(found.together.up).toBeCloseTo(3.3 * 4.2 * 5.1, 9)
    expect(found.together.down).toBeCloseTo(2.7 * 3.8 * 4.9, 9)
  })

  it('a result that rises whichever way an input goes has no fall', async () => {
    const bowl = await of(workbookOf({ S: { A1: 0, A2: '=A1^2+1' } }), 'A2', [size('A1', 2)])
    expect(bowl).toMatchObject({ sum: { up: 4, down: 0 }, rootSumSquare: { up: 4, down: 0 }, together: { up: 5, down: 1 } })
  })

  it('tolerances that the workbook keeps count, each in place of the usual one', async () => {
    const sum = workbookOf({ S: { A1: 10.5, A2: 20.5, A3: '=A1+A2' } })
    const { moving } = await runAllMargins(margins({ ...sum, tolerances: [size('A1', 4)] }, place('A3')))
    // 5 % of 20.5 is 1.025.
    expect(moving.map(({ reach, source }) => [reach, source === undefined])).toEqual([[4, true], [expect.closeTo(1.025, 9), false]])
  })

  it('inputs are found through formulas, names and sheets; what is not upstream is left out', () => {
    const workbook = workbookOf({ S: { A1: '=twice+Other!A1', A2: 7 }, Other: { A1: '=SUM(B1:B3)', B1: 1, B2: 2, B3: ['text', 'input'], C1: 9 } }, { twice: 'Other!$C$1' })
    expect(margins(workbook, place('A1')).inputs.map(({ input: { value } }) => value)).toEqual([1, 9, 2])
  })

  it('an end that makes the result fail is told with its words, and does not count', async () => {
    const found = await of(workbookOf({ S: { A1: 1, A2: '=SQRT(1-A1)+A3', A3: 2 } }), 'A2', [size('A1', 0.19), size('A3', 0.1)])
    expect(found.failing).toBe(1)
    expect(found.moving[0]).toMatchObject({ more: { result: undefined, words: expect.stringContaining('#NUM!') }, less: { change: expect.closeTo(Math.sqrt(0.19), 9) } })
    expect(found.sum.up).toBeCloseTo(Math.sqrt(0.19) + 0.1, 9)
  })

  it('leaves everything as it was', async () => {
    const ready = margins(workbookOf({ S: { A1: 3, A2: '=A1*2' } }), place('A2'))
    const once = await runAllMargins(ready)
    expect(await runAllMargins(ready)).toEqual(once)
  })

  it('refuses what no input moves, and what is no number', () => {
    expect(() => margins(workbookOf({ S: { A1: 3 } }), place('A1'))).toThrow('is no formula: nothing moves it')
    expect(() => margins(workbookOf({ S: { A1: '=1/0' } }), place('A1'))).toThrow('comes to no number: #DIV/0!')
  })
})

describe('tolerances that nobody gave (common practice, and ours)', () => {
  it.each([
    [85, 'TR', '± 5 %'], [31, '°F', '± 1 Δ°F'], [-10, '°C', '± 0.5 Δ°C'], [260, 'K', '± 0.5 ΔK'], [500, '°R', '± 1 Δ°F'], [10, 'Δ°F', '± 1 Δ°F'],
    [20, 'psig', '± 1 psi'], [2, 'bar(g)', '± 0.05 bar'], [10, 'inHg vac', '± 2 inHg'], [2, 'psi', '± 5 %'], [24, 'in', '± 1 %'], [4, '-', '± 5 %'],
  ] as const)('%s %s: %s', (value, code, words) => {
    const unit = findUnit(code)
    const { tolerance, source } = usualTolerance(value, unit)
    expect(toleranceWords(tolerance, unit)).toBe(words)
    expect(source).toMatch(/edit$/)
  })

  it('a whole number without a unit is a count, and exact', () => {
    expect(usualTolerance(12, undefined).tolerance).toEqual({ kind: 'share', share: 0 })
    expect(usualTolerance(0.7, undefined).tolerance).toEqual({ kind: 'share', share: 0.05 })
  })
})
