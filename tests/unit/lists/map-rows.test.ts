import { describe, expect, it } from 'vitest'
import { mapRows } from '../../../src/exchange/lists/map-rows.ts'
import { sourceFor, suggestMapping } from '../../../src/exchange/lists/suggest-mapping.ts'
import type { ReadValue } from '../../../src/exchange/reading/contents.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { workbookOf } from '../workbook-of.ts'
import { inventory, listNamed, sheetOfRows } from './read-list.ts'

const workbook = inventory()
const list = listNamed(workbook, 'Charge')
const HEADINGS = ['Tag', 'Orientation', 'ID [mm]', 'T/T length [m]', 'Heads', 'Design temp (°C)', 'Qty', 'Room', 'Suction', 'Normal fill (%)', 'Max fill (%)', 'Capacity (m3)', 'Type', 'Remarks']
const GOOD: readonly ReadValue[] = ['V-1', 'Vert.', 762, 2.5, '2:1 SE', -10, 1, 'Dock', 'High', 25, 30, null, 'Surge drum', 'x']

function mapped(...rows: (readonly (ReadValue | undefined)[])[]) {
  const source = sourceFor(list, sheetOfRows([['Vessel schedule'], HEADINGS, ...rows]))
  const mapping = suggestMapping(list, source)
  return { source, mapping, rows: mapRows(list, source, mapping, { workbook }) }
}
const changed = (changes: Readonly<Record<string, ReadValue>>) => GOOD.map((value, at) => changes[HEADINGS[at] ?? ''] ?? value)
const problemsOf = (changes: Readonly<Record<string, ReadValue>>) => mapped(changed(changes)).rows[0]?.problems.map(({ heading, found, why, accepted }) => `${heading} “${found}”: ${why}; accepted: ${accepted}`)
const valueOf = (changes: Readonly<Record<string, ReadValue>>, heading: string) => mapped(changed(changes)).rows[0]?.values[list.columns.findIndex((one) => one.heading === heading)]

describe('a list with other words for the same columns', () => {
  it('is matched by trade words and units, below a title row', () => {
    const { source, mapping } = mapped(GOOD)
    expect(source.headingRow).toBe(1)
    const pairs = list.columns.map(({ column, heading }) => [heading, HEADINGS[mapping.columns.get(column)?.from ?? -1], mapping.columns.get(column)?.unit])
    expect(pairs).toEqual([
      ['Part (tag)', 'Tag', undefined], ['Zone', 'Room', undefined], ['Suction level', 'Suction', undefined], ['Kind of part', 'Type', undefined], ['Shape', 'Orientation', undefined],
      ['Heads', 'Heads', undefined], ['How many', 'Qty', undefined], ['Inside diameter', 'ID [mm]', 'mm'], ['Length', 'T/T length [m]', 'm'], ['Volume given', 'Capacity (m3)', 'm3'],
      ['Temperature', 'Design temp (°C)', '°C'], ['Filled in operation', 'Normal fill (%)', '%'], ['Filled at most', 'Max fill (%)', '%'], ['Where the fill comes from', 'Remarks', undefined],
    ])
  })
  it('is converted: 762 mm are 30 in, −10 °C is 14 °F; words become choices', () => {
    expect(valueOf({}, 'Inside diameter')).toBeCloseTo(30, 12)
    expect(valueOf({}, 'Temperature')).toBeCloseTo(14, 12)
    expect([valueOf({}, 'Shape'), valueOf({}, 'Heads')]).toEqual(['vertical', '2:1'])
    expect(mapped(GOOD).rows[0]?.problems).toEqual([])
  })
  it('takes units from a row below the headings, and from a column beside', () => {
    const below = sourceFor(list, sheetOfRows([['Tag', 'Diameter', 'Length'], [undefined, '[mm]', 'm'], ['V-1', 600, 2]]))
    expect([below.unitRow, below.firstRow, below.columns.map(({ unit }) => unit?.code)]).toEqual([1, 2, [undefined, 'mm', 'm']])
    const beside = sourceFor(list, sheetOfRows([['Tag', 'Diameter', 'Unit', 'Length', 'Unit'], ['V-1', 600, 'mm', 6, 'ft'], ['V-2', 24, 'in', 2, 'm']]))
    const rows = mapRows(list, beside, suggestMapping(list, beside), { workbook })
    const [diameter, length] = ['Inside diameter', 'Length'].map((heading) => list.columns.findIndex((one) => one.heading === heading))
    expect(rows.map(({ values }) => [values[diameter ?? -1], values[length ?? -1]])).toEqual([[600 * 0.001 / 0.0254, 6], [24, 2 / 0.3048]])
  })
  it('marks what is not plain: no unit, percent or not, a choice that says less', () => {
    const source = sourceFor(list, sheetOfRows([['Tag', 'Diameter', 'Max fill', 'Orientation'], ['V-1', 600, 30, 'slanted']]))
    const unsure = [...suggestMapping(list, source).columns.values()].flatMap((one) => one.unsure ?? [])
    expect(unsure).toEqual(['“slanted” is none of horizontal, vertical, volume, pipe', 'no unit in the file: choose one', 'no unit in the file: read as percent'])
  })
})

describe('a row that cannot be taken says where, what, why and what is accepted', () => {
  it.each([
    [{ 'ID [mm]': 'abc' }, 'Inside diameter “abc”: not a number; accepted: a number in a unit of length: m, mm, cm, in, ft, µm'],
    [{ 'ID [mm]': '10 kg' }, 'Inside diameter “10 kg”: kg is a mass, here stands a length; accepted: a number in a unit of length: m, mm, cm, in, ft, µm'],
    [{ 'ID [mm]': -600 }, 'Inside diameter “-600”: a size below nothing; accepted: more than 0 in'],
    [{ 'ID [mm]': 0 }, 'Inside diameter “0”: a size of nothing; accepted: more than 0 in'],
    [{ 'ID [mm]': '-' }, 'Inside diameter “-”: missing, and the formulas of the row need it; accepted: a number with a unit such as in'],
    [{ 'Orientation': 'vertcal' }, 'Shape “vertcal”: no choice that the formulas know; nearest is vertical; accepted: horizontal, vertical, volume, pipe'],
    [{ 'Qty': 0 }, 'How many “0”: no number of pieces; accepted: a whole number from 1 up'],
    [{ 'Qty': 1.5 }, 'How many “1.5”: no number of pieces; accepted: a whole number from 1 up'],
    [{ 'Max fill (%)': 130 }, 'Filled at most “130”: a share below nothing or above the whole; accepted: 0 % to 100 %'],
    [{ 'Tag': 'Drum 1' }, 'Part (tag) “Drum 1”: the list has this tag already, in row 8; accepted: a tag that no other row has'],
    [{ 'ID [mm]': { error: '#REF!' } }, 'Inside diameter “#REF!”: the file has an error here (#REF!); accepted: a value'],
    [{ 'Orientation': 'volume' }, 'Volume given “”: missing, and the formulas of the row need it; accepted: a number with a unit such as ft3'],
    // The saturation functions reach from 195.55 K to 373.15 K (Gao et al. 2023; the table of this project).
    [{ 'Design temp (°C)': 120 }, 'Temperature “120”: out of the range of HOLDUP'],
  ])('%o', (changes, message) => {
    const problems = problemsOf(changes) ?? []
    expect(problems).toHaveLength(1)
    if (message.endsWith('HOLDUP')) expect(problems[0]).toMatch(/^Temperature “120”: out of the range of VESSEL.CHARGE.*accepted: .*°F/)
    else expect(problems[0]).toBe(message)
  })
  it('a tag twice in the file is told of the second row', () => {
    expect(mapped(GOOD, GOOD).rows.map(({ problems }) => problems.map(({ why }) => why))).toEqual([[], ['row 3 of the file has this tag too']])
  })
  it('a needed column of none of the shapes is not asked for: a pipe has no heads, a given volume no length', () => {
    const pipe = changed({ 'Orientation': 'Pipe' }).map((value, at) => (HEADINGS[at] === 'Heads' ? null : value))
    expect(mapped(pipe).rows[0]?.problems).toEqual([])
  })
  it('what the user types in its place is taken, a plain number in the unit of the list', () => {
    const source = sourceFor(list, sheetOfRows([HEADINGS, changed({ 'ID [mm]': 'abc' })]))
    const at = list.columns.findIndex(({ heading }) => heading === 'Inside diameter')
    const mend = (text: string) => mapRows(list, source, suggestMapping(list, source), { workbook, mended: new Map([[`1:${at}`, text]]) })[0]
    expect([mend('30')?.values[at], mend('762 mm')?.values[at], mend('30')?.problems]).toEqual([30, 762 * 0.001 / 0.0254, []])
  })
})

describe('units that are easily mistaken', () => {
  const zones = readTemplate('templates/zone-setpoints.lowside.json')
  const zoneList = listNamed(zones, 'Zones')
  it('a temperature difference is not an absolute temperature: a TD of 10 °C is 18 Δ°F, a room of 10 °C is 50 °F', () => {
    const source = sourceFor(zoneList, sheetOfRows([['Zone', 'Room (°C)', 'TD (°C)'], ['New', 10, 10]]))
    const mapping = suggestMapping(zoneList, source)
    const [row] = mapRows(zoneList, source, mapping, { workbook: zones })
    const value = (heading: string) => row?.values[zoneList.columns.findIndex((one) => one.heading.startsWith(heading))]
    expect([value('Room'), value('TD')]).toEqual([expect.closeTo(50, 10), expect.closeTo(18, 12)])
    expect([...mapping.columns.values()].flatMap(({ unsure }) => unsure ?? [])).toEqual(expect.arrayContaining(['°C is read as a difference of temperature']))
  })
  it('the same unit gives the very number of the file', () => {
    expect(mapRows(list, sourceFor(list, sheetOfRows([['Tag', 'Length (ft)'], ['a', 0.1]])), suggestMapping(list, sourceFor(list, sheetOfRows([['Tag', 'Length (ft)'], ['a', 0.1]]))), { workbook })[0]?.values[list.columns.findIndex(({ heading }) => heading === 'Length')]).toBe(0.1)
  })
  it('gauge pressure becomes absolute by the atmosphere of the site, and without it by the standard one, with a mark', () => {
    const tanks = workbookOf({ Tanks: { A1: ['Tank', 'heading'], B1: ['Pressure', 'heading'], B2: ['psia', 'unit'], A3: ['one', 'input'], B3: 100 } })
    const tankList = listNamed(tanks, 'Tanks')
    const source = sourceFor(tankList, sheetOfRows([['Tank', 'Pressure (psig)'], ['two', 100]]))
    const row = (sitePa?: number) => mapRows(tankList, source, suggestMapping(tankList, source), { workbook: tanks, sitePa })[0]
    // 1 atm = 14.69595 psi (101 325 Pa; 1 psi = 6894.757 Pa, NIST SP 811, B.8).
    expect(row()?.values[1]).toBeCloseTo(114.69595, 5)
    expect(row()?.marks.map(({ why }) => why)).toEqual(['gauge and absolute pressure: reckoned with the standard atmosphere, 101.325 kPa'])
    expect([row(6894.757 * 12)?.values[1], row(6894.757 * 12)?.marks]).toEqual([expect.closeTo(112, 5), []])
  })
})
