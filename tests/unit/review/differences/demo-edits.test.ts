import { describe, expect, it } from 'vitest'
import { Graph } from '../../../../src/calc/graph.ts'
import { acceptDifferences } from '../../../../src/review/differences/accept.ts'
import { compareWorkbooks } from '../../../../src/review/differences/compare-workbooks.ts'
import type { Comparison, Difference } from '../../../../src/review/differences/difference.ts'
import { parseAddress } from '../../../../src/workbook/address.ts'
import { renameSheet, setEntry, setUnit } from '../../../../src/workbook/commands.ts'
import { cellAt, type Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../../src/workbook/edits.ts'
import { writeWorkbook } from '../../../../src/workbook/file.ts'
import { shiftReferences } from '../../../../src/workbook/formula/references.ts'
import { deleteLines, insertLines } from '../../../../src/workbook/line-commands.ts'
import { readTemplate } from '../../../templates/open-template.ts'

/** An invented plant, edited as its designers would before someone looks it over again. */
const demo = readTemplate('demo-data/tallowmere.lowside.json')
const areas = new Graph(demo).allAreas()

const done = (workbook: Workbook, edits: readonly Edit[]): Workbook => applyEdits(workbook, edits).workbook
const at = (address: string) => parseAddress(address) ?? expect.fail(address)
const typed = (workbook: Workbook, sheet: string, address: string, text: string): Workbook => done(workbook, setEntry(workbook, sheet, at(address), text))
const compared = (now: Workbook): Comparison => compareWorkbooks({ workbook: demo, areas }, { workbook: now, areas: new Graph(now).allAreas() })
const lines = ({ differences }: Comparison): string[] => differences.map(({ kind, sheet, label, was, is }) => `${kind}, ${sheet}, ${label}: ${was} → ${is}`)
/** What accepting everything leaves is the demo, to the letter of its file. */
function expectBack(now: Workbook): void {
  const comparison = compared(now)
  expect(writeWorkbook(done(now, acceptDifferences(demo, now, comparison, comparison.differences.map(({ id }) => id))))).toBe(writeWorkbook(demo))
}

/** A zone more, under the second one, its formulas filled down as a user would. */
function withZone(): Workbook {
  const opened = done(demo, insertLines(demo, 'Zones', { axis: 'rows', at: 9, count: 1 }))
  const cells = (opened.sheets.find(({ name }) => name === 'Zones')?.rows[8] ?? []).flatMap((cell, column) => {
    if (!cell) return []
    const content = typeof cell.content === 'string' && cell.content.startsWith('=') ? shiftReferences(cell.content, 1, 0) : column === 1 ? 'Whey store' : cell.content
    return [{ row: 9, column, cell: { ...cell, content } }]
  })
  return done(opened, [{ kind: 'cells', sheet: 'Zones', cells }])
}

describe('the demo and what became of it', () => {
  it('a changed load is one input in its unit, with the results that it moves, and no other difference', () => {
    const comparison = compared(typed(demo, 'Zones', 'C8', '50'))
    expect(lines(comparison)).toEqual(['input, Zones, Ripening room 1: Load: 42 TR → 50 TR'])
    const load = comparison.effects.find(({ now }) => now.sheet === 'Charge totals' && now.row === 7 && now.column === 2)
    expect(load).toMatchObject({ label: 'Refrigeration load of the plant', unit: 'TR', was: 390, is: 398 })
    expect(load?.change).toBeCloseTo(8 / 390, 12)
    expectBack(typed(demo, 'Zones', 'C8', '50'))
  })

  it('two zones whose inputs changed places are told as inputs, not as a row that moved and formulas that refer to it', () => {
    const rows = demo.sheets.find(({ name }) => name === 'Zones')?.rows ?? []
    const swap = [9, 10].flatMap((row) => (rows[19 - row] ?? []).flatMap((cell, column) => (cell?.role === 'input' ? [{ row, column, cell }] : [])))
    const now = done(demo, [{ kind: 'cells', sheet: 'Zones', cells: swap }])
    expect(lines(compared(now))).toEqual([
      'input, Zones, Zone: Brine room → Vat hall', 'input, Zones, Vat hall: Load: 36 TR → 64 TR', 'input, Zones, Vat hall: Room: 46 °F → 44 °F', 'input, Zones, Vat hall: TD: air on less coil: 11 Δ°F → 10 Δ°F',
      'input, Zones, Vat hall: Loss to the regulator: 0.3 psi → 0.5 psi', 'input, Zones, Zone: Vat hall → Brine room', 'input, Zones, Brine room: Load: 64 TR → 36 TR', 'input, Zones, Brine room: Room: 44 °F → 46 °F',
      'input, Zones, Brine room: TD: air on less coil: 10 Δ°F → 11 Δ°F', 'input, Zones, Brine room: Loss to the regulator: 0.5 psi → 0.3 psi',
    ])
    expectBack(now)
  })

  it('differs from the template by inputs, cases and what reviewers left alone: rows that are alike but for their drum find the one of the same drum', () => {
    const plant = readTemplate('templates/plant.lowside.json')
    const { differences } = compareWorkbooks({ workbook: plant, areas: new Map() }, { workbook: demo, areas })
    expect([...new Set(differences.map(({ kind }) => kind))].toSorted()).toEqual(['case', 'input', 'mark', 'title'])
  })

  it('an overwritten formula is told with the formula that was there', () => {
    const now = typed(demo, 'Duty', 'C13', '40')
    expect(lines(compared(now))).toEqual(['formula overwritten, Duty, Drum temperature (saturation): =UNIT.CONVERT(INDEX(Drums!$G$7:$G$15,C9)&Drums!$G$6,D13) → 40 °F'])
    expectBack(now)
  })

  it('an inserted zone is one difference with its inputs, though formulas on ten sheets now refer to rows further down and ranges grew', () => {
    const now = withZone()
    const comparison = compared(now)
    expect(lines(comparison)).toEqual([expect.stringMatching(/^rows inserted, Zones, row 10: not there → 1 row: Zone Whey store, Load 38 TR, Room 55 °F, .*; 19 formulas$/)])
    expect(comparison.differences[0]?.accept).toEqual({ words: 'Takes 1 row away; formulas follow.' })
    expectBack(now)
  })

  it('a zone taken away is one difference that can be put back with all that referred to it', () => {
    const now = done(demo, deleteLines(demo, 'Zones', { axis: 'rows', at: 9, count: 1 }))
    expect(lines(compared(now))).toEqual([expect.stringMatching(/^rows gone, Zones, row 10: 1 row: Zone Brine room, Load 36 TR, .* → gone$/)])
    expectBack(now)
  })

  it('a renamed sheet is one difference, and none in the formulas that name it', () => {
    const now = done(demo, renameSheet(demo, 'Nozzles', 'Nozzle list'))
    expect(lines(compared(now))).toEqual(['sheet renamed, Nozzle list, undefined: Nozzles → Nozzle list'])
    expectBack(now)
  })

  it('a unit written over a number that stays is another quantity; one with its number converted is the same', () => {
    const metres = done(demo, setUnit(demo, 'Basis', at('C10'), 'm'))
    expect(lines(compared(metres))).toEqual(['unit, Basis, Site elevation: 2900 ft → 2900 m: so another quantity'])
    // 2900 ft × 0.3048 m/ft, the international foot being exactly that.
    const same = typed(metres, 'Basis', 'C10', '883.92')
    expect(lines(compared(same))).toEqual(['unit, Basis, Site elevation: 2900 ft → 883.92 m: the same quantity'])
    expectBack(metres)
    expectBack(same)
  })

  it('a changed note and a deleted column are told as such', () => {
    const cell = cellAt(demo, 'Circulation', 6, 2) ?? expect.fail()
    const noted = done(demo, [{ kind: 'cells', sheet: 'Circulation', cells: [{ row: 6, column: 2, cell: { ...cell, note: 'from the duty sheet, confirm' } }] }])
    expect(lines(compared(noted))).toEqual([`note, Circulation, Refrigeration load of the coils: ${cell.note ?? 'no note'} → from the duty sheet, confirm`])
    const now = done(noted, deleteLines(noted, 'Codes', { axis: 'columns', at: 3, count: 1 }))
    expect(compared(now).differences.map(({ kind, sheet }) => [kind, sheet])).toEqual([['columns gone', 'Codes'], ['note', 'Circulation']])
    // What was typed into the column is back, its width is not: widths are not compared.
    const comparison = compared(now)
    const back = done(now, acceptDifferences(demo, now, comparison, [0, 1]))
    expect(compared(back).differences).toEqual([])
  })

  it('all of that at once is told as one difference each, and each can be taken alone', () => {
    let now = withZone()
    now = typed(now, 'Zones', 'C8', '50')
    now = typed(now, 'Duty', 'C13', '40')
    now = done(now, renameSheet(now, 'Nozzles', 'Nozzle list'))
    now = done(now, deleteLines(now, 'Codes', { axis: 'columns', at: 3, count: 1 }))
    const comparison = compared(now)
    expect(comparison.differences.map(({ kind }) => kind)).toEqual(['columns gone', 'input', 'rows inserted', 'formula overwritten', 'sheet renamed'])
    const only = (kind: Difference['kind']): string[] => {
      const id = comparison.differences.find((one) => one.kind === kind)?.id ?? -1
      return compared(done(now, acceptDifferences(demo, now, comparison, [id]))).differences.map((one) => one.kind)
    }
    for (const { kind } of comparison.differences) expect(only(kind)).toEqual(comparison.differences.map((one) => one.kind).filter((one) => one !== kind))
  })

  it('a check that turned comes first among the effects', () => {
    // A room nearly as cold as the house suction of 22 °F that is to serve it.
    const { effects } = compared(typed(demo, 'Zones', 'D8', '30'))
    expect(effects[0]).toMatchObject({ now: { sheet: 'Zones', row: 7 }, turned: true, was: true, is: false })
    expect(effects.findLastIndex(({ turned }) => turned)).toBe(effects.filter(({ turned }) => turned).length - 1)
  })
})
