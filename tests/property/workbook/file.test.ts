import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Workbook } from '../../../src/workbook/document.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { workbook } from './arbitraries.ts'

describe('the workbook file', () => {
  it('reads back as the same document, and is the same to the byte when saved again', () => {
    fc.assert(
      fc.property(workbook, (saved) => {
        const text = writeWorkbook(saved)
        const read = readWorkbook(text)
        expect(read).toEqual({ workbook: saved })
        expect(writeWorkbook((read as { workbook: Workbook }).workbook)).toBe(text)
      }),
    )
  })

  it('survives UTF-8, and every line but the braces around it is one cell', () => {
    fc.assert(
      fc.property(workbook, (saved) => {
        const text = writeWorkbook(saved)
        expect(new TextDecoder().decode(new TextEncoder().encode(text))).toBe(text)
        const cells = saved.sheets.flatMap(({ rows }) => Object.values(rows).flatMap((row) => Object.values(row ?? []).filter(Boolean)))
        expect(text.split('\n').filter((line) => line.startsWith('    "'))).toHaveLength(cells.length)
        expect(text.endsWith('}\n')).toBe(true)
      }),
    )
  })

  it('damaged anywhere, gives problems or a workbook, never an exception', () => {
    fc.assert(
      fc.property(workbook, fc.nat(), fc.nat(20), fc.string({ unit: fc.constantFrom(...'{}[]",:0e-\\\u0000ab\n'), maxLength: 4 }), (saved, where, length, put) => {
        const text = writeWorkbook(saved)
        const at = where % text.length
        const read = readWorkbook(text.slice(0, at) + put + text.slice(at + length))
        if ('problems' in read) {
          expect(read.problems.length).toBeGreaterThan(0)
          expect(read.problems.length).toBeLessThanOrEqual(20)
        } else expect(read.workbook.sheets.length).toBeGreaterThan(0)
      }),
      { numRuns: 500 },
    )
  })
})
