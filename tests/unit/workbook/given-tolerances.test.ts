import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { withCells } from '../../../src/workbook/cells.ts'
import { removeSheet, renameSheet } from '../../../src/workbook/commands.ts'
import { emptySheet, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { readPrecisely } from '../../../src/workbook/file-reading.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { giveTolerance, type Tolerance } from '../../../src/workbook/given-tolerances.ts'
import { perform, startHistory, undo, type History } from '../../../src/workbook/history.ts'
import { deleteLines, insertLines, moveLines } from '../../../src/workbook/line-commands.ts'
import { blockOf, moveCells } from '../../../src/workbook/move-cells.ts'
import { restate } from '../../../src/workbook/restate.ts'
import { duplicateSheet } from '../../../src/workbook/sheet-commands.ts'
import { changeUnits, unitPlace } from '../../../src/workbook/unit-change.ts'

const units = ['°F', 'psig', 'TR', 'inHg vac']
const zone = withCells(emptySheet('Zone'), units.flatMap((unit, row) => [
  { row, column: 1, cell: { content: 20, role: 'input' as const } },
  { row, column: 2, cell: { content: unit, role: 'unit' as const } },
]))
const start: Workbook = { title: 't', purpose: '', sheets: [zone, emptySheet('Notes')], names: new Map(), figures: [] }

const cell = (row: number, column = 1, sheet = 'Zone') => ({ sheet, row, column })
const size = (one: number): Tolerance => ({ kind: 'size', size: one })
const share = (one: number): Tolerance => ({ kind: 'share', share: one })
const at = (workbook: Workbook, edits: readonly Edit[]): Workbook => applyEdits(workbook, edits).workbook
const given = [[0, size(1)], [1, size(2)], [2, share(0.05)], [3, size(1)]] as const
const kept = given.reduce((workbook, [row, tolerance]) => at(workbook, giveTolerance(workbook, cell(row), tolerance)), start)

/** `Zone 0:1` to what is kept there. */
const said = ({ tolerances = [] }: Workbook) => Object.fromEntries(tolerances.map(({ place: { sheet, row, column }, tolerance }) => [`${sheet} ${row}:${column}`, tolerance.kind === 'size' ? tolerance.size : tolerance.share]))

describe('a tolerance given an input', () => {
  it('stands in the workbook until it is taken back, each step undone exactly', () => {
    expect(said(kept)).toEqual({ 'Zone 0:1': 1, 'Zone 1:1': 2, 'Zone 2:1': 0.05, 'Zone 3:1': 1 })
    const other = applyEdits(kept, giveTolerance(kept, cell(0, 1, 'zone'), share(0.1)))
    expect(other.workbook.tolerances?.[0]).toEqual({ place: cell(0), tolerance: share(0.1) })
    expect(at(other.workbook, other.inverse)).toEqual(kept)
    const none = given.reduce((workbook, [row]) => at(workbook, giveTolerance(workbook, cell(row), undefined)), kept)
    expect(none).toEqual(start)
    expect(applyEdits(kept, giveTolerance(kept, cell(0), size(1))).workbook).toBe(kept)
  })

  it.each([
    [size(-1), 'cell Zone!B1: -1 is no tolerance; accepted: a finite number, not negative'],
    [share(Number.NaN), 'NaN is no tolerance'],
    [size(Infinity), 'Infinity is no tolerance'],
  ])('is refused as %j', (tolerance, message) => {
    expect(() => at(start, giveTolerance(start, cell(0), tolerance))).toThrow(message)
  })

  it('is one for a cell', () => {
    expect(() => at(start, [{ kind: 'tolerances', tolerances: [{ place: cell(0), tolerance: size(1) }, { place: cell(0), tolerance: size(2) }] }])).toThrow('cell Zone!B1: two tolerances; accepted: one')
  })

  it('changes no value of a calculation that goes on', () => {
    const graph = new Graph(start)
    graph.apply(giveTolerance(start, cell(0), size(3)))
    expect(said(graph.workbook)).toEqual({ 'Zone 0:1': 3 })
    expect(graph.value('Zone', 0, 1)).toBe(20)
  })
})

describe('tolerances in a file', () => {
  it('are written in one order and read again, by both readers; without any the file is as before', () => {
    const text = writeWorkbook(kept)
    expect(text).toContain(' "tolerances": {\n  "Zone!B1": {"size":1},\n  "Zone!B2": {"size":2},\n  "Zone!B3": {"share":0.05},\n  "Zone!B4": {"size":1}\n }')
    expect(readWorkbook(text)).toEqual({ workbook: kept })
    expect(readPrecisely(text)).toEqual({ workbook: kept })
    expect(writeWorkbook(at(kept, [{ kind: 'tolerances', tolerances: [...(kept.tolerances ?? [])].reverse() }]))).toBe(text)
    expect(writeWorkbook(start)).not.toContain('tolerances')
    expect(readWorkbook(writeWorkbook(start))).toEqual({ workbook: start })
  })

  it.each([
    ['"Zone!B1": {"size":1}', '"Zone!B1": {"size":-1}', /line \d+: accepted: size: not negative/],
    ['"Zone!B1": {"size":1}', '"Zone!B1": {"size":"1"}', /accepted: size: a number/],
    ['"Zone!B1": {"size":1}', '"Zone!B1": {}', /accepted as a tolerance: a share of the value such as/],
    ['"Zone!B1": {"size":1}', '"Zone!B1": {"size":1, "share":1}', /accepted as a tolerance/],
    ['"Zone!B1": {"size":1}', '"Zone!B1": {"share":1, "restatedFrom":1}', /restatedFrom beside a size only/],
    ['"Zone!B1": {"size":1}', '"Zone!B1": {"about":1}', /unknown "about" in a tolerance; accepted: share, size, restatedFrom/],
    ['"Zone!B1"', '"Drum!B1"', /there is no sheet "Drum"/],
    ['"Zone!B1"', '"B1"', /"B1" is no cell; accepted: a sheet and an address/],
    ['"Zone!B1"', '"\'Zone\'!B2"', /cell Zone!B2: two tolerances/],
  ])('%s as %s is refused with what is accepted', (from, to, message) => {
    const text = writeWorkbook(kept)
    const read = readWorkbook(text.replace(from, to))
    expect('problems' in read && read.problems.map((problem) => problem.message).join('\n')).toMatch(message)
  })
})

describe('tolerances follow their cells', () => {
  const then = (history: History, edits: (workbook: Workbook) => readonly Edit[]): History => perform(history, edits(history.workbook), 'x').history

  it.each<[string, (workbook: Workbook) => readonly Edit[], Record<string, number>]>([
    ['rows inserted', (now) => insertLines(now, 'Zone', { axis: 'rows', at: 1, count: 2 }), { 'Zone 0:1': 1, 'Zone 3:1': 2, 'Zone 4:1': 0.05, 'Zone 5:1': 1 }],
    ['columns inserted', (now) => insertLines(now, 'Zone', { axis: 'columns', at: 0, count: 1 }), { 'Zone 0:2': 1, 'Zone 1:2': 2, 'Zone 2:2': 0.05, 'Zone 3:2': 1 }],
    ['rows of another sheet inserted', (now) => insertLines(now, 'Notes', { axis: 'rows', at: 0, count: 1 }), said(kept)],
    ['a row deleted', (now) => deleteLines(now, 'Zone', { axis: 'rows', at: 1, count: 1 }), { 'Zone 0:1': 1, 'Zone 1:1': 0.05, 'Zone 2:1': 1 }],
    ['a row moved', (now) => moveLines(now, 'Zone', { axis: 'rows', at: 0, count: 1 }, 2), { 'Zone 2:1': 1, 'Zone 0:1': 2, 'Zone 1:1': 0.05, 'Zone 3:1': 1 }],
    ['cells moved to another sheet', (now) => moveCells(now, blockOf(now, 'Zone', { top: 0, left: 1, bottom: 0, right: 2 }), 'Notes', { row: 4, column: 0 }), { 'Notes 4:0': 1, 'Zone 1:1': 2, 'Zone 2:1': 0.05, 'Zone 3:1': 1 }],
    ['cells moved onto others', (now) => moveCells(now, blockOf(now, 'Zone', { top: 0, left: 1, bottom: 0, right: 2 }), 'Zone', { row: 1, column: 1 }), { 'Zone 1:1': 1, 'Zone 2:1': 0.05, 'Zone 3:1': 1 }],
    ['the sheet renamed', (now) => renameSheet(now, 'Zone', 'Room'), { 'Room 0:1': 1, 'Room 1:1': 2, 'Room 2:1': 0.05, 'Room 3:1': 1 }],
    ['the sheet removed', (now) => removeSheet(now, 'Zone'), {}],
    ['the sheet doubled', (now) => duplicateSheet(now, 'Zone').edits, { ...said(kept), 'Zone 2 0:1': 1, 'Zone 2 1:1': 2, 'Zone 2 2:1': 0.05, 'Zone 2 3:1': 1 }],
  ])('%s, and back with Undo', (_what, edits, expected) => {
    const done = then(startHistory(kept), edits)
    expect(said(done.workbook)).toEqual(expected)
    expect(undo(done).history.workbook).toEqual(kept)
  })
})

describe('tolerances in other units', () => {
  it('are converted as differences by Restate, shares stay, and the way back is exact', () => {
    const si = at(kept, restate(kept, 'SI'))
    // By the definitions of the units: 1 Δ°F is 5/9 K; 1 psi 6.894757293168 kPa; 1 inHg 3.386389 kPa (NIST SP 811, B.8), without the site's pressure and sign.
    expect(said(si)['Zone 0:1']).toBeCloseTo(5 / 9, 12)
    expect(said(si)['Zone 1:1']).toBeCloseTo(2 * 6.894757293168, 9)
    expect(said(si)['Zone 2:1']).toBe(0.05)
    expect(said(si)['Zone 3:1']).toBeCloseTo(3.386389, 9)
    expect(at(si, restate(si, 'US'))).toEqual(kept)
    expect(restate(si, 'SI')).toEqual([])
  })

  it('go with the numbers where a unit is changed with its numbers, and stay where it is not', () => {
    const place = unitPlace(zone, cell(0))
    const places = place ? [place] : []
    expect(said(at(kept, changeUnits(kept, 'Zone', places, '°C', true)))['Zone 0:1']).toBeCloseTo(5 / 9, 12)
    expect(said(at(kept, changeUnits(kept, 'Zone', places, '°C', false)))).toEqual(said(kept))
  })
})
