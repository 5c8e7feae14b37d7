import { describe, expect, it } from 'vitest'
import { withCells } from '../../../src/workbook/cells.ts'
import { cellAt, emptySheet, emptyWorkbook, usedRange, type Cell, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdit, applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { perform, redo, startHistory, undo } from '../../../src/workbook/history.ts'

const input = (content: number): Cell => ({ content, role: 'input' })

function tall(rows: number): Workbook {
  const start = emptyWorkbook('test', 'Charge')
  const cells = Array.from({ length: rows }, (_, row) => ({ row, column: 0, cell: input(row) }))
  return { ...start, sheets: start.sheets.map((sheet) => withCells(sheet, cells)) }
}

describe('a bulk edit of cells', () => {
  it('copies only the rows it touches and shares all else', () => {
    const before = { ...tall(1000), sheets: [...tall(1000).sheets, emptySheet('Notes')] }
    const cells = [10, 500].map((row) => ({ row, column: 3, cell: input(1) }))
    const { workbook } = applyEdit(before, { kind: 'cells', sheet: 'Charge', cells })
    const [rowsBefore, rowsAfter] = [before.sheets[0]?.rows ?? [], workbook.sheets[0]?.rows ?? []]
    expect(rowsAfter.flatMap((row, index) => (row === rowsBefore[index] ? [] : [index]))).toEqual([10, 500])
    expect(rowsAfter[10]?.[0]).toBe(rowsBefore[10]?.[0])
    expect(workbook.sheets[1]).toBe(before.sheets[1])
  })

  it('gives the very same workbook if nothing changes', () => {
    const before = tall(3)
    expect(applyEdit(before, { kind: 'cells', sheet: 'charge', cells: [{ row: 1, column: 0, cell: input(1) }, { row: 9, column: 9, cell: null }] }).workbook).toBe(before)
  })

  it('keeps the used range tight when the last cells go, and finds a lone far cell', () => {
    const far = applyEdit(tall(2), { kind: 'cells', sheet: 'Charge', cells: [{ row: 1_048_575, column: 16_383, cell: input(5) }] })
    expect(usedRange(far.workbook.sheets[0] ?? emptySheet(''))).toEqual({ rows: 1_048_576, columns: 16_384 })
    expect(cellAt(far.workbook, 'charge', 1_048_575, 16_383)).toEqual(input(5))
    const back = applyEdit(far.workbook, far.inverse)
    expect(usedRange(back.workbook.sheets[0] ?? emptySheet(''))).toEqual({ rows: 2, columns: 1 })
  })

  it('of two changes to one cell the later holds, and undo gives the first content back', () => {
    const edit: Edit = { kind: 'cells', sheet: 'Charge', cells: [{ row: 0, column: 0, cell: input(7) }, { row: 0, column: 0, cell: input(8) }] }
    const { workbook, inverse } = applyEdit(tall(1), edit)
    expect(cellAt(workbook, 'Charge', 0, 0)).toEqual(input(8))
    expect(applyEdit(workbook, inverse).workbook).toEqual(tall(1))
  })
})

describe('what a report says of its making', () => {
  const report = { preparedBy: 'A. Writer', checkedBy: '', paper: 'A4' } as const

  it('comes by an edit, goes by its inverse, and is no change where it is the same', () => {
    const start = emptyWorkbook()
    const { workbook, inverse } = applyEdit(start, { kind: 'report', report })
    expect(workbook.report).toEqual(report)
    expect(applyEdit(workbook, { kind: 'report', report: { ...report } }).workbook).toBe(workbook)
    expect('report' in applyEdit(workbook, inverse).workbook).toBe(false)
    expect(applyEdit(start, { kind: 'report', report: null }).workbook).toBe(start)
  })

  it('is undone and redone as any action', () => {
    const done = perform(startHistory(emptyWorkbook()), [{ kind: 'report', report }], 'Report')
    const again = perform(done.history, [{ kind: 'report', report: { ...report, checkedBy: 'B. Reader' } }], 'Report')
    expect(undo(again.history).history.workbook.report).toEqual(report)
    expect(redo(undo(again.history).history).history.workbook.report?.checkedBy).toBe('B. Reader')
  })
})

describe('an edit that cannot be done', () => {
  const cases: readonly (readonly [string, Edit, RegExp])[] = [
    ['a sheet that is not there', { kind: 'removeSheet', sheet: 'Drum' }, /no sheet "Drum"; there are "Charge"/],
    ['the last sheet', { kind: 'removeSheet', sheet: 'Charge' }, /at least one sheet/],
    ['an address off the sheet', { kind: 'cells', sheet: 'Charge', cells: [{ row: 1_048_576, column: 0, cell: null }] }, /row 1048577, column 1 is off the sheet; accepted: 1048576 rows/],
    ['a fraction of a row', { kind: 'cells', sheet: 'Charge', cells: [{ row: 0.5, column: 0, cell: null }] }, /off the sheet/],
    ['a number that is none', { kind: 'cells', sheet: 'Charge', cells: [{ row: 4, column: 2, cell: input(Infinity) }] }, /sheet "Charge", cell C5: Infinity/],
    ['empty text', { kind: 'cells', sheet: 'Charge', cells: [{ row: 0, column: 0, cell: { content: '', role: 'text' } }] }, /cell A1: empty text; accepted: null/],
    ['too long a text', { kind: 'cells', sheet: 'Charge', cells: [{ row: 0, column: 0, cell: { content: 'x'.repeat(32_768), role: 'text' } }] }, /cell A1: 32768 characters; accepted: up to 32767/],
    ['a sheet name taken in other case', { kind: 'addSheet', at: 0, sheet: emptySheet('CHARGE') }, /"CHARGE" is taken by "Charge"/],
    ['a sheet at no position', { kind: 'addSheet', at: 2, sheet: emptySheet('Drum') }, /position 2; accepted: 0 to 1/],
    ['a sheet moved nowhere', { kind: 'moveSheet', sheet: 'Charge', to: 1 }, /position 1; accepted: 0 to 0/],
    ['a sheet name of a prototype', { kind: 'renameSheet', sheet: 'Charge', name: '__proto__' }, /is reserved; accepted: 1 to 31 characters/],
    ['a paper that is none', { kind: 'report', report: { preparedBy: '', checkedBy: '', paper: 'Napkin' as 'A4' } }, /paper "Napkin"; accepted: Letter, A4/],
    ['too long a name', { kind: 'report', report: { preparedBy: 'x'.repeat(32_768), checkedBy: '', paper: 'A4' } }, /prepared by, checked by: accepted: up to 32767 characters/],
    ['a width of nothing', { kind: 'columnWidths', sheet: 'Charge', columns: [10, 0] }, /column 2: width 0/],
    ['a name that reads as a cell', { kind: 'name', name: 'AB12', refersTo: 'Charge!$A$1' }, /"AB12" reads as something else/],
    ['a name for nothing', { kind: 'name', name: 'load', refersTo: '' }, /refers to nothing; accepted: reference text/],
  ]
  it.each(cases)('%s: says what and what is accepted', (_, edit, message) => {
    expect(() => applyEdit(tall(1), edit)).toThrow(message)
    expect(() => applyEdit(tall(1), edit)).toThrow(expect.objectContaining({ name: 'WorkbookProblem' }))
  })

  it('takes the whole list of edits with it', () => {
    const before = startHistory(tall(1))
    expect(() => perform(before, [{ kind: 'title', title: 'new' }, { kind: 'removeSheet', sheet: 'Drum' }], 'both')).toThrow()
    expect(before.workbook.title).toBe('test')
  })
})

describe('history', () => {
  it('an action that changes nothing makes no step and keeps what can be redone', () => {
    const done = perform(startHistory(tall(1)), [{ kind: 'title', title: 'new' }], 'title').history
    const undone = undo(done).history
    const nothing = perform(undone, [{ kind: 'title', title: 'test' }], 'title')
    expect(nothing).toEqual({ history: undone, edits: [] })
    expect(redo(nothing.history).history.workbook.title).toBe('new')
  })

  it('with nothing to undo or redo stays as it is', () => {
    const start = startHistory(tall(1))
    expect(undo(start)).toEqual({ history: start, edits: [] })
    expect(redo(start)).toEqual({ history: start, edits: [] })
  })

  it('a new action drops what could be redone', () => {
    const undone = undo(perform(startHistory(tall(1)), [{ kind: 'title', title: 'a' }], 'a').history).history
    expect(perform(undone, [{ kind: 'title', title: 'b' }], 'b').history.future).toEqual([])
  })

  it('sheets removed and moved come back to their places', () => {
    const names = (workbook: Workbook) => workbook.sheets.map(({ name }) => name)
    const three = applyEdits(tall(1), ['Drum', 'Head'].map((name, index) => ({ kind: 'addSheet' as const, at: index + 1, sheet: emptySheet(name) }))).workbook
    const { workbook, inverse } = applyEdits(three, [{ kind: 'moveSheet', sheet: 'Head', to: 0 }, { kind: 'removeSheet', sheet: 'charge' }])
    expect(names(workbook)).toEqual(['Head', 'Drum'])
    expect(names(applyEdits(workbook, inverse).workbook)).toEqual(['Charge', 'Drum', 'Head'])
  })
})
