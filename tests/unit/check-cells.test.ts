import fc from 'fast-check'
import { expect, it } from 'vitest'
import { checkCells, followChecks } from '../../src/calc/check-cells.ts'
import { applyEdits, type Edit } from '../../src/workbook/edits.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { cellOf, workbookOf } from './workbook-of.ts'

it('the checks followed through edits are those that a fresh look finds, in reading order', () => {
  const change = fc.record({ row: fc.nat(7), column: fc.nat(3), cell: fc.oneof(fc.constant(null), fc.constant(cellOf(5)), fc.constant({ content: '=A1>1', role: 'check' as const })) })
  const edit = fc.array(change, { minLength: 1, maxLength: 6 }).map((cells) => ({ kind: 'cells' as const, sheet: 'S', cells }))
  fc.assert(
    fc.property(fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { maxLength: 6 }), (actions) => {
      let workbook: Workbook = workbookOf({ S: { A1: 5, B2: ['=A1>1', 'check'], A5: ['=A1>2', 'check'] } })
      checkCells(first(workbook))
      for (const edits of actions) {
        const after = applyEdits(workbook, edits satisfies Edit[]).workbook
        followChecks(workbook, after, edits)
        // A sheet of the same rows that nobody has looked at yet.
        expect(checkCells(first(after))).toEqual(checkCells({ ...first(after) }))
        workbook = after
      }
    }),
  )
})

const first = ({ sheets: [sheet] }: Workbook) => {
  if (sheet === undefined) throw new Error('a workbook has a sheet')
  return sheet
}
