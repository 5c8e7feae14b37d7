import { describe, expect, it } from 'vitest'
import { findUnit } from '../../../functions/units/units.ts'
import { usualBounds } from '../../../src/whatif/bounds.ts'
import { solve, type SolveRequest } from '../../../src/whatif/solve.ts'
import { solvedWords } from '../../../src/whatif/solve-words.ts'
import { at, workbookOf, type Put } from '../workbook-of.ts'

const place = (address: string) => ({ sheet: 'Duty', ...at(address) })

/** One input x in B1, and a formula of it in B2. */
const solved = (formula: string, number: number, rest: Partial<SolveRequest> = {}, input: Put = 4, unit: string | null = null) =>
  solve(workbookOf({ Duty: { A1: ['x', 'label'], B1: input, ...(unit === null ? {} : { C1: [unit, 'unit'] as const }), A2: ['result', 'label'], B2: formula } }), {
    by: place('B1'), target: place('B2'), goal: { kind: 'number', number }, within: { from: 0, to: 10 }, ...rest,
  })

const check = (formula: string, rest: Partial<SolveRequest> = {}) =>
  solve(workbookOf({ Duty: { A1: ['x', 'label'], B1: 4, A2: ['fine', 'label'], B2: [formula, 'check'] } }), {
    by: place('B1'), target: place('B2'), goal: { kind: 'met' }, within: { from: 0, to: 10 }, ...rest,
  })

describe('solving for a number', () => {
  it('finds the one input that does, to the last digits', () => {
    const found = solved('=B1^3-B1', 60)
    expect(found).toMatchObject({ kind: 'found', isMonotonic: false, solutions: [{ kind: 'exact' }], gaps: [], wanted: 60 })
    expect(found.solutions[0]?.at.input).toBeCloseTo(4, 13)
    const cubeRoot = solved('=B1^3', 20).solutions[0]?.at.input ?? Number.NaN
    expect(Math.abs(cubeRoot / Math.cbrt(20) - 1)).toBeLessThan(1e-14)
    expect(solved('=B1^3', 20).isMonotonic).toBe(true)
  })

  it('lists all of several, from the lowest', () => {
    const { kind, solutions } = solved('=(B1-1)*(B1-2.5)*(B1-7)', 0)
    expect(kind).toBe('several')
    expect(solutions.map(({ at: { input } }) => Number(input.toFixed(12)))).toEqual([1, 2.5, 7])
    // Roots of sin 5x on 0 to 10 are multiples of π/5.
    expect(solved('=SIN(5*B1)', 0).solutions.map(({ at: { input } }) => Number((input / (Math.PI / 5)).toFixed(9)))).toEqual(Array.from({ length: 16 }, (_, i) => i))
  })

  it('finds two that lie close together between its looks', () => {
    expect(solved('=(B1-3.3)^2', 1e-4).solutions.map(({ at: { input } }) => Number(input.toFixed(9)))).toEqual([3.29, 3.31])
    expect(solved('=(B1-3.3)^2+5', 5).solutions.map(({ at: { input } }) => Number(input.toFixed(5)))).toEqual([3.3])
  })

  it('says what is nearest where none does', () => {
    const none = solved('=(B1-3.3)^2+5', 4)
    expect(none).toMatchObject({ kind: 'none', solutions: [] })
    expect(none.nearest?.input).toBeCloseTo(3.3, 5)
    expect(solvedWords(none)).toMatch(/^No input between 0 and 10 does: result \(Duty!B2\) never comes to 4\. Nearest is 5 at 3\.3/)
    expect(solved('=B1*2', 30).nearest).toMatchObject({ input: 10, reading: { value: 20 } })
  })

  it('where the result steps over the target gives the smallest input after the step', () => {
    const step = solved('=CEILING(B1,3)', 5)
    expect(step).toMatchObject({ kind: 'found', solutions: [{ kind: 'step', before: { reading: { value: 3 } }, at: { reading: { value: 6 } } }] })
    const [only] = step.solutions
    if (only?.kind !== 'step') throw new Error('a step was expected')
    expect(only.before.input).toBeCloseTo(3, 9)
    expect(only.at.input).toBeGreaterThan(only.before.input)
    expect(solvedWords(step)).toContain('where it steps from 3 to 6')
  })

  it('where the result stays at the target gives from where to where', () => {
    const { kind, solutions: [only] } = solved('=CEILING(B1,3)', 6)
    expect({ kind, only: only?.kind }).toEqual({ kind: 'found', only: 'stretch' })
    if (only?.kind !== 'stretch') throw new Error('a stretch was expected')
    expect(only.at.input).toBeCloseTo(3, 8)
    expect(only.until.input).toBeCloseTo(6, 8)
  })

  it('tells a result that hangs on nothing, and one that only seems to', () => {
    expect(solved('=7*3', 5).kind).toBe('independent')
    expect(solved('=B1*0+21', 5).kind).toBe('independent')
    expect(solved('=B1*0+21', 21).kind).toBe('everywhere')
    expect(solvedWords(solved('=7*3', 5))).toBe('result (Duty!B2) does not hang on x (Duty!B1): it is 21 throughout.')
  })

  it('looks through errors on the way, and gives their words', () => {
    const found = solved('=IF(AND(B1>4,B1<6),1/0,B1)', 7)
    expect(found).toMatchObject({ kind: 'found', gaps: [{ words: '#DIV/0!: division by zero, or by an empty cell' }] })
    expect(found.gaps[0]?.from).toBeCloseTo(4, 7)
    expect(found.gaps[0]?.to).toBeCloseTo(6, 7)
    expect(solved('=IF(AND(B1>4,B1<6),1/0,B1)', 5)).toMatchObject({ kind: 'none' })
    expect(solved('=SQRT(B1-5)', 0.001).solutions[0]?.at.input).toBeCloseTo(5.000001, 9)
    expect(solved('=SQRT(-1-B1)', 1)).toMatchObject({ kind: 'no number' })
    // Where the gap lies between two looks and hides the change of sign, neither side is a solution.
    expect(solved('=IF(ABS(B1-5.1)<0.001,1/0,B1)', 5.1)).toMatchObject({ kind: 'none', gaps: [{}] })
  })

  it('takes a target and bounds in other units', () => {
    const workbook = workbookOf({ Duty: { B1: 4, C1: ['ft', 'unit'], B2: '=B1*2', C2: ['ft', 'unit'] } })
    const found = solve(workbook, { by: place('B1'), target: place('B2'), goal: { kind: 'number', number: 3.048, unit: findUnit('m') }, within: { from: 100, to: 200, unit: findUnit('cm') } })
    expect(found).toMatchObject({ kind: 'found', wanted: 10 })
    expect(found.solutions[0]?.at.input).toBeCloseTo(5, 12)
    expect(found.bounds.from).toBeCloseTo(100 / 30.48, 12)
  })

  it('keeps the path, each input once, the base first', () => {
    const { path } = solved('=B1^3', 20)
    expect(path[0]).toEqual({ input: 4, reading: { value: 64 } })
    expect(new Set(path.map(({ input }) => input)).size).toBe(path.length)
    for (const { input, reading } of path) expect(reading.value).toBeCloseTo(input ** 3, 9)
  })

  it.each<[string, () => unknown]>([
    ['Duty!B2 (result) cannot be brought to a target: it is typed in, not computed', () => solved(21 as never, 5)],
    ['is no number to come to', () => solved('=B1', Number.NaN)],
    ['is no check, which could be met', () => solved('=B1', 1, { goal: { kind: 'met' } })],
    ['is a check: it can be met, not come to 3', () => check('=B1<3', { goal: { kind: 'number', number: 3 } })],
    ['from 3 to 3 there is nothing to look through', () => solved('=B1', 1, { within: { from: 3, to: 3 } })],
    ['cannot be varied: it holds text', () => solved('=B1', 1, {}, ['four', 'input'])],
  ])('refuses: %s', (words, ask) => expect(ask).toThrow(words))
})

describe('solving for where a check just holds', () => {
  it('gives the last input at which it holds, and on which side', () => {
    const found = check('=B1*3<=21')
    expect(found).toMatchObject({ kind: 'found', solutions: [{ kind: 'limit', holds: 'below', at: { reading: { value: true } }, beyond: { reading: { value: false } } }] })
    expect(found.solutions[0]?.at.input).toBeCloseTo(7, 9)
    // The engine takes numbers that differ by 1e-13 of themselves for equal.
    expect(check('=B1>=2.5').solutions).toMatchObject([{ holds: 'above', at: { input: expect.closeTo(2.5, 11) } }])
  })

  it('works without a margin too', () => {
    const { kind, solutions } = check('=AND(B1>2,B1<=6.25)')
    expect(kind).toBe('several')
    expect(solutions).toMatchObject([{ holds: 'above' }, { holds: 'below' }])
    expect(solutions.map(({ at: { input } }) => Number(input.toFixed(9)))).toEqual([2, 6.25])
  })

  it('tells met everywhere from met nowhere', () => {
    expect(solvedWords(check('=B1>=-1'))).toBe('fine (Duty!B2) is met everywhere between 0 and 10.')
    expect(check('=B1>20')).toMatchObject({ kind: 'none', solutions: [] })
    expect(check('=1/0>B1')).toMatchObject({ kind: 'no number' })
  })
})

describe('bounds that nobody gave', () => {
  const bounds = (value: number, code?: string) => usualBounds({ value, unit: code === undefined ? undefined : findUnit(code) }, 101325)
  it.each([
    [20, '°F', -52, 92], [-100, '°F', -106.6, -28], [300, 'K', 260, 340], [10, 'Δ°F', 0, 72], [0, 'ΔK', -40, 40], [85, 'TR', 8.5, 850],
    [30, '%', 0, 100], [150, '%', 15, 1500], [0, 'm', -100, 100], [-5, undefined, -50, -0.5],
  ] as const)('%s %s: %s to %s', (value, code, from, to) => {
    const found = bounds(value, code)
    expect(found.from).toBeCloseTo(from, 9)
    expect(found.to).toBeCloseTo(to, 9)
    expect(found.why).not.toBe('')
  })

  it('of a gauge pressure go by the absolute one, and stay above a perfect vacuum', () => {
    const { from, to } = bounds(0, 'bar(g)')
    expect(from).toBeCloseTo(1.01325 / 5 - 1.01325, 9)
    expect(to).toBeCloseTo(1.01325 * 4, 9)
    expect(bounds(20, 'inHg vac').from).toBeLessThan(20)
    expect(bounds(20, 'inHg vac').to).toBeLessThan(29.93)
  })
})
