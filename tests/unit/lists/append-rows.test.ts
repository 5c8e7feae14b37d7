import { describe, expect, it } from 'vitest'
import { catalogue } from '../../../functions/catalogue.ts'
import { Graph } from '../../../src/calc/graph.ts'
import { appendRows, rowsAppended } from '../../../src/exchange/lists/append-rows.ts'
import { cellAt, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { perform, startHistory, undo } from '../../../src/workbook/history.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { callsOf } from '../function-calls.ts'
import { at, workbookOf } from '../workbook-of.ts'
import { inventory, listNamed, rowsOfText, vesselListText } from './read-list.ts'

const contentAt = (workbook: Workbook, sheet: string, address: string) => cellAt(workbook, sheet, at(address).row, at(address).column)?.content
const numberAt = (workbook: Workbook, sheet: string, address: string): number => {
  const value = new Graph(workbook).value(sheet, at(address).row, at(address).column)
  if (typeof value !== 'number') throw new Error(`${sheet}!${address} is ${JSON.stringify(value)}`)
  return value
}

async function withRows(text: string): Promise<Workbook> {
  const workbook = inventory()
  const list = listNamed(workbook, 'Charge')
  const rows = await rowsOfText(workbook, list, text)
  expect(rows.flatMap(({ problems }) => problems)).toEqual([])
  return applyEdits(workbook, appendRows(workbook, list, rows.map(({ values }) => values))).workbook
}

/** The same list as a client in the metric world would write it: SI units, other headings, other words, decimal commas. */
function inSi(text: string): string {
  const [, ...lines] = text.trimEnd().split(/\r?\n/)
  const comma = (value: number) => String(value).replace('.', ',')
  const times = (value: string | undefined, factor: number) => (value === undefined || value === '' ? '' : comma(Number(value) * factor))
  const shapes: Readonly<Record<string, string>> = { vertical: 'Vert.', horizontal: 'Horiz.', pipe: 'Pipe', volume: 'Volume' }
  const rows = lines.map((line) => {
    const [tag, zone, level, kind, shape = '', heads, count, diameter, length, volume, temperature, operation, most] = line.split(',')
    const celsius = comma((Number(temperature) - 32) / 1.8)
    return [tag, kind, shapes[shape] ?? shape, heads === '2:1' ? '2:1 SE' : heads, count, times(diameter, 25.4), times(length, 0.3048), times(volume, 0.3048 ** 3), celsius, operation, most, zone, level].join(';')
  })
  return ['Equipment no.;Type;Orientation;Ends;Qty;I.D. [mm];Shell length [m];Capacity [m³];Temp. [°C];Normal fill [%];Max. fill [%];Room;Suction', ...rows].join('\n')
}

/** Every row by the function itself, without sheet, list or formula: heads, levels and densities are those of the catalogue. */
function chargeByHand(text: string): { readonly operation: number; readonly most: number } {
  const { call } = callsOf(catalogue)
  const lb = (name: string, ...given: string[]): number => {
    const result = call(name, ...given)
    if (typeof result !== 'number') throw new Error(`${name}: ${JSON.stringify(result)}`)
    return result
  }
  const sum = { operation: 0, most: 0 }
  for (const line of text.trimEnd().split(/\r?\n/).slice(1)) {
    const [, , , , shape, heads = '', count, diameter, length, volume, temperature, operation, most] = line.split(',')
    const volumeText = shape === 'volume' ? `${volume} ft3` : `${(Math.PI / 4) * (Number(diameter) / 12) ** 2 * Number(length)} ft3`
    const charge = (fill: string | undefined) => Number(count) * (shape === 'volume' || shape === 'pipe'
      ? lb('HOLDUP.MASS', volumeText, `${fill} %`, `${temperature} °F`, 'lb')
      : lb('VESSEL.CHARGE', `${diameter} in`, `${length} ft`, heads, shape ?? '', `${fill} %`, `${temperature} °F`, 'lb'))
    sum.operation += charge(operation)
    sum.most += charge(most)
  }
  return sum
}

describe('the 300 rows of the demo list in the charge inventory', () => {
  const text = vesselListText().replace(/^\uFEFF/, '')
  it('are all in; the totals grow by the sum of the rows, each computed by itself', async () => {
    const [before, after] = [inventory(), await withRows(text)]
    expect(contentAt(after, 'Charge', 'P7')).toBe('=SUM(P8:P366)')
    const byHand = chargeByHand(text)
    expect(numberAt(after, 'Charge', 'P7') - numberAt(before, 'Charge', 'P7')).toBeCloseTo(byHand.operation, 6)
    expect(numberAt(after, 'Charge', 'Q7') - numberAt(before, 'Charge', 'Q7')).toBeCloseTo(byHand.most, 6)
    expect(numberAt(after, 'Charge totals', 'C6')).toBeCloseTo(numberAt(after, 'Charge', 'P7'), 8)
  })
  it('are kept to the last digit where the units are those of the list', async () => {
    const after = await withRows(text)
    expect(['B66', 'I66', 'J66', 'L66', 'B365'].map((address) => contentAt(after, 'Charge', address))).toEqual(['SD-001', 24, 9, 18, text.trimEnd().split(/\r?\n/).at(-1)?.split(',')[0]])
  })
  it('give the same totals to 1e-9 from SI units, other headings and decimal commas', async () => {
    const [us, si] = [await withRows(text), await withRows(inSi(text))]
    for (const address of ['O7', 'P7', 'Q7']) expect(numberAt(si, 'Charge', address) / numberAt(us, 'Charge', address)).toBeCloseTo(1, 9)
  })
  it('are one step that undo takes back: the file is the very same afterwards', async () => {
    const workbook = inventory()
    const list = listNamed(workbook, 'Charge')
    const rows = await rowsOfText(workbook, list, text)
    const done = perform(startHistory(workbook), appendRows(workbook, list, rows.map(({ values }) => values)), 'Append')
    expect(writeWorkbook(undo(done.history).history.workbook)).toBe(writeWorkbook(workbook))
  })
  it('look as the rows there are: roles, formats and formulas', async () => {
    const after = await withRows(text)
    expect(cellAt(after, 'Charge', 65, 14)).toEqual({ ...cellAt(after, 'Charge', 64, 14), content: String(contentAt(after, 'Charge', 'O65')).replace(/(?<=[A-Z])65\b/g, '66') })
    expect(cellAt(after, 'Charge', 65, 8)).toEqual({ content: 24, role: 'input' })
    expect(cellAt(after, 'Charge', 66, 8)).toEqual({ content: null, role: 'input' })
  })
})

describe('what sums, looks up or shows a list', () => {
  it('takes the new rows in: names, figures and sums of other sheets', () => {
    const workbook = readTemplate('templates/zone-setpoints.lowside.json')
    const list = listNamed(workbook, 'Zones')
    const { workbook: after } = applyEdits(workbook, appendRows(workbook, list, [['New room', 12, 40, 10, 'High', 3, 0.4], ['Other room', 8, 40, 10, 'High', 3, 0.4]]))
    expect(after.names.get('zone_loads')).toBe('Zones!$C$8:$C$18')
    expect(after.figures[0]?.bindings['suction']).toBe('Zones!$P$8:$P$18')
    expect(contentAt(after, 'Zones', 'C25')).toContain('SUMIFS(C$8:C$18')
    expect(numberAt(after, 'Zones', 'C25') - numberAt(workbook, 'Zones', 'C23')).toBeCloseTo(20, 9)
  })
  const small = (formula: string) => workbookOf(
    { Parts: { A1: ['Part', 'heading'], B1: ['Mass', 'heading'], C1: ['So far', 'heading'], A2: ['one', 'input'], B2: 1, C2: '=SUM(B$2:B2)', A3: ['two', 'input'], B3: 2, C3: '=SUM(B$2:B3)' }, Sum: { A1: formula } },
    { masses: 'Parts!$B$2:$B$3' },
  )
  const append = (workbook: Workbook) => applyEdits(workbook, appendRows(workbook, listNamed(workbook, 'Parts'), [['three', 3], ['four', 4]])).workbook
  it('takes them in where its range ends with the last row, and a running sum stays one', () => {
    const after = append(small('=SUM(Parts!B2:B3)'))
    expect([numberAt(after, 'Sum', 'A1'), after.names.get('masses'), contentAt(after, 'Parts', 'C3'), contentAt(after, 'Parts', 'C5')]).toEqual([10, 'Parts!$B$2:$B$5', '=SUM(B$2:B3)', '=SUM(B$2:B5)'])
  })
  it('leaves a reference to one row, and a range over some of them, as they are', () => {
    expect(contentAt(append(small('=Parts!B3')), 'Sum', 'A1')).toBe('=Parts!B3')
    expect(contentAt(append(small('=SUM(Parts!B3:B3)')), 'Sum', 'A1')).toBe('=SUM(Parts!B3:B3)')
  })
  it('free rows are filled first, the rest is new', () => {
    const workbook = small('=SUM(Parts!B2:B3)')
    const free = applyEdits(workbook, [{ kind: 'cells', sheet: 'Parts', cells: [0, 1].map((column) => ({ row: 3, column, cell: { content: null, role: 'input' } })) }]).workbook
    const list = listNamed(free, 'Parts')
    expect(rowsAppended(list, 2)).toEqual([3, 4])
    const after = append(free)
    expect([contentAt(after, 'Parts', 'A4'), contentAt(after, 'Parts', 'A5'), numberAt(after, 'Sum', 'A1')]).toEqual(['three', 'four', 10])
  })
  it('a list of one row grows too', () => {
    const workbook = workbookOf({ Parts: { A1: ['Part', 'heading'], B1: ['Mass', 'heading'], A2: ['one', 'input'], B2: 1, D1: '=SUM(B2:B2)' } })
    const after = applyEdits(workbook, appendRows(workbook, listNamed(workbook, 'Parts'), [['two', 2]])).workbook
    expect(numberAt(after, 'Parts', 'D1')).toBe(3)
  })
})

describe('the demo plant, whose drums come from other sheets', () => {
  it('takes rows typed by someone, not links to the rows of other sheets', () => {
    const workbook = readTemplate('demo-data/tallowmere.lowside.json')
    const list = listNamed(workbook, 'Charge')
    const values = list.columns.map(({ heading }) => ({ 'Part (tag)': 'New', 'Zone': 'Dock', 'Shape': 'volume', 'How many': 2, 'Volume given': 3, 'Temperature': 20, 'Filled in operation': 50, 'Filled at most': 50 })[heading] ?? null)
    const after = applyEdits(workbook, appendRows(workbook, list, [values])).workbook
    const row = (list.lastFilledRow + 2).toString()
    expect(['B', 'D', 'I'].map((letters) => contentAt(after, 'Charge', `${letters}${row}`))).toEqual(['New', null, null])
    expect(numberAt(after, 'Charge', `O${row}`)).toBeCloseTo(6, 12)
    expect(numberAt(after, 'Charge', 'O7') - numberAt(workbook, 'Charge', 'O7')).toBeCloseTo(6, 9)
  })
})

it('a text that begins like a formula stays text', async () => {
  const workbook = inventory()
  const list = listNamed(workbook, 'Charge')
  const rows = await rowsOfText(workbook, list, 'Tag,Shape,Volume (ft3),Temp (°F),Fill in operation (%),Fill at most (%),Qty\n=1+1,volume,2,20,50,60,1\n')
  const after = applyEdits(workbook, appendRows(workbook, list, rows.map(({ values }) => values))).workbook
  expect(new Graph(after).value('Charge', 65, 1)).toBe('=1+1')
})
