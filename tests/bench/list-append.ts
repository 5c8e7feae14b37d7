import { Graph } from '../../src/calc/graph.ts'
import { appendRows } from '../../src/exchange/lists/append-rows.ts'
import { listsOf } from '../../src/exchange/lists/lists-of.ts'
import { mapRows } from '../../src/exchange/lists/map-rows.ts'
import { sourceFor, suggestMapping } from '../../src/exchange/lists/suggest-mapping.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { readTemplate } from '../templates/open-template.ts'
import type { Figure } from './measure.ts'

const ROWS = 10_000

/** A client's list read into rows of the charge inventory, and appended, as against the calculation that follows. */
export async function appendList(): Promise<readonly Figure[]> {
  const workbook = readTemplate('templates/charge-inventory.lowside.json')
  const list = listsOf(workbook).find(({ name }) => name === 'Charge')
  if (!list) throw new Error('the template has no list Charge')
  const headings = ['Tag', 'Shape', 'ID (mm)', 'Length (m)', 'Heads', 'Temp (°C)', 'Qty', 'Room', 'Suction', 'Type', 'Normal fill (%)', 'Max fill (%)']
  const rows = Array.from({ length: ROWS }, (_, index) => [`T-${index}`, 'Vert.', 600 + index / 100, 2.5, '2:1 SE', -10, 1, 'Dock', 'High', 'Surge drum', 25, 30])
  const sheet = { name: 'List', hidden: false, widthsPx: [], rows: [headings, ...rows].map((row) => row.map((value) => ({ value }))) }

  const start = performance.now()
  const source = sourceFor(list, sheet)
  const mapped = mapRows(list, source, suggestMapping(list, source), { workbook })
  const read = performance.now()
  const edits = appendRows(workbook, list, mapped.map(({ values }) => values))
  const after = applyEdits(workbook, edits).workbook
  const done = performance.now()
  new Graph(after).allValues()
  const calculated = performance.now()
  const share = (ms: number): string => `${((100 * ms) / (calculated - done)).toFixed(0)} %`
  return [
    { what: `${ROWS} rows of a client’s list mapped and converted, of the time of their calculation`, figure: share(read - start), reach: '', met: undefined },
    { what: `${ROWS} rows appended to a list, of the time of their calculation`, figure: share(done - read), reach: '', met: undefined },
  ]
}
