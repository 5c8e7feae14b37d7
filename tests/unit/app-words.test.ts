import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { hintAt } from '../../src/app/entry-line/hint.ts'
import { fileName } from '../../src/app/files/file-access.ts'
import { labelOf, remarksOf } from '../../src/workbook/words-beside.ts'
import { createFeeds } from '../../src/app/state/feeds.ts'
import { emptyWorkbook, type Cell, type Role, type Sheet } from '../../src/workbook/document.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'

const cell = (content: Cell['content'], role: Role): Cell => ({ content, role })

describe('the hint', () => {
  const current = (formula: string, caret = formula.length) => hintAt(formula, caret)?.parts.find((part) => part.current)?.label

  it('follows the caret through the arguments', () => {
    expect(current('=SAT.PRESSURE(')).toBe('temperature')
    expect(current('=SAT.PRESSURE(C5:D5,')).toBe('unit')
    expect(current('=SAT.PRESSURE(C5:D5,"psig")', 15)).toBe('temperature')
  })

  it('is of the innermost function of the catalogue', () => {
    expect(hintAt('=SAT.PRESSURE(NO.SUCH(C5', 24)?.name).toBe('SAT.PRESSURE')
    expect(hintAt('=UNIT.CONVERT(SAT.SLOPE(', 24)?.name).toBe('SAT.SLOPE')
  })

  it('is gone outside of calls and in a text', () => {
    expect([hintAt('=SAT.PRESSURE(C5:D5,"psig")', 27), hintAt('SAT.PRESSURE(', 13), hintAt('=SAT.PRES', 9)]).toEqual([undefined, undefined, undefined])
  })
})

describe('the feeds of a formula', () => {
  const feedsOf = (formula: string) => {
    const [text] = createSignal(formula)
    const workbook = { ...emptyWorkbook(), names: new Map([['Site', 'Basis!$C$4']]) }
    return createRoot(() => createFeeds({ workbook: () => workbook, sheet: () => 'Sheet', text }))
  }

  it('give the same cells the same colour, however they are written', () => {
    const feeds = feedsOf('=C5:D5+$C$5:$D$5+C6')
    const colours = tokenise('=C5:D5+$C$5:$D$5+C6').map(feeds.colourOf).filter((colour) => colour !== undefined)
    expect(colours).toEqual([0, 0, 1])
    expect([feeds.at(4, 3), feeds.at(5, 2), feeds.at(9, 9)]).toEqual([0, 1, undefined])
  })

  it('follow names, and know other sheets', () => {
    const feeds = feedsOf('=SITE*2')
    expect(feeds.all()).toEqual([{ sheet: 'Basis', area: { top: 3, left: 2, bottom: 3, right: 2 }, colour: 0 }])
    expect(feeds.at(3, 2)).toBeUndefined()
  })

  it('are none for a text', () => {
    expect(feedsOf('C5').all()).toEqual([])
  })
})

describe('the words beside a cell', () => {
  const sheet: Sheet = {
    name: 'Sheet', columns: [], frozen: [0, 0],
    rows: [
      [cell('Duty', 'heading'), cell('Value', 'heading'), cell('Unit', 'heading'), cell('Source', 'heading')],
      [cell('Load', 'label'), cell(84, 'input'), cell('TR', 'unit'), cell('Load calculation', 'text')],
      [cell('Coil 1', 'label'), cell(12, 'input'), undefined, cell(13, 'input')],
    ],
  }

  it('are its label, and where the row has several values also its header', () => {
    expect([labelOf(sheet, { row: 1, column: 1 }), labelOf(sheet, { row: 2, column: 1 })]).toEqual(['Load', 'Coil 1: Value'])
  })

  it('are the texts further on in its row, under their headings', () => {
    expect(remarksOf(sheet, { row: 1, column: 1 })).toEqual([{ heading: 'Source', text: 'Load calculation' }])
  })
})

describe('the name of a file', () => {
  it('is the title without what no file system takes', () => {
    expect([fileName('Drum SD-3: brine/chill'), fileName('..'), fileName('Kühlung 2.1')]).toEqual(['Drum SD-3 brine chill', 'workbook', 'Kühlung 2.1'])
  })
})
