import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { convert } from '../../functions/units/convert.ts'
import { findUnit } from '../../functions/units/units.ts'
import { Graph } from '../../src/calc/graph.ts'
import { appendRows, rowsAppended } from '../../src/exchange/lists/append-rows.ts'
import { mapRows } from '../../src/exchange/lists/map-rows.ts'
import { readNumber } from '../../src/exchange/lists/read-number.ts'
import { sourceFor, suggestMapping } from '../../src/exchange/lists/suggest-mapping.ts'
import type { ReadValue } from '../../src/exchange/reading/contents.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { cellAt, type Workbook } from '../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../src/workbook/edits.ts'
import { entryOf } from '../../src/workbook/entry.ts'
import { fill } from '../../src/workbook/fill.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { writeWorkbook } from '../../src/workbook/file.ts'
import { inventory, listNamed, sheetOfRows } from '../unit/lists/read-list.ts'

const workbook = inventory()
const list = listNamed(workbook, 'Charge')
const written = writeWorkbook(workbook)

interface Part {
  readonly shape: 'vertical' | 'horizontal' | 'pipe' | 'volume'
  readonly heads: string
  readonly count: number
  readonly diameterMm: number
  readonly lengthM: number
  readonly volumeM3: number
  readonly celsius: number
  readonly operation: number
  readonly most: number
}

const part = fc.record({
  shape: fc.constantFrom('vertical' as const, 'horizontal' as const, 'pipe' as const, 'volume' as const),
  heads: fc.constantFrom('2:1', 'hemi', 'flat', 'dished 6%', 'dished 10%'),
  count: fc.integer({ min: 1, max: 20 }),
  diameterMm: fc.integer({ min: 20, max: 2000 }),
  lengthM: fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10),
  volumeM3: fc.integer({ min: 1, max: 900 }).map((hundredths) => hundredths / 100),
  celsius: fc.integer({ min: -50, max: 45 }),
  operation: fc.integer({ min: 0, max: 90 }),
  most: fc.integer({ min: 0, max: 90 }),
})

const HEADINGS = ['Part', 'Zone', 'Suction level', 'Kind of part', 'Shape', 'Heads', 'How many', 'Inside diameter (mm)', 'Length (m)', 'Volume given (m3)', 'Temperature (°C)', 'Filled in operation (%)', 'Filled at most (%)']
const rowOf = (one: Part, index: number): ReadValue[] => [`New ${index}`, 'Dock', 'High', 'Coil', one.shape, one.heads, one.count, one.diameterMm, one.lengthM, one.volumeM3, one.celsius, one.operation, one.most]

function mapped(parts: readonly Part[]) {
  const source = sourceFor(list, sheetOfRows([HEADINGS, ...parts.map(rowOf)]))
  return mapRows(list, source, suggestMapping(list, source), { workbook })
}

/** The same rows by the commands of whoever types: a row inserted, filled down from the one above, each cell typed over. */
function typed(rows: ReturnType<typeof mapped>): Workbook {
  let now = workbook
  const act = (edits: readonly Edit[]) => void (now = applyEdits(now, edits).workbook)
  for (const [index, { values }] of rows.entries()) {
    const row = list.lastRow + 1 + index
    act(insertLines(now, 'Charge', { axis: 'rows', at: row, count: 1 }))
    act(fill(now, 'Charge', { top: row - 1, bottom: row, left: 1, right: 16 }, 'down'))
    for (const [at, { column }] of list.columns.entries()) act(setEntry(now, 'Charge', { row, column }, entryOf(values[at] ?? null)))
  }
  return now
}

const totals = (graph: Graph) => [14, 15, 16].map((column) => graph.value('Charge', 6, column))

describe('rows of any list', () => {
  it('come to the totals that typing the same rows gives, and the sums cover all of them', () => {
    fc.assert(fc.property(fc.array(part, { minLength: 1, maxLength: 4 }), (parts) => {
      const rows = mapped(parts)
      expect(rows.flatMap(({ problems }) => problems)).toEqual([])
      const after = applyEdits(workbook, appendRows(workbook, list, rows.map(({ values }) => values))).workbook
      const graph = new Graph(after)
      expect(totals(graph)).toEqual(totals(new Graph(typed(rows))))
      const end = (rowsAppended(list, rows.length).at(-1) ?? 0) + 1
      const sum = /^=SUM\(O8:O(\d+)\)$/.exec(String(cellAt(after, 'Charge', 6, 14)?.content))
      expect(Number(sum?.[1])).toBeGreaterThanOrEqual(end)
      const listed = Array.from({ length: end - 7 }, (_, index) => Number(graph.value('Charge', 7 + index, 15)))
      expect(listed.reduce((all, one) => all + one, 0)).toBeCloseTo(Number(graph.value('Charge', 6, 15)), 6)
    }), { numRuns: 6, endOnFailure: true })
  })
  it('appended and taken back leave the very same workbook', () => {
    fc.assert(fc.property(fc.array(part, { minLength: 1, maxLength: 30 }), (parts) => {
      const { workbook: after, inverse } = applyEdits(workbook, appendRows(workbook, list, mapped(parts).map(({ values }) => values)))
      expect(after).not.toBe(workbook)
      expect(writeWorkbook(applyEdits(after, inverse).workbook)).toBe(written)
    }), { numRuns: 25 })
  })
  it('keep their sizes through the change of units', () => {
    fc.assert(fc.property(part, (one) => {
      const values = mapped([one])[0]?.values ?? []
      const back = (heading: string, from: string, to: string): number => {
        const [unit, other] = [findUnit(from), findUnit(to)]
        const value = values[list.columns.findIndex((column) => column.heading === heading)]
        if (!unit || !other || typeof value !== 'number') throw new Error(`${heading}: ${String(value)}`)
        return convert(value, unit, other)
      }
      expect(back('Inside diameter', 'in', 'mm')).toBeCloseTo(one.diameterMm, 9)
      expect(back('Length', 'ft', 'm')).toBeCloseTo(one.lengthM, 11)
      expect(back('Temperature', '°F', '°C')).toBeCloseTo(one.celsius, 10)
      expect(values[list.columns.findIndex(({ heading }) => heading === 'Filled at most')]).toBe(one.most)
    }))
  })
  it('of any texts at all are mapped without a throw, each cell taken or told of', () => {
    fc.assert(fc.property(fc.array(fc.array(fc.oneof(fc.string(), fc.double(), fc.boolean(), fc.constant(null)), { maxLength: 14 }), { minLength: 1, maxLength: 8 }), (cells) => {
      const source = sourceFor(list, sheetOfRows([HEADINGS, ...cells.map((row) => row.map((value) => (typeof value === 'number' && !Number.isFinite(value) ? null : value)))]))
      const rows = mapRows(list, source, suggestMapping(list, source), { workbook })
      const good = rows.filter(({ problems }) => problems.length === 0)
      expect(() => applyEdits(workbook, appendRows(workbook, list, good.map(({ values }) => values)))).not.toThrow()
    }), { numRuns: 200 })
  })
})

describe('numbers in cells', () => {
  it('written as code writes them come back to the last digit', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(readNumber(String(value), 'unknown')).toMatchObject({ value: value === 0 ? 0 : value })
    }))
  })
  it('of any text are numbers or words', () => {
    fc.assert(fc.property(fc.string(), fc.constantFrom('decimal' as const, 'thousands' as const, 'unknown' as const), (text, comma) => {
      const read = readNumber(text, comma)
      expect('why' in read ? read.why.length > 0 : Number.isFinite(read.value)).toBe(true)
    }))
  })
})
