import { expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { appendRows } from '../../src/exchange/lists/append-rows.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { inventory, listNamed, rowsOfText } from '../unit/lists/read-list.ts'

/** What the charge inventory makes of one row of a client's list. */
async function rowOf(text: string): Promise<{ readonly diameterIn: unknown; readonly lengthFt: unknown; readonly temperatureF: unknown; readonly volumeFt3: number }> {
  const workbook = inventory()
  const list = listNamed(workbook, 'Charge')
  const [row] = await rowsOfText(workbook, list, text)
  if (!row || row.problems.length > 0) throw new Error(JSON.stringify(row?.problems))
  const { workbook: after } = applyEdits(workbook, appendRows(workbook, list, [row.values]))
  const value = new Graph(after).value('Charge', 65, 14)
  const at = (heading: string) => row.values[list.columns.findIndex((one) => one.heading === heading)]
  return { diameterIn: at('Inside diameter'), lengthFt: at('Length'), temperatureF: at('Temperature'), volumeFt3: Number(value) }
}

const HEADINGS = 'Tag,Orientation,ID [mm],Length [m],Heads,Temp [°C],Qty,Room,Suction,Normal fill [%],Max fill [%],Type'

// Units: 1 in = 25.4 mm and 1 ft = 0.3048 m exactly, t/°F = 1.8 t/°C + 32 (NIST SP 811, 2008, appendix B.8 and section B.8 footnotes).
it('a cylinder with flat ends of 1000 mm and 3 m holds π/4 · 1² · 3 m³ = 83.2093 ft³', async () => {
  const row = await rowOf(`${HEADINGS}\nV-1,Horiz.,1000,3,flat,-10,1,Dock,High,25,30,Drum\n`)
  expect(row.diameterIn).toBeCloseTo(39.37007874, 8)
  expect(row.lengthFt).toBeCloseTo(9.842519685, 9)
  expect(row.temperatureF).toBeCloseTo(14, 12)
  expect(row.volumeFt3).toBeCloseTo(((Math.PI / 4) * 3) / 0.028316846592, 9)
})

// A half ellipsoid of depth D/4 holds π D³/24 (geometry; Jones, Calculating Tank Volume, 2003).
it('2:1 heads add π/12 · D³: 30 in by 6 ft hold 29.45 + 4.09 ft³', async () => {
  const row = await rowOf(`${HEADINGS.replace('[mm]', '(in)').replace('[m]', '(ft)').replace('[°C]', '(°F)')}\nV-1,Vert.,30,6,2:1 SE,20,1,Dock,High,25,30,Drum\n`)
  expect(row.diameterIn).toBe(30)
  expect(row.volumeFt3).toBeCloseTo((Math.PI / 4) * 2.5 ** 2 * 6 + (Math.PI / 12) * 2.5 ** 3, 9)
})
