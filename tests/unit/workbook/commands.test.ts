import { describe, expect, it } from 'vitest'
import { clear, removeSheet, renameSheet, setEntry, setRole, setUnit } from '../../../src/workbook/commands.ts'
import { withCells } from '../../../src/workbook/cells.ts'
import { cellAt, emptySheet, emptyWorkbook, type Cell, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'

const A1 = { row: 0, column: 0 }
const B1 = { row: 0, column: 1 }

const done = (workbook: Workbook, edits: Edit[]) => applyEdits(workbook, edits).workbook
const typed = (workbook: Workbook, at: typeof A1, text: string) => done(workbook, setEntry(workbook, 'Drum', at, text))
const cell = (workbook: Workbook, { row, column }: typeof A1, sheet = 'Drum') => cellAt(workbook, sheet, row, column)

const drum = emptyWorkbook('test', 'Drum')

function holding(held: Cell, at = A1): Workbook {
  return { ...drum, sheets: drum.sheets.map((sheet) => withCells(sheet, [{ ...at, cell: held }])) }
}

describe('setEntry', () => {
  it.each([
    ['85', 85, 'input'],
    ['true', true, 'input'],
    ['=1+1', '=1+1', 'result'],
    ['Load', 'Load', 'label'],
    ["'=not a formula", "'=not a formula", 'label'],
  ])('%s in a new cell is %s with role %s', (text, content, role) => {
    expect(cell(typed(drum, A1, text), A1)).toEqual({ content, role })
  })

  it('a unit typed on the right of a value is a unit; without a value there it is a label', () => {
    expect(cell(typed(typed(drum, A1, '31'), B1, '°F'), B1)).toEqual({ content: '°F', role: 'unit' })
    expect(cell(typed(drum, B1, '°F'), B1)).toEqual({ content: '°F', role: 'label' })
  })

  it('keeps role, format and note of a cell, and forgets what its content was restated from', () => {
    const held: Cell = { content: 'm/s', role: 'unit', digits: 4, note: 'why', restatedFrom: 'ft/s' }
    expect(cell(typed(holding(held), A1, 'm'), A1)).toEqual({ content: 'm', role: 'unit', digits: 4, note: 'why' })
    expect(cell(typed(holding(held), A1, 'm/s'), A1)).toEqual(held)
  })

  it('nothing typed empties: an input stays to be filled in, a label goes', () => {
    expect(cell(typed(holding({ content: 5, role: 'input', digits: 3 }), A1, ''), A1)).toEqual({ content: null, role: 'input', digits: 3 })
    expect(cell(typed(holding({ content: 'x', role: 'label' }), A1, ' '), A1)).toBeUndefined()
  })
})

describe('clear, setRole, setUnit', () => {
  it('clear of a range keeps a note, and of whole columns costs only the rows there are', () => {
    const workbook = typed(holding({ content: 'x', role: 'label', note: 'kept' }), { row: 1, column: 0 }, 'gone')
    const cleared = done(workbook, clear(workbook, 'Drum', { from: { row: 1_048_575, column: 3 }, to: A1 }))
    expect(cleared.sheets[0]?.rows).toEqual([[{ content: null, role: 'label', note: 'kept' }]])
  })

  it('setRole changes cells and makes empty ones a place to fill in', () => {
    const workbook = done(drum, setRole(typed(drum, A1, '5'), 'Drum', { from: B1 }, 'input'))
    expect(cell(workbook, B1)).toEqual({ content: null, role: 'input' })
    const five = typed(drum, A1, '5')
    expect(cell(done(five, setRole(five, 'Drum', { from: A1 }, 'result')), A1)).toEqual({ content: 5, role: 'result' })
  })

  it('setUnit puts the unit beside the value and refuses to overwrite anything else', () => {
    const workbook = typed(drum, A1, '31')
    expect(cell(done(workbook, setUnit(workbook, 'Drum', A1, '°F')), B1)).toEqual({ content: '°F', role: 'unit' })
    const taken = typed(workbook, B1, 'note')
    expect(() => setUnit(taken, 'Drum', A1, '°F')).toThrow(/cell B1: the unit of A1 would stand here, but the cell holds a label; accepted: an empty cell or a unit/)
  })
})

describe('sheets', () => {
  const two: Workbook = {
    ...drum,
    names: new Map([['load', 'Drum!$A$1'], ['other', 'Head!$A$1']]),
    sheets: [
      withCells(emptySheet('Drum'), [{ ...A1, cell: { content: '=B1*2', role: 'result' } }]),
      withCells(emptySheet('Head'), [
        { ...A1, cell: { content: '=drum!A1 + SUM(\'Drum\'!$A$1:B2)&"Drum!A1"', role: 'result' } },
        { ...B1, cell: { content: 'Drum!A1', role: 'text' } },
      ]),
    ],
  }

  it('renameSheet rewrites formulas and names, with the quotes that the new name needs, and nothing else', () => {
    const renamed = done(two, renameSheet(two, 'drum', "Bob's drum"))
    expect(renamed.sheets.map(({ name }) => name)).toEqual(["Bob's drum", 'Head'])
    expect(cell(renamed, A1, 'Head')?.content).toBe("='Bob''s drum'!A1 + SUM('Bob''s drum'!$A$1:B2)&\"Drum!A1\"")
    expect(cell(renamed, B1, 'Head')?.content).toBe('Drum!A1')
    expect(renamed.sheets[0]?.rows).toBe(two.sheets[0]?.rows)
    expect(Object.fromEntries(renamed.names)).toEqual({ load: "'Bob''s drum'!$A$1", other: 'Head!$A$1' })
  })

  it('renameSheet to a name that is taken is refused', () => {
    expect(() => done(two, renameSheet(two, 'Drum', 'HEAD'))).toThrow(/"HEAD" is taken by "Head"/)
    expect(() => renameSheet(two, 'Pump', 'x')).toThrow(/no sheet "Pump"; there are "Drum", "Head"/)
  })

  it('removeSheet leaves the formulas that refer to it as written', () => {
    const removed = done(two, removeSheet(two, 'drum'))
    expect(removed.sheets).toEqual([two.sheets[1]])
    expect(removed.names).toBe(two.names)
  })
})
