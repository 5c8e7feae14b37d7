import { describe, expect, it } from 'vitest'
import { cellAt, type Workbook } from '../../src/workbook/document.ts'
import { withAccepted } from '../../templates/assemble/accepted.ts'
import { joinTemplates } from '../../templates/assemble/join.ts'
import { applyLinks, type Link } from '../../templates/assemble/link.ts'
import type { NamedTemplate } from '../../templates/assemble/order.ts'
import { withInputs } from '../../templates/assemble/typed-inputs.ts'
import { at, workbookOf, type Put } from '../unit/workbook-of.ts'

type Sheets = Readonly<Record<string, Readonly<Record<string, Put>>>>

const template = (name: string, sheets: Sheets, names: Readonly<Record<string, string>> = {}): NamedTemplate => ({ name, workbook: workbookOf(sheets, names) })
const join = (...templates: NamedTemplate[]) => joinTemplates(templates, 'Plant', 'All')
const content = (workbook: Workbook, sheet: string, address: string) => cellAt(workbook, sheet, at(address).row, at(address).column)?.content

const cautions = (...lines: string[]): Sheets => ({ Cautions: { B1: ['Cautions', 'title'], ...Object.fromEntries(lines.map((line, index) => [`B${index + 3}`, line])) } })
const basis = template('basis', { Basis: { B8: ['Elevation', 'label'], C8: 2900, D8: ['ft', 'unit'] }, ...cautions('Danger', 'Basis') }, { site_elevation: 'Basis!$C$8:$D$8' })
const zones = template('zones', {
  Basis: { C3: 0, D3: ['ft', 'unit'] },
  Zones: { B1: ['Zone', 'heading'], C1: ['Load', 'heading'], C2: ['TR', 'unit'], B3: ['Cooler', 'input'], C3: 50, B4: ['Dock', 'input'], C4: 20, B5: ['Insert above', 'note'], E3: '=UNIT.CONVERT(site_elevation,"m")' },
  ...cautions('Danger', 'Zones'),
}, { site_elevation: 'Basis!$C$3:$D$3', zone_loads: 'Zones!$C$3:$C$5' })
const drums = template('drums', {
  Basis: {},
  Drums: {
    B1: ['Drum', 'heading'], C1: ['Load', 'heading'], D1: ['Length', 'heading'], C2: ['kW', 'unit'], D2: ['ft', 'unit'],
    B3: ['Drum 1', 'input'], C3: 1, D3: 8, B4: ['Drum 2', 'input'], C4: 2, D4: 9, B5: ['Accumulator', 'input'], C5: 3, D5: 10, E5: '=C5&C$2', B6: ['Insert above', 'note'],
  },
  ...cautions('Drums', 'Danger'),
})

describe('joining', () => {
  it('takes each template’s own sheets, the basis of `basis`, its names, and each caution once, the commonest first', () => {
    const plant = join(basis, zones, drums)
    expect(plant.sheets.map(({ name }) => name)).toEqual(['Basis', 'Zones', 'Drums', 'Cautions'])
    expect(content(plant, 'Basis', 'C8')).toBe(2900)
    expect([...plant.names]).toEqual([['site_elevation', 'Basis!$C$8:$D$8'], ['zone_loads', 'Zones!$C$3:$C$5']])
    expect(['B1', 'B3', 'B4', 'B5', 'B6', 'B7'].map((address) => content(plant, 'Cautions', address))).toEqual(['Cautions', 'Danger', 'Basis', 'Zones', 'Drums', undefined])
  })

  it.each<[string, NamedTemplate, string]>([
    ['a sheet twice', template('more', { Zones: { A1: 1 } }), 'Zones'],
    ['a name for two places', template('more', { Other: { A1: 1 } }, { Zone_Loads: 'Other!$A$1' }), 'the name Zone_Loads is given by the templates zones and more'],
    ['a basis without a name', template('more', { Basis: { A1: 1 }, Other: { A1: 1 } }, { fuel: 'Basis!$A$1' }), 'template more reads the name fuel'],
    ['a name of another shape', template('more', { Basis: { A1: 1 } }, { site_elevation: 'Basis!$A$1' }), 'accepted: the same shape in both'],
    ['a reference to the basis past its name', template('more', { Basis: { A1: 1 }, Other: { A1: '=Basis!A1' } }), 'template more, Other!A1: Basis!A1 is not on its own sheets'],
    ['a reference to another template', template('more', { Other: { A1: '=Zones!C3' } }), 'Zones!C3 is not on its own sheets'],
    ['a name for a place that is not its own', template('more', { Other: { A1: 1 } }, { other: 'Zones!$A$1' }), 'name other: Zones!$A$1 is not on its own sheets'],
  ])('refuses %s', (_, more, message) => {
    expect(() => join(basis, zones, more)).toThrow(message)
  })
})

describe('accepted findings', () => {
  const accepted = (sheet: string, row: number) => ({ kind: 'unused-inputs', sheet, area: { top: row, bottom: row, left: 2, right: 2 }, key: 'feeds nothing', note: 'To be read.' })
  const withAcceptances = ({ name, workbook }: NamedTemplate, ...all: readonly ReturnType<typeof accepted>[]): NamedTemplate => ({ name, workbook: { ...workbook, review: { marks: [], accepted: all, record: [] } } })

  it('come along with a template’s own sheets, not with the basis that it has for itself', () => {
    const plant = join(withAcceptances(basis, accepted('Basis', 7)), withAcceptances(zones, accepted('Zones', 2), accepted('Basis', 2)), drums)
    expect(plant.review).toEqual({ marks: [], accepted: [accepted('Basis', 7), accepted('Zones', 2)], record: [] })
    expect(join(basis, zones, drums).review).toBeUndefined()
  })

  it('move down as a table gets rows, and go with rows that are taken away, without a line in the record', () => {
    const plant = join(basis, withAcceptances(zones, accepted('Zones', 3), accepted('Zones', 4)), drums)
    const longer = withInputs(plant, [{ sheet: 'Zones', tables: [{ headings: ['Zone', 'Load'], rows: [['A', 1], ['B', 2], ['C', 3]] }] }])
    expect(longer.review).toEqual({ marks: [], accepted: [accepted('Zones', 3), accepted('Zones', 5)], record: [] })
    const shorter = withInputs(plant, [{ sheet: 'Zones', tables: [{ headings: ['Zone', 'Load'], rows: [['A', 1]] }] }])
    expect(shorter.review).toEqual({ marks: [], accepted: [accepted('Zones', 3)], record: [] })
  })

  it('are added on whole sheets by a demo', () => {
    const { review } = withAccepted(join(basis, zones, drums), [{ kind: 'default-values', key: 'as in the template', sheets: ['Zones', 'Drums'], note: 'Invented.' }])
    expect(review?.accepted.map(({ sheet, area }) => [sheet, area])).toEqual([
      ['Drums', { top: 0, bottom: 5, left: 0, right: 4 }], ['Zones', { top: 0, bottom: 4, left: 0, right: 4 }],
    ])
    expect(() => withAccepted(join(basis, zones, drums), [{ kind: 'a', key: 'b', sheets: ['Attic'], note: 'c' }])).toThrow('Attic')
  })
})

describe('links', () => {
  const plant = join(basis, zones, drums)
  const link = (formula: string, input = 'Load', more: Partial<Link> = {}): Link => ({ sheet: 'Drums', input, formula, ...more })
  const linked = (...links: Link[]) => applyLinks(plant, links).workbook

  it('link as many inputs of a column as its source has rows, each to its own row, with the units of both', () => {
    const workbook = linked(link('=UNIT.CONVERT({Zones: Load},{unit})'), link('={Zones: Zone}', 'Drum'))
    expect(['C3', 'C4', 'C5', 'B4', 'B5'].map((address) => content(workbook, 'Drums', address))).toEqual([
      '=UNIT.CONVERT(Zones!$C3&Zones!$C$2,C$2)', '=UNIT.CONVERT(Zones!$C4&Zones!$C$2,C$2)', 3, '=Zones!$B4', 'Accumulator',
    ])
    expect(cellAt(workbook, 'Drums', 2, 2)).toMatchObject({ role: 'result', digits: 4 })
  })

  it('begin where they are told, again and again', () => {
    const workbook = linked(link('=UNIT.CONVERT(site_elevation,{unit})', 'Length', { from: [1, 3] }))
    expect(['D3', 'D4', 'D5'].map((address) => content(workbook, 'Drums', address))).toEqual(['=UNIT.CONVERT(site_elevation,D$2)', 9, '=UNIT.CONVERT(site_elevation,D$2)'])
  })

  it('wait for sheets and names that are not there yet', () => {
    const links = [link('={Pumps: Flow}'), link('=drum_loads'), link('=Pumps!C3'), { sheet: 'Pumps', input: 'Flow', formula: '=1' }]
    expect(applyLinks(plant, links)).toEqual({ workbook: plant, waiting: links })
  })

  it.each<[string, Link, string]>([
    ['an input that is not there', link('=1', 'Weight'), 'sheet "Drums": 0 inputs or columns of inputs are called "Weight"'],
    ['a source that is not there', link('={Zones: Weight}'), 'sheet "Zones": 0 values'],
    ['more rows than inputs', link('={Zones: Load}', 'Load', { from: [3] }), 'Drums, Load: there are 3 inputs; 4 are to be linked'],
    ['a unit where there is none', link('={Zones: Zone}&{unit}', 'Drum'), 'Drums, Drum: no unit stands beside it'],
    ['a placeholder without a sheet', link('={Load}'), '{Load} in a link; accepted'],
  ])('refuse %s', (_, wrong, message) => {
    expect(() => linked(wrong)).toThrow(message)
  })
})

describe('inputs typed in for a plant', () => {
  const plant = join(basis, zones, drums)
  const typed = (rows: readonly (readonly (string | number)[])[], headings = ['Drum', 'Load']) => withInputs(plant, [{ sheet: 'Drums', tables: [{ headings, rows }] }])

  it('go to the words beside them', () => {
    expect(content(withInputs(plant, [{ sheet: 'Basis', values: { Elevation: 5280 } }]), 'Basis', 'C8')).toBe(5280)
  })

  it('give a table as many rows as there are, filled down, above its closing line', () => {
    const longer = typed([['a', 1], ['b', 2], ['c', 3], ['d', 4], ['e', 5]])
    expect(['B3', 'C3', 'B7', 'C7', 'D7', 'E7', 'B8'].map((address) => content(longer, 'Drums', address))).toEqual(['a', 1, 'e', 5, 10, '=C7&C$2', 'Insert above'])
    const shorter = typed([['a', 1]])
    expect(['B3', 'C3', 'B4'].map((address) => content(shorter, 'Drums', address))).toEqual(['a', 1, 'Insert above'])
  })

  it('are refused where they have no place', () => {
    expect(() => typed([['a', 1]], ['Drum', 'Weight'])).toThrow('"Weight"')
    expect(() => typed([['a']])).toThrow('row 1 has not the 2 values of Drum, Load')
    expect(() => withInputs(plant, [{ sheet: 'Basis', values: { Elevation: [1, 2] } }])).toThrow('2 values for 1 inputs')
  })

  it('pass over sheets that the plant lacks', () => {
    expect(withInputs(plant, [{ sheet: 'Pumps', values: { Flow: 1 } }])).toBe(plant)
  })
})
