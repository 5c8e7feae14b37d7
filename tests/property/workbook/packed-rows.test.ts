import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Cell, Row } from '../../../src/workbook/document.ts'
import { packRows, unpackInto } from '../../../src/workbook/packed-rows.ts'
import { workbook } from './arbitraries.ts'

function there(rows: readonly Row[]): { readonly back: readonly Row[]; readonly parts: number } {
  const back: (Cell | undefined)[][] = []
  const parts = [...packRows(rows)]
  for (const part of parts) unpackInto(back, structuredClone(part))
  return { back, parts: parts.length }
}

it('rows packed, sent and unpacked are the same rows', () => {
  fc.assert(
    fc.property(workbook, ({ sheets }) => {
      for (const { rows } of sheets) expect(there(rows).back).toEqual(rows)
    }),
  )
})

it('many cells go in several parts, a row at times in two', () => {
  const rows: Row[] = Array.from({ length: 700 }, (_, row) => Array.from({ length: 13 }, (_, column): Cell => ({ content: row * 13 + column, role: 'input' })))
  const { back, parts } = there(rows)
  expect(parts).toBe(5)
  expect(back).toEqual(rows)
})
