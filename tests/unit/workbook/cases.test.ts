import { describe, expect, it } from 'vitest'
import { caseCalled, compareCells, freeName, makeBase, makeCase, removeCase, renameCase, setCaseNote, setInCase, takeBack } from '../../../src/workbook/case-commands.ts'
import { switchCase } from '../../../src/workbook/case-switching.ts'
import { caseInWords, casesOf, currentName, differs, heldIn, isOwn } from '../../../src/workbook/cases.ts'
import { withCells } from '../../../src/workbook/cells.ts'
import { removeSheet, setEntry, setRole } from '../../../src/workbook/commands.ts'
import { cellAt, emptySheet, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { perform, startHistory, undo, type History } from '../../../src/workbook/history.ts'
import { deleteLines, insertLines } from '../../../src/workbook/line-commands.ts'
import { restate } from '../../../src/workbook/restate.ts'

const sheet = withCells(emptySheet('Zone'), [
  { row: 0, column: 0, cell: { content: 'Suction', role: 'label' } },
  { row: 0, column: 1, cell: { content: 22, role: 'input' } },
  { row: 0, column: 2, cell: { content: '°F', role: 'unit' } },
  { row: 1, column: 0, cell: { content: 'Load', role: 'label' } },
  { row: 1, column: 1, cell: { content: 40, role: 'input' } },
  { row: 1, column: 2, cell: { content: 'TR', role: 'unit' } },
  { row: 2, column: 1, cell: { content: '=B1+B2', role: 'result' } },
])
const start: Workbook = { title: 't', purpose: '', sheets: [sheet, emptySheet('Notes')], names: new Map(), figures: [] }
const SUCTION = { sheet: 'Zone', row: 0, column: 1 }
const LOAD = { sheet: 'Zone', row: 1, column: 1 }
const RESULT = { sheet: 'Zone', row: 2, column: 1 }

const then = (history: History, make: (workbook: Workbook) => readonly Edit[]): History => perform(history, make(history.workbook), 'x').history
const after = (...steps: readonly ((workbook: Workbook) => readonly Edit[])[]): Workbook => steps.reduce(then, startHistory(start)).workbook
const content = (workbook: Workbook, { sheet: name, row, column } = SUCTION) => cellAt(workbook, name, row, column)?.content
const held = (workbook: Workbook, at: number | null, place = SUCTION) => heldIn(workbook, at, place)?.content
const peak = (workbook: Workbook) => makeCase(workbook, 'Peak', null)
const type = (text: string, place = SUCTION) => (workbook: Workbook) => setEntry(workbook, place.sheet, place, text)

describe('a case', () => {
  it('is current once made; an input that is edited then belongs to it, and the base keeps its own', () => {
    const workbook = after(peak, type('25'))
    expect(currentName(workbook)).toBe('Peak')
    expect([content(workbook), held(workbook, null), held(workbook, 0)]).toEqual([25, 22, 25])
    const base = after(peak, type('25'), (now) => switchCase(now, null))
    expect([content(base), held(base, null), held(base, 0)]).toEqual([22, 22, 25])
  })

  it('an edit and what it keeps of the base are one step of Undo, and so is a switch', () => {
    const made = [peak, type('25')].reduce(then, startHistory(start))
    expect(undo(made).history.workbook).toEqual(after(peak))
    const switched = then(made, (now) => switchCase(now, null))
    expect(undo(switched).history.workbook).toEqual(made.workbook)
    expect(undo(undo(undo(switched).history).history).history.workbook).toEqual(start)
  })

  it('the base edited reaches a case that has nothing of its own, not one that has', () => {
    const workbook = after(peak, type('25'), (now) => switchCase(now, null), type('20'), type('44', LOAD))
    expect([held(workbook, 0), held(workbook, 0, LOAD)]).toEqual([25, 44])
  })

  it('rows inserted and inputs edited in one action: the edited ones belong to the case all the same', () => {
    const workbook = after(peak, (now) => {
      const inserted = insertLines(now, 'Zone', { axis: 'rows', at: 0, count: 1 })
      return [...inserted, ...setEntry(applyEdits(now, inserted).workbook, 'Zone', { row: 1, column: 1 }, '25')]
    }, (now) => switchCase(now, null))
    expect([content(workbook, { ...SUCTION, row: 1 }), held(workbook, 0, { ...SUCTION, row: 1 })]).toEqual([22, 25])
  })

  it('labels, formulas and new cells are the same in all cases', () => {
    const workbook = after(peak, (now) => setEntry(now, 'Zone', { row: 0, column: 0 }, 'House suction'), (now) => setEntry(now, 'Zone', { row: 4, column: 1 }, '7'), (now) => switchCase(now, null))
    expect(content(workbook, { sheet: 'Zone', row: 0, column: 0 })).toBe('House suction')
    expect(content(workbook, { sheet: 'Zone', row: 4, column: 1 })).toBe(7)
  })

  it('begins with the values of another one where it is made of that; made of the base with none', () => {
    const workbook = after(peak, type('25'), (now) => makeCase(now, 'Copy', 0), type('41', LOAD), (now) => makeCase(now, 'Plain', null))
    expect([held(workbook, 1), held(workbook, 1, LOAD), held(workbook, 0, LOAD), held(workbook, 2)]).toEqual([25, 41, 40, 22])
  })

  it('can be written while it is not current, and so can the base', () => {
    const workbook = after(peak, (now) => switchCase(now, null), (now) => setInCase(now, 0, SUCTION, 27))
    expect([content(workbook), held(workbook, 0)]).toEqual([22, 27])
    const inPeak = after(peak, type('25'), (now) => setInCase(now, null, SUCTION, 18), (now) => setInCase(now, null, LOAD, 50))
    expect([content(inPeak), held(inPeak, null), held(inPeak, null, LOAD), isOwn(inPeak, 0, LOAD)]).toEqual([25, 18, 50, false])
  })

  it('its own value stays its own where it is the same as the base’s, until it is taken back', () => {
    const same = after(peak, type('25'), type('22'))
    expect([isOwn(same, 0, SUCTION), differs(same, 0, SUCTION)]).toEqual([true, false])
    const back = after(peak, type('25'), (now) => takeBack(now, 0, SUCTION))
    expect([content(back), isOwn(back, 0, SUCTION)]).toEqual([22, false])
  })

  it('deleted while current leaves the base; renamed and noted it keeps its values', () => {
    expect(after(peak, type('25'), (now) => removeCase(now, 0))).toEqual(start)
    const workbook = after(peak, type('25'), (now) => renameCase(now, 0, 'Summer'), (now) => setCaseNote(now, 0, 'assumed'))
    expect(casesOf(workbook).list).toEqual([{ name: 'Summer', note: 'assumed', aside: [{ ...SUCTION, content: 22 }] }])
  })

  it('made the base, changes no other case, and the former base is a case', () => {
    const workbook = after(peak, type('25'), (now) => makeCase(now, 'Other', null), type('45', LOAD), (now) => makeBase(now, 0))
    expect(casesOf(workbook).list.map(({ name }) => name)).toEqual(['Former base', 'Other'])
    expect([held(workbook, null), held(workbook, 0), held(workbook, 1), held(workbook, 1, LOAD), casesOf(workbook).current]).toEqual([25, 22, 22, 45, null])
  })

  it('follows its cells; what was deleted has no value left, and comes back with Undo', () => {
    const made = [peak, type('25'), (now: Workbook) => compareCells(now, [RESULT]), (now: Workbook) => switchCase(now, null)].reduce(then, startHistory(start))
    const inserted = then(made, (now) => insertLines(now, 'Zone', { axis: 'rows', at: 0, count: 2 })).workbook
    expect(held(inserted, 0, { ...SUCTION, row: 2 })).toBe(25)
    expect(casesOf(inserted).compared).toEqual([{ ...RESULT, row: 4 }])
    const deleted = then(made, (now) => deleteLines(now, 'Zone', { axis: 'rows', at: 0, count: 1 }))
    expect(casesOf(deleted.workbook).list[0]?.aside).toEqual([])
    expect(undo(deleted).history.workbook).toEqual(made.workbook)
    const removed = then(made, (now) => removeSheet(now, 'Zone'))
    expect(casesOf(removed.workbook)).toMatchObject({ list: [{ aside: [] }], compared: [] })
    expect(undo(removed).history.workbook).toEqual(made.workbook)
  })

  it('is restated with the workbook, there and back exactly, also where the cells themselves have nothing to restate', () => {
    const workbook = after(peak, type('25'), (now) => setInCase(now, null, LOAD, 41))
    const si = then(startHistory(workbook), (now) => restate(now, 'SI')).workbook
    // 25 °F is −3.888… °C, 22 °F is −5.555… °C by the definition of the scales.
    expect(held(si, 0)).toBeCloseTo(-35 / 9, 9)
    expect(held(si, null)).toBeCloseTo(-50 / 9, 9)
    expect(isOwn(si, 0, LOAD)).toBe(false)
    expect(then(startHistory(si), (now) => restate(now, 'US')).workbook).toEqual(workbook)
    const text = after(peak, (now) => switchCase(now, null), (now) => setRole(now, 'Zone', { from: { row: 0, column: 2 } }, 'text'), (now) => setInCase(now, 0, SUCTION, '5 m/s'))
    expect(held(then(startHistory(text), (now) => restate(now, 'US')).workbook, 0)).toMatch(/ft\/min$/)
  })
})

describe('what cases refuse', () => {
  it.each([
    ['', /1 to 60 characters/], [' x', /no blank at either end/], ['base', /what the inputs are without any case/], ['PEAK', /there is a case "Peak" already/],
  ])('the name %j', (name, message) => {
    expect(() => makeCase(after(peak), name, null)).toThrow(message)
  })

  it('a value for what is no input, and a name that no case has', () => {
    expect(() => setInCase(after(peak), 0, RESULT, 1)).toThrow('only inputs differ between cases')
    expect(() => caseCalled(after(peak), 'Winter')).toThrow('there is no case "Winter"; there are "Base", "Peak"')
    expect([caseCalled(after(peak), 'peak'), caseCalled(after(peak), 'BASE')]).toEqual([0, null])
    expect(freeName(after(peak), 'Peak')).toBe('Peak 2')
    expect(freeName(after(peak), 'x'.repeat(80))).toHaveLength(60)
  })
})

describe('cases in a file', () => {
  it('the base is in the cells, whichever case is current: a switch changes one line', () => {
    const inPeak = after(peak, type('25'), (now) => compareCells(now, [RESULT]))
    const text = writeWorkbook(inPeak)
    expect(text).toContain('"B1": [22, "input"]')
    expect(text).toContain(' "cases": [\n  {"name": "Peak",\n   "values": {\n     "Zone!B1": 25\n   }}\n ],\n "currentCase": "Peak",\n "compared": [\n  "Zone!B3"\n ]}')
    const base = writeWorkbook(then(startHistory(inPeak), (now) => switchCase(now, null)).workbook)
    expect(text.split('\n').filter((line) => !base.split('\n').includes(line))).toEqual([' "currentCase": "Peak",'])
    expect(readWorkbook(text)).toEqual({ workbook: inPeak })
  })

  const file = (rest: string) => `{"lowside": 1, "title": "t", "sheets": [{"name": "S", "cells": {"A1": [1, "input"]}}],\n${rest}}`
  const messages = (rest: string) => {
    const read = readWorkbook(file(rest))
    return 'problems' in read ? read.problems.map(({ message }) => message) : []
  }

  it('of before there were cases is read as ever, and so is one with an empty list', () => {
    expect(messages('"names": {}')).toEqual([])
    expect(messages('"cases": []')).toEqual([])
    expect(readWorkbook(file('"cases": []'))).toEqual(readWorkbook(file('"names": {}')))
  })

  it.each([
    ['"cases": [{"name": "a", "values": {"A1": 2}}]', /^line 2, case 1: "A1" is no cell; accepted: a sheet and an address, as in Drum!C5/],
    ['"cases": [{"name": "a", "values": {"T!A1": 2}}]', /^line 2, case 1: there is no sheet "T"/],
    ['"cases": [{"name": "a", "values": {"S!A1": ""}}]', /^line 2, case 1: /],
    ['"cases": [{"name": "a"}, {"name": "A"}]', /^line 2, case 2: there is a case "a" already/],
    ['"cases": [{"name": "Base"}]', /^line 2, case 1: "Base" is what the inputs are without any case/],
    ['"cases": [{"nam": "a"}]', /^line 2, case 1: .*name/],
    ['"cases": [], "currentCase": "a"', /^line 2: there is no case "a"; accepted: none, as there are no cases/],
    ['"compared": ["S!A1:B2"]', /^line 2: "S!A1:B2" is no cell/],
  ])('%s is refused, with where and what is accepted', (rest, message) => {
    expect(messages(rest)[0]).toMatch(message)
  })

  it('more values than can be looked at are refused', () => {
    const many = Array.from({ length: 10_001 }, (_, row) => `"S!B${row + 1}": 1`).join(',')
    expect(messages(`"cases": [{"name": "a", "values": {${many}}}]`)[0]).toMatch(/10,001 values of their own; accepted: up to 10,000/)
    const half = Array.from({ length: 6000 }, (_, row) => `"S!B${row + 1}": 1`).join(',')
    expect(messages(`"cases": [{"name": "a", "values": {${half}}}, {"name": "b", "values": {${half}}}], "currentCase": "b"`)[0]).toMatch(/^line 2: the cases would have 12,000 values/)
  })
})

it('says which case is shown', () => {
  expect(caseInWords(after(peak, type('25')))).toBe('Peak, not the base: 1 input differs')
  expect(caseInWords(after(peak, (now) => switchCase(now, null)))).toBe('Base (1 other case in the workbook, not shown)')
})
