import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { readPrecisely } from '../../../src/workbook/file-reading.ts'
import { quickCells } from '../../../src/workbook/quick-reading.ts'
import { workbook } from './arbitraries.ts'

/** Pieces that a damaged or hand-written file has in odd places. */
const piece = fc.oneof(
  fc.string({ unit: fc.constantFrom(...'{}[]",:0e-\\\u0000ab\n'), maxLength: 4 }),
  fc.constantFrom(
    '"A1": [1, "input"],', '"A1": [1, "input"]', '"a1": 2', '"XFE1": [1, "text"],', '"A01": [1, "text"],', ' {"__proto__": {}}', '"constructor": "A1",', '\\u0041', '"title": "t",',
    ', {"digits": 3}', ', {"digits": 16}', ', {"note": "\\"x\\": 1"}', '1e999', '""', '"check"', 'null', 'true', '"lowside": 1,', '[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]',
  ),
)

describe('quick reading', () => {
  it('reads every workbook that was written, and as the precise reading does', () => {
    fc.assert(
      fc.property(workbook, (saved) => {
        const text = writeWorkbook(saved)
        expect(quickCells(text)).toBeDefined()
        expect(readWorkbook(text)).toEqual(readPrecisely(text))
      }),
    )
  })

  it('accepts no text that the precise reading refuses, and takes nothing in another way', () => {
    fc.assert(
      fc.property(workbook, fc.array(fc.tuple(fc.nat(), fc.nat(12), piece), { minLength: 1, maxLength: 2 }), (saved, damages) => {
        const text = damages.reduce((whole, [where, length, put]) => {
          const at = where % (whole.length + 1)
          return whole.slice(0, at) + put + whole.slice(at + length)
        }, writeWorkbook(saved))
        expect(readWorkbook(text)).toEqual(readPrecisely(text))
      }),
      { numRuns: 1000 },
    )
  })

  it('leaves what only the precise reading can tell to it', () => {
    const file = (cells: string, more = '') => `{"lowside": 1, "title": "t", "sheets": [{"name": "S", "cells": {${cells}}}]${more}}`
    expect(quickCells(file('"A1": [1, "input"]'))).toBeDefined()
    for (const text of [
      file('"A1": [1, "input"], "A1": [2, "input"]'), file('"A1": [1, "input"], "\\u0041\\u0031": [2, "input"]'), file('"A1": [1, "input", {"digits": 2, "digits": 3}]'),
      file('"A1": [1, "input"]', ', "title": "u"'), file('"A1": [1, "input"]', ', "names": {"constructor": "S!A1"}'), file('"A0": [1, "input"]'), file('"A1048577": [1, "input"]'), '{"lowside": 1,', '7',
    ]) expect(quickCells(text)).toBeUndefined()
  })

  it('tells how far it has come, never back and up to all of it', () => {
    const shares: number[] = []
    const cells = Array.from({ length: 40_000 }, (_, row) => `"A${row + 1}": [${row}, "input"]`).join(',')
    expect(quickCells(`{"sheets": [{"cells": {${cells}}}]}`, (share) => shares.push(share))).toBeDefined()
    expect(shares.length).toBeGreaterThan(2)
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
    expect(shares.at(-1)).toBeLessThanOrEqual(1)
  })
})
