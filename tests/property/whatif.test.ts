import fc from 'fast-check'
import { expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { Probe } from '../../src/whatif/probe.ts'
import { closeIn } from '../../src/whatif/root-finding.ts'
import { search } from '../../src/whatif/search.ts'
import { spaced } from '../../src/whatif/spacing.ts'
import type { CellContent, Workbook } from '../../src/workbook/document.ts'
import { cellOf, workbookOf, at } from '../unit/workbook-of.ts'
import { applyEdits } from '../../src/workbook/edits.ts'

const INPUTS = ['A1', 'A2', 'A3', 'A4'] as const
const RESULTS = ['C1', 'C2', 'C3', 'C4', 'C5', 'C6'] as const

const anyReference = fc.constantFrom(...INPUTS, ...RESULTS, 'Other!A1', 'load', '$A$2')
const anyFormula = fc.oneof(
  fc.tuple(anyReference, fc.constantFrom('+', '*', '-', '/', '<'), anyReference).map((parts) => `=${parts.join('')}`),
  fc.tuple(fc.constantFrom('SUM', 'MAX', 'COUNT', 'AVERAGE'), fc.constantFrom('A1:A4', 'A1:C3', 'C4:C6', 'A:A', 'Other!A1:A2')).map(([name, area]) => `=${name}(${area})`),
  fc.tuple(anyReference, fc.constantFrom('"kW"', 'B1')).map(([value, unit]) => `=UNIT.CONVERT(${value}&B$1,${unit})`),
  fc.tuple(anyReference, anyReference, anyReference).map(([test, yes, no]) => `=IF(${test}>5,${yes},${no})`),
  fc.constantFrom('=nowhere', '=1/0', '=ROW()', '=Gone!A1'),
)
const anyNumber = fc.oneof(fc.integer({ min: -20, max: 100 }), fc.double({ min: -1e3, max: 1e3, noNaN: true })).map((value) => value + 0)

const anyWorkbook = fc.tuple(fc.array(anyNumber, { minLength: 4, maxLength: 4 }), fc.array(anyFormula, { minLength: 8, maxLength: 8 }), fc.boolean()).map(([numbers, formulas, check]): Workbook =>
  workbookOf({
    S: {
      B1: ['TR', 'unit'],
      ...Object.fromEntries(INPUTS.map((address, i) => [address, numbers[i] ?? 0])),
      ...Object.fromEntries(RESULTS.map((address, i) => [address, check && i === 0 ? [formulas[i] ?? '=1', 'check' as const] : (formulas[i] ?? '=1')])),
    },
    Other: { A1: formulas[6] ?? '=1', A2: formulas[7] ?? '=1' },
  }, { load: 'S!$A$3' }))

const place = (address: string) => ({ sheet: 'S', ...at(address) })

it('a probe reads what a fresh graph of the workbook with these numbers has, and restored what it had', () => {
  fc.assert(
    fc.property(anyWorkbook, fc.array(fc.tuple(fc.nat(3), anyNumber), { minLength: 1, maxLength: 5 }), fc.shuffledSubarray([...RESULTS], { minLength: 1 }), (workbook, settings, watched) => {
      const probe = new Probe(workbook, INPUTS.map(place), watched.map(place))
      const before = probe.read()
      const numbers = new Map<number, number>()
      for (const [input, number] of settings) {
        probe.set(new Map([[input, number]]))
        numbers.set(input, number)
        expect(probe.read()).toEqual(readFresh(workbook, numbers, watched))
      }
      probe.restore()
      expect(probe.read()).toEqual(before)
      expect(before).toEqual(readFresh(workbook, new Map(), watched))
    }),
    { numRuns: 100 },
  )
})

it('trying numbers on a graph and putting them back leaves every value and state as it was', () => {
  fc.assert(
    fc.property(anyWorkbook, fc.array(fc.tuple(fc.constantFrom(...INPUTS), anyNumber), { minLength: 1, maxLength: 4 }), (workbook, trials) => {
      const graph = new Graph(workbook)
      const [values, states] = [graph.allAreas(), graph.states()]
      graph.tryNumbers(trials.map(([address, number]) => ({ ...place(address), number })))
      graph.putBack(trials.map(([address]) => place(address)))
      expect(graph.allAreas()).toEqual(values)
      expect(graph.states()).toEqual(states)
      expect(graph.workbook).toBe(workbook)
    }),
    { numRuns: 100 },
  )
})

it('stepped numbers begin and end where they should, are apart by the step, and are what one would write', () => {
  fc.assert(
    fc.property(fc.integer({ min: -10_000, max: 10_000 }), fc.integer({ min: 1, max: 500 }), fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 4 }), (start, step, count, decimals) => {
      const unit = 10 ** decimals
      const numbers = spaced({ from: start / unit, to: (start + count * step) / unit, step: step / unit })
      expect(numbers).toEqual(Array.from({ length: count + 1 }, (_, i) => (start + i * step) / unit + 0))
    }),
  )
})

it('closing in never leaves the bracket and ends where the sign changes, whatever the function', () => {
  fc.assert(
    fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: 0.1, max: 9, noNaN: true }), fc.constantFrom(1, 3, 7, 0.2), fc.boolean(), (root, steepness, power, jumps) => {
      const f = (x: number): number => (jumps ? (x < root ? -steepness : steepness * 2) : steepness * Math.sign(x - root) * Math.abs(x - root) ** power)
      let calls = 0
      const closed = closeIn((x) => {
        calls++
        expect(x).toBeGreaterThanOrEqual(-60)
        expect(x).toBeLessThanOrEqual(70)
        return f(x)
      }, { low: -60, high: 70, offLow: f(-60), offHigh: f(70) })
      const ends = closed.kind === 'zero' ? [closed.input] : closed.kind === 'between' ? [closed.low, closed.high] : []
      expect(ends.length).toBeGreaterThan(0)
      // A power of 7 is 0 to the last double some way from its root already.
      for (const end of ends) expect(Math.abs(end - root)).toBeLessThanOrEqual(f(end) === 0 ? 1e-40 ** (1 / Math.max(7, power)) + 1e-12 : 1e-13 * Math.max(1, Math.abs(root)))
      expect(calls).toBeLessThanOrEqual(300)
    }),
  )
})

it('a search finds all roots of a polynomial that lie apart', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 19 }), { minLength: 1, maxLength: 5 }), (roots) => {
      const found = search((x) => roots.reduce((product, root) => product * (x - root * 0.5), 1), 0, 10, [])
      expect(found.roots.map((root) => Number((root.kind === 'zero' ? root.input : root.kind === 'crossing' ? root.low : root.from).toFixed(9)))).toEqual(roots.map((root) => root * 0.5).toSorted((one, other) => one - other))
    }),
  )
})

function readFresh(workbook: Workbook, numbers: ReadonlyMap<number, number>, watched: readonly string[]) {
  const cells = [...numbers].map(([input, number]) => ({ ...at(INPUTS[input] ?? 'A1'), cell: cellOf(number satisfies CellContent) }))
  const graph = new Graph(applyEdits(workbook, [{ kind: 'cells', sheet: 'S', cells }]).workbook)
  return watched.map((address) => {
    const { row, column } = at(address)
    const value = graph.value('S', row, column)
    const check = workbook.sheets[0]?.rows[row]?.[column]?.role === 'check' && typeof value === 'boolean' ? graph.check('S', row, column) : undefined
    return check === undefined ? { value } : { value, check }
  })
}
