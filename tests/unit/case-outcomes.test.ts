import { describe, expect, it } from 'vitest'
import { caseOutcomes, comparedText, differenceText, type ComparedValue } from '../../src/calc/case-outcomes.ts'
import { Graph } from '../../src/calc/graph.ts'
import type { CellValue } from '../../src/calc/values.ts'
import { computingSheets } from '../../src/exchange/computing-file.ts'
import { reportFile } from '../../src/report/report-file.ts'
import { cellEditsBetween } from '../../src/workbook/cell-edits-between.ts'
import { switchCase } from '../../src/workbook/case-switching.ts'
import { setInCase } from '../../src/workbook/case-commands.ts'
import { casesOf } from '../../src/workbook/cases.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { applyEdits, type Edit } from '../../src/workbook/edits.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { readWorkbook } from '../../src/workbook/file.ts'
import type { Workbook } from '../../src/workbook/document.ts'

const read = readWorkbook(`{"lowside": 1, "title": "Zones", "sheets": [
 {"name": "Basis", "cells": {"A1": ["Suction", "label"], "B1": [22, "input"], "C1": ["°F", "unit"]}},
 {"name": "Zones", "cells": {
  "A1": ["Zone", "label"], "B1": ["Load", "label"], "C1": ["Pressure", "label"], "D1": ["Served?", "label"],
  "B2": ["TR", "unit"], "C2": ["psia", "unit"],
  "A3": ["Store", "input"], "B3": [40, "input"], "C3": ["=SAT.PRESSURE(Basis!B1:C1,C$2)", "result"], "D3": ["=Basis!B1<=24", "check"],
  "A4": ["Dock", "input"], "B4": [30, "input"], "C4": ["=B3+B4", "result"], "D4": ["=B4<=30", "check"]}}],
 "cases": [{"name": "Peak", "note": "assumed", "values": {"Zones!B3": 44, "Zones!B4": "=33/1"}}, {"name": "Raised", "values": {"Basis!B1": 26}}],
 "currentCase": "Raised", "compared": ["Zones!C3", "Zones!C4", "Zones!D3"]}`)
if ('problems' in read) throw new Error(read.problems[0]?.message)
const { workbook } = read
const at = (before: Workbook, edits: readonly Edit[]): Workbook => applyEdits(before, edits).workbook

describe('the outcomes of cases', () => {
  it('are those of each case calculated by itself, and the graph is then as it was', () => {
    const graph = new Graph(workbook)
    const before = graph.allValues()
    const outcomes = caseOutcomes(graph)
    expect(outcomes.map(({ name }) => name)).toEqual(['Base', 'Peak', 'Raised'])
    for (const [index, to] of [null, 0, 1].entries()) {
      const alone = new Graph(at(workbook, switchCase(workbook, to)))
      for (const [place, { sheet, row, column }] of casesOf(workbook).compared.entries()) {
        expect(outcomes[index]?.compared[place]?.value).toEqual(alone.value(sheet, row, column))
      }
      expect(outcomes[index]?.notMet.length).toBe(alone.states().reduce((sum, { notMet }) => sum + notMet, 0))
    }
    expect(graph.allValues()).toEqual(before)
    expect(graph.workbook).toEqual(workbook)
  })

  it('name the row of a table, and say by how much a check is missed', () => {
    const [, peak, raised] = caseOutcomes(new Graph(workbook))
    expect(raised?.compared.map(({ label, unit }) => [label, unit])).toEqual([['Store: Pressure', 'psia'], ['Dock: Pressure', 'psia'], ['Store: Served?', undefined]])
    expect(raised?.notMet).toEqual([{ sheet: 'Zones', row: 2, column: 3, label: 'Store: Served?', words: 'not met by 2 Δ°F' }])
    expect(peak?.notMet).toEqual([{ sheet: 'Zones', row: 3, column: 3, label: 'Dock: Served?', words: 'not met by 3 TR (10 %)' }])
  })

  it.each<[number | string, number | string, string | undefined, string | undefined]>([
    [200, 230, 'TR', '+30 TR (+15\u00a0%)'],
    [200, 190, 'lb', '\u221210 lb (\u22125\u00a0%)'],
    [22, 25, '°F', '+3 Δ°F'],
    [30, 33, 'psig', '+3 psi'],
    [10, 12, '%', '+2 %'],
    [0, 12, 'lb', '+12 lb'],
    [0, 1, undefined, '+1'],
    [5, 5, 'ft', undefined],
    ['none', 'Store', undefined, 'differs'],
  ])('of %s and %s %s the difference is %s', (base, other, unit, words) => {
    const value = (of: CellValue): ComparedValue => ({ label: 'x', value: of, ...(unit === undefined ? {} : { unit }) })
    expect(differenceText(value(base), value(other))).toBe(words)
  })

  it('an error reads as one', () => {
    expect(comparedText({ label: undefined, value: { error: '#VALUE!', message: 'm' } })).toBe('#VALUE!')
  })
})

describe('a graph that is told of a workbook’s next state', () => {
  it.each<[string, (before: Workbook) => readonly Edit[]]>([
    ['an entry', (before) => setEntry(before, 'Zones', { row: 2, column: 1 }, '50')],
    ['a value of another case', (before) => setInCase(before, 0, { sheet: 'Zones', row: 2, column: 1 }, 60)],
    ['a switch', (before) => switchCase(before, null)],
    ['a row inserted', (before) => insertLines(before, 'Zones', { axis: 'rows', at: 1, count: 1 })],
  ])('has the outcomes of a fresh one after %s', (_, change) => {
    const graph = new Graph(workbook)
    const after = at(workbook, change(workbook))
    const edits = cellEditsBetween(workbook, after)
    graph.apply(edits ?? [])
    expect(edits).toBeDefined()
    expect(caseOutcomes(graph)).toEqual(caseOutcomes(new Graph(after)))
  })

  it('gives up where more than cells has changed', () => {
    expect(cellEditsBetween(workbook, at(workbook, [{ kind: 'renameSheet', sheet: 'Zones', name: 'Rooms' }]))).toBeUndefined()
  })
})

describe('what leaves says which case it shows', () => {
  it('a spreadsheet file has the case on its cover and a sheet of all cases, in words that they are values', () => {
    const graph = new Graph(workbook)
    const { sheets } = computingSheets(workbook, graph.allValues(), { date: new Date(0), cases: caseOutcomes(graph) })
    const texts = (part: string) => [...sheets.find((one) => one.part === part)?.sheet.rows ?? []].map(({ cells }) => cells.map((cell) => cell?.value ?? null))
    expect(texts('cover').flat()).toContain('Raised, not the base: 1 input differs')
    const cases = texts('cases')
    expect(cases[1]?.[0]).toMatch(/^Values as they were at export: nothing on this sheet recalculates\. The other sheets hold the case "Raised"/)
    expect(cases).toContainEqual(['Inputs', 'Cell', 'Unit', 'Base', 'Peak', 'Raised'])
    expect(cases).toContainEqual(['Suction', 'Basis!B1', '°F', 22, 'as the base', 26])
    expect(cases).toContainEqual(['Store: Load', 'Zones!B3', 'TR', 40, 44, 'as the base'])
    expect(cases).toContainEqual(['Dock: Pressure', 'Zones!C4', 'psia', 70, 77, 70])
    expect(cases).toContainEqual(['difference from the base', '', '', '', '+7 psi (+10\u00a0%)', ''])
    expect(cases).toContainEqual(['All checks of the workbook', '', '', '2 of 2 met', '1 of 2 met', '1 of 2 met'])
    expect(cases).toContainEqual(['Raised', 'Zones!D3', '', 'Store: Served?: not met by 2 Δ°F'])
  })

  it('a workbook without cases has neither', () => {
    const { cases: _cases, ...plain } = at(workbook, switchCase(workbook, null))
    const { sheets } = computingSheets(plain, new Graph(plain).allValues(), { date: new Date(0) })
    expect(sheets.map(({ part }) => part)).not.toContain('cases')
    expect([...sheets[0]?.sheet.rows ?? []].flatMap(({ cells }) => cells.map((cell) => cell?.value))).not.toContain('Case')
  })

  it('a report says it on its front', () => {
    const graph = new Graph(workbook)
    expect(reportFile({ workbook, values: graph.allAreas(), states: graph.states(), date: new Date(0), figureStyle: '' })).toContain('Raised, not the base: 1 input differs')
  })
})
