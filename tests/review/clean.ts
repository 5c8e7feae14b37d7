import { appendRows } from '../../src/exchange/lists/append-rows.ts'
import { listsOf } from '../../src/exchange/lists/lists-of.ts'
import { mapRows } from '../../src/exchange/lists/map-rows.ts'
import { sourceFor, suggestMapping } from '../../src/exchange/lists/suggest-mapping.ts'
import type { ReadValue } from '../../src/exchange/reading/contents.ts'
import { switchCase } from '../../src/workbook/case-switching.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { fillFrom } from '../../src/workbook/fill.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { restate } from '../../src/workbook/restate.ts'
import { BY_HAND } from './by-hand/all.ts'
import { demo, template, typed } from './planted/plant.ts'

export interface Clean {
  readonly name: string
  readonly workbook: Workbook
}

export const TEMPLATES = [
  'basis', 'charge-inventory', 'feed-comparison', 'feed-valves', 'head-circulation', 'interlocks', 'plant', 'relief', 'saturation-table', 'suction-accumulator',
  'vessel-sizing', 'zone-setpoints',
]

/** Workbooks in which nothing is wrong: whatever is found in them beyond a remark is a false alarm. */
export const cleanWorkbooks = (): readonly Clean[] => [
  ...TEMPLATES.map((name) => ({ name: `template ${name}`, workbook: template(name) })),
  ...['plant', 'relief', 'zone-setpoints'].map((name) => ({ name: `template ${name} in SI`, workbook: inSi(template(name)) })),
  { name: 'demo', workbook: demo },
  { name: 'demo in SI', workbook: inSi(demo) },
  { name: 'demo in its summer case', workbook: applyEdits(demo, switchCase(demo, 0)).workbook },
  { name: 'zones with rows inserted and a zone filled in', workbook: withNewZone(template('zone-setpoints'), ZONE_ROWS) },
  { name: 'demo with rows inserted and a zone filled in on every sheet', workbook: withNewZone(demo, PLANT_ROWS, { 'Drums!B15': 'Drum 9', ...OTHER_RULE }) },
  { name: 'inventory with 300 vessels imported', workbook: typed({ 'Charge!H58': '12', ...OTHER_RULE })(withVessels(300)) },
  ...BY_HAND.map((workbook) => ({ name: `by hand: ${workbook.title}`, workbook })),
]

const inSi = (workbook: Workbook): Workbook => applyEdits(workbook, restate(workbook, 'SI')).workbook

/** Where rows for one more zone belong, below those of the last one, and how far their columns go. */
type NewRows = readonly (readonly [sheet: string, at: number, right: number])[]
const ZONE_ROWS: NewRows = [['Zones', 15, 26]]
const PLANT_ROWS: NewRows = [...ZONE_ROWS, ['Drums', 14, 51], ['Feed', 33, 22], ['Accumulators', 67, 8], ['Accumulators', 79, 8], ['Relief', 14, 22], ['Charge', 15, 17], ['Charge totals', 22, 4]]

/** A plant above the threshold of the one rule names another that it stays below. */
const OTHER_RULE = { 'Thresholds!C27': 'EU Seveso III, lower tier' }

/** A zone more as its user adds one: rows opened and filled from those above, the zone’s own name and numbers typed. */
function withNewZone(base: Workbook, rows: NewRows, further: Readonly<Record<string, string>> = {}): Workbook {
  const longer = rows.reduce((workbook, [sheet, at, right]) => {
    const opened = applyEdits(workbook, insertLines(workbook, sheet, { axis: 'rows', at, count: 1 })).workbook
    return applyEdits(opened, fillFrom(opened, sheet, { top: at - 1, bottom: at - 1, left: 1, right }, { top: at - 1, bottom: at, left: 1, right })).workbook
  }, base)
  return typed({ 'Zones!B16': 'Ice store', 'Zones!C16': '28', 'Zones!D16': '-5', 'Zones!E16': '9', 'Zones!G16': '3', 'Zones!H16': '0.3', ...further })(longer)
}

/** The inventory with so many vessels of a client’s list appended, mapped by its headings. */
export function withVessels(count: number): Workbook {
  const workbook = template('charge-inventory')
  const list = listsOf(workbook).find(({ name }) => name === 'Charge')
  if (list === undefined) throw new Error('the template has no list Charge')
  const headings: ReadValue[] = ['Tag', 'Shape', 'ID (mm)', 'Length (m)', 'Heads', 'Temp (°C)', 'Qty', 'Room', 'Suction', 'Type', 'Normal fill (%)', 'Max fill (%)']
  const rows = Array.from({ length: count }, (_, index): ReadValue[] =>
    [`T-${index}`, 'Vert.', 300 + (index % 7) * 50, 1.8, '2:1 SE', -10 - (index % 3) * 12, 1, 'Dock', 'High', 'Surge drum', 25, 30])
  const source = sourceFor(list, { name: 'List', hidden: false, widthsPx: [], rows: [headings, ...rows].map((row) => row.map((value) => ({ value }))) })
  const mapped = mapRows(list, source, suggestMapping(list, source), { workbook })
  return applyEdits(workbook, appendRows(workbook, list, mapped.map(({ values }) => values))).workbook
}
