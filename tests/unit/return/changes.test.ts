import { describe, expect, it } from 'vitest'
import { cellAt } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { deleteLines, insertLines } from '../../../src/workbook/line-commands.ts'
import { at, workbookOf } from '../workbook-of.ts'
import { changesIn, contentsOfExport, takenOver, typed, withRows } from './edited-contents.ts'

/** Numbers of this workbook are invented. */
const workbook = workbookOf({
  Duty: {
    A1: ['Load', 'label'], B1: 85, C1: ['TR', 'unit'],
    A2: ['Drum', 'label'], B2: 5, C2: ['°F', 'unit'],
    A3: ['Pressure', 'label'], B3: '=SAT.PRESSURE(B2:C2,"psia")', C3: ['psia', 'unit'],
    A4: ['Twice', 'label'], B4: '=2*B1', A5: ['Both', 'label'], B5: '=B3+Load', A6: ['Open', 'label'], B6: [null, 'input'],
    A8: ['Tag', 'heading'], B8: ['Volume', 'heading'], A9: ['V-1', 'label'], B9: 10, A10: ['V-2', 'label'], B10: 20, A11: ['V-3', 'label'], B11: 30, B12: '=SUM(B9:B11)',
  },
  Sums: { A1: ['All', 'label'], A2: '=Duty!B12*2', A3: '=SAT.PRESSURE(Duty!B2:C2,"psig")' },
}, { Load: 'Duty!$B$1', Volume: 'Duty!$B$12' })
const contents = await contentsOfExport(workbook)
const content = async (edited: Promise<Awaited<ReturnType<typeof takenOver>>>, sheet: string, address: string) => cellAt(await edited, sheet, at(address).row, at(address).column)?.content

describe('a changed input', () => {
  it('is taken over, and keeps role and format', async () => {
    const edited = typed(contents, 'Duty', 'B1', 90)
    expect(await changesIn(edited)).toMatchObject([{ kind: 'input', place: 'Duty!B1 Load', was: '85', is: '90', content: 90 }])
    expect(cellAt(await takenOver(edited, 'inputs'), 'Duty', 0, 1)).toEqual({ content: 90, role: 'input' })
  })

  it('is one where an empty input is filled, and where one is emptied', async () => {
    expect(await changesIn(typed(contents, 'Duty', 'B6', 3))).toMatchObject([{ kind: 'input', was: 'nothing', is: '3' }])
    const emptied = typed(contents, 'Duty', 'B2', null)
    expect(await changesIn(emptied)).toMatchObject([{ kind: 'input', was: '5', is: 'nothing', content: null }])
    expect(cellAt(await takenOver(emptied, 'inputs'), 'Duty', 1, 1)).toEqual({ content: null, role: 'input' })
  })

  it('stays a text where it begins like a formula', async () => {
    expect(await content(takenOver(typed(contents, 'Duty', 'B1', { value: '=1+1' }), 'inputs'), 'Duty', 'B1')).toBe("'=1+1")
  })

  it('is none where a program writes fifteen digits of seventeen', async () => {
    const third = workbookOf({ Duty: { A1: 1 / 3, A2: 0.1 + 0.2 } })
    const file = await contentsOfExport(third)
    expect(await changesIn(typed(typed(file, 'Duty', 'A1', 0.333333333333333), 'Duty', 'A2', 0.3))).toEqual([])
    expect(await changesIn(typed(file, 'Duty', 'A1', 0.33333333333334))).toHaveLength(1)
  })

  it('is asked about where it becomes a formula', async () => {
    const edited = typed(contents, 'Duty', 'B1', '=B2*2')
    expect(await changesIn(edited)).toMatchObject([{ kind: 'formulaInInput', taking: { words: 'The input becomes a formula: =B2*2' } }])
    expect(await takenOver(edited, 'inputs')).toEqual(workbook)
    expect(await content(takenOver(edited, 'all'), 'Duty', 'B1')).toBe('=B2*2')
  })
})

describe('a changed formula', () => {
  it.each(['b3+load', ' B3 + Load', 'B3+LOAD'])('is none where a program only spells it otherwise: %s', async (formula) => {
    expect(await changesIn(typed(contents, 'Duty', 'B5', `=${formula}`))).toEqual([])
  })

  it('is one where a reference becomes absolute', async () => {
    expect(await changesIn(typed(contents, 'Duty', 'B4', '=2*$B$1'))).toMatchObject([{ kind: 'formulaChanged', was: '=2*B1' }])
  })

  it('comes back with the calls whose results it refers to', async () => {
    const place = contents.sheets.find(({ name }) => name === 'Duty')?.rows[2]?.[1]?.formula ?? ''
    const edited = typed(typed(contents, 'Duty', 'B4', `=2*${place}`), 'Sums', 'A2', `=ROUND(${place},1)`)
    expect(await content(takenOver(edited, 'all'), 'Duty', 'B4')).toBe('=2*SAT.PRESSURE(B2:C2,"psia")')
    expect(await content(takenOver(edited, 'all'), 'Sums', 'A2')).toBe('=ROUND(SAT.PRESSURE(Duty!B2:C2,"psia"),1)')
  })

  it('cannot be taken over where it refers to a step of the workings, or calls what Lowside has not', async () => {
    expect(await changesIn(typed(contents, 'Duty', 'B4', "='SAT.PRESSURE'!C7"))).toMatchObject([{ kind: 'formulaChanged', taking: { refused: expect.stringContaining('not the result of a call') } }])
    expect(await changesIn(typed(contents, 'Duty', 'B4', '=WEBSERVICE(1)'))).toMatchObject([{ kind: 'formulaChanged', taking: { refused: 'Lowside has no function WEBSERVICE' } }])
  })

  it('is asked about where a number takes its place', async () => {
    const edited = typed(contents, 'Duty', 'B4', 170)
    expect(await changesIn(edited)).toMatchObject([{ kind: 'formulaOverwritten', was: '=2*B1', is: '170' }])
    expect(await content(takenOver(edited, 'all'), 'Duty', 'B4')).toBe(170)
  })
})

describe('other cells', () => {
  it('are asked about: labels, new ones, emptied ones, notes', async () => {
    let edited = typed(contents, 'Duty', 'A1', 'Heat load')
    edited = typed(edited, 'Duty', 'D1', 'checked')
    edited = typed(edited, 'Duty', 'A2', null)
    edited = typed(edited, 'Duty', 'A4', { value: 'Twice', note: 'why?' })
    expect((await changesIn(edited)).map(({ kind, place }) => [kind, place])).toEqual([['contentChanged', 'Duty!A1'], ['cellNew', 'Duty!D1'], ['cellEmptied', 'Duty!A2'], ['noteChanged', 'Duty!A4']])
    const all = await takenOver(edited, 'all')
    expect([cellAt(all, 'Duty', 0, 0)?.content, cellAt(all, 'Duty', 0, 3)?.content, cellAt(all, 'Duty', 1, 0), cellAt(all, 'Duty', 3, 0)?.note]).toEqual(['Heat load', 'checked', undefined, 'why?'])
  })

  it('of workings are shown with function, step and the cell that called first, and never taken over', async () => {
    const edited = typed(contents, 'SAT.PRESSURE', 'D6', 1)
    const changes = await changesIn(edited)
    expect(changes).toMatchObject([{ kind: 'workings', of: 'SAT.PRESSURE', firstCalledIn: 'Duty!B3', is: '1' }])
    expect(await takenOver(edited, 'all')).toEqual(workbook)
  })

  it('of tables are shown, of the cover said in one line', async () => {
    expect(await changesIn(typed(typed(contents, 'Units', 'B4', 12345), 'Cover', 'A2', 'seen'))).toMatchObject([{ kind: 'passedOver', place: 'Cover' }, { kind: 'workings', of: 'Units' }])
  })

  it('that are not taken over are kept on a sheet if that is wanted', async () => {
    const kept = await takenOver(typed(typed(contents, 'Duty', 'B4', 170), 'SAT.PRESSURE', 'D6', 1), 'inputs', true)
    expect(kept.sheets.at(-1)?.name).toBe('Set aside')
    expect(kept.sheets.at(-1)?.rows.slice(3).map((row) => [row?.[0]?.content, row?.[1]?.content])).toEqual([['Duty!B4', "'170"], ["''SAT.PRESSURE'!D6", "'1"]])
  })
})

describe('rows', () => {
  it('that are inserted are one change, and formulas follow', async () => {
    const edited = typed(typed(withRows(contents, 'Duty', 'insert', 9, 1), 'Duty', 'A10', 'V-1a'), 'Duty', 'B10', 15)
    expect(await changesIn(edited)).toMatchObject([{ kind: 'rowsInserted', place: 'Duty!10:10' }])
    const all = await takenOver(edited, 'all')
    expect(cellAt(all, 'Duty', 9, 1)).toEqual({ content: 15, role: 'input' })
    expect(cellAt(all, 'Duty', 12, 1)?.content).toBe('=SUM(B9:B12)')
    expect(cellAt(all, 'Sums', 1, 0)?.content).toBe('=Duty!B13*2')
    expect(all.names.get('Volume')).toBe('Duty!$B$13')
    expect(await takenOver(edited, 'inputs')).toEqual(workbook)
  })

  it('that are taken away are one change', async () => {
    const edited = withRows(contents, 'Duty', 'delete', 9, 1)
    expect(await changesIn(edited)).toMatchObject([{ kind: 'rowsDeleted', place: 'Duty!10:10' }])
    expect(await takenOver(edited, 'all')).toEqual(applyEdits(workbook, deleteLines(workbook, 'Duty', { axis: 'rows', at: 9, count: 1 })).workbook)
  })

  it('above everything move the calls of functions along', async () => {
    const edited = withRows(contents, 'Duty', 'insert', 0, 2)
    expect(await changesIn(edited)).toMatchObject([{ kind: 'rowsInserted', place: 'Duty!1:1' }])
    expect(await takenOver(edited, 'all')).toEqual(applyEdits(workbook, insertLines(workbook, 'Duty', { axis: 'rows', at: 0, count: 2 })).workbook)
  })

  it('and an input changed below them are two changes, each for itself', async () => {
    const edited = typed(withRows(contents, 'Duty', 'insert', 9, 1), 'Duty', 'B12', 31)
    expect((await changesIn(edited)).map(({ kind, place }) => [kind, place])).toEqual([['rowsInserted', 'Duty!10:10'], ['input', 'Duty!B11 V-3']])
    expect(await content(takenOver(edited, 'inputs'), 'Duty', 'B11')).toBe(31)
    expect(await content(takenOver(edited, 'all'), 'Duty', 'B12')).toBe(31)
  })

  it('a formula changed below rows that are not taken over is the one that it would have been without them', async () => {
    const edited = typed(withRows(contents, 'Duty', 'insert', 9, 1), 'Duty', 'B13', '=SUM(B9:B12)*2')
    const changes = await changesIn(edited)
    expect(changes.map(({ kind }) => kind)).toEqual(['rowsInserted', 'formulaChanged'])
    const { takeOver } = await import('../../../src/exchange/return/take-over.ts')
    const without = applyEdits(workbook, takeOver(workbook, changes, { inputs: true, taken: new Set([changes[1]?.id ?? -1]), setAside: false })).workbook
    expect(cellAt(without, 'Duty', 11, 1)?.content).toBe('=SUM(B9:B11)*2')
  })

  it('added below all others are one change and move nothing', async () => {
    let edited = contents
    for (const [row, tag] of [[13, 'V-8'], [14, 'V-9']] as const) edited = typed(typed(edited, 'Duty', `A${row}`, tag), 'Duty', `B${row}`, row)
    expect(await changesIn(edited)).toMatchObject([{ kind: 'rowsAdded', place: 'Duty!13:14', is: '2 rows: V-8, 13, V-9, 14' }])
    expect(await content(takenOver(edited, 'all'), 'Duty', 'B14')).toBe(14)
  })
})

describe('sheets and names', () => {
  it('a sheet with another name is one change', async () => {
    const renamed = {
      ...contents,
      names: new Map([...contents.names].map(([name, text]) => [name, text.replace('Duty!', "'Heat duty'!")])),
      sheets: contents.sheets.map((sheet) => ({ ...sheet, name: sheet.name === 'Duty' ? 'Heat duty' : sheet.name, rows: sheet.rows.map((row) => row?.map((cell) => (cell?.formula === undefined ? cell : { ...cell, formula: cell.formula.replaceAll('Duty!', "'Heat duty'!") }))) })),
    }
    expect(await changesIn(renamed)).toMatchObject([{ kind: 'sheetRenamed', was: 'Duty', is: 'Heat duty' }])
    const all = await takenOver(renamed, 'all')
    expect(all.sheets.map(({ name }) => name)).toEqual(['Heat duty', 'Sums'])
    expect(cellAt(all, 'Sums', 1, 0)?.content).toBe("='Heat duty'!B12*2")
  })

  it('a new sheet, one that is gone, another order', async () => {
    const added = { ...contents, sheets: [...contents.sheets, { name: 'Mine', hidden: false, widthsPx: [], rows: [[{ value: 2 }, { value: 4, formula: 'A1*Duty!B1' }]] }] }
    expect(await changesIn(added)).toMatchObject([{ kind: 'sheetAdded', place: 'Mine' }])
    expect(await content(takenOver(added, 'all'), 'Mine', 'B1')).toBe('=A1*Duty!B1')
    const gone = { ...contents, sheets: contents.sheets.filter(({ name }) => name !== 'Sums') }
    expect(await changesIn(gone)).toMatchObject([{ kind: 'sheetRemoved', sheet: 'Sums' }])
    expect((await takenOver(gone, 'all')).sheets.map(({ name }) => name)).toEqual(['Duty'])
    const moved = { ...contents, sheets: contents.sheets.toReversed() }
    expect(await changesIn(moved)).toMatchObject([{ kind: 'sheetsMoved' }])
    expect((await takenOver(moved, 'all')).sheets.map(({ name }) => name)).toEqual(['Sums', 'Duty'])
  })

  it('names that mean something else, are new, or are gone', async () => {
    const names = { ...contents, names: new Map([['Load', 'Duty!$B$2'], ['Extra', 'Duty!$B$1']]) }
    expect((await changesIn(names)).map(({ kind }) => kind)).toEqual(['nameChanged', 'nameRemoved', 'nameAdded'])
    expect([...(await takenOver(names, 'all')).names]).toEqual([['Load', 'Duty!$B$2'], ['Extra', 'Duty!$B$1']])
  })
})
