import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { restate } from '../../src/workbook/restate.ts'
import { OpenWorkbook, readTemplate } from './open-template.ts'

const TEMPLATE = 'templates/vessel-sizing.lowside.json'
const open = () => new OpenWorkbook(readTemplate(TEMPLATE))

/** Without the template's own allowances, as the examples are computed. */
function bare(): OpenWorkbook {
  const workbook = open()
  workbook.set('Duty', 'Margin on the load', '0')
  workbook.set('Duty', 'Share of the velocity allowed for unsteady flow', '100')
  return workbook
}

describe('vertical drum, worked examples: CoolProp 8.0.0 properties and Souders & Brown (1934), computed outside the project', () => {
  it.each([
    { load: 50, drum: 20, liquid: 95, K: 0.0549, kgPerS: 0.161563, m3PerS: 0.059577, inches: 11.78 },
    { load: 30, drum: -40, liquid: 86, K: 0.0549, kgPerS: 0.098921, m3PerS: 0.1537, inches: 12.99 },
    { load: 100, drum: 0, liquid: 95, K: 0.04, kgPerS: 0.327303, m3PerS: 0.186237, inches: 21.77 },
    { load: 25, drum: 28, liquid: 95, K: 0.06, kgPerS: 0.080406, m3PerS: 0.02519, inches: 7.65 },
  ])('$load TR at $drum °F, liquid at $liquid °F, K $K m/s: $inches in', ({ load, drum, liquid, K, kgPerS, m3PerS, inches }) => {
    const workbook = bare()
    workbook.set('Duty', 'Refrigeration load on the drum', String(load))
    workbook.set('Duty', 'Drum temperature (saturation)', String(drum))
    workbook.set('Duty', 'Temperature of the liquid fed', String(liquid))
    workbook.set('Duty', 'Velocity taken by (K, droplet or table)', 'K')
    workbook.set('Duty', 'Separation factor K', String(K), 'm/s')
    expect(workbook.si('Duty', 'Liquid fed = vapour leaving') / kgPerS).toBeCloseTo(1, 3)
    expect(workbook.si('Duty', 'Vapour flow to separate') / m3PerS).toBeCloseTo(1, 3)
    expect(workbook.value('Vertical drum', 'Least inside diameter for the velocity')).toBeCloseTo(inches, 1)
  })
})

describe('horizontal drum, worked example: full-height fall, Haider & Levenspiel (1989) by the library fluids, CoolProp 8.0.0 properties', () => {
  it('36 in, half full, 50 TR at 20 °F, 200 µm: 0.1459 m of travel', () => {
    const workbook = bare()
    workbook.set('Duty', 'Refrigeration load on the drum', '50')
    workbook.set('Duty', 'Droplet that must fall', '200')
    workbook.set('Horizontal drum', 'Own inside diameter (0: first size that will do)', '36')
    workbook.set('Horizontal drum', 'High-level cut-out', '50')
    expect(workbook.si('Horizontal drum', 'Travel needed') / 0.1459).toBeCloseTo(1, 2)
  })

  it('36 in × 10 ft, 2:1 heads, level at 40 % of the diameter, 20 °F: 1 176.3 lb (fluids TANK and CoolProp 8.0.0)', () => {
    const workbook = bare()
    workbook.set('Horizontal drum', 'Own inside diameter (0: first size that will do)', '36')
    workbook.set('Horizontal drum', 'Tangent length over diameter', String(10 / 3))
    workbook.set('Horizontal drum', 'Control level (operating float)', '40')
    expect(Number(workbook.value('Horizontal drum', 'Ammonia held at the control level')) / 1176.3).toBeCloseTo(1, 3)
  })
})

describe('what an engineer expects when an input changes', () => {
  it('more load: a larger vertical drum, never a smaller one', () => {
    const workbook = open()
    const diameters = [20, 50, 80, 120, 200].map((load) => {
      workbook.set('Duty', 'Refrigeration load on the drum', String(load))
      return Number(workbook.value('Vertical drum', 'Inside diameter'))
    })
    expect(diameters).toEqual(diameters.toSorted((one, other) => one - other))
    expect(diameters.at(-1)).toBeGreaterThan(diameters[0] ?? 0)
  })

  it('flash gas counts: latent heat alone would give 15 to 25 % less vapour here', () => {
    const workbook = open()
    const ratio = workbook.si('Duty', 'Evaporated in the coils') / workbook.si('Duty', 'Liquid fed = vapour leaving')
    expect(ratio).toBeGreaterThan(0.75)
    expect(ratio).toBeLessThan(0.87)
  })

  it('the practice table gives its own value at its own points, and less in between heights than at the greater one', () => {
    const workbook = open()
    workbook.set('Duty', 'Drum temperature (saturation)', '-10')
    expect(workbook.value('Vertical drum', 'By table')).toBeCloseTo(253, 6)
    workbook.set('Vertical drum', 'Separation distance wanted', '30')
    expect(Number(workbook.value('Vertical drum', 'By table'))).toBeGreaterThan(253)
    expect(Number(workbook.value('Vertical drum', 'By table'))).toBeLessThan(285)
    workbook.set('Vertical drum', 'Separation distance wanted', '8')
    expect(workbook.value('Vertical drum', 'By table')).toBe('outside the table')
  })

  it('a drum too short for its separation distance fails its check and says by how much', () => {
    const workbook = open()
    workbook.set('Vertical drum', 'Own inside diameter (0: next size of the list)', '20')
    workbook.set('Vertical drum', 'Tangent length', '7.5')
    const check = workbook.graph.workbook.sheets[1]?.rows.findIndex((row) => row?.[2]?.role === 'check' && row[1]?.content === 'Separation distance there is') ?? -1
    expect(workbook.graph.check('Vertical drum', check, 2)).toMatchObject({ met: false, words: expect.stringMatching(/^not met by .* in/) })
    expect(workbook.si('Vertical drum', 'Least tangent length')).toBeGreaterThan(7.5 * 0.3048)
  })
})

describe.each([TEMPLATE, 'demo-data/surge-drum.lowside.json'])('%s', (path) => {
  it.each(['US', 'SI'] as const)('shows no error and meets its checks in %s units', (system) => {
    const workbook = readTemplate(path)
    const graph = new Graph(applyEdits(workbook, restate(workbook, system)).workbook)
    expect(graph.errors()).toEqual([])
    expect(graph.states().map(({ sheet, notMet }) => ({ sheet, notMet }))).toEqual(workbook.sheets.map(({ name }) => ({ sheet: name, notMet: 0 })))
  })

  it('gives the same quantities in SI units', () => {
    const us = new OpenWorkbook(readTemplate(path))
    const si = new OpenWorkbook(applyEdits(us.graph.workbook, restate(us.graph.workbook, 'SI')).workbook)
    let compared = 0
    for (const sheet of us.graph.workbook.sheets) {
      for (const row of sheet.rows) {
        const label = row?.[1]?.content
        if (row?.[2]?.role !== 'result' || row[3]?.role !== 'unit' || typeof label !== 'string') continue
        const [inUs, inSi] = [us.si(sheet.name, label), si.si(sheet.name, label)]
        expect(Math.abs(inSi - inUs), `${sheet.name}: ${label}`).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(inUs), 1e-3))
        compared++
      }
    }
    expect(compared).toBeGreaterThan(50)
  })

  it('says where every practice value comes from', () => {
    for (const sheet of readTemplate(path).sheets.filter(({ name }) => ['Duty', 'Vertical drum', 'Horizontal drum'].includes(name))) {
      for (const row of sheet.rows) {
        const [, label, value, unit, method, source] = row ?? []
        if (value?.role === 'input' && typeof value.content === 'number') expect(`${method?.content ?? ''}${source?.content ?? ''}`, String(label?.content)).not.toBe('')
        if (unit?.role === 'unit') expect(unit.content).not.toBe('')
      }
    }
  })
})

it('no cell of the template shows an error for loads and temperatures that plants have', () => {
  const workbook = open()
  for (const [load, drum, liquid] of [[5, -50, 60], [15, -40, 95], [40, 0, 86], [200, 40, 100]] as const) {
    workbook.set('Duty', 'Refrigeration load on the drum', String(load))
    workbook.set('Duty', 'Drum temperature (saturation)', String(drum))
    workbook.set('Duty', 'Temperature of the liquid fed', String(liquid))
    workbook.set('Vertical drum', 'Tangent length', '12')
    expect(workbook.graph.errors(), `${load} TR at ${drum} °F`).toEqual([])
  }
})
