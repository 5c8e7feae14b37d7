import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { rowBlocks } from '../../src/calc/row-blocks.ts'
import { csvFiles } from '../../src/exchange/csv.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { MAX_COLUMNS, MAX_ROWS } from '../../src/workbook/limits.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { emptyWorkbook, type Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { readZip } from './read-zip.ts'

const rowsOf = (widths: readonly number[]) => widths.map((width) => (width === 0 ? undefined : Array.from({ length: width }, () => 1)))
const widths = fc.array(fc.oneof(fc.constant(0), fc.nat(8), fc.nat(16_384)), { maxLength: 60 })

describe('blocks of rows', () => {
  it('hold every row that has a cell once, in order, none longer than the block is wide', () => {
    fc.assert(fc.property(widths, fc.integer({ min: 1, max: 20 }), (list, most) => {
      const blocks = [...rowBlocks(rowsOf(list), most)]
      const held = blocks.flatMap(({ top, end }) => Array.from({ length: end - top }, (_, index) => top + index))
      expect(held).toEqual(held.toSorted((one, other) => one - other))
      expect(new Set(held).size).toBe(held.length)
      for (const [row, width] of list.entries()) if (width > 0) expect(held).toContain(row)
      for (const { top, end, width } of blocks) {
        expect(end - top).toBeLessThanOrEqual(most)
        expect(Math.max(...list.slice(top, end))).toBe(width)
      }
    }))
  })

  it('take no more than a few cells for each in use, or some tens of thousands', () => {
    fc.assert(fc.property(widths, (list) => {
      const rows = rowsOf(list)
      for (const { top, end, width } of rowBlocks(rows, Infinity)) {
        const used = list.slice(top, end).reduce((sum, length) => sum + length, 0)
        expect((end - top) * width).toBeLessThanOrEqual(50_000 + 3 * used)
      }
    }))
  })
})

describe('a cell in the last corner of a sheet', () => {
  const typed = (workbook: Workbook, row: number, column: number, text: string) => applyEdits(workbook, setEntry(workbook, 'Sheet', { row, column }, text)).workbook
  const workbook = typed(typed(emptyWorkbook(), 0, 0, '5'), MAX_ROWS - 1, MAX_COLUMNS - 1, '=A1*2')
  const values = new Graph(workbook).allValues()

  it('is computed and exported like any other', async () => {
    expect(values.get('Sheet')?.[MAX_ROWS - 1]?.[MAX_COLUMNS - 1]).toBe(10)
    const file = readZip(await exportXlsx(workbook, values, { date: new Date(0) }))
    expect([...file.values()].some((part) => part.includes('r="XFD1048576"') && part.includes('<v>10</v>'))).toBe(true)
  })

  it('makes no text file of seventeen thousand million commas, and says why', () => {
    expect(() => csvFiles(workbook, values, { date: new Date(0) })).toThrow(/column XFD: a text file would need 17179869184 fields.*accepted: up to/)
  })
})
