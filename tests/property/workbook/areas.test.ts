import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Area } from '../../../src/workbook/address.ts'
import { cellCount, disjoint, lineUp, spans } from '../../../src/workbook/areas.ts'

const span = fc.tuple(fc.nat(9), fc.nat(4)).map(([first, more]) => ({ first, last: first + more }))
const area = fc.tuple(span, span).map(([rows, columns]): Area => ({ top: rows.first, bottom: rows.last, left: columns.first, right: columns.last }))
const areas = fc.array(area, { minLength: 1, maxLength: 5 })

const cellsOf = ({ top, left, bottom, right }: Area): string[] => {
  const cells: string[] = []
  for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) cells.push(`${row}:${column}`)
  return cells
}

describe('several areas', () => {
  it('without overlap hold the same cells, each once', () => {
    fc.assert(fc.property(areas, (some) => {
      const cells = disjoint(some).flatMap(cellsOf)
      expect(cells.toSorted()).toEqual([...new Set(some.flatMap(cellsOf))].toSorted())
      expect(cellCount(some)).toBe(cells.length)
    }))
  })

  it('line up exactly where each of their rows meets each of their columns', () => {
    fc.assert(fc.property(areas, (some) => {
      const cells = new Set(some.flatMap(cellsOf))
      const rows = [...new Set([...cells].map((cell) => Number(cell.split(':')[0])))].toSorted((one, other) => one - other)
      const columns = [...new Set([...cells].map((cell) => Number(cell.split(':')[1])))].toSorted((one, other) => one - other)
      const isBlock = rows.every((row) => columns.every((column) => cells.has(`${row}:${column}`)))
      expect(lineUp(some)).toEqual(isBlock ? { rows, columns } : undefined)
    }))
  })

  it('of the same rows or of the same columns line up, whatever the order of selecting', () => {
    const at = (top: number, left: number, bottom: number, right: number): Area => ({ top, left, bottom, right })
    expect(lineUp([at(1, 4, 2, 4), at(1, 0, 2, 1)])).toEqual({ rows: [1, 2], columns: [0, 1, 4] })
    expect(lineUp([at(7, 0, 7, 1), at(1, 0, 2, 1)])).toEqual({ rows: [1, 2, 7], columns: [0, 1] })
    expect(lineUp([at(1, 0, 2, 1), at(2, 3, 3, 3)])).toBeUndefined()
  })

  it('give spans that neither touch nor overlap', () => {
    fc.assert(fc.property(fc.array(span, { maxLength: 6 }), (some) => {
      const merged = spans(some)
      for (const [index, { first }] of merged.entries()) expect(first).toBeGreaterThan((merged[index - 1]?.last ?? -2) + 1)
      const numbers = (list: typeof some) => new Set(list.flatMap(({ first, last }) => Array.from({ length: last - first + 1 }, (_, index) => first + index)))
      expect(numbers(merged)).toEqual(numbers(some))
    }))
  })
})
