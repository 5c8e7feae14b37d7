import { Graph } from '../../src/calc/graph.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { isFormula, type Cell, type Row, type Workbook } from '../../src/workbook/document.ts'
import { shifter } from '../../src/workbook/formula/references.ts'
import { readTemplate } from '../templates/open-template.ts'
import { atMost, bytesInUse, justSo, median, times, type Figure } from './measure.ts'

const SIZES = [1_000, 10_000] as const
/** Growth may be this much more than that of the rows. */
const REACH = 1.2
/** Rows of the template that are taken for models, and where they begin. */
const [FIRST, MODELS] = [7, 13]

/** Inventories of vessels, no two alike, exported with the workings of every call. */
export async function exportWithWorkings(): Promise<readonly Figure[]> {
  const small = await cost(SIZES[0], 3)
  const large = await cost(SIZES[1], 1)
  const growth = (of: (one: Cost) => number): number => of(large) / of(small) / (SIZES[1] / SIZES[0])
  const step = `export with workings, ${SIZES[0].toLocaleString('en')} → ${SIZES[1].toLocaleString('en')} vessels, growth against linear:`
  return [
    ...[small, large].map(({ vessels, exportMs, calculationMs, bytes, peakBytes, longestTellMs }) =>
      justSo(
        `export of ${vessels.toLocaleString('en')} vessels with workings, against their calculation`,
        `${times(exportMs / calculationMs)} (${(exportMs / 1000).toFixed(1)} s), file ${(bytes / 1e6).toFixed(1)} MB, ${(peakBytes / 1e6).toFixed(0)} MB more in use at most, told at least every ${(longestTellMs / 1000).toFixed(1)} s`,
      )),
    atMost(`${step} time`, growth(({ exportMs }) => exportMs), REACH),
    atMost(`${step} file`, growth(({ bytes }) => bytes), REACH),
    atMost(`${step} memory`, growth(({ peakBytes }) => peakBytes), REACH),
  ]
}

interface Cost {
  readonly vessels: number
  readonly calculationMs: number
  readonly exportMs: number
  /** Of the file. */
  readonly bytes: number
  /** At the moments at which it tells how far it is. */
  readonly peakBytes: number
  readonly longestTellMs: number
}

async function cost(vessels: number, rounds: number): Promise<Cost> {
  const workbook = inventory(vessels)
  const costs: Cost[] = []
  for (let round = 0; round < rounds; round++) {
    const start = performance.now()
    const areas = new Graph(workbook).allAreas()
    const calculationMs = performance.now() - start
    const values = new Map([...areas].map(([sheet, area]) => [sheet, area.values] as const))
    const before = bytesInUse()
    let [peakBytes, longestTellMs, told] = [0, 0, performance.now()]
    const begun = told
    const { length } = await exportXlsx(workbook, values, {
      date: new Date(0), checks: areas,
      report: () => {
        peakBytes = Math.max(peakBytes, process.memoryUsage().heapUsed - before)
        const now = performance.now()
        longestTellMs = Math.max(longestTellMs, now - told)
        told = now
      },
    })
    costs.push({ vessels, calculationMs, exportMs: performance.now() - begun, bytes: length, peakBytes, longestTellMs })
  }
  const of = (what: (one: Cost) => number): number => median(costs.map(what))
  return {
    vessels, calculationMs: of((one) => one.calculationMs), exportMs: of((one) => one.exportMs), bytes: of((one) => one.bytes),
    peakBytes: of((one) => one.peakBytes), longestTellMs: of((one) => one.longestTellMs),
  }
}

function inventory(vessels: number): Workbook {
  const template = readTemplate('templates/charge-inventory.lowside.json')
  const sheet = template.sheets.find(({ name }) => name === 'Charge')
  if (sheet === undefined) throw new Error('the template has no sheet Charge')
  const models = sheet.rows.slice(FIRST, FIRST + MODELS)
  const rows: Row[] = sheet.rows.slice(0, FIRST)
  for (let vessel = 0; vessel < vessels; vessel++) {
    const model = vessel % MODELS
    rows.push(models[model]?.map((cell) => cell && moved(cell, vessel - model, 1 + vessel * 1e-7)))
  }
  return { ...template, sheets: [{ ...sheet, rows }], names: new Map(), figures: [] }
}

/** The cell of a model further down, its sizes a little larger. */
function moved(cell: Cell, rows: number, factor: number): Cell {
  if (isFormula(cell.content)) return { ...cell, content: shifter(cell.content)(rows, 0) }
  return typeof cell.content === 'number' && cell.content > 5 ? { ...cell, content: cell.content * factor } : cell
}
