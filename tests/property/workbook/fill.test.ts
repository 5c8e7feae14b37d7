import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import type { Area } from '../../../src/workbook/address.ts'
import { setEntry } from '../../../src/workbook/commands.ts'
import { emptyWorkbook, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { fill, fillFrom, stretchedTo } from '../../../src/workbook/fill.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { workbook } from './arbitraries.ts'

const area: fc.Arbitrary<Area> = fc.record({ top: fc.nat(6), left: fc.nat(5), height: fc.integer({ min: 1, max: 5 }), width: fc.integer({ min: 1, max: 4 }) })
  .map(({ top, left, height, width }) => ({ top, left, bottom: top + height - 1, right: left + width - 1 }))

const nameOf = ({ sheets: [first] }: Workbook): string => {
  if (!first) throw new Error('a workbook has a sheet')
  return first.name
}

describe('fill', () => {
  it('undone gives back the document', () => {
    fc.assert(fc.property(workbook, area, fc.constantFrom('down' as const, 'across' as const), (start, selection, way) => {
      const done = applyEdits(start, fill(start, nameOf(start), selection, way))
      expect(writeWorkbook(applyEdits(done.workbook, done.inverse).workbook)).toBe(writeWorkbook(start))
    }))
  })

  it('leaves the cells that it starts from, and all outside of the selection, as they were', () => {
    fc.assert(fc.property(workbook, area, (start, selection) => {
      const before = start.sheets[0]
      const after = applyEdits(start, fill(start, nameOf(start), selection, 'down')).workbook.sheets[0]
      for (let row = 0; row < 14; row++) {
        for (let column = 0; column < 12; column++) {
          const isFilled = row > selection.top && row <= selection.bottom && column >= selection.left && column <= selection.right
          if (!isFilled) expect(after?.rows[row]?.[column]).toEqual(before?.rows[row]?.[column])
        }
      }
    }))
  })

  it('gives a column the values that its formulas would have if typed by hand', () => {
    // Column A holds numbers; what is typed by hand has the row's own number wherever the reference is relative.
    const makers: readonly ((row: number) => string)[] = [
      (row) => `=A${row}*2`, (row) => `=A${row}+$A$1`, (row) => `=SUM(A$1:A${row})`, (row) => `=$A${row}-A$2`, (row) => `=IF(A${row}>3,A${row + 1},"low")`,
    ]
    fc.assert(fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 3, maxLength: 8 }), fc.constantFrom(...makers), (numbers, formula) => {
      const typed = (book: Workbook, row: number, column: number, text: string) => applyEdits(book, setEntry(book, 'Sheet', { row, column }, text)).workbook
      const given = numbers.reduce((book, number, row) => typed(book, row, 0, String(number)), emptyWorkbook())
      const first = typed(given, 0, 1, formula(1))
      const filled = applyEdits(first, fill(first, 'Sheet', { top: 0, left: 1, bottom: numbers.length - 1, right: 1 }, 'down')).workbook
      const byHand = numbers.reduce((book, _, row) => typed(book, row, 1, formula(row + 1)), given)
      expect(filled).toEqual(byHand)
      const column = { top: 0, left: 1, bottom: numbers.length - 1, right: 1 }
      const graph = new Graph(first)
      graph.apply(fill(first, 'Sheet', column, 'down'))
      expect(graph.read('Sheet', column).values).toEqual(new Graph(byHand).read('Sheet', column).values)
    }), { numRuns: 40 })
  })

  it('repeats what it starts from, whichever way it is drawn', () => {
    fc.assert(fc.property(area, fc.nat(12), fc.nat(10), (source, row, column) => {
      const target = stretchedTo(source, { row, column })
      const cells = Array.from({ length: source.bottom - source.top + 1 }, (_, down) => Array.from({ length: source.right - source.left + 1 }, (__, across) => ({
        row: source.top + down, column: source.left + across, cell: { content: down * 100 + across, role: 'input' as const },
      }))).flat()
      const start = applyEdits(emptyWorkbook(), [{ kind: 'cells', sheet: 'Sheet', cells }]).workbook
      const after = applyEdits(start, fillFrom(start, 'Sheet', source, target)).workbook.sheets[0]
      const wrap = (at: number, first: number, count: number) => ((((at - first) % count) + count) % count)
      for (let at = target.top; at <= target.bottom; at++) {
        for (let across = target.left; across <= target.right; across++) {
          const expected = wrap(at, source.top, source.bottom - source.top + 1) * 100 + wrap(across, source.left, source.right - source.left + 1)
          expect(after?.rows[at]?.[across]?.content).toBe(expected)
        }
      }
    }))
  })
})
