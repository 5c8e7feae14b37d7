import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { isCellError, type CellValue } from '../../../src/calc/values.ts'
import { margins, runAllMargins } from '../../../src/whatif/margins.ts'
import type { CellPlace } from '../../../src/workbook/cell-place.ts'
import { cellAtPlace, sheetAt } from '../../../src/whatif/place.ts'
import { MOST_WATCHED } from '../../../src/whatif/probe.ts'
import { solve } from '../../../src/whatif/solve.ts'
import { runSweep, sweep } from '../../../src/whatif/sweep.ts'
import { failuresInOrder } from '../../../src/whatif/sweep-words.ts'
import { eachCell } from '../../../src/workbook/cells.ts'
import { isFormula, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { labelOf } from '../../../src/workbook/words-beside.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { at } from '../workbook-of.ts'

const DEMO = 'demo-data/tallowmere.lowside.json'
const demo = readTemplate(DEMO)
const place = (sheet: string, address: string): CellPlace => ({ sheet, ...at(address) })

/** A fresh graph of the workbook with other numbers typed in. */
function direct(workbook: Workbook, inputs: readonly (readonly [CellPlace, number])[]): Graph {
  const edits = inputs.map(([{ sheet, row, column }, content]) => {
    const cell = cellAtPlace(workbook, { sheet, row, column })
    if (cell === undefined) throw new Error('an input is a cell')
    return { kind: 'cells', sheet, cells: [{ row, column, cell: { ...cell, content } }] } as const
  })
  return new Graph(applyEdits(workbook, edits).workbook)
}

function expectSame(one: CellValue | undefined, other: CellValue, where: string): void {
  if (typeof one === 'number' && typeof other === 'number') expect(Math.abs(one - other), where).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(other), 1e-9))
  else if (isCellError(one) && isCellError(other)) expect(one.error, where).toBe(other.error)
  else expect(one, where).toEqual(other)
}

function places(workbook: Workbook, wanted: (role: string, content: unknown) => boolean): CellPlace[] {
  const found: CellPlace[] = []
  for (const sheet of workbook.sheets) eachCell(sheet, ({ role, content }, row, column) => void (wanted(role, content) && found.push({ sheet: sheet.name, row, column })))
  return found
}

/** So many of a list, spread evenly over it. */
const some = <T>(list: readonly T[], count: number): T[] => list.filter((_, i) => list.length <= count || Math.floor((i * count) / list.length) !== Math.floor(((i - 1) * count) / list.length))

describe('a sweep gives what the workbook itself gives with the number typed in', () => {
  const files = [...readdirSync('templates').filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`), DEMO]
  it.each(files)('%s', async (file) => {
    const workbook = readTemplate(file)
    const watch = some(places(workbook, (role, content) => isFormula(content as string) && (role === 'result' || role === 'check')), MOST_WATCHED)
    let compared = 0
    for (const input of some(places(workbook, (role, content) => role === 'input' && typeof content === 'number' && content !== 0), 2)) {
      const held = Number(cellAtPlace(workbook, input)?.content)
      const { points } = await runSweep(sweep(workbook, { vary: [{ place: input, spacing: { list: [held * 0.93, held * 1.13] } }], watch }))
      for (const { given: [number = Number.NaN], readings } of points) {
        const graph = direct(workbook, [[input, number]])
        for (const [i, { sheet, row, column }] of watch.entries()) {
          compared++
          expectSame(readings[i]?.value, graph.value(sheet, row, column), `${file}, ${sheet} ${row} ${column} for ${number}`)
          if (cellAtPlace(workbook, { sheet, row, column })?.role === 'check') expect(readings[i]?.check?.met).toEqual(graph.check(sheet, row, column)?.met)
        }
      }
    }
    expect(compared).toBeGreaterThan(0)
  })
})

describe('the questions of the demo', () => {
  const suction = place('Basis', 'C21')
  const zones = [8, 9, 10, 11, 12, 13, 14, 15].map((row) => place('Zones', `T${row}`))
  const warmest = new Graph(demo).value('Zones', 22, 4)

  it('raising the high suction, the cheese store fails first, at the temperature that sheet Zones finds by itself', async () => {
    const swept = await runSweep(sweep(demo, { vary: [{ place: suction, spacing: { from: 20, to: 45, step: 1 } }], watch: zones }))
    const [axis] = swept.axes
    const [first] = axis ? failuresInOrder(axis, swept.limits) : []
    expect(swept.watched[first?.watched ?? 0]?.label).toBe('Cheese store: Served?')
    expect(Math.abs((first?.last ?? 0) - Number(warmest))).toBeLessThan(1e-8)
    expect(new Set(swept.limits.map(({ watched }) => watched)).size).toBe(6)
    for (const limit of swept.limits) {
      const zone = zones[limit.watched] ?? suction
      expect([limit.last, limit.first].map((number) => direct(demo, [[suction, number]]).value(zone.sheet, zone.row, zone.column))).toEqual([true, false])
    }
  })

  it('solving for where that zone is just served finds the same', () => {
    const solved = solve(demo, { by: suction, target: place('Zones', 'T13'), goal: { kind: 'met' } })
    expect(solved).toMatchObject({ kind: 'found', solutions: [{ kind: 'limit', holds: 'below' }] })
    expect(Math.abs((solved.solutions[0]?.at.input ?? 0) - Number(warmest))).toBeLessThan(1e-9 * 24)
  })

  it('the drum level that gives a circulation number of 3 gives it typed in', () => {
    const [level, number] = [place('Circulation', 'C10'), place('Circulation', 'C35')]
    expect(labelOf(sheetAt(demo, number), number)).toContain('Circulation number')
    const solved = solve(demo, { by: level, target: number, goal: { kind: 'number', number: 3 } })
    expect(solved).toMatchObject({ kind: 'found', isMonotonic: true, solutions: [{ kind: 'exact' }] })
    const answer = solved.solutions[0]?.at.input ?? Number.NaN
    expect(Math.abs(Number(direct(demo, [[level, answer]]).value('Circulation', number.row, number.column)) - 3)).toBeLessThan(3e-9)
  })

  it('the drum diameter against load and drum temperature agrees at every point of the field', async () => {
    const [load, room, diameter] = [place('Zones', 'C8'), place('Zones', 'D8'), place('Vertical drum', 'C17')]
    const { points } = await runSweep(sweep(demo, { vary: [{ place: load, spacing: { from: 20, to: 100, step: 40 } }, { place: room, spacing: { list: [45, 60] } }], watch: [diameter] }))
    expect(points).toHaveLength(6)
    for (const { given: [one = 0, other = 0], readings } of points) expectSame(readings[0]?.value, direct(demo, [[load, one], [room, other]]).value(diameter.sheet, diameter.row, diameter.column), `${one}, ${other}`)
  })

  it('margins agree with typing the ends in, all at once too', async () => {
    const target = place('Circulation', 'C35')
    const found = await runAllMargins(margins(demo, target))
    expect(found.moving.length + found.still.length).toBeGreaterThan(30)
    for (const { input, less, more } of found.moving.slice(0, 4)) {
      for (const { input: number, result } of [less, more]) expectSame(result, direct(demo, [[input, number]]).value('Circulation', target.row, target.column), `${input.label} ${number}`)
    }
    const ends = found.moving.map(({ input, less, more }) => [input, (more.change ?? 0) > (less.change ?? 0) ? ((more.change ?? 0) > 0 ? more.input : input.value) : (less.change ?? 0) > 0 ? less.input : input.value] as const)
    expectSame(found.together.up, direct(demo, ends).value('Circulation', target.row, target.column), 'all at once')
  })
})
