import { readFileSync } from 'node:fs'
import { Graph } from '../../src/calc/graph.ts'
import { parseAddress } from '../../src/workbook/address.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { readWorkbook } from '../../src/workbook/file.ts'
import type { CellPlace } from '../../src/workbook/cell-place.ts'
import { cellAtPlace } from '../../src/whatif/place.ts'
import { sweep, type SweepRequest } from '../../src/whatif/sweep.ts'
import { atLeast, justSo, millisecondsOf, sideBySide, type Figure } from './measure.ts'

const POINTS = 2000
/** Rebuilt at so many of them only, spread over the range. */
const REBUILT = 20
const REACH = 50

/** What the demo is asked, from what hangs on few cells to what hangs on most of a sheet. */
const QUESTIONS = {
  'circulation number over drum level': { vary: ['Circulation!C10', 3, 12], watch: ['Circulation!C35', 'Circulation!C51'] },
  'all zones over house suction': { vary: ['Basis!C21', 20, 45], watch: ['Zones!T8', 'Zones!T9', 'Zones!T10', 'Zones!T11', 'Zones!T12', 'Zones!T13', 'Zones!T14', 'Zones!T15'] },
  'charge of the plant over house suction': { vary: ['Basis!C21', 20, 25], watch: ['Charge totals!C6', 'Charge totals!C7'] },
} as const

/** A sweep of 2 000 points on the demo, set-up included, and the same by building the workbook's graph afresh at each point. */
export function whatIf(): Figure[] {
  const workbook = demo()
  return Object.entries(QUESTIONS).flatMap(([name, { vary: [input, from, to], watch }]) => {
    const place = placeOf(input)
    const request: SweepRequest = { vary: [{ place, spacing: { from, to, points: POINTS } }], watch: watch.map(placeOf) }
    const { swept, rebuilt } = sideBySide(3, {
      swept: () => millisecondsOf(() => {
        let points = 0
        for (const { kind } of sweep(workbook, request).events()) points += kind === 'point' ? 1 : 0
        if (points !== POINTS) throw new Error(`${points} points`)
      }),
      rebuilt: () => millisecondsOf(() => {
        for (let i = 0; i < REBUILT; i++) readAfresh(workbook, place, from + (i / (REBUILT - 1)) * (to - from), request.watch)
      }),
    })
    const [perSecond, rebuiltPerSecond] = [(POINTS / swept) * 1000, (REBUILT / rebuilt) * 1000]
    return [
      justSo(`sweep of ${POINTS.toLocaleString('en')} points on the demo, ${name}`, `${perSecond.toFixed(0)} points/s, rebuilt ${rebuiltPerSecond.toFixed(1)}`),
      atLeast(`… against rebuilding the workbook at each point`, perSecond / rebuiltPerSecond, REACH),
    ]
  })
}

function readAfresh(workbook: Workbook, { sheet, row, column }: CellPlace, content: number, watch: readonly CellPlace[]): void {
  const cell = cellAtPlace(workbook, { sheet, row, column })
  if (cell === undefined) throw new Error('an input is a cell')
  const graph = new Graph(applyEdits(workbook, [{ kind: 'cells', sheet, cells: [{ row, column, cell: { ...cell, content } }] }]).workbook)
  for (const place of watch) {
    graph.value(place.sheet, place.row, place.column)
    graph.check(place.sheet, place.row, place.column)
  }
}

function demo(): Workbook {
  const read = readWorkbook(readFileSync(new URL('../../demo-data/tallowmere.lowside.json', import.meta.url), 'utf8'))
  if (!('workbook' in read)) throw new Error(read.problems[0]?.message)
  return read.workbook
}

function placeOf(text: string): CellPlace {
  const [sheet = '', address = ''] = text.split('!')
  const at = parseAddress(address)
  if (at === undefined) throw new Error(`${text} is no address`)
  return { sheet, ...at }
}
