import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { convert } from '../../../functions/units/convert.ts'
import { findUnit, units } from '../../../functions/units/units.ts'
import { withCells } from '../../../src/workbook/cells.ts'
import { emptyWorkbook, type Cell, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { restate, unitSystemOf } from '../../../src/workbook/restate.ts'
import { counterpart } from '../../../src/workbook/unit-pairs.ts'

const value = fc.oneof(
  fc.integer({ min: -1_000, max: 100_000 }),
  fc.tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.integer({ min: -8, max: 6 })).map(([digits, exponent]) => Number(`${digits}e${exponent}`)),
  fc.double({ min: -1e9, max: 1e9, noNaN: true }),
).map((one) => one + 0)

/** Units of both systems side by side, aliases among them, with values in a row, in a table and as quantities. */
const unitText = fc.constantFrom(...units.flatMap(({ code, aliases }) => [code, ...aliases]), 'ft³', 'K-value')

const mixed: fc.Arbitrary<Workbook> = fc.array(fc.record({ unit: unitText, value, below: fc.array(value, { maxLength: 3 }) }), { minLength: 1, maxLength: 6 }).map((items) => {
  const start = emptyWorkbook()
  const cells = items.flatMap(({ unit, value: number, below }, index) => {
    const row = index * 6
    return [
      at(row, 0, number, 'input'),
      at(row, 1, unit, 'unit'),
      at(row, 3, `${number} ${unit}`, 'input'),
      at(row, 5, unit, 'unit'),
      ...below.map((one, below) => at(row + 1 + below, 5, one, 'input')),
    ]
  })
  return { ...start, sheets: start.sheets.map((sheet) => withCells(sheet, cells)) }
})

function at(row: number, column: number, content: Cell['content'], role: Cell['role']) {
  return { row, column, cell: { content, role } }
}

const inUnits = (workbook: Workbook, system: 'US' | 'SI') => applyEdits(workbook, restate(workbook, system)).workbook

const contents = ({ sheets }: Workbook) => sheets.map(({ rows }) => rows.map((row) => row?.map((cell) => cell?.content)))

const sizesOf = ({ tolerances = [] }: Workbook) => tolerances.map(({ place, tolerance }) => [place, tolerance.kind === 'size' ? tolerance.size : undefined])

describe('restate', () => {
  it('to the other system and back gives the very same contents, to the last digit and letter, however often', () => {
    fc.assert(
      fc.property(mixed, (start) => {
        const [there, back] = unitSystemOf(start) === 'SI' ? (['US', 'SI'] as const) : (['SI', 'US'] as const)
        const once = inUnits(start, there)
        const home = inUnits(once, back)
        expect(contents(home)).toEqual(contents(start))
        expect(contents(inUnits(home, there))).toEqual(contents(once))
      }),
      { numRuns: 500 },
    )
  })

  it('brings tolerances there and back to the last digit, in step with their inputs', () => {
    fc.assert(
      fc.property(mixed, fc.array(fc.tuple(fc.nat(35), fc.constantFrom(0, 5), value.map(Math.abs)), { minLength: 1, maxLength: 6 }), (cells, sizes) => {
        const given = new Map(sizes.map(([row, column, size]) => [`${row}:${column}`, { place: { sheet: 'Sheet', row, column }, tolerance: { kind: 'size' as const, size } }]))
        const start = applyEdits(cells, [{ kind: 'tolerances', tolerances: [...given.values()] }]).workbook
        const [there, back] = unitSystemOf(start) === 'SI' ? (['US', 'SI'] as const) : (['SI', 'US'] as const)
        const once = inUnits(start, there)
        const home = inUnits(once, back)
        expect(sizesOf(home)).toEqual(sizesOf(start))
        expect(sizesOf(inUnits(home, there))).toEqual(sizesOf(once))
      }),
      { numRuns: 300 },
    )
  })

  it('twice to the same units is once', () => {
    fc.assert(
      fc.property(mixed, fc.constantFrom('US' as const, 'SI' as const), (start, system) => {
        const once = inUnits(start, system)
        expect(restate(once, system)).toEqual([])
      }),
      { numRuns: 300 },
    )
  })

  it('keeps every quantity within 1e-12 of it', () => {
    fc.assert(
      fc.property(mixed, (start) => {
        const restated = inUnits(start, 'SI')
        for (const [index, row] of start.sheets[0]?.rows.entries() ?? []) {
          const [before, unitBefore] = row ?? []
          const [after, unitAfter] = restated.sheets[0]?.rows[index] ?? []
          const from = typeof unitBefore?.content === 'string' ? findUnit(unitBefore.content) : undefined
          const to = typeof unitAfter?.content === 'string' ? findUnit(unitAfter.content) : undefined
          if (!from || !to || typeof before?.content !== 'number' || typeof after?.content !== 'number') continue
          const exact = convert(before.content, from, to, 0)
          expect(Math.abs(after.content - exact)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(exact)))
        }
      }),
    )
  })

  it('pairs only units of one dimension that are gauge together, so that no site is needed', () => {
    for (const unit of units) {
      for (const system of ['US', 'SI'] as const) {
        const code = counterpart(unit.code, system)
        if (code === undefined) continue
        const other = findUnit(code)
        expect({ unit: unit.code, dimension: other?.dimension, gauge: other?.gauge }).toEqual({ unit: unit.code, dimension: unit.dimension, gauge: unit.gauge })
        expect(counterpart(code, system)).toBeUndefined()
      }
    }
  })
})
