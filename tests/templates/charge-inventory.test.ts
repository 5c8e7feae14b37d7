import { describe, expect, it } from 'vitest'
import { fromSi, toSi } from '../../functions/units/convert.ts'
import { findUnit } from '../../functions/units/units.ts'
import { isCellError } from '../../src/calc/values.ts'
import { fill } from '../../src/workbook/fill.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { restate } from '../../src/workbook/restate.ts'
import { Cells, expectRestated } from './cells.ts'

/** The columns of the list by their headings, and its first row. */
const LIST = { tag: 'B', zone: 'C', level: 'D', kind: 'E', shape: 'F', heads: 'G', count: 'H', diameter: 'I', length: 'J', volume: 'K', temperature: 'L', operation: 'M', most: 'N' } as const
const FIRST = 8

const open = (): Cells => new Cells('charge-inventory', 'Charge')
/** Types a part into the first row of the list. */
const part = (cells: Cells, given: Partial<Record<keyof typeof LIST, string>>): Cells => {
  for (const [key, typed] of Object.entries(given)) cells.type(`${LIST[key as keyof typeof LIST]}${FIRST}`, typed)
  return cells
}
const IN_OPERATION = `P${FIRST}`
const lastLine = (cells: Cells): number => cells.graph.workbook.sheets.find(({ name }) => name === 'Charge')?.rows.length ?? 0
const says = (cells: Cells, rule: string): string => String(cells.value(`F${cells.row(rule, 'Thresholds')}`, 'Thresholds'))
const totals = (cells: Cells, label: string): string => `C${cells.row(label, 'Charge totals')}`
const NOT_LISTED = ['C24', 'C40', 'C49'] as const

describe('charge of a part', () => {
  it('a 36 in × 10 ft drum, 2:1 heads, filled to 0.40 of its diameter at 20 °F holds 1176.3 lb (CoolProp 8.0.0 and fluids)', () => {
    const cells = open()
    part(cells, { shape: 'horizontal', heads: '2:1', count: '1', diameter: '36', length: '10', temperature: '20', operation: '40' })
    expect(cells.number(IN_OPERATION) / 1176.3).toBeCloseTo(1, 2.6)
  })

  it('100 ft of 6 in dry suction at 0 °F holds 2.20 lb, 100 ft of 2 in liquid line at 86 °F 86.6 lb (CoolProp 8.0.0; bores of ASME B36.10M)', () => {
    const cells = open()
    part(cells, { shape: 'pipe', count: '1', diameter: '6.065', length: '100', temperature: '0', operation: '0' })
    expect(cells.number(IN_OPERATION)).toBeCloseTo(2.2, 2)
    part(cells, { diameter: '2.067', temperature: '86', operation: '100' })
    expect(cells.number(IN_OPERATION)).toBeCloseTo(86.6, 1)
  })

  it('a given volume counts as often as there are such parts', () => {
    const cells = open()
    part(cells, { shape: 'volume', count: '3', volume: '10', temperature: '20', operation: '100', most: '100' })
    // Liquid at 20 °F: 40.429 lb/ft3 (Gao et al. 2023 by CoolProp 8.0.0).
    expect(cells.number(IN_OPERATION)).toBeCloseTo(3 * 10 * 40.429, 0)
    expect(cells.number(`O${FIRST}`)).toBeCloseTo(30, 9)
  })

  it('flooded coils hold more than coils fed by pumps, and these more than direct expansion, by the shares of practice (from memory)', () => {
    const masses = ['75', '60', '22'].map((share) => {
      const cells = open()
      part(cells, { shape: 'volume', count: '1', volume: '10', temperature: '20', operation: share })
      return cells.number(IN_OPERATION)
    })
    expect(masses).toEqual(masses.toSorted((one, other) => other - one))
  })

  it('says at the row what cannot be computed, and a row without tag counts nothing', () => {
    const cells = open()
    part(cells, { shape: 'horizontal', heads: 'round', diameter: '36', length: '10' })
    const wrong = cells.value(IN_OPERATION)
    expect(isCellError(wrong) && wrong.message).toContain('heads')
    part(cells, { tag: '' })
    expect(cells.value(IN_OPERATION)).toBe(0)
  })
})

describe('totals', () => {
  it('are the sum of the parts, whichever way they are told apart', () => {
    const cells = open()
    const sum = Array.from({ length: lastLine(cells) - FIRST }, (_, i) => cells.number(`P${FIRST + i}`)).reduce((one, other) => one + other, 0)
    expect(cells.number(totals(cells, 'Charge in operation'), 'Charge totals')).toBeCloseTo(sum, 8)
    for (const address of NOT_LISTED) expect(cells.value(address, 'Charge totals'), address).toBe(0)
  })

  it('show a part whose zone no row names', () => {
    const cells = part(open(), { zone: 'Cooler l' })
    expect(cells.number(NOT_LISTED[0], 'Charge totals')).toBeCloseTo(cells.number(IN_OPERATION), 5)
    expect(cells.value('D25', 'Charge totals')).toBe(false)
  })

  it('15 147 lb over 753 TR is 20.116 lb/TR, 23 lb/TR 2.966 kg/kW (Chapp, Process Cooling 2016; IARW 2014)', () => {
    const cells = part(open(), { shape: 'volume', count: '1', volume: '1', temperature: '20', operation: '100' })
    const all = totals(cells, 'Charge in operation')
    cells.type(totals(cells, 'Refrigeration load of the plant'), '753', 'Charge totals')
    const others = cells.number(all, 'Charge totals') - cells.number(IN_OPERATION)
    part(cells, { volume: String((15_147 - others) / cells.number(IN_OPERATION)) })
    expect(cells.number(all, 'Charge totals')).toBeCloseTo(15_147, 6)
    expect(cells.number(totals(cells, 'Specific charge in operation'), 'Charge totals')).toBeCloseTo(20.116, 3)
    const [trade, metric] = [findUnit('lb/TR'), findUnit('kg/kW')]
    if (!trade || !metric) throw new Error('units of specific charge')
    expect(fromSi(toSi(23, trade), metric)).toBeCloseTo(2.966, 3)
  })

  it('take in rows inserted above the last line', () => {
    const cells = open()
    const all = totals(cells, 'Charge in operation')
    const before = cells.number(all, 'Charge totals')
    const last = lastLine(cells) - 1
    const oneMore = cells.number(`P${last}`)
    const { graph } = cells
    graph.apply(insertLines(graph.workbook, 'Charge', { axis: 'rows', at: last, count: 3000 }))
    graph.apply(fill(graph.workbook, 'Charge', { top: last - 1, left: 1, bottom: last + 2999, right: 17 }, 'down'))
    expect(cells.number(all, 'Charge totals')).toBeCloseTo(before + 3000 * oneMore, 3)
    expect(cells.value(NOT_LISTED[0], 'Charge totals')).toBe(0)
  })

  it('a receiver that stands too full does not take the largest zone', () => {
    const cells = open()
    const takes = totals(cells, 'The receiver takes that zone')
    expect(cells.value(takes, 'Charge totals')).toBe(true)
    cells.type(`M${cells.row('High-pressure receiver')}`, '75')
    expect(cells.value(takes, 'Charge totals')).toBe(false)
  })
})

describe('thresholds (29 CFR 1910.119, 40 CFR 68 and 370, SOR/2019-51, Directive 2012/18/EU), each in its own unit and word', () => {
  const PSM = 'OSHA process safety management (PSM)'
  const RMP = 'EPA risk management program (RMP)'
  const TIER_II = 'EPCRA 312 Tier II inventory'
  const E2 = 'Canada environmental emergencies (E2)'
  const [LOWER, UPPER] = ['EU Seveso III, lower tier', 'EU Seveso III, upper tier']
  it.each([
    ['10000', 'lb', PSM, true], ['10000', 'lb', RMP, false], ['10000.1', 'lb', RMP, true], ['10000.1', 'lb', PSM, true],
    ['9999.9', 'lb', PSM, false], ['9999.9', 'lb', RMP, false], ['499.9', 'lb', TIER_II, false], ['500', 'lb', TIER_II, true],
    ['4.5', 't', E2, true], ['4.49', 't', E2, false], ['9920.9', 'lb', E2, true], ['9920.7', 'lb', E2, false],
    ['49.99', 't', LOWER, false], ['50', 't', LOWER, true], ['199.9', 't', UPPER, false], ['200', 't', UPPER, true],
  ] as const)('%s %s, %s: %s', (charge, unit, rule, reached) => {
    const cells = open().type('C4', charge, 'Thresholds').type('D4', unit, 'Thresholds')
    expect(says(cells, rule)).toMatch(reached ? /^reached/ : /^not reached/)
  })

  it('keep their own units when the workbook is restated', () => {
    const cells = open().type('C4', '10000', 'Thresholds')
    cells.graph.apply(restate(cells.graph.workbook, 'SI'))
    expect(cells.value('D4', 'Thresholds')).toBe('kg')
    expect(says(cells, PSM)).toBe('reached: at or above 10000 lb')
    expect(says(cells, RMP)).toBe('not reached: exactly at 10000 lb')
  })

  it('compare the fullest state of the list unless a charge is given', () => {
    const cells = open()
    const below = `C${cells.row('Charge compared is below', 'Thresholds')}`
    expect(cells.number('C5', 'Thresholds')).toBe(cells.number(totals(cells, 'Maximum intended charge'), 'Charge totals'))
    expect(cells.value(below, 'Thresholds')).toBe(true)
    part(cells, { most: '100', diameter: '60' })
    expect(cells.number('C5', 'Thresholds')).toBeGreaterThan(10_000)
    expect(says(cells, PSM)).toBe('reached: at or above 10000 lb')
    expect(cells.value(below, 'Thresholds')).toBe(false)
  })
})

it('restating keeps every result', () => expectRestated('charge-inventory'))
