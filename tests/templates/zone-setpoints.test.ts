import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { drawFigure } from '../../src/figures/draw-figure.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { fillFrom } from '../../src/workbook/fill.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { restate } from '../../src/workbook/restate.ts'
import { Cells, expectRestated } from './cells.ts'
import { OpenWorkbook, readTemplate } from './open-template.ts'

const TEMPLATE = 'templates/zone-setpoints.lowside.json'
const ZONE = 'Cooler 1'
const TD = 10

/** The template with one zone without head and loss, whose coil stands at that temperature, so that set point and drum pressure are one. */
function coilAt(coilF: number, elevationFt = 0): OpenWorkbook {
  const workbook = new OpenWorkbook(readTemplate(TEMPLATE))
  workbook.set('Basis', 'Site elevation', String(elevationFt))
  for (const [heading, value] of [['Room', coilF + TD], ['TD: air on less coil', TD], ['Drum level above coil', 0], ['Loss to the regulator', 0]] as const) {
    workbook.setIn('Zones', ZONE, heading, String(value))
  }
  return workbook
}

const number = (workbook: OpenWorkbook, heading: string, zone = ZONE): number => Number(workbook.valueIn('Zones', zone, heading))

describe('worked examples: saturation pressures of the equations of state by CoolProp 8.0.0, computed outside the project', () => {
  it('room 34 °F, TD 10 °F: coil 24 °F, 52.56 psia, set point 37.87 psig at sea level', () => {
    const workbook = coilAt(24)
    expect(number(workbook, 'Coil')).toBeCloseTo(24, 9)
    expect(number(workbook, 'Drum pressure')).toBeCloseTo(52.56, 1)
    expect(Math.abs(number(workbook, 'Regulator set point') - 37.87)).toBeLessThan(0.06)
  })

  it.each([[0, 0, 15.69], [0, 5280, 18.29], [-20, 3000, 5.1], [28, 5000, 45.02]])('%d °F at %d ft: %d psig at the gauge', (coil, elevation, psig) => {
    const workbook = coilAt(coil, elevation)
    expect(Math.abs(number(workbook, 'Regulator set point') - psig)).toBeLessThan(0.06)
    expect(workbook.valueIn('Zones', ZONE, 'Set point in vacuum')).toBe('')
  })

  it.each([[-40, 0, 8.77], [-40, 5280, 3.48], [-50, 0, 14.35], [-60, 0, 18.65]])('%d °F at %d ft: %d inHg of vacuum', (coil, elevation, vacuum) => {
    const workbook = coilAt(coil, elevation)
    expect(number(workbook, 'Set point in vacuum')).toBeCloseTo(vacuum, 1)
    expect(number(workbook, 'Regulator set point')).toBeLessThan(0)
  })

  it.each([[-40, 3.11], [-20, 2], [0, 1.34], [20, 0.94], [28, 0.82], [40, 0.68]])('1 psi too high at %d °F: %d °F warmer', (coil, warmer) => {
    expect(Math.abs(number(coilAt(coil), 'Warmer if the regulator is off') - warmer)).toBeLessThan(0.01)
  })

  it.each([[-40, 7.04], [-20, 4.28], [0, 2.8], [20, 1.92], [28, 1.67], [40, 1.38]])('2 psi too low at %d °F: %d °F colder', (coil, colder) => {
    const workbook = coilAt(coil)
    workbook.set('Zones', 'Regulator off by', '-2')
    expect(Math.abs(number(workbook, 'Warmer if the regulator is off') + colder)).toBeLessThan(0.01)
  })

  it.each([[-40, 0.3093], [0, 0.7349], [20, 1.0581], [28, 1.2113], [40, 1.4688]])('at %d °F a degree is %d psi', (coil, psiPerF) => {
    expect(number(coilAt(coil), 'Pressure per degree') / psiPerF).toBeCloseTo(1, 2)
  })

  it.each([[-40, 10, 8.699], [-28, 5, 3.467], [20, 5, 1.312], [28, 20, 4.43]])('drum at %d °F, %d ft of liquid: the coil is %d °F warmer', (drum, height, rise) => {
    const workbook = coilAt(drum + rise)
    workbook.setIn('Zones', ZONE, 'Drum level above coil', String(height))
    expect(Math.abs(number(workbook, 'Drum') - drum)).toBeLessThan(0.015 * rise)
  })

  it('set point 24 °F against 20 °F at the regulator’s outlet: 52.56 − 48.18 = 4.38 psi; the loss of the dry line counts, 19 °F and 1 °F being 20 °F', () => {
    const workbook = coilAt(24)
    workbook.graph.apply([{ kind: 'cells', sheet: 'Basis', cells: [{ row: 10, column: 2, cell: { content: 19, role: 'input' } }] }])
    expect(number(workbook, 'House suction')).toBe(19)
    expect(number(workbook, 'At regulator outlet')).toBeCloseTo(20, 9)
    expect(Math.abs(number(workbook, 'Drop there is') - 4.38)).toBeLessThan(0.02)
  })
})

describe('rules of the trade', () => {
  const open = () => new OpenWorkbook(readTemplate(TEMPLATE))

  it('a zone cannot be colder than house suction, line and regulator allow: it says so with what is short', () => {
    const workbook = open()
    workbook.setIn('Zones', ZONE, 'Room', '29')
    const short = number(workbook, 'Drop wanted') - number(workbook, 'Drop there is')
    expect(short).toBeGreaterThan(0)
    expect(workbook.checkIn('Zones', ZONE, 'Served?')).toMatchObject({ met: false, words: expect.stringMatching(/^not met by .* psi/) })
    expect(workbook.valueIn('Zones', ZONE, 'In words')).toMatch(new RegExp(`^cannot: ${Number(short.toFixed(2))} psi short; no room colder than .* °F$`))
    expect(number(workbook, 'Coldest room there can be')).toBeGreaterThan(29)
  })

  it('the coldest room there can be is served with nothing to spare', () => {
    const workbook = open()
    const coldest = number(workbook, 'Coldest room there can be')
    workbook.setIn('Zones', ZONE, 'Room', String(coldest))
    expect(number(workbook, 'Drop there is')).toBeCloseTo(number(workbook, 'Drop wanted'), 6)
    workbook.setIn('Zones', ZONE, 'Room', String(coldest - 0.1))
    expect(workbook.checkIn('Zones', ZONE, 'Served?')?.met).toBe(false)
  })

  it('house suction at the warmest that serves leaves the drop wanted, and raising it by more fails that zone alone', () => {
    const zones = new Cells('zone-setpoints', 'Zones')
    const [rise, ofLevel] = [zones.number('Y8'), zones.number('F23')]
    expect(ofLevel).toBe(rise)
    zones.type('C4', String(rise - 0.01))
    expect([zones.value('Z8'), zones.value('I23')]).toEqual(['served', 0])
    zones.type('C4', String(rise + 0.2))
    expect([zones.value('Z8'), zones.value('Z9'), zones.value('I23')]).toEqual(['fails: 0.2 Δ°F too warm', 'served', 1])
    // A question, not a change: the zones stand as they are.
    expect(zones.value('T8')).toBe(true)
    zones.type('C11', String(zones.number('X8')), 'Basis')
    expect(zones.number('R8')).toBeCloseTo(zones.number('S8'), 6)
  })

  it('two rooms a few degrees apart stand on one suction, each at its own set point; the colder governs', () => {
    const zones = new Cells('zone-setpoints', 'Zones')
    expect([zones.value('B8'), zones.value('B9'), zones.value('F8'), zones.value('F9')]).toEqual(['Cooler 1', 'Cooler 2', 'High', 'High'])
    expect(zones.number('D9') - zones.number('D8')).toBeLessThan(5)
    expect(zones.number('L9')).toBeGreaterThan(zones.number('L8'))
    expect([zones.value('T8'), zones.value('T9'), zones.value('G23'), zones.value('H23')]).toEqual([true, true, 'Cooler 1', 0])
    zones.type('D9', '32')
    expect(zones.value('G23')).toBe('Cooler 2')
  })

  it('the warmest suction of a level is that of its coldest zone, and falls with it', () => {
    const zones = new Cells('zone-setpoints', 'Zones')
    const high = [8, 9, 10, 11, 12, 13].map((row) => zones.number(`X${row}`))
    expect(zones.number('E23')).toBe(Math.min(...high))
    const before = zones.number('E24')
    zones.type('D15', '-17.5')
    expect(zones.number('E24')).toBeLessThan(before)
  })

  it('higher up, the gauge reads more for the same drum, and nothing else changes', () => {
    const [low, high] = [open(), open()]
    high.set('Basis', 'Site elevation', '2900')
    expect(number(high, 'Regulator set point') - number(low, 'Regulator set point')).toBeCloseTo(14.696 - 13.22, 1)
    for (const heading of ['Drum', 'Drum pressure', 'Drop there is', 'Warmest house suction that serves']) expect(number(high, heading)).toBeCloseTo(number(low, heading), 9)
  })

  it('a warmer house suction takes drop from every zone of its level and none of the other', () => {
    const zones = new Cells('zone-setpoints', 'Zones')
    const before = [8, 14].map((row) => zones.number(`R${row}`))
    zones.type('C11', '16', 'Basis')
    expect(zones.number('R8')).toBeLessThan(before[0] ?? 0)
    expect(zones.number('R14')).toBe(before[1])
  })

  it('totals the load by level', () => {
    const zones = new Cells('zone-setpoints', 'Zones')
    // By hand: 55 + 50 + 30 + 70 + 45 + 28 and 55 + 60.
    expect([zones.number('C23'), zones.number('C24'), zones.value('C25')]).toEqual([278, 115, ''])
  })
})

describe('what is not filled in', () => {
  it.each([['Room', 'D8'], ['TD: air on less coil', 'E8'], ['Drum level above coil', 'G8'], ['Loss to the regulator', 'H8']])('no %s: not served, in words, without an error', (_, address) => {
    const zones = new Cells('zone-setpoints', 'Zones').type(address, '')
    expect([zones.value('T8'), zones.value('U8'), zones.value('X8')]).toEqual([false, 'fill in the row', '–'])
    expect(zones.graph.errors()).toEqual([])
  })

  it('a suction level that the basis does not have, and a drum below its coil', () => {
    const zones = new Cells('zone-setpoints', 'Zones').type('F8', 'Middle').type('G9', '-2')
    expect([zones.value('P8'), zones.value('T8'), zones.value('J9'), zones.value('T9')]).toEqual(['no such level', false, 'below coil', false])
    expect(zones.graph.errors()).toEqual([])
  })
})

it('a row inserted above the closing line and filled down counts everywhere', () => {
  const before = readTemplate(TEMPLATE)
  const longer = applyEdits(before, insertLines(before, 'Zones', { axis: 'rows', at: 15, count: 1 })).workbook
  const filled = applyEdits(longer, fillFrom(longer, 'Zones', { top: 14, bottom: 14, left: 1, right: 26 }, { top: 14, bottom: 15, left: 1, right: 26 })).workbook
  const zones = new Cells('zone-setpoints', 'Zones', filled).type('B16', 'Second blast freezer').type('D16', '-17.4')
  expect([zones.number('C25'), zones.value('G25')]).toEqual([175, 'Second blast freezer'])
  expect(filled.names.get('zone_loads')).toBe('Zones!$C$8:$C$17')
})

it.each(['US', 'SI'] as const)('shows no error and meets its checks in %s units', (system) => {
  const workbook = readTemplate(TEMPLATE)
  const graph = new Graph(applyEdits(workbook, restate(workbook, system)).workbook)
  expect(graph.errors()).toEqual([])
  expect(graph.states().map(({ checks, notMet }) => [checks, notMet])).toEqual([[0, 0], [8, 0], [0, 0]])
})

describe('figures', () => {
  const drawn = () => {
    const workbook = readTemplate(TEMPLATE)
    return workbook.figures.map((figure) => drawFigure(figure, new Graph(workbook), 640))
  }

  it('the ladder and the set points show every zone and nothing else', () => {
    for (const drawing of drawn()) {
      expect('faults' in drawing ? drawing.faults : drawing.remarks).toEqual([])
      expect('table' in drawing && drawing.table.rows.map(([name]) => name)).toEqual(['Cooler 1', 'Cooler 2', 'Dock', 'Process hall', 'Packing', 'Store', 'Freezer', 'Blast freezer'])
    }
    expect(drawn()).toHaveLength(2)
  })
})

it('gives the same quantities in SI units', () => expectRestated('zone-setpoints'))

it('gives the names that the next sheets read', () => {
  const { names } = readTemplate(TEMPLATE)
  for (const name of ['zone_names', 'zone_loads', 'zone_loads_unit', 'zone_levels', 'zone_drum_temperatures', 'zone_drum_temperatures_unit', 'zone_set_points', 'zone_set_points_unit']) {
    expect(names.get(name), name).toMatch(/^Zones!\$[A-Z]+\$(7|8:\$[A-Z]+\$16)$/)
  }
})
