import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pasteText } from '../../src/app/grid/clipboard.ts'
import { parseTabular } from '../../src/app/grid/tabular-text.ts'
import { Graph } from '../../src/calc/graph.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { workbookOf } from './workbook-of.ts'

/** How other programs write a cell of tab-separated text, by the rules of RFC 4180: in quotation marks always, or where it must be. */
const inQuotes = (cell: string): string => `"${cell.replaceAll('"', '""')}"`
const WRITERS = { always: inQuotes, whereNeeded: (cell: string) => (/["\t\r\n]/.test(cell) ? inQuotes(cell) : cell) }
const LINE_BREAKS = ['\r\n', '\n'] as const

describe('text of other programs', () => {
  const cell = fc.string({ unit: fc.constantFrom('a', '1', '"', '\t', '\n', ' ', 'é', '=', ',', ';', "'") })
  const rectangle = fc.integer({ min: 1, max: 4 }).chain((columns) => fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: 1, maxLength: 5 }))

  it('gives its cells, quoted or not, whichever line break ends its rows, with one at the end', () => {
    fc.assert(fc.property(rectangle, fc.constantFrom(...Object.values(WRITERS)), fc.constantFrom(...LINE_BREAKS), (rows, write, lineBreak) => {
      expect(parseTabular(rows.map((row) => row.map(write).join('\t') + lineBreak).join(''))).toEqual(rows)
    }))
  })

  it('gives formulas in quotation marks as formulas, a line break in one included', () => {
    expect(parseTabular('"=""a"" & ""b"""\t"=SUM(A1,\r\nA2)"\r\n')).toEqual([['="a" & "b"', '=SUM(A1,\nA2)']])
  })
})

describe('formulas as other programs write them', () => {
  const workbook = workbookOf({ S: { A1: 2, A2: 3 }, 'My sheet': { A1: 7 } })

  it.each([
    ['=1E-5', 1e-5], ['=1e+5', 100000], ['=.5+5.', 5.5], ['=TRUE', true], ['=true', true], ['=IF(True;1;2)', 1], ['=SUM(A1;A2)', 5], ['=SUM($A$1:a2)', 5],
    ['="say ""hi"""', 'say "hi"'], ["='My sheet'!A1*2", 14], ["='my sheet'!$A$1", 7], ['=IF(A1<>2,"a","b")', 'b'], ['=5%', 0.05], ['= -A1^2', 4], ['1E-5', 1e-5], ['true', true], ["'=A1", '=A1'],
  ])('%s is taken', (written, value) => {
    for (const write of Object.values(WRITERS)) {
      const parts = [...pasteText(workbook, 'S', { row: 4, column: 4 }, write(written))]
      const graph = new Graph(applyEdits(workbook, parts.flatMap(({ edits }) => edits)).workbook)
      expect(graph.value('S', 4, 4)).toEqual(value)
    }
  })
})
