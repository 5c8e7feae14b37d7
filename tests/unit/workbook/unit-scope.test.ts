import fc from 'fast-check'
import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { withCells } from '../../../src/workbook/cells.ts'
import { emptySheet, ROLES, type Cell, type Sheet } from '../../../src/workbook/document.ts'
import { unitFinder, unitOfValue } from '../../../src/workbook/unit-scope.ts'
import { readTemplate } from '../../templates/open-template.ts'

/** Where the two find another unit. */
const differences = (sheet: Sheet, columns: number): string[] => {
  const find = unitFinder(sheet)
  const found: string[] = []
  for (let row = 0; row <= sheet.rows.length; row++) {
    for (let column = 0; column < columns; column++) {
      const [one, other] = [find({ row, column }), unitOfValue(sheet, { row, column })]
      if (one?.row !== other?.row || one?.column !== other?.column) found.push(`${sheet.name} ${row}:${column}`)
    }
  }
  return found
}

describe('the unit of a cell, found for many cells', () => {
  it('is what it is for one, in every template', () => {
    const files = readdirSync(new URL('../../../templates', import.meta.url)).filter((name) => name.endsWith('.json'))
    for (const name of files) for (const sheet of readTemplate(`templates/${name}`).sheets) expect(differences(sheet, 30)).toEqual([])
  })

  it('is what it is for one, in sheets of any cells', () => {
    const cell: fc.Arbitrary<Cell> = fc.record({ content: fc.constantFrom<Cell['content']>(1, 'ft', '=A1', null), role: fc.constantFrom(...ROLES) })
    const place = fc.record({ row: fc.nat(9), column: fc.nat(3), cell })
    fc.assert(fc.property(fc.array(place, { maxLength: 30 }), (cells) => {
      expect(differences(withCells(emptySheet('Any'), [...new Map(cells.map((one) => [`${one.row}:${one.column}`, one])).values()]), 5)).toEqual([])
    }))
  })
})
