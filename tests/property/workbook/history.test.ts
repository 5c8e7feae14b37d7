import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, applyEdits } from '../../../src/workbook/edits.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { perform, redo, startHistory, undo } from '../../../src/workbook/history.ts'
import { edit, fitting, workbook } from './arbitraries.ts'

describe('edits and history', () => {
  it('an edit and its inverse give back the same document, and the same file to the byte', () => {
    fc.assert(
      fc.property(workbook, fc.array(edit, { maxLength: 12 }), (start, edits) => {
        const fitted = fitting(start, edits)
        fc.pre(fitted.length > 0)
        const done = applyEdits(start, fitted)
        const undone = applyEdits(done.workbook, done.inverse)
        expect(undone.workbook).toEqual(start)
        expect(writeWorkbook(undone.workbook)).toBe(writeWorkbook(start))
      }),
    )
  })

  it('an edit leaves the workbook it was given as it was', () => {
    fc.assert(
      fc.property(workbook, edit, (start, one) => {
        fc.pre(fitting(start, [one]).length === 1)
        const before = writeWorkbook(start)
        applyEdit(start, one)
        expect(writeWorkbook(start)).toBe(before)
      }),
    )
  })

  it('undo of every action goes back through the same documents, redo forward again', () => {
    fc.assert(
      fc.property(workbook, fc.array(fc.array(edit, { maxLength: 4 }), { maxLength: 6 }), (start, actions) => {
        let history = startHistory(start)
        const seen = [writeWorkbook(start)]
        for (const action of actions) {
          const moved = perform(history, fitting(history.workbook, action), 'action')
          if (moved.history === history) continue
          history = moved.history
          seen.push(writeWorkbook(history.workbook))
        }
        expect(history.past).toHaveLength(seen.length - 1)
        for (const text of seen.slice(0, -1).reverse()) {
          history = undo(history).history
          expect(writeWorkbook(history.workbook)).toBe(text)
        }
        expect(history.workbook).toEqual(start)
        for (const text of seen.slice(1)) {
          history = redo(history).history
          expect(writeWorkbook(history.workbook)).toBe(text)
        }
      }),
    )
  })

  it('what undo and redo hand out is what leads a follower to the same document', () => {
    fc.assert(
      fc.property(workbook, fc.array(edit, { minLength: 1, maxLength: 8 }), (start, edits) => {
        const done = perform(startHistory(start), fitting(start, edits), 'action')
        const back = undo(done.history)
        const again = redo(back.history)
        let follower = applyEdits(start, done.edits).workbook
        expect(follower).toEqual(done.history.workbook)
        follower = applyEdits(follower, back.edits).workbook
        expect(follower).toEqual(start)
        follower = applyEdits(follower, again.edits).workbook
        expect(follower).toEqual(done.history.workbook)
      }),
    )
  })
})
