import { Graph } from '../../src/calc/graph.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { isFormula, type Cell, type Row, type Workbook } from '../../src/workbook/document.ts'
import { shifter } from '../../src/workbook/formula/references.ts'
import { readTemplate } from '../templates/open-template.ts'
import type { Figure } from './measure.ts'

const VESSELS = 10_000
/** Rows of the template that are taken for models, and where they begin. */
const [FIRST, MODELS] = [7, 13]

/** An inventory of many vessels, no two alike, exported with the workings of every call. */
export async function exportWithWorkings(): Promise<readonly Figure[]> {
  const workbook = inventory(VESSELS)
  const start = performance.now()
  const values = new Graph(workbook).allValues()
  const built = performance.now()
  const { length } = await exportXlsx(workbook, values, { date: new Date(0) })
  const done = performance.now()
  return [
    { what: `export of ${VESSELS} vessels with workings, as against their calculation`, figure: `${((done - built) / (built - start)).toFixed(1)} times`, reach: '', met: undefined },
    { what: `the file of ${VESSELS} vessels with workings`, figure: `${(length / 1e6).toFixed(1)} MB`, reach: '', met: undefined },
  ]
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
