import { HyperFormula } from 'hyperformula'
import { createEngine } from '../../src/calc/engine.ts'
import { Graph } from '../../src/calc/graph.ts'
import { engineContent } from '../../src/calc/translate.ts'
import { emptySheet, type Cell, type Workbook } from '../../src/workbook/document.ts'
import { atMost, bytesInUse, justSo, median, millisecondsOf, sideBySide, times, type Figure } from './measure.ts'

const SIZES = [1_000, 10_000, 50_000] as const
/** Growth may be this much more than that of the rows. */
const REACH = 1.2

/** A charge inventory in short: every row joins its numbers with the units in the header, and all rows hang on one driver. */
function inventory(count: number): Workbook {
  const cell = (content: number | string): Cell => ({ content, role: typeof content === 'number' ? 'input' : content.startsWith('=') ? 'result' : 'unit' })
  const header = ['ft3', '°F', 'lb/ft3', 'lb', 20, '=SUM(D2:D60000)'].map(cell)
  const rows = Array.from({ length: count }, (_, i) => {
    const row = i + 2
    return [10 + (i % 90), `=E$1+${i % 20}`, `=LIQUID.DENSITY(B${row}&B$1,C$1)`, `=A${row}*C${row}`].map(cell)
  })
  return { title: 'Inventory', purpose: '', names: new Map(), figures: [], sheets: [{ ...emptySheet('S'), rows: [header, ...rows] }] }
}

const driverTo = (content: number) => [{ kind: 'cells', sheet: 'S', cells: [{ row: 0, column: 4, cell: { content, role: 'input' } }] }] as const

interface Cost {
  readonly buildMs: number
  readonly editMs: number
  readonly bytes: number
}

function cost(count: number, rounds: number): Cost {
  const workbook = inventory(count)
  const builds: number[] = []
  const edits: number[] = []
  const bytes: number[] = []
  for (let round = 0; round < rounds; round++) {
    const before = bytesInUse()
    let graph: Graph | undefined
    builds.push(millisecondsOf(() => (graph = new Graph(workbook))))
    bytes.push(bytesInUse() - before)
    for (let edit = 0; edit < 3; edit++) edits.push(millisecondsOf(() => graph?.apply(driverTo(20 + edit + round / 10))))
  }
  return { buildMs: median(builds), editMs: median(edits), bytes: median(bytes) }
}

export function sharedHeader(): Figure[] {
  // What an engine without rows costs is no part of the growth.
  const empty = cost(0, 9)
  const costs = SIZES.map((count, i) => ({ count, ...cost(count, [9, 5, 3][i] ?? 3) }))
  const figures = costs.map(({ count, buildMs, editMs, bytes }) =>
    justSo(`${count.toLocaleString('en')} rows on one header`, `build ${buildMs.toFixed(0)} ms, driver ${editMs.toFixed(0)} ms, ${(bytes / 1e6).toFixed(1)} MB`))
  const growth = costs.slice(1).flatMap((larger, i) => {
    const smaller = costs[i]
    if (smaller === undefined) return []
    const growthOf = (of: (one: Cost) => number) => (of(larger) - of(empty)) / (of(smaller) - of(empty)) / (larger.count / smaller.count)
    const step = `${smaller.count.toLocaleString('en')} → ${larger.count.toLocaleString('en')} rows, growth against linear:`
    return [
      atMost(`${step} build`, growthOf(({ buildMs }) => buildMs), REACH),
      atMost(`${step} driver edit`, growthOf(({ editMs }) => editMs), REACH),
      atMost(`${step} memory`, growthOf(({ bytes }) => bytes), REACH),
    ]
  })
  return [...figures, ...growth, ...againstOriginal()]
}

/** The same sheet in an engine as it comes, whose lists of users are searched from the front. */
function againstOriginal(): Figure[] {
  const count = 40_000
  const content = (inventory(count).sheets[0]?.rows ?? []).map((row) => (row ?? []).map((cell) => engineContent(cell?.content ?? null)))
  const fill = (engine: HyperFormula): number => {
    engine.addSheet('S')
    const time = millisecondsOf(() => engine.setSheetContent(0, content))
    engine.destroy()
    return time
  }
  const { linear, original } = sideBySide(2, {
    linear: () => fill(createEngine()),
    original: () => fill(HyperFormula.buildEmpty({ ...createEngine().getConfig(), licenseKey: 'gpl-v3' })),
  })
  return [justSo(`${count.toLocaleString('en')} rows on one header: build in the engine as it comes, against ours`, times(original / linear))]
}
