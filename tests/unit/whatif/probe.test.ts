import { describe, expect, it } from 'vitest'
import { findUnit } from '../../../functions/units/units.ts'
import { upstreamOf } from '../../../src/workbook/upstream.ts'
import { Probe } from '../../../src/whatif/probe.ts'
import type { CellPlace } from '../../../src/workbook/cell-place.ts'
import { at, workbookOf } from '../workbook-of.ts'

const place = (sheet: string, address: string): CellPlace => ({ sheet, ...at(address) })

const plant = () => workbookOf({
  Basis: {
    A1: ['Load', 'label'], B1: 85, C1: ['TR', 'unit'], A2: ['Suction', 'label'], B2: 10, C2: ['psig', 'unit'], A3: ['Site', 'label'], B3: 12.2, C3: ['psia', 'unit'],
    A4: ['Kind', 'label'], B4: ['high', 'input'], B5: [null, 'input'], B6: ['=1+1', 'input'], A7: ['Room', 'label'], B7: 31, C7: ['=E7', 'unit'], E7: ['°F', 'text'], B8: [true, 'input'],
  },
  Duty: {
    A1: ['Twice', 'label'], B1: '=load*2', C1: ['TR', 'unit'], A2: ['Enough', 'label'], B2: ['=B1<=200', 'check'], A3: ['Elsewhere', 'label'], B3: '=Basis!B2*3', B4: '=Basis!B4&"!"', B5: '=1/(Basis!B1-90)', B6: '=SUM(Basis!B:B)',
  },
}, { load: 'Basis!$B$1', site_pressure: 'Basis!$B$3:$C$3' })

describe('the probe', () => {
  it('gives inputs other numbers and reads results, checks with margins, units and errors', () => {
    const probe = new Probe(plant(), [place('Basis', 'B1')], [place('Duty', 'B1'), place('Duty', 'B2'), place('Duty', 'B5')])
    expect(probe.inputs).toMatchObject([{ label: 'Load', unitText: 'TR', unit: { code: 'TR' }, value: 85 }])
    expect(probe.watched).toMatchObject([{ label: 'Twice', unitText: 'TR', isCheck: false }, { label: 'Enough', isCheck: true }, { isCheck: false }])
    probe.set(new Map([[0, 120]]))
    expect(probe.read()).toMatchObject([{ value: 240 }, { value: false, check: { met: false, margin: -0.2, words: 'not met by 40 TR (20 %)' } }, { value: expect.closeTo(1 / 30, 14) }])
    probe.set(new Map([[0, 90]]))
    expect(probe.read()[2]).toMatchObject({ value: { error: '#DIV/0!' } })
    probe.restore()
    expect(probe.read()).toMatchObject([{ value: 170 }, { value: true, check: { margin: 0.15 } }, { value: -0.2 }])
  })

  it('leaves the workbook that it is made of as it is', () => {
    const workbook = plant()
    const before = structuredClone(workbook)
    const probe = new Probe(workbook, [place('Basis', 'B1')], [place('Duty', 'B1')])
    probe.set(new Map([[0, 1]]))
    expect(workbook).toEqual(before)
  })

  it('reads a unit that is a formula', () => {
    expect(new Probe(plant(), [place('Basis', 'B7')], []).inputs[0]).toMatchObject({ unitText: '°F', unit: { code: '°F' } })
  })

  it('takes numbers in other units: differences, gauge and absolute pressures by the site of the workbook', () => {
    const probe = new Probe(plant(), [place('Basis', 'B2'), place('Basis', 'B7')], [])
    const [suction, room] = probe.inputs
    if (suction === undefined || room === undefined) throw new Error('both are inputs')
    expect(probe.inUnitOf(room, 0, findUnit('°C'))).toBe(32)
    expect(probe.inUnitOf(suction, 22.2, findUnit('psia'))).toBeCloseTo(10, 12)
    expect(probe.inUnitOf(suction, 1, findUnit('bar(g)'))).toBeCloseTo(14.5037738, 6) // 1 bar is 14.5037738 psi (NIST SP 811)
    expect(() => probe.inUnitOf(suction, 1, findUnit('°C'))).toThrow('°C does not fit Basis!B2 (Suction), which is in psig; accepted: units of the same dimension: Pa, kPa')
  })

  it.each([
    ['B4', 'Basis!B4 (Kind) cannot be varied: it holds text; accepted is an input that holds a number'],
    ['B5', 'is empty; accepted is an input that holds a number: type one first'],
    ['B6', 'is a formula, whose value follows from others'],
    ['B8', 'holds TRUE or FALSE'],
    ['A1', 'is of the role label'],
    ['Z9', 'is an empty cell'],
  ])('refuses %s as an input', (address, words) => expect(() => new Probe(plant(), [place('Basis', address)], [])).toThrow(words))

  it('refuses a sheet that is not there, an empty cell to watch, and an input twice', () => {
    expect(() => new Probe(plant(), [place('Base', 'B1')], [])).toThrow('there is no sheet "Base"; there are "Basis", "Duty"')
    expect(() => new Probe(plant(), [], [place('Duty', 'Z1')])).toThrow('Duty!Z1 is empty: there is nothing to watch')
    expect(() => new Probe(plant(), [place('Basis', 'B1'), place('Basis', 'B1')], [])).toThrow('given twice')
  })
})

describe('what a cell hangs on', () => {
  const addresses = (address: string) => upstreamOf(plant(), [place('Duty', address)]).places().map(({ sheet, row, column }) => `${sheet}!${row},${column}`)

  it('follows references, names and units', () => expect(addresses('B2')).toEqual(['Basis!0,1', 'Duty!0,1', 'Duty!0,2', 'Duty!1,1']))

  it('does not claim to know all where whole columns or unknown names are used', () => {
    expect(upstreamOf(plant(), [place('Duty', 'B2')]).isClosed).toBe(true)
    expect(upstreamOf(plant(), [place('Duty', 'B6')]).isClosed).toBe(false)
    const probe = new Probe(plant(), [place('Basis', 'B1')], [place('Duty', 'B6')])
    probe.set(new Map([[0, 1000]]))
    expect(probe.read()).toEqual([{ value: 1000 + 10 + 12.2 + 2 + 31 }])
  })
})
