import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { fillFrom } from '../../src/workbook/fill.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { restate } from '../../src/workbook/restate.ts'
import { expectRestated } from './cells.ts'
import { OpenWorkbook, readTemplate } from './open-template.ts'

const TEMPLATE = 'templates/vessel-sizing.lowside.json'
const open = () => new OpenWorkbook(readTemplate(TEMPLATE))

const DRUM = 'Drum 1'
const DRUMS = Array.from({ length: 8 }, (_, index) => `Drum ${index + 1}`)

/** Values of the first drum, which the detail sheets show, by the headings of the sheet Drums. */
function setDrum(workbook: OpenWorkbook, values: Readonly<Record<string, string | number>>): void {
  for (const [heading, value] of Object.entries(values)) workbook.setIn('Drums', DRUM, heading, String(value))
}

/** Without the template's own allowances, as the examples are computed. */
function bare(): OpenWorkbook {
  const workbook = open()
  workbook.set('Basis', 'Margin on the load', '0')
  workbook.set('Basis', 'Share of the velocity allowed for unsteady flow', '100')
  return workbook
}

describe('vertical drum, worked examples: CoolProp 8.0.0 properties and Souders & Brown (1934), computed outside the project', () => {
  it.each([
    { load: 50, drum: 20, liquid: 95, K: 0.0549, kgPerS: 0.161563, m3PerS: 0.059577, mPerS: 0.84661, inches: 11.78, overLatent: 1.181 },
    { load: 30, drum: -40, liquid: 86, K: 0.0549, kgPerS: 0.098921, m3PerS: 0.1537, mPerS: 1.79646, inches: 12.99, overLatent: 1.303 },
    { load: 100, drum: 0, liquid: 95, K: 0.04, kgPerS: 0.327303, m3PerS: 0.186237, mPerS: 0.77537, inches: 21.77, overLatent: 1.23 },
    { load: 25, drum: 28, liquid: 95, K: 0.06, kgPerS: 0.080406, m3PerS: 0.02519, mPerS: 0.84856, inches: 7.65, overLatent: 1.161 },
  ])('$load TR at $drum °F, liquid at $liquid °F, K $K m/s: $inches in', ({ load, drum, liquid, K, kgPerS, m3PerS, mPerS, inches, overLatent }) => {
    const workbook = bare()
    setDrum(workbook, { Load: load, 'Drum temperature': drum, Position: 'vertical' })
    workbook.set('Basis', 'Temperature of the liquid fed', String(liquid))
    workbook.set('Basis', 'Velocity taken by (K, droplet or table)', 'K')
    workbook.set('Basis', 'Separation factor K', String(K), 'm/s')
    expect(workbook.siIn('Drums', DRUM, 'Liquid fed') / kgPerS).toBeCloseTo(1, 3)
    expect(workbook.siIn('Drums', DRUM, 'Vapour to separate') / m3PerS).toBeCloseTo(1, 3)
    expect(workbook.siIn('Drums', DRUM, 'Velocity allowed') / mPerS).toBeCloseTo(1, 3)
    expect(workbook.value('Vertical drum', 'Least inside diameter for the velocity')).toBeCloseTo(inches, 1)
    // Flash gas counts: by latent heat alone the drum would seem to carry 14 to 23 % less vapour.
    expect(workbook.si('Duty', 'Liquid fed = vapour leaving') / workbook.si('Duty', 'Evaporated in the coils')).toBeCloseTo(overLatent, 2)
  })
})

describe('horizontal drum, worked examples: full-height fall, Haider & Levenspiel (1989) by the library fluids, CoolProp 8.0.0 properties', () => {
  it.each([
    { inches: 36, level: 50, load: 50, drum: 20, liquid: 95, droplet: 200, areaM2: 0.32835, gas: 0.1814, fall: 0.5685, travelM: 0.1459 },
    { inches: 30, level: 40, load: 25, drum: -40, liquid: 86, droplet: 200, areaM2: 0.28569, gas: 0.4483, fall: 0.9319, travelM: 0.22 },
    { inches: 42, level: 35, load: 100, drum: 0, liquid: 95, droplet: 150, areaM2: 0.61503, gas: 0.3028, fall: 0.4707, travelM: 0.4461 },
  ])('$inches in, cut-out at $level % of the diameter, $load TR at $drum °F, $droplet µm: $travelM m of travel', (example) => {
    const workbook = bare()
    setDrum(workbook, { Load: example.load, 'Drum temperature': example.drum, Position: 'horizontal', 'Inside diameter': example.inches, 'High-level cut-out': example.level })
    workbook.set('Basis', 'Temperature of the liquid fed', String(example.liquid))
    workbook.set('Basis', 'Droplet that must fall', String(example.droplet))
    expect(workbook.siIn('Drums', DRUM, 'Section of the gas') / example.areaM2).toBeCloseTo(1, 3)
    expect(workbook.siIn('Drums', DRUM, 'Velocity there is') / example.gas).toBeCloseTo(1, 2)
    expect(workbook.siIn('Drums', DRUM, 'Velocity allowed') / example.fall).toBeCloseTo(1, 2)
    expect(workbook.siIn('Drums', DRUM, 'Travel wanted') / example.travelM).toBeCloseTo(1, 2)
    expect(workbook.si('Horizontal drum', 'Travel wanted') / example.travelM).toBeCloseTo(1, 2)
  })

  it('two inlets halve the flow through each end, and with it the travel (derived)', () => {
    const workbook = open()
    const one = workbook.siIn('Drums', DRUM, 'Travel wanted')
    setDrum(workbook, { 'Wet return inlets': 2 })
    expect(workbook.siIn('Drums', DRUM, 'Travel wanted') / one).toBeCloseTo(0.5, 9)
    expect(workbook.si('Horizontal drum', 'Travel wanted') / one).toBeCloseTo(0.5, 9)
  })
})

describe('volumes: TANK of the library fluids, computed outside the project', () => {
  const HEADS = 'Heads (flat, 2:1, hemi, dished 6%, dished 10%)'

  it.each([
    { heads: 'flat', m3: 0.747658 }, { heads: '2:1', m3: 0.818114 }, { heads: 'hemi', m3: 0.88857 }, { heads: 'dished 6%', m3: 0.790693 },
  ])('36 in × 10 ft lying, $heads heads, at 40 % of the diameter: $m3 m3', ({ heads, m3 }) => {
    const workbook = open()
    workbook.set('Basis', HEADS, heads)
    setDrum(workbook, { Position: 'horizontal', 'Inside diameter': 36, 'Tangent length': 10, 'Control level': 40 })
    expect(workbook.siIn('Drums', DRUM, 'At the control level') / m3).toBeCloseTo(1, 3)
    expect(workbook.si('Horizontal drum', 'Liquid at the control level') / m3).toBeCloseTo(1, 3)
  })

  it.each([
    { heads: 'flat', m3: 0.328346 }, { heads: '2:1', m3: 0.278306 }, { heads: 'hemi', m3: 0.228266 }, { heads: 'dished 6%', m3: 0.288591 },
  ])('36 in × 8 ft standing, $heads heads, at 0.5 m above the bottom: $m3 m3', ({ heads, m3 }) => {
    const workbook = open()
    workbook.set('Basis', HEADS, heads)
    setDrum(workbook, { Position: 'vertical', 'Inside diameter': 36, 'Tangent length': 8 })
    workbook.setUnitOver('Drums', DRUM, 'Control level', 'm')
    for (const drum of DRUMS) workbook.setIn('Drums', drum, 'Control level', '0.5')
    expect(workbook.graph.errors()).toEqual([])
    expect(workbook.siIn('Drums', DRUM, 'At the control level') / m3).toBeCloseTo(1, 3)
    expect(workbook.siIn('Drums', DRUM, 'Height of the control level')).toBeCloseTo(0.5, 9)
    expect(workbook.si('Vertical drum', 'Liquid at the control level') / m3).toBeCloseTo(1, 3)
  })

  it('36 in × 10 ft, 2:1 heads, level at 40 % of the diameter, 20 °F: 1 176.3 lb (with CoolProp 8.0.0)', () => {
    const workbook = open()
    setDrum(workbook, { Position: 'horizontal', 'Inside diameter': 36, 'Tangent length': 10, 'Control level': 40 })
    expect(Number(workbook.valueIn('Drums', DRUM, 'Ammonia at the control level')) / 1176.3).toBeCloseTo(1, 2)
    expect(Number(workbook.value('Horizontal drum', 'Ammonia held at the control level')) / 1176.3).toBeCloseTo(1, 2)
  })

  it('36 in × 10 ft, 2:1 heads: 80 % of the diameter is 86.11 % of the volume, and too full where 80 % is the most', () => {
    const workbook = open()
    setDrum(workbook, { Position: 'horizontal', 'Inside diameter': 36, 'Tangent length': 10, 'High-level cut-out': 80 })
    expect(workbook.valueIn('Drums', DRUM, 'Filled at the cut-out')).toBeCloseTo(86.11, 2)
    expect(workbook.checkIn('Drums', DRUM, 'Not too full')).toMatchObject({ met: false, words: 'not met by 6.11 %' })
    expect(workbook.value('Horizontal drum', 'Part of the drum filled at the high-level cut-out')).toBeCloseTo(86.11, 2)
    expect(workbook.valueIn('Drums', DRUM, 'All its checks')).toBe(false)
  })

  it('36 in × 10 ft, 2:1 heads: from 30 to 70 % of the diameter 1.105220 m3 are free for surge', () => {
    const workbook = open()
    setDrum(workbook, { Position: 'horizontal', 'Inside diameter': 36, 'Tangent length': 10, 'Control level': 30, 'High-level cut-out': 70 })
    expect(workbook.siIn('Drums', DRUM, 'Surge there is') / 1.10522).toBeCloseTo(1, 3)
    expect(workbook.si('Horizontal drum', 'Surge volume there is') / 1.10522).toBeCloseTo(1, 3)
  })
})

describe('the separation distance counts from the high-level cut-out (common practice)', () => {
  it.each(['vertical', 'horizontal'])('and the control level moves nothing of it, %s', (position) => {
    const workbook = open()
    setDrum(workbook, { Position: position, 'High-level cut-out': 60 })
    const before = workbook.siIn('Drums', DRUM, 'Distance there is')
    setDrum(workbook, { 'Control level': 25 })
    expect(workbook.siIn('Drums', DRUM, 'Distance there is')).toBe(before)
    setDrum(workbook, { 'High-level cut-out': 50 })
    const rise = workbook.siIn('Drums', DRUM, 'Distance there is') - before
    // 10 % of the inside height: 30 in lying; 10 ft and two heads of a quarter of the diameter standing.
    expect(rise / (0.1 * (position === 'vertical' ? 135 * 0.0254 : 30 * 0.0254))).toBeCloseTo(1, 6)
  })

  it('“highest” leaves the distance wanted exactly, or less than it where the fill allows no more', () => {
    const workbook = open()
    expect(workbook.siIn('Drums', 'Drum 2', 'Distance there is')).toBeCloseTo(24 * 0.0254, 9)
    workbook.set('Basis', 'Most of a vessel filled at the high-level cut-out', '50')
    expect(workbook.siIn('Drums', 'Drum 2', 'Distance there is')).toBeGreaterThan(30 * 0.0254)
    expect(workbook.valueIn('Drums', 'Drum 2', 'Filled at the cut-out')).toBeCloseTo(50, 6)
  })

  it('a cut-out too high fails its check and says by how much', () => {
    const workbook = open()
    setDrum(workbook, { Position: 'vertical', 'Inside diameter': 24, 'Tangent length': 8, 'High-level cut-out': 80 })
    expect(workbook.checkIn('Drums', DRUM, 'Distance')).toMatchObject({ met: false, words: expect.stringMatching(/^not met by [\d.]+ in \(/) })
    expect(workbook.check('Vertical drum', 'Separation distance')).toEqual(workbook.checkIn('Drums', DRUM, 'Distance'))
  })
})

/** What the detail sheets compute again: heading on Drums, sheet, label. */
const BOTH = [
  ['Load with margin', 'Duty', 'Load with margin'],
  ['Liquid fed', 'Duty', 'Liquid fed = vapour leaving'],
  ['Vapour to separate', 'Duty', 'Vapour flow to separate'],
  ['Surge wanted', 'Duty', 'Surge volume wanted above the control level'],
  ['Ballast wanted', 'Duty', 'Ballast volume wanted below the control level'],
] as const
const DETAIL = {
  Vertical: [['Velocity there is', 'Vapour velocity'], ['Distance there is', 'Separation distance there is'], ['Top of the gas space', 'Top tangent line'], ['Highest cut-out by the distance', 'Highest cut-out by the distance']],
  Horizontal: [
    ['Velocity there is', 'Vapour velocity over the high-level cut-out'], ['Distance there is', 'Gas space above the high-level cut-out'], ['Travel wanted', 'Travel wanted'],
    ['Travel there is', 'Travel there is'], ['Highest cut-out by the distance', 'Highest cut-out by the gas space'],
  ],
  either: [
    ['Velocity by the method', 'Velocity taken'], ['Velocity allowed', 'Velocity allowed'], ['Internal volume', 'Internal volume'], ['Highest cut-out by the fill', 'Highest cut-out by the fill'],
    ['Height of the cut-out', 'High-level cut-out'], ['Height of the low alarm', 'Low alarm'], ['At the cut-out', 'Liquid at the high-level cut-out'], ['At the control level', 'Liquid at the control level'],
    ['At the low alarm', 'Liquid at the low alarm'], ['Filled at the cut-out', 'Part of the drum filled at the high-level cut-out'], ['Surge there is', 'Surge volume there is'],
    ['Ballast there is', 'Ballast volume there is'], ['Ammonia at the control level', 'Ammonia held at the control level'],
  ],
} as const

describe('any of the eight drums in detail', () => {
  it.each(['K', 'droplet', 'table'])('agrees with its row on Drums, velocity by %s', (method) => {
    const workbook = open()
    workbook.set('Basis', 'Velocity taken by (K, droplet or table)', method)
    for (const drum of DRUMS) {
      workbook.set('Duty', 'Drum shown in detail', drum)
      const position = workbook.valueIn('Drums', drum, 'Position') === 'vertical' ? 'Vertical' : 'Horizontal'
      const sheet = `${position} drum`
      expect(workbook.value('Duty', `${sheet} shown, entered or sized`)).toBe('entered')
      const pairs = [...BOTH, ...[...DETAIL[position], ...DETAIL.either].map(([heading, label]) => [heading, sheet, label] as const)]
      for (const [heading, of, label] of pairs) {
        expect(workbook.si(of, label) / workbook.siIn('Drums', drum, heading), `${drum}: ${heading}`).toBeCloseTo(1, 9)
      }
    }
  })

  it.each(['US', 'SI'] as const)('is sized so that it meets all its checks, standing and lying, in %s units', (system) => {
    const template = readTemplate(TEMPLATE)
    const workbook = new OpenWorkbook(applyEdits(template, restate(template, system)).workbook)
    workbook.set('Duty', 'Diameter, length and levels (entered or sized)', 'sized')
    for (const drum of DRUMS) {
      workbook.set('Duty', 'Drum shown in detail', drum)
      expect(workbook.graph.errors(), drum).toEqual([])
      expect([workbook.value('Duty', 'Vertical drum, all its checks'), workbook.value('Duty', 'Horizontal drum, all its checks')], drum).toEqual([true, true])
    }
  })

  it('the size before the one sized would be too narrow for the vapour', () => {
    const workbook = open()
    workbook.set('Duty', 'Diameter, length and levels (entered or sized)', 'sized')
    const inches = Number(workbook.value('Vertical drum', 'Inside diameter sized'))
    const least = Number(workbook.value('Vertical drum', 'Least inside diameter for the velocity'))
    expect(inches).toBeGreaterThanOrEqual(least)
    expect([12, 16, 20, 24].findLast((size) => size < inches)).toBeLessThan(least)
  })

  it('a name that is not there is said so', () => {
    const workbook = open()
    workbook.set('Duty', 'Drum shown in detail', 'Drum 99')
    expect(workbook.value('Duty', 'Its row on Drums')).toBe('no drum of that name')
    expect(workbook.value('Duty', 'Vertical drum, all its checks')).toBe(false)
  })
})

describe('what an engineer expects when an input changes', () => {
  it('more load: a larger vertical drum, never a smaller one', () => {
    const workbook = open()
    const diameters = [20, 50, 80, 120, 200].map((load) => {
      setDrum(workbook, { Load: load })
      return Number(workbook.value('Vertical drum', 'Inside diameter sized'))
    })
    expect(diameters).toEqual(diameters.toSorted((one, other) => one - other))
    expect(diameters.at(-1)).toBeGreaterThan(diameters[0] ?? 0)
  })

  it('colder liquid: less flash gas, less vapour to separate, in every drum', () => {
    const workbook = open()
    const before = DRUMS.map((drum) => workbook.siIn('Drums', drum, 'Vapour to separate'))
    workbook.set('Basis', 'Temperature of the liquid fed', '60')
    DRUMS.forEach((drum, index) => expect(workbook.siIn('Drums', drum, 'Vapour to separate')).toBeLessThan(before[index] ?? 0))
  })

  it('larger coils fail the surge check of their own drum alone', () => {
    const workbook = open()
    setDrum(workbook, { 'Volume of its coils': 40 })
    expect(workbook.checkIn('Drums', DRUM, 'Surge volume')).toMatchObject({ met: false, words: expect.stringMatching(/^not met by [\d.]+ ft3/) })
    expect(DRUMS.map((drum) => workbook.valueIn('Drums', drum, 'All its checks'))).toEqual([false, ...Array.from({ length: 7 }, () => true)])
  })

  it('a drum too narrow for its vapour says by how many ft/min', () => {
    const workbook = open()
    setDrum(workbook, { Position: 'vertical', 'Inside diameter': 16, 'Tangent length': 12 })
    expect(workbook.checkIn('Drums', DRUM, 'Vapour slow enough')).toMatchObject({ met: false, words: expect.stringMatching(/^not met by [\d.]+ ft\/min/) })
    expect(workbook.value('Duty', 'Drum as entered, all its checks')).toBe(false)
  })

  it('an empty input leaves the drum’s checks not met, not a wrong number', () => {
    const workbook = open()
    for (const heading of ['Load', 'Drum temperature', 'Position', 'Inside diameter', 'Tangent length', 'Volume of its coils', 'Control level']) {
      const given = workbook.valueIn('Drums', 'Drum 2', heading)
      workbook.setIn('Drums', 'Drum 2', heading, '')
      expect(workbook.valueIn('Drums', 'Drum 2', 'All its checks'), heading).toBe(false)
      expect(workbook.valueIn('Drums', 'Drum 3', 'All its checks'), heading).toBe(true)
      workbook.setIn('Drums', 'Drum 2', heading, String(given))
      expect(workbook.valueIn('Drums', 'Drum 2', 'All its checks'), heading).toBe(true)
    }
  })

  it('the practice table gives its own value at its own points (from memory), and less in between distances than at the greater one', () => {
    const workbook = open()
    setDrum(workbook, { 'Drum temperature': -10 })
    expect(workbook.value('Vertical drum', 'By table')).toBeCloseTo(253, 6)
    workbook.set('Basis', 'Separation distance', '30')
    expect(Number(workbook.value('Vertical drum', 'By table'))).toBeGreaterThan(253)
    expect(Number(workbook.value('Vertical drum', 'By table'))).toBeLessThan(285)
    workbook.set('Basis', 'Separation distance', '8')
    expect(workbook.value('Vertical drum', 'By table')).toBe('outside the table')
    expect(workbook.valueIn('Drums', 'Drum 2', 'K by the table')).toBe('outside the table')
  })
})

describe('nozzles', () => {
  // 50 TR at 20 °F evaporate 50 × 0.3620 lb/min; liquid 40.429 lb/ft3, vapour 5.9068 ft3/lb (CoolProp 8.0.0); the rest by hand.
  const evaporated = 50 * 0.362
  const cfmSi = 4.719474e-4 // NIST SP 811

  it('carry what circulates: four times what evaporates down the leg, three times that back as liquid with the vapour', () => {
    const workbook = bare()
    setDrum(workbook, { Load: 50, 'Drum temperature': 20 })
    expect(workbook.siIn('Nozzles', 'Liquid leg', 'Flow') / cfmSi / ((4 * evaporated) / 40.429)).toBeCloseTo(1, 2.5)
    expect(workbook.siIn('Nozzles', 'Wet return, each', 'Flow') / cfmSi / (evaporated * 5.9068 + (3 * evaporated) / 40.429)).toBeCloseTo(1, 2.5)
    // Fed 0.4274 lb/(min TR), of which 0.1530 flashes.
    expect(workbook.siIn('Nozzles', 'Feed', 'Flow') / cfmSi / (50 * 0.4274 * (0.153 * 5.9068 + 0.847 / 40.429))).toBeCloseTo(1, 2.5)
  })

  it('the liquid leg takes 2-1/2 in at 60 ft/min: 2 in, 2.067 in wide in Schedule 40 (ASME B36.10M), would run too fast', () => {
    const workbook = bare()
    setDrum(workbook, { Load: 50, 'Drum temperature': 20 })
    expect(workbook.valueIn('Nozzles', 'Liquid leg', 'Size')).toBe('2-1/2')
    workbook.setIn('Nozzles', 'Liquid leg', 'Size taken (next, or a size)', '2')
    const byHand = (4 * evaporated) / 40.429 / ((Math.PI / 4) * (2.067 / 12) ** 2)
    expect(Number(workbook.valueIn('Nozzles', 'Liquid leg', 'Velocity there is')) / byHand).toBeCloseTo(1, 2.5)
    expect(workbook.checkIn('Nozzles', 'Liquid leg', 'Slow enough')).toMatchObject({ met: false, words: expect.stringMatching(/^not met by [\d.]+ ft\/min/) })
  })

  it('the oil leg holds π/4 D² L: 18 in of 4 in Schedule 40, 0.992 gal by hand', () => {
    const workbook = open()
    expect(workbook.value('Nozzles', 'Oil that it holds')).toBeCloseTo(((Math.PI / 4) * 4.026 ** 2 * 18) / 231, 6)
    workbook.set('Nozzles', 'Oil between two drains', '1.5')
    expect(workbook.value('Nozzles', 'Oil stays below the take-off')).toBe(false)
  })
})

it('a wire-mesh pad allows K 0.34087 ft/s at 48.18 psia (0.430 − 0.023 ln p, Svrcek & Monnery 1993), and a smaller drum', () => {
  const workbook = open()
  setDrum(workbook, { 'Drum temperature': 20 })
  expect(workbook.value('Vertical drum', 'Separation factor K with a pad')).toBeCloseTo(0.430 - 0.023 * Math.log(48.181), 5)
  expect(workbook.si('Vertical drum', 'Least inside diameter with a pad')).toBeLessThan(workbook.si('Vertical drum', 'Least inside diameter for the velocity'))
})

describe('the table of drums', () => {
  it('takes inserted rows: filled down they are named, counted and shown in detail', () => {
    const template = readTemplate(TEMPLATE)
    const closing = template.sheets.find(({ name }) => name === 'Drums')?.rows.findIndex((row) => row?.[1]?.content === 'Insert rows above this line and fill down') ?? -1
    const longer = applyEdits(template, insertLines(template, 'Drums', { axis: 'rows', at: closing, count: 1 })).workbook
    const source = { top: closing - 1, bottom: closing - 1, left: 0, right: 60 }
    const workbook = new OpenWorkbook(applyEdits(longer, fillFrom(longer, 'Drums', source, { ...source, bottom: closing })).workbook)
    workbook.set('Duty', 'Drum shown in detail', 'Drum 8')
    expect(workbook.value('Duty', 'Its row on Drums')).toBe('more than one drum of that name')
    workbook.graph.apply(setEntry(workbook.graph.workbook, 'Drums', { row: closing, column: 1 }, 'Drum 9'))
    workbook.setIn('Drums', 'Drum 9', 'Load', '12')
    workbook.set('Duty', 'Drum shown in detail', 'Drum 9')
    expect(workbook.value('Duty', 'Its row on Drums')).toBe(9)
    expect(workbook.si('Duty', 'Refrigeration load on the drum') / (12 * 3516.853)).toBeCloseTo(1, 6)
    expect(workbook.graph.errors()).toEqual([])
  })

  it('gives the names that other sheets read', () => {
    const workbook = open()
    const { graph } = workbook
    for (const name of ['drum_names', 'drum_diameters', 'drum_diameters_unit', 'drum_lengths', 'drum_lengths_unit', 'drum_flows', 'drum_flows_unit']) {
      expect(graph.workbook.names.get(name), name).toMatch(/^Drums!/)
    }
    expect(graph.evaluate('=INDEX(drum_names,8)', 'Basis')).toBe('Drum 8')
    expect(graph.evaluate('=INDEX(drum_diameters,1)&" "&drum_diameters_unit', 'Basis')).toBe('30 in')
    expect(graph.evaluate('=ROUND(SUM(drum_flows),6)', 'Basis')).toBeCloseTo(DRUMS.reduce((sum, drum) => sum + Number(workbook.valueIn('Drums', drum, 'Liquid fed')), 0), 5)
  })
})

it('the template gives the same quantities in SI units', () => expectRestated('vessel-sizing'))

describe.each([
  { path: TEMPLATE, sheets: ['Basis', 'Duty', 'Vertical drum', 'Horizontal drum', 'Nozzles', 'Practice values'] },
])('$path', ({ path, sheets }) => {
  it.each(['US', 'SI'] as const)('shows no error and meets its checks in %s units', (system) => {
    const workbook = readTemplate(path)
    const graph = new Graph(applyEdits(workbook, restate(workbook, system)).workbook)
    expect(graph.errors()).toEqual([])
    expect(graph.states().map(({ sheet, notMet }) => ({ sheet, notMet }))).toEqual(workbook.sheets.map(({ name }) => ({ sheet: name, notMet: 0 })))
  })

  it('says where every practice value comes from', () => {
    for (const sheet of readTemplate(path).sheets.filter(({ name }) => sheets.includes(name))) {
      for (const row of sheet.rows) {
        const [, label, value, unit, method, source] = row ?? []
        if (label?.role !== 'label' || value?.role !== 'input' || typeof value.content !== 'number') continue
        expect(`${method?.content ?? ''}${source?.content ?? ''}`, `${sheet.name}: ${String(label.content)}`).not.toBe('')
        expect(unit?.content, `${sheet.name}: ${String(label.content)}`).not.toBe('')
      }
    }
  })
})

it('no cell of the template shows an error for loads and temperatures that plants have', () => {
  const workbook = open()
  for (const [load, drum, liquid] of [[5, -50, 60], [15, -40, 95], [40, 0, 86], [200, 40, 100]] as const) {
    setDrum(workbook, { Load: load, 'Drum temperature': drum })
    workbook.set('Basis', 'Temperature of the liquid fed', String(liquid))
    expect(workbook.graph.errors(), `${load} TR at ${drum} °F`).toEqual([])
  }
})
