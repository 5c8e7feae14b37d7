import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { drawFigure } from '../../src/figures/draw-figure.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { restate } from '../../src/workbook/restate.ts'
import { Cells, expectRestated } from './cells.ts'
import { OpenWorkbook, readTemplate } from './open-template.ts'

const TEMPLATE = 'templates/basis.lowside.json'
const open = () => new OpenWorkbook(readTemplate(TEMPLATE))

describe('worked examples: the ICAO standard atmosphere and saturation by CoolProp 8.0.0, computed outside the project', () => {
  it.each([[1000, 97_716.7], [2000, 94_213], [5280, 83_430], [10_000, 69_688]])('%d ft: %d Pa', (elevation, pascal) => {
    const workbook = open()
    workbook.set('Basis', 'Site elevation', String(elevation))
    expect(Math.abs(workbook.si('Basis', 'Atmospheric pressure of the site') / pascal - 1)).toBeLessThan(5e-4)
  })

  it.each([[86, 169.19], [95, 195.8]])('condensing at %d °F: %d psia ahead of the feed valves', (condensing, psia) => {
    const workbook = open()
    workbook.set('Basis', 'Condensing temperature', String(condensing))
    expect(Number(workbook.value('Basis', 'Pressure ahead of the feed valves')) / psia).toBeCloseTo(1, 3)
  })

  it.each([['0', 8.77], ['5280', 3.48]])('a house suction of −40 °F at %s ft is %d inHg below the atmosphere', (elevation, vacuum) => {
    const basis = new Cells('basis', 'Basis').type('C22', '-40').type('D20', 'inHg vac')
    basis.type('C10', elevation)
    expect(basis.number('D22')).toBeCloseTo(vacuum, 1)
  })
})

describe('checks that fail as they should', () => {
  it.each([
    ['Liquid at the feed valves', '95', 'Liquid fed is not warmer than condensing'],
    ['Liquid at the feed valves', '10', 'Liquid fed is warmer than the warmest suction'],
    ['Site elevation', '40000', 'Site within the standard atmosphere'],
    ['Margin on the loads', '-5', 'Margin on the loads is not negative'],
    ['Velocity taken by (K, droplet or table)', 'guess', 'Separation method is one of the three'],
    ['Drag law (Haider, Clift, Cheng)', 'Stokes', 'Drag law is one that serves'],
    ['Share of the velocity allowed for unsteady flow', '110', 'Velocity share is not above 1'],
    ['Most of a vessel filled at the high-level cut-out', '100', 'Cut-out leaves room above it'],
    ['Heads (flat, 2:1, hemi, dished 6%, dished 10%)', 'round', 'Kind of heads is known'],
    ['Design pressure of the drums', '150', 'Design pressure above that of condensing'],
  ])('%s %s: %s', (label, value, check) => {
    const workbook = open()
    expect(workbook.check('Basis', check)?.met).toBe(true)
    workbook.set('Basis', label, value)
    expect(workbook.check('Basis', check)?.met).toBe(false)
  })

  it('suction levels out of order, and a level without its temperature or its name', () => {
    const [ordered, complete] = ['C53', 'C54']
    const basis = () => new Cells('basis', 'Basis')
    expect(basis().type('C21', '-45').value(ordered)).toBe(false)
    expect(basis().type('B23', 'Blast').value(complete)).toBe(false)
    expect(basis().type('C23', '-50').value(complete)).toBe(false)
    // One too few and one too many do not make up for each other.
    expect(basis().type('C22', '').type('C23', '-50').value(complete)).toBe(false)
    const three = basis().type('B23', 'Blast').type('C23', '-50')
    expect([three.value(ordered), three.value(complete)]).toEqual([true, true])
  })

  it('the margin between liquid and condensing is said in degrees', () => {
    expect(open().check('Basis', 'Liquid fed is not warmer than condensing')).toMatchObject({ met: true, words: 'met, 5 Δ°F to spare' })
  })
})

describe('codes in force', () => {
  it('counts the editions filled in, and lines inserted above the last', () => {
    const codes = new Cells('basis', 'Codes')
    expect(codes.value('C6')).toBe('0 of 23 documents have their edition filled in')
    codes.type('D8', '2021, with local amendments')
    expect(codes.value('C6')).toBe('1 of 23 documents have their edition filled in')
  })

  it('says of each line how sure it is', () => {
    for (const row of readTemplate(TEMPLATE).sheets[1]?.rows ?? []) {
      if (row?.[1]?.role === 'input') expect(row[4]?.content, String(row[1].content)).toMatch(/memory|Confirmed|confirmed|Secondary|Adopted/)
    }
  })
})

it.each(['US', 'SI'] as const)('shows no error and meets its checks in %s units', (system) => {
  const workbook = readTemplate(TEMPLATE)
  const graph = new Graph(applyEdits(workbook, restate(workbook, system)).workbook)
  expect(graph.errors()).toEqual([])
  expect(graph.states().map(({ notMet }) => notMet)).toEqual([0, 0, 0])
  expect(graph.states()[0]?.checks).toBe(12)
})

it('draws the suction levels on the saturation curve', () => {
  const workbook = readTemplate(TEMPLATE)
  const [figure] = workbook.figures
  const drawing = figure && drawFigure(figure, new Graph(workbook), 640)
  expect(drawing).toMatchObject({ remarks: [], description: expect.stringContaining('High') })
})

it('gives the same quantities in SI units', () => expectRestated('basis'))

it('gives every name that the other templates read', () => {
  expect([...readTemplate(TEMPLATE).names.keys()].toSorted()).toEqual([
    'condensing_temperature', 'design_pressure', 'drag_law', 'droplet_diameter', 'feed_hold', 'high_cutout_fill', 'liquid_pressure', 'liquid_temperature',
    'load_margin', 'project_name', 'regulator_minimum_drop', 'separation_distance', 'separation_factor', 'separation_method', 'site_elevation', 'site_pressure',
    'suction_line_penalty', 'suction_names', 'suction_temperature_unit', 'suction_temperatures', 'thrown_back_share', 'velocity_share', 'vessel_heads',
  ])
})

it('says where every practice value comes from', () => {
  for (const row of readTemplate(TEMPLATE).sheets[0]?.rows ?? []) {
    if (row?.[1]?.role === 'label' && typeof row[2]?.content === 'number') expect(row[5]?.content, String(row[1].content)).toBeTruthy()
  }
})
