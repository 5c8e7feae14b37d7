import { describe, expect, it } from 'vitest'
import { Cells, expectRestated } from './cells.ts'

const open = (): Cells => new Cells('suction-accumulator', 'Accumulators')
const basis = (label: string): string => `C${new Cells('suction-accumulator', 'Basis').row(label)}`

describe('flow and separation', () => {
  /** 50 TR at 20 °F with liquid at 95 °F, alone on its accumulator, no margin. */
  const alone = (): Cells => {
    const cells = open().type(basis('Margin on the load'), '0', 'Basis').type('C21', '20', 'Basis')
    cells.type(basis('High'), '20', 'Basis').type(basis('Temperature of the liquid fed'), '95', 'Basis')
    const first = cells.row('Cooler 1')
    cells.type(`D${first}`, '50').type(`E${first}`, '20')
    for (let other = 1; other < 6; other++) cells.type(`C${first + other}`, 'Low')
    return cells
  }

  it('50 TR at 20 °F with liquid at 95 °F is 0.161563 kg/s and 0.059577 m3/s (CoolProp 8.0.0)', () => {
    const cells = alone()
    const [mass, flow] = [cells.row('Vapour with margin'), cells.row('Vapour flow')]
    expect(cells.si(`C${mass}`, `D${mass}`) / 0.161563).toBeCloseTo(1, 4)
    expect(cells.si(`C${flow}`, `D${flow}`) / 0.059577).toBeCloseTo(1, 3.3)
  })

  it('a 200 µm droplet falls 0.5685 m/s at 20 °F (fluids, Haider & Levenspiel); the flow in a 36 in shell runs at V/A', () => {
    const cells = alone()
    const taken = cells.row('Velocity by the method of the basis')
    expect(cells.si(`C${taken}`, `D${taken}`) / 0.5685).toBeCloseTo(1, 2.5)
    cells.type(`C${cells.row('Inside diameter')}`, '36')
    const there = cells.row('Velocity there is')
    expect(cells.si(`C${there}`, `D${there}`) / (0.059577 / (Math.PI * 0.9144 ** 2 / 4))).toBeCloseTo(1, 3)
  })

  it('a lying vessel at half fill has the gas area 0.32835 m2 of a 36 in shell (closed form)', () => {
    const cells = alone().type(`C${open().row('Position (vertical, horizontal)')}`, 'horizontal').type(`C${open().row('Inside diameter')}`, '36')
    cells.type(`C${cells.row('High-level cut-out, of the volume')}`, '50')
    const area = cells.row('Section for the vapour')
    expect(cells.si(`C${area}`, `D${area}`) / 0.32835).toBeCloseTo(1, 4)
  })

  it('a level that stands higher leaves less distance, and a check says so', () => {
    const cells = open().type(`C${open().row('High-level cut-out, of the volume')}`, '78')
    expect(cells.value(`C${cells.row('Distance is enough')}`)).toBe(false)
  })
})

describe('where the high-level cut-out belongs (common practice, no published source)', () => {
  it('is the accumulator, for all the drums on it', () => {
    const cells = open()
    expect(cells.value(`C${cells.row('Where the high-level cut-out belongs')}`)).toBe('on this accumulator, for 6 drums')
    cells.type(`C${cells.row('High-level cut-out fitted (yes, no)')}`, 'no')
    expect(cells.value(`C${cells.row('Cut-out is fitted there')}`)).toBe(false)
    expect(drum(cells, 'Cooler 1').protected).toBe(false)
    expect(drum(cells, 'Freezer').protected).toBe(true)
  })

  it('is the drum itself without a suction accumulator on its level', () => {
    const cells = open().type(`C${open().row('Suction level it serves')}`, '')
    expect(drum(cells, 'Cooler 1')).toEqual({ protected: false, says: 'no suction accumulator on its level: the drum must carry a high-level cut-out' })
    cells.type(`G${cells.row('Cooler 1')}`, 'yes')
    expect(drum(cells, 'Cooler 1').protected).toBe(true)
  })

  /** The rule's row of a drum: its name there is a formula. */
  function drum(cells: Cells, name: string): { readonly protected: unknown; readonly says: unknown } {
    const row = cells.row('Drums: the rule, drum by drum') + 1 + (cells.row(name) - cells.row('Cooler 1'))
    return { protected: cells.value(`C${row}`), says: cells.value(`E${row}`) }
  }
})

describe('surge and transfer', () => {
  it('the largest coil on the level decides the surge', () => {
    const cells = open()
    const surge = `C${cells.row('Largest surge of one of its drums')}`
    expect(cells.number(surge)).toBe(10)
    expect(cells.type(`F${cells.row('Dock')}`, '14').number(surge)).toBe(14)
    expect(cells.type(basis('Share of the coil volume thrown back'), '50', 'Basis').number(surge)).toBe(7)
  })

  it('a slow transfer does not empty it in time', () => {
    const cells = open().type(`C${open().row('Liquid transfer')}`, '5')
    expect(cells.value(`C${cells.row('Transfer is quick enough')}`)).toBe(false)
  })
})

it('restating keeps every result', () => expectRestated('suction-accumulator'))
