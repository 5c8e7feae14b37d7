import { describe, expect, it } from 'vitest'
import { cellView } from '../../src/app/grid/cell-view.ts'
import { pasteCells, pasteText } from '../../src/app/grid/clipboard.ts'
import { gridAction } from '../../src/app/grid/keys.ts'
import { createRowHeights, ROW_HEIGHT, wrappedLines, wraps } from '../../src/app/grid/row-heights.ts'
import type { Part } from '../../src/app/state/long-change.ts'
import { averageTextWidth } from '../../src/app/grid/text-width.ts'
import { tracePath } from '../../src/app/grid/trace-path.ts'
import { stateWords } from '../../src/calc/state-words.ts'
import { emptyWorkbook, type Cell, type Role, type Sheet } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { standsOverNumbers } from '../../src/workbook/over-numbers.ts'

const cell = (content: Cell['content'], role: Role): Cell => ({ content, role })
const sheetOf = (rows: Sheet['rows']): Sheet => ({ name: 'Sheet', columns: [100], frozen: [0, 0], rows })

describe('a cell', () => {
  it('shows a number in its format', () => {
    expect(cellView({ ...cell(2, 'result'), decimals: 2 }, 2, undefined)).toMatchObject({ text: '2.00', isNumber: true })
  })

  it('shows an error by its code and describes it by its message', () => {
    expect(cellView(cell('=1/0', 'result'), { error: '#DIV/0!', message: 'divided by zero' }, undefined)).toMatchObject({ text: '#DIV/0!', description: 'divided by zero' })
  })

  it('shows a check by a mark and its margin in words', () => {
    const view = cellView(cell('=C5<C6', 'check'), false, { met: false, words: 'not met, 3 % short' })
    expect([view.text, view.classes]).toEqual(['not met, 3 % short', 'role-check not-met'])
  })

  it('shows nothing for a formula whose value is not known yet', () => {
    expect(cellView(cell('=1+1', 'result'), undefined, undefined).text).toBe('')
  })

  it('stands over numbers where it heads a column of them, not where it is beside one', () => {
    const rows = [[cell('Load', 'heading')], [cell('TR', 'unit')], [cell(84, 'input'), cell('TR', 'unit')], [cell(10, 'input')]]
    expect([standsOverNumbers(rows, 0, 0), standsOverNumbers(rows, 1, 0), standsOverNumbers(rows, 2, 1)]).toEqual([true, true, false])
  })
})

describe('the height of a row', () => {
  const measured = createRowHeights(averageTextWidth)
  const heights = (sheet: Sheet): number[] => Array.from(measured(sheet).sizes)

  it('is larger for a title and a heading', () => {
    const [title = 0, heading = 0, label = 0] = heights(sheetOf([[cell('Duty', 'title')], [cell('Load', 'heading')], [cell('Load', 'label')]]))
    expect([title > heading, heading > label, label]).toEqual([true, true, ROW_HEIGHT])
  })

  it('grows where a text would be cut off by the cell beside it', () => {
    const long = cell('a label that is longer than one hundred px', 'label')
    const [beside = 0, alone] = heights(sheetOf([[long, cell(1, 'input')], [long]]))
    expect([beside > ROW_HEIGHT, alone]).toEqual([true, ROW_HEIGHT])
    expect([wraps([long, cell(1, 'input')], 0), wraps([long], 0)]).toEqual([true, false])
  })

  it('is the very list of before where an edit changes none, and is worked out for changed rows only', () => {
    let asked = 0
    const counting = createRowHeights((text, size) => (asked++, averageTextWidth(text, size)))
    const sheet = sheetOf(Array.from({ length: 50 }, (_, row) => [cell(`label ${row} that is wider than its column`, 'label'), cell(row, 'input')]))
    const before = counting(sheet)
    const all = asked
    const edited = counting({ ...sheet, rows: sheet.rows.with(7, [cell('label 7 that is wider than its column', 'label'), cell(70, 'input')]) })
    expect([edited.sizes === before.sizes, asked - all < all / 10]).toEqual([true, true])
    const opened = counting({ ...sheet, rows: sheet.rows.toSpliced(3, 0, undefined) })
    expect([opened.sizes.length, opened.sizes[3], asked - all < all / 10]).toEqual([51, ROW_HEIGHT, true])
    expect(Array.from(opened.sizes).toSpliced(3, 1)).toEqual(Array.from(before.sizes))
  })

  it('counts lines broken at blanks, and inside a word that is too long', () => {
    const lines = (text: string) => wrappedLines(text, 10, (part) => part.length)
    expect([lines('two words'), lines('three more words'), lines('abcdefghijklmno'), lines('')]).toEqual([1, 2, 2, 1])
  })
})

describe('keys of the grid', () => {
  const press = (key: string, held: { ctrl?: boolean; shift?: boolean; alt?: boolean; altGraph?: boolean } = {}) =>
    gridAction({ key, ctrlKey: held.ctrl === true, metaKey: false, shiftKey: held.shift === true, altKey: held.alt === true, getModifierState: (name) => name === 'AltGraph' && held.altGraph === true })

  it('move, stretch and leap by arrows', () => {
    expect(press('ArrowDown')).toEqual({ does: 'step', rows: 1, columns: 0, extend: false })
    expect(press('ArrowLeft', { shift: true })).toEqual({ does: 'step', rows: 0, columns: -1, extend: true })
    expect(press('ArrowUp', { ctrl: true })).toEqual({ does: 'leap', rows: -1, columns: 0, extend: false })
  })

  it('go back by Shift with Enter and Tab', () => {
    expect([press('Enter', { shift: true }), press('Tab', { shift: true })]).toEqual([
      { does: 'step', rows: -1, columns: 0, extend: false }, { does: 'step', rows: 0, columns: -1, extend: false },
    ])
  })

  it('undo and redo', () => {
    expect([press('z', { ctrl: true }), press('Z', { ctrl: true, shift: true }), press('y', { ctrl: true })].map((action) => action?.does)).toEqual(['undo', 'redo', 'redo'])
  })

  it('begin typing by any character, also one outside the basic plane', () => {
    expect([press('='), press('Δ'), press('𝜌')].map((action) => action?.does)).toEqual(['type', 'type', 'type'])
  })

  it('take the third level of a keyboard as characters, whatever it holds down', () => {
    expect(press('@', { ctrl: true, alt: true, altGraph: true })).toEqual({ does: 'type', text: '@' })
  })

  it('leave the others to the browser', () => {
    expect([press('c', { ctrl: true }), press('F5'), press('Shift'), press('d', { alt: true })]).toEqual([undefined, undefined, undefined, undefined])
  })
})

describe('pasting', () => {
  const workbook = emptyWorkbook()
  const after = (parts: Iterable<Part>) => applyEdits(workbook, [...parts].flatMap(({ edits }) => edits)).workbook

  it('moves the relative parts of references along', () => {
    const copied = { text: '', from: { rows: [0], columns: [0] }, cells: [[cell('=B1*$C$1', 'result')]] }
    const pasted = after(pasteCells('Sheet', { top: 2, left: 1, bottom: 2, right: 1 }, copied))
    expect(pasted.sheets[0]?.rows[2]?.[1]).toEqual(cell('=C3*$C$1', 'result'))
  })

  it('takes cells from ranges that do not touch as one block, each moved from where it stood', () => {
    const copied = { text: '', from: { rows: [0, 4], columns: [0, 3] }, cells: [[cell('=A9', 'result'), cell('=D9', 'result')], [cell('=A9', 'result'), cell('=$D$9', 'result')]] }
    const pasted = after(pasteCells('Sheet', { top: 10, left: 0, bottom: 10, right: 0 }, copied))
    expect(pasted.sheets[0]?.rows.slice(10)).toEqual([[cell('=A19', 'result'), cell('=B19', 'result')], [cell('=A16', 'result'), cell('=$D$9', 'result')]])
  })

  it('takes a long text in parts whose rectangles follow each other, and says how far it is', () => {
    const text = Array.from({ length: 1200 }, (_, row) => `V-${row}\t${row}\t=B${row + 1}*2`).join('\r\n')
    const parts = [...pasteText(workbook, 'Sheet', { row: 0, column: 0 }, text)]
    expect(parts.length).toBeGreaterThan(1)
    expect(parts.map(({ share }) => share)).toEqual(parts.map(({ share }) => share).toSorted((one, other) => one - other))
    expect(parts.at(-1)?.share).toBe(1)
    expect(after(parts).sheets[0]?.rows[1199]).toEqual([cell('V-1199', 'label'), cell(1199, 'input'), cell('=B1200*2', 'result')])
  })

  it('takes each cell of a text as typed, a unit beside its number as a unit', () => {
    const pasted = after(pasteText(workbook, 'Sheet', { row: 0, column: 0 }, 'Load\t84\tTR\n\t=B1*2\t'))
    expect(pasted.sheets[0]?.rows).toEqual([[cell('Load', 'label'), cell(84, 'input'), cell('TR', 'unit')], [undefined, cell('=B1*2', 'result')]])
  })
})

describe('a trace', () => {
  const box = (left: number, top: number) => ({ left, right: left + 100, top, bottom: top + 20 })

  it('goes across where the feeding cells stand on the left, and bows out where they stand above', () => {
    expect(tracePath(box(0, 0), box(200, 100), 0).from).toEqual({ x: 100, y: 10 })
    expect(tracePath(box(200, 0), box(200, 100), 0).from).toEqual({ x: 200, y: 10 })
    expect(tracePath(box(400, 0), box(200, 100), 0).from).toEqual({ x: 400, y: 10 })
  })
})

describe('the state of a sheet in words', () => {
  it('says the worst first', () => {
    expect(stateWords({ sheet: 'Duty', checks: 6, notMet: 1, errors: 2 })).toEqual({ kind: 'error', words: '2 errors, 1 not met' })
    expect(stateWords({ sheet: 'Duty', checks: 6, notMet: 1, errors: 0 })).toEqual({ kind: 'not-met', words: '1 of 6 checks not met' })
    expect(stateWords({ sheet: 'Duty', checks: 6, notMet: 0, errors: 0 })).toEqual({ kind: 'met', words: 'all 6 checks met' })
    expect(stateWords({ sheet: 'Duty', checks: 0, notMet: 0, errors: 0 })).toEqual({ kind: 'plain', words: '' })
  })
})
