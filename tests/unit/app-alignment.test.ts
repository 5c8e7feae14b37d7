import { describe, expect, it } from 'vitest'
import { createAlignment } from '../../src/app/grid/alignment-store.ts'
import type { AreaValues, CellValue } from '../../src/calc/values.ts'
import { emptySheet, type Cell, type Sheet } from '../../src/workbook/document.ts'

const numbers = (...contents: (number | string)[]): Sheet => ({ ...emptySheet('S'), rows: contents.map((content): Cell[] => [{ content, role: 'result' }]) })

/** Values as the graph has answered them, each answer a new one. */
function answered(...column: CellValue[]) {
  let block: AreaValues = { values: column.map((value) => [value]), checks: new Map() }
  return {
    at: (_: string, row: number) => block.values[row]?.[0],
    blockAt: () => block,
    answer: (...next: CellValue[]) => void (block = { values: next.map((value) => [value]), checks: new Map() }),
  }
}

describe('what lines numbers up on their points', () => {
  it('follows an edit of the column', () => {
    const pad = createAlignment(answered())
    expect([0, 1].map((row) => pad(numbers(1, 2.25), row, 0))).toEqual(['.00', ''])
    expect([0, 1].map((row) => pad(numbers(1, 2), row, 0))).toEqual(['', ''])
  })

  it('follows the values of formulas, also where the next answer is the same but for one', () => {
    const values = answered(1, 2.25, 3)
    const pad = createAlignment(values)
    const sheet = numbers('=A', '=B', '=C')
    const pads = () => [0, 1, 2].map((row) => pad(sheet, row, 0))
    expect(pads()).toEqual(['.00', '', '.00'])
    values.answer(1, 2.25, 3)
    expect(pads()).toEqual(['.00', '', '.00'])
    values.answer(1, 2, 3)
    expect(pads()).toEqual(['', '', ''])
  })
})
