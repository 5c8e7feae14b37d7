import { describe, expect, it } from 'vitest'
import { Graph } from '../../../../src/calc/graph.ts'
import { acceptDifferences } from '../../../../src/review/differences/accept.ts'
import { compareWorkbooks, type ComparedSide, type CompareOptions } from '../../../../src/review/differences/compare-workbooks.ts'
import type { Comparison, Effect } from '../../../../src/review/differences/difference.ts'
import { printedEffect } from '../../../../src/review/differences/printed-effect.ts'
import { resultsCase, toCase } from '../../../../src/review/differences/results-case.ts'
import { switchCase } from '../../../../src/workbook/case-switching.ts'
import { cellAt, type Cell, type Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../../src/workbook/edits.ts'
import { normalFigure, type Figure } from '../../../../src/workbook/figure.ts'
import { figureKind } from '../../../../src/workbook/figure-kinds.ts'
import { writeWorkbook } from '../../../../src/workbook/file.ts'
import { giveTolerance } from '../../../../src/workbook/given-tolerances.ts'
import { perform, startHistory } from '../../../../src/workbook/history.ts'
import { insertLines } from '../../../../src/workbook/line-commands.ts'
import { restate } from '../../../../src/workbook/restate.ts'
import type { AcceptedFinding, CheckMark } from '../../../../src/workbook/review-record.ts'
import { at, workbookOf, type Put } from '../../workbook-of.ts'

type Cells = Readonly<Record<string, Put>>

/** A table with a total, two rows beside it and a name; its numbers are invented. */
const CELLS: Cells = {
  A1: ['Zone', 'heading'], B1: ['Load', 'heading'], C1: ['Share', 'heading'], B2: ['TR', 'unit'], C2: ['-', 'unit'],
  A3: ['Dock', 'label'], B3: 12, C3: '=B3/B$6', A4: ['Store', 'label'], B4: 30, C4: '=B4/B$6', A5: ['Freezer', 'label'], B5: 18, C5: '=B5/B$6',
  A6: ['Total', 'label'], B6: '=SUM(B3:B5)',
  A8: ['Suction', 'label'], B8: 20, C8: ['°F', 'unit'], A9: ['Total is below 100', 'label'], B9: ['=B6<100', 'check'],
}
const book = (cells: Cells = CELLS, others: Readonly<Record<string, Cells>> = { Notes: { A1: ['=Plant!B6*2', 'result'], A2: ['=total_load', 'result'] } }): Workbook =>
  workbookOf({ Plant: cells, ...others }, { total_load: 'Plant!$B$6' })
const BEFORE = book()

const done = (workbook: Workbook, edits: readonly Edit[]): Workbook => applyEdits(workbook, edits).workbook
const put = (workbook: Workbook, address: string, cell: Cell | null, sheet = 'Plant'): Workbook => done(workbook, [{ kind: 'cells', sheet, cells: [{ ...at(address), cell }] }])
const changed = (workbook: Workbook, address: string, change: Partial<Cell>): Workbook => {
  const { row, column } = at(address)
  return put(workbook, address, { ...(cellAt(workbook, 'Plant', row, column) ?? { content: null, role: 'text' }), ...change })
}
const compared = (before: Workbook, now: Workbook, options?: CompareOptions): Comparison =>
  compareWorkbooks(calculated(before, resultsCase(before, now)), calculated(now, resultsCase(before, now)), options)
const calculated = (workbook: Workbook, results: string): ComparedSide => ({ workbook, areas: new Graph(done(workbook, toCase(workbook, results))).allAreas() })
const lines = ({ differences }: Comparison): string[] => differences.map(({ kind, label, was, is }) => `${kind}, ${label}: ${was} → ${is}`)
const accepted = (before: Workbook, now: Workbook): Workbook => {
  const comparison = compared(before, now)
  return done(now, acceptDifferences(before, now, comparison, comparison.differences.map(({ id }) => id)))
}

describe('what a cell holds', () => {
  it('tells a value, a formula, an overwritten and an entered one, a text, a new cell and one that is gone apart', () => {
    const now = [
      ['B3', { content: 14 }], ['C4', { content: '=B4/B$6*2' }], ['C5', { content: 0.3 }], ['B5', { content: '=9*2' }], ['A4', { content: 'Cold store' }],
    ].reduce<Workbook>((current, [address, change]) => changed(current, address as string, change as Partial<Cell>), put(put(BEFORE, 'A9', null), 'E4', { content: 'new here', role: 'note' }))
    expect(lines(compared(BEFORE, now))).toEqual([
      'input, Dock: Load: 12 TR → 14 TR', 'text, undefined: Store → Cold store', 'formula, Cold store: Share: =B4/B$6 → =B4/B$6*2', 'cell new, Cold store: not there → new here',
      'formula entered, Freezer: Load: 18 TR → =9*2', 'formula overwritten, Freezer: Share: =B5/B$6 → 0.3', 'cell gone, undefined: Total is below 100 → gone',
    ])
    expect(writeWorkbook(accepted(BEFORE, now))).toBe(writeWorkbook(BEFORE))
  })

  it('tells note, role and format of a cell apart from its content', () => {
    const now = changed(BEFORE, 'B3', { note: 'measured', role: 'result', decimals: 1, wrap: true })
    expect(lines(compared(BEFORE, now))).toEqual(['note, Dock: Load: no note → measured', 'role, Dock: Load: input → result', 'format, Dock: Load: as usual → 1 decimal, wrapped'])
    for (const id of [0, 1, 2]) expect(compared(BEFORE, done(now, acceptDifferences(BEFORE, now, compared(BEFORE, now), [id]))).differences).toHaveLength(2)
  })

  it('shows as many digits of a number as there are', () => {
    expect(lines(compared(BEFORE, changed(BEFORE, 'B3', { content: 12.0000000001 })))).toEqual(['input, Dock: Load: 12 TR → 12.0000000001 TR'])
  })

  it('takes a formula for the same whatever its capitals, its blanks and the name of its own sheet', () => {
    expect(compared(BEFORE, changed(BEFORE, 'B6', { content: '=sum( Plant!b3:B5 )' })).differences).toEqual([])
    expect(compared(BEFORE, changed(BEFORE, 'B6', { content: '=SUM(B3:B$5)' })).differences).toHaveLength(1)
  })

  it('does not put back a formula whose references are gone before what they meant is back', () => {
    const gone = done(BEFORE, [{ kind: 'cells', sheet: 'Plant', cells: [{ ...at('B9'), cell: { content: true, role: 'check' } }] }])
    const now = done(gone, [{ kind: 'deleteLines', sheet: 'Plant', axis: 'rows', at: 5, count: 1 }])
    const check = compared(BEFORE, now).differences.find(({ kind }) => kind === 'formula overwritten')
    expect(check).toMatchObject({ was: '=B6<100', is: 'TRUE', accept: { refused: expect.stringContaining('put these back first') } })
  })
})

describe('units', () => {
  it('that apply to a table are told with the values under them, converted or not', () => {
    const kilowatts = changed(BEFORE, 'B2', { content: 'kW' })
    expect(lines(compared(BEFORE, kilowatts))).toEqual(['unit, Load: TR → kW; 3 numbers left as typed, so another quantity: 12, 30, 18; asked of 1 formula'])
    // A ton of refrigeration is 12 000 Btu(IT) an hour, 3.5168528… kW.
    const converted = [['B3', 12], ['B4', 30], ['B5', 18]].reduce((current, [address, tons]) => changed(current, address as string, { content: Number((((tons as number) * 12000 * 1055.05585262) / 3600 / 1000).toPrecision(15)) }), kilowatts)
    const comparison = compared(BEFORE, converted)
    expect(lines(comparison)).toEqual(['unit, Load: TR → kW; 3 numbers converted, the same quantities; asked of 1 formula'])
    expect(comparison.effects.map(({ now }) => now)).toEqual([{ sheet: 'Plant', row: 8, column: 1 }, { sheet: 'Notes', row: 0, column: 0 }, { sheet: 'Notes', row: 1, column: 0 }])
    expect(writeWorkbook(accepted(BEFORE, converted))).toBe(writeWorkbook(BEFORE))
  })

  it('in a text with a number: the same quantity is a unit, another one an input', () => {
    const [before, same, other] = ['32 °F', '0 °C', '1 °C'].map((content) => book({ A1: ['Room', 'label'], B1: [content, 'input'] }, {}))
    if (!before || !same || !other) return expect.fail()
    expect(lines(compared(before, same))).toEqual(['unit, Room: 32 °F → 0 °C'])
    expect(lines(compared(before, other))).toEqual(['input, Room: 32 °F → 1 °C'])
  })

  it('of a gauge and of absolute pressure never make the same quantity', () => {
    const pressure = (number: number, unit: string): Workbook => book({ A1: ['Set point', 'label'], B1: number, C1: [unit, 'unit'] }, {})
    // 20 psig at sea level is 34.695949 psia.
    expect(compared(pressure(20, 'psig'), pressure(34.695948775514, 'psia')).differences.map(({ kind }) => kind)).toEqual(['input', 'unit'])
  })
})

describe('rows and columns', () => {
  it('appended under a list are one difference with what was typed, and the total that takes them in is none', () => {
    const before = book({ A1: ['Zone', 'heading'], B1: ['Load', 'heading'], B2: ['TR', 'unit'], A3: ['Dock', 'label'], B3: 12, A4: ['Store', 'label'], B4: 30, D3: '=SUM(B3:B4)' }, {})
    const now = book({ A1: ['Zone', 'heading'], B1: ['Load', 'heading'], B2: ['TR', 'unit'], A3: ['Dock', 'label'], B3: 12, A4: ['Store', 'label'], B4: 30, A5: ['Hall', 'label'], B5: 9, A6: ['Yard', 'label'], B6: 4, D3: '=SUM(B3:B6)' }, {})
    expect(lines(compared(before, now))).toEqual(['rows inserted, rows 5 to 6: not there → 2 rows: Hall 9 TR, Yard 4 TR'])
    expect(writeWorkbook(accepted(before, now))).toBe(writeWorkbook(before))
    expect(writeWorkbook(accepted(now, before))).toBe(writeWorkbook(now))
  })

  it('inserted in the middle keep every formula below the same, and one that was changed beside shows', () => {
    const now = changed(done(BEFORE, insertLines(BEFORE, 'Plant', { axis: 'rows', at: 4, count: 2 })), 'C7', { content: '=B7/B$8+0' })
    expect(lines(compared(BEFORE, now))).toEqual(['rows inserted, rows 5 to 6: not there → 2 rows, nothing in them', 'formula, Freezer: Share: =B7/B$8 → =B7/B$8+0'])
  })

  it('a column inserted before a unit and values is one difference', () => {
    const now = done(BEFORE, insertLines(BEFORE, 'Plant', { axis: 'columns', at: 1, count: 1 }))
    expect(lines(compared(BEFORE, now))).toEqual(['columns inserted, column B: not there → 1 column, nothing in it'])
  })
})

describe('sheets, names, title', () => {
  it('tells a sheet that came, one that went, an order, a name and a title', () => {
    const now = done(BEFORE, [
      { kind: 'removeSheet', sheet: 'Notes' }, { kind: 'addSheet', at: 0, sheet: { name: 'Scratch', columns: [], frozen: [0, 0], rows: [[{ content: 'Ideas', role: 'title' }]] } },
      { kind: 'name', name: 'total_load', refersTo: 'Plant!$B$5' }, { kind: 'title', title: 'Plant, revised' },
    ])
    expect(lines(compared(BEFORE, now))).toEqual([
      'title, title: Test → Plant, revised', 'sheet added, undefined: not there → 1 cell: Ideas', 'sheet gone, undefined: 2 cells → gone', 'name, total_load: Plant!$B$6 → Plant!$B$5',
    ])
    expect(writeWorkbook(accepted(BEFORE, now))).toBe(writeWorkbook(BEFORE))
    expect(lines(compared(BEFORE, now, { sides: 'template' }))).not.toContain('title, title: Test → Plant, revised')
  })

  it('two sheets that changed places are one difference', () => {
    const now = done(BEFORE, [{ kind: 'moveSheet', sheet: 'Notes', to: 0 }])
    expect(lines(compared(BEFORE, now))).toEqual(['sheets moved, order of the sheets: Plant, Notes → Notes, Plant'])
  })
})

describe('figures and what reviewers left', () => {
  const figure = (title: string, cells: string): Figure => normalFigure({ kind: 'zones', title, sheet: 'Plant', options: {}, bindings: { [Object.keys(figureKind('zones').parts)[0] ?? '']: cells } })
  const withFigures = (workbook: Workbook, ...figures: readonly Figure[]): Workbook => done(workbook, [{ kind: 'figures', figures }])

  it('tells a figure that shows other cells, one that came, one that went and an order', () => {
    const before = withFigures(BEFORE, figure('Loads', 'Plant!$A$3:$A$5'), figure('Others', 'Plant!$B$3:$B$5'))
    const now = withFigures(BEFORE, figure('Loads', 'Plant!$A$3:$A$4'), figure('Others', 'Plant!$B$3:$B$5'))
    expect(lines(compared(before, now))).toEqual([expect.stringMatching(/^figure, Loads: \w+: Plant!\$A\$3:\$A\$5 → \w+: Plant!\$A\$3:\$A\$4$/)])
    expect(lines(compared(before, withFigures(BEFORE, figure('Others', 'Plant!$B$3:$B$5'), figure('Loads', 'Plant!$A$3:$A$5'))))).toEqual(['figure, order of the figures: Loads, Others → Others, Loads'])
    expect(lines(compared(before, withFigures(BEFORE, figure('Others', 'Plant!$B$3:$B$5'))))).toEqual(['figure, Loads: a zones figure → gone'])
    for (const other of [now, BEFORE, withFigures(BEFORE, figure('Others', 'Plant!$B$3:$B$5'), figure('Loads', 'Plant!$A$3:$A$5'))]) {
      expect(writeWorkbook(accepted(before, other))).toBe(writeWorkbook(before))
      expect(writeWorkbook(accepted(other, before))).toBe(writeWorkbook(other))
    }
  })

  it('finds none in figures, names and formulas that followed inserted rows', () => {
    const before = withFigures(BEFORE, figure('Loads', 'Plant!$A$3:$A$5'))
    expect(compared(before, done(before, insertLines(before, 'Plant', { axis: 'rows', at: 3, count: 1 }))).differences).toHaveLength(1)
  })

  it('tells marks and accepted findings of one side alone, and takes none over', () => {
    const mark: CheckMark = { id: 'm1', sheet: 'Plant', area: { top: 5, bottom: 5, left: 1, right: 1 }, by: 'R. Viewer', at: '2026-01-02T03:04:05Z', method: 'by hand', note: 'agrees', covers: [], names: [], values: [] }
    const finding: AcceptedFinding = { kind: 'buried-numbers', sheet: 'Plant', area: { top: 5, bottom: 5, left: 1, right: 1 }, key: '2', note: 'a count' }
    const now: Workbook = { ...BEFORE, review: { marks: [mark], accepted: [finding], record: [] } }
    const comparison = compared(BEFORE, now)
    expect(lines(comparison)).toEqual(['mark, check mark: not there → B6 checked by R. Viewer, 2026-01-02, by hand: agrees', 'mark, accepted finding: buried-numbers: not there → B6: a count'])
    expect(acceptDifferences(BEFORE, now, comparison, [0, 1])).toEqual([])
    expect(compared(now, now).differences).toEqual([])
    // As against its template a workbook has marks of its own.
    expect(compared(BEFORE, now, { sides: 'template' }).differences).toEqual([])
  })
})

describe('cases and tolerances', () => {
  const value = (content: number) => ({ sheet: 'Plant', row: 2, column: 1, content })
  const withCases = (hot: number, cold: number | undefined, current: number | null = null): Workbook => {
    const cased = done(BEFORE, [{ kind: 'cases', cases: { list: [{ name: 'Hot day', aside: [value(hot)] }, { name: 'Cold day', aside: cold === undefined ? [] : [value(cold)] }], current: null, compared: [] } }])
    return done(cased, switchCase(cased, current))
  }

  it('tells what a case holds, whichever case is current in either', () => {
    expect(lines(compared(withCases(20, 5), withCases(22, 5, 1)))).toEqual(['case, current case: Base → Cold day', 'case, Hot day: Dock: Load: 20 TR → 22 TR'])
    expect(lines(compared(withCases(20, 5), withCases(20, undefined)))).toEqual(['case, Cold day: Dock: Load: 5 TR → as in the base'])
    for (const [before, now] of [[withCases(20, 5), withCases(22, undefined, 0)], [withCases(20, 5, 1), withCases(20, undefined)], [withCases(20, 5, 0), BEFORE], [BEFORE, withCases(20, 5, 1)]] as const) {
      const comparison = compared(before, now)
      // As an action of the user: nothing of it is taken for an edit of the current case.
      const { history } = perform(startHistory(now), acceptDifferences(before, now, comparison, comparison.differences.map(({ id }) => id)), 'accepted')
      expect(lines(compared(before, history.workbook))).toEqual(before.cases?.current == null || now.cases ? [] : ['case, current case: Hot day → Base'])
    }
  })

  it('an input that differs in the base is told once and taken in the base, while a case is current', () => {
    const now = done(withCases(20, 5, 0), [])
    const base = done(withCases(20, 5), [{ kind: 'cells', sheet: 'Plant', cells: [{ ...at('B3'), cell: { content: 13, role: 'input' } }] }])
    const comparison = compared(base, now)
    expect(lines(comparison)).toEqual(['case, current case: Base → Hot day', 'input, Dock: Load: 13 TR → 12 TR'].toSorted((one) => (one.startsWith('input') ? -1 : 1)))
    const input = comparison.differences.find(({ kind }) => kind === 'input')?.id ?? -1
    const { history } = perform(startHistory(now), acceptDifferences(base, now, comparison, [input]), 'accepted')
    expect(cellAt(history.workbook, 'Plant', 2, 1)?.content).toBe(20)
    expect(lines(compared(base, history.workbook))).toEqual(['case, current case: Base → Hot day'])
  })

  it('restated in other units, values of cases and tolerances are the same', () => {
    const before = done(withCases(20, 5), giveTolerance(withCases(20, 5), { sheet: 'Plant', row: 7, column: 1 }, { kind: 'size', size: 2 }))
    const si = done(before, restate(before, 'SI'))
    expect(compared(before, si).differences.map(({ kind }) => kind)).toEqual(['unit', 'unit'])
    expect(writeWorkbook(accepted(before, si))).toBe(writeWorkbook(before))
  })

  it('tells a tolerance that was given', () => {
    const now = done(BEFORE, giveTolerance(BEFORE, { sheet: 'Plant', row: 7, column: 1 }, { kind: 'size', size: 2 }))
    expect(lines(compared(BEFORE, now))).toEqual(['tolerance, Suction: the usual tolerance → ± 2 °F'])
    expect(writeWorkbook(accepted(BEFORE, now))).toBe(writeWorkbook(BEFORE))
  })
})

describe('effects', () => {
  it('hold results of one case against each other, of the base where the other workbook has none of that name', () => {
    const cased = (...names: readonly string[]): Workbook => done(BEFORE, [{ kind: 'cases', cases: { list: names.map((name) => ({ name, aside: [{ sheet: 'Plant', ...at('B3'), content: 20 }] })), current: null, compared: [] } }])
    const total = (before: Workbook, now: Workbook) => {
      const { effects: [effect], resultsOf } = compared(before, now, { results: [{ sheet: 'Plant', ...at('B6') }] })
      return [resultsOf, effect?.was, effect?.is]
    }
    const inHot = (workbook: Workbook): Workbook => done(workbook, toCase(workbook, 'Hot day'))
    // By hand: 12 + 30 + 18 = 60 in the base, 20 + 30 + 18 = 68 on the hot day; two more with 32 for 30.
    const more = (workbook: Workbook): Workbook => changed(workbook, 'B4', { content: 32 })
    expect(total(cased('Hot day'), inHot(cased('Hot day')))).toEqual(['Hot day', 68, 68])
    expect(total(cased('hot day'), more(inHot(cased('Hot day'))))).toEqual(['Hot day', 68, 70])
    expect(total(inHot(cased('Hot day')), more(cased('Hot day')))).toEqual(['Base', 60, 62])
    expect(total(cased('Cold day'), more(inHot(cased('Hot day'))))).toEqual(['Base', 60, 62])
    expect(total(BEFORE, inHot(cased('Hot day')))).toEqual(['Base', 60, 60])
  })

  it('say a step where a share of an agreed zero would say nothing', () => {
    const change = (was: number, is: number, unit: string): string => {
      const of = (value: number): Workbook => workbookOf({ Plant: { A1: ['Drum', 'label'], B1: value, C1: [unit, 'unit'] } })
      const [effect] = compared(of(was), of(is), { results: [{ sheet: 'Plant', ...at('B1') }] }).effects
      return printedEffect(effect as Effect).change
    }
    expect(change(20, 39, '°F')).toBe('+19 Δ°F')
    expect(change(-10, -12.5, '°C')).toBe('−2.5 Δ°C')
    expect(change(-0.8, 0.7, 'psig')).toBe('+1.5 psi')
    expect(change(5, 5, 'psig')).toBe('no change')
    expect(change(50, 55, 'psia')).toBe('+10 %')
  })

  it('are told of chosen results in their order, changed or not, new or not', () => {
    const now = put(changed(BEFORE, 'B3', { content: 18 }), 'E6', { content: '=B6/2', role: 'result' })
    const { effects } = compared(BEFORE, now, { results: [{ sheet: 'Plant', ...at('B8') }, { sheet: 'Plant', ...at('B6') }, { sheet: 'Plant', ...at('E6') }] })
    expect(effects.map(({ was, is, unit, change }) => ({ was, is, unit, change }))).toEqual([
      { was: 20, is: 20, unit: '°F', change: undefined }, { was: 60, is: 66, unit: 'TR', change: 0.1 }, { was: null, is: 33, unit: undefined, change: undefined },
    ])
    expect(effects[2]?.before).toBeUndefined()
  })

  it('put a check that turned first and a new error before what changed a little', () => {
    const now = changed(changed(BEFORE, 'B3', { content: 90 }), 'C5', { content: '=B5/0' })
    const { effects } = compared(BEFORE, now)
    expect(effects.slice(0, 2).map(({ now: place, turned }) => ({ row: place.row, turned }))).toEqual([{ row: 8, turned: true }, { row: 4, turned: false }])
  })

  it('of a template in other units than its workbook are held against each other in these', () => {
    const si = done(BEFORE, restate(BEFORE, 'SI'))
    const now = done(si, [{ kind: 'cells', sheet: 'Plant', cells: [{ ...at('B4'), cell: { content: 100, role: 'input' } }] }])
    const comparison = compared(BEFORE, now, { sides: 'template' })
    expect(comparison.restatedTo).toBe('SI')
    expect(lines(comparison)).toEqual([expect.stringMatching(/^input, Store: Load: 105\.50\d* kW → 100 kW$/)])
    expect(comparison.effects.find(({ now: place }) => place.row === 5)).toMatchObject({ was: 60, unitBefore: 'TR', unit: 'kW' })
    expect(compared(si, done(now, acceptDifferences(BEFORE, now, comparison, [0]))).differences).toEqual([])
  })
})
