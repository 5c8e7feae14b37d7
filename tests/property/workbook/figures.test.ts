import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { renameSheet } from '../../../src/workbook/commands.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { cellAt } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { addFigure, changeFigure, moveFigure, removeFigure } from '../../../src/workbook/figure-commands.ts'
import type { Figure } from '../../../src/workbook/figure.ts'
import { deleteLines, insertLines, moveLines } from '../../../src/workbook/line-commands.ts'
import { blockOf, moveCells } from '../../../src/workbook/move-cells.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { sheetOf } from '../../unit/workbook-of.ts'

const NAMES = ['Main', 'Two 2']
const reference = fc.tuple(fc.constantFrom('Main!', "'Two 2'!"), fc.nat(4), fc.nat(6), fc.nat(2), fc.nat(2), fc.constantFrom('', '$'))
  .map(([sheet, left, top, width, height, dollar]) => `${sheet}${dollar}${'ABCDEFG'[left] ?? 'A'}${dollar}${top + 1}:${dollar}${'ABCDEFG'[left + width] ?? 'A'}${dollar}${top + height + 1}`)

const bound = (levels: string): Figure => ({ kind: 'drum', title: 'Drum', sheet: 'Main', options: {}, bindings: { levels } })

/** The same reference in a figure and in a formula on the other sheet, out of the way of what is moved. */
const both = (text: string): Workbook => ({
  title: '', purpose: '', names: new Map(), figures: [bound(text)],
  sheets: [sheetOf('Main', { A1: 1, E7: 2 }), sheetOf('Two 2', { Z99: `=SUM(${text})` })],
})
const done = (book: Workbook, edits: readonly Edit[]): Workbook => applyEdits(book, edits).workbook
const inFigure = ({ figures }: Workbook): string | undefined => figures[0]?.bindings['levels']
const inFormula = (book: Workbook): unknown => cellAt(book, 'Two 2', 98, 25)?.content

const lines = fc.record({ axis: fc.constantFrom('rows' as const, 'columns' as const), at: fc.nat(6), count: fc.integer({ min: 1, max: 3 }) })
const action = fc.oneof(
  lines.map((line) => (book: Workbook) => insertLines(book, 'Main', line)),
  lines.map((line) => (book: Workbook) => deleteLines(book, 'Main', line)),
  fc.tuple(lines, fc.nat(6)).map(([line, to]) => (book: Workbook) => moveLines(book, 'Main', line, to)),
  fc.tuple(fc.nat(3), fc.nat(3), fc.nat(4), fc.nat(4)).map(([top, left, height, width]) => (book: Workbook) => moveCells(book, blockOf(book, 'Main', { top, left, bottom: top + height, right: left + width }), 'Main', { row: 30, column: 8 })),
)

describe('what a figure is bound to follows its cells', () => {
  it('as a formula with the same reference does, whatever lines come, go and move and whatever blocks do', () => {
    fc.assert(fc.property(reference, fc.array(action, { minLength: 1, maxLength: 4 }), (text, actions) => {
      const after = actions.reduce((book, act) => done(book, act(book)), both(text))
      expect(`=SUM(${inFigure(after)})`).toBe(inFormula(after))
    }))
  })

  it('through new names of its sheets too, and its own sheet with them', () => {
    fc.assert(fc.property(reference, fc.constantFrom(...NAMES), fc.constantFrom('Drum', "It's", 'A1'), (text, from, to) => {
      const after = done(both(text), renameSheet(both(text), from, to))
      const formula = cellAt(after, from === 'Two 2' ? to : 'Two 2', 98, 25)?.content
      expect(`=SUM(${inFigure(after)})`).toBe(formula)
      expect(after.figures[0]?.sheet).toBe(from === 'Main' ? to : 'Main')
    }))
  })

  it('and undone, everything is as it was to the byte', () => {
    fc.assert(fc.property(reference, fc.array(action, { minLength: 1, maxLength: 4 }), (text, actions) => {
      const undo: (readonly Edit[])[] = []
      let book = both(text)
      for (const act of actions) {
        const { workbook, inverse } = applyEdits(book, act(book))
        undo.push(inverse)
        book = workbook
      }
      for (const inverse of undo.reverse()) book = done(book, inverse)
      expect(writeWorkbook(book)).toBe(writeWorkbook(both(text)))
      expect(book).toEqual(both(text))
    }))
  })
})

describe('figures are added, changed, moved and removed', () => {
  const of = (...titles: string[]): Workbook => ({ ...both('Main!A1'), figures: titles.map((title) => ({ ...bound('Main!A1'), title })) })
  const titles = ({ figures }: Workbook): string[] => figures.map(({ title }) => title)

  it('one at a time, the others staying as they are', () => {
    const book = of('one', 'two', 'three')
    expect(titles(done(book, addFigure(book, bound('Main!A2'))))).toEqual(['one', 'two', 'three', 'Drum'])
    expect(titles(done(book, changeFigure(book, 1, { ...bound('Main!A1'), title: 'other' })))).toEqual(['one', 'other', 'three'])
    expect(titles(done(book, moveFigure(book, 0, 2)))).toEqual(['two', 'three', 'one'])
    expect(titles(done(book, removeFigure(book, 1)))).toEqual(['one', 'three'])
    expect(() => removeFigure(book, 3)).toThrow('there is no figure number 4; there are 3')
  })

  it('and an edit that changes nothing is none', () => {
    expect(done(of('one'), [{ kind: 'figures', figures: of('one').figures }])).toEqual(of('one'))
    const book = of('one')
    expect(applyEdits(book, changeFigure(book, 0, { ...bound('Main!A1'), title: 'one' })).inverse).toEqual([])
  })

  it('none is taken with parts or options that its kind does not have', () => {
    const book = of()
    expect(() => done(book, addFigure(book, { ...bound('Main!A1'), bindings: { room: 'Main!A1' } }))).toThrow(/figure 1: unknown part "room" of a drum figure; accepted: diameter, length, heads/)
    expect(() => done(book, addFigure(book, { ...bound('Main!A1'), options: { position: 'slanting' } }))).toThrow('figure 1: position: "slanting"; accepted: horizontal, vertical')
  })
})
