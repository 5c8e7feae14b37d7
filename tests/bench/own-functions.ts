import { HyperFormula } from 'hyperformula'
import { createEngine } from '../../src/calc/engine.ts'
import { atMost, millisecondsOf, sideBySide, type Figure } from './measure.ts'

const ROWS = 10_000

/** Cells with own functions beside cells with the plainest built-in ones that take as many arguments of the same kinds. */
const KINDS = {
  'two-cell range, built-in': (row: number) => `=SUM(A${row}:B${row},D$1)`,
  'two-cell range, own': (row: number) => `=SAT.PRESSURE(A${row}:B${row},D$1)`,
  'joined text, built-in': (row: number) => `=EXACT(A${row}&B$2,D$1)`,
  'joined text, own': (row: number) => `=SAT.PRESSURE(A${row}&B$2,D$1)`,
} as const
type Kind = keyof typeof KINDS

/** Every formula reads D1: a change of it recalculates all of them, and nothing else. */
function content(kind: Kind): (number | string)[][] {
  const rows: (number | string)[][] = [['', '', '', 'kPa']]
  for (let row = 2; row <= ROWS + 1; row++) rows.push([(row % 150) - 60, '°F', KINDS[kind](row)])
  return rows
}

function build(kind: Kind): { engine: HyperFormula; time: number } {
  const rows = content(kind)
  const engine = createEngine()
  engine.addSheet('S')
  return { engine, time: millisecondsOf(() => engine.setSheetContent(0, rows)) }
}

export function ownFunctions(): Figure[] {
  const kinds = Object.keys(KINDS) as Kind[] // the keys are the kinds
  const buildTime = sideBySide(5, Object.fromEntries(kinds.map((kind) => [kind, () => {
    const { engine, time } = build(kind)
    engine.destroy()
    return time
  }])) as Record<Kind, () => number>)

  const engines = new Map(kinds.map((kind) => [kind, build(kind).engine]))
  let recalculations = 0
  const recalculation = sideBySide(9, Object.fromEntries(kinds.map((kind) => [kind, () => {
    const unit = Math.floor(recalculations++ / kinds.length) % 2 === 0 ? 'Pa' : 'kPa'
    return millisecondsOf(() => engines.get(kind)?.setCellContents({ sheet: 0, row: 0, col: 3 }, unit))
  }])) as Record<Kind, () => number>)
  for (const engine of engines.values()) engine.destroy()

  return (['two-cell range', 'joined text'] as const).flatMap((form) => [
    atMost(`own function, ${form}, against a built-in: build`, buildTime[`${form}, own`] / buildTime[`${form}, built-in`], 1.5),
    atMost(`own function, ${form}, against a built-in: full recalculation`, recalculation[`${form}, own`] / recalculation[`${form}, built-in`], 1.5),
  ])
}
