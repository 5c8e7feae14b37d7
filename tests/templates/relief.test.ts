import { describe, expect, it } from 'vitest'
import { Cells, expectRestated } from './cells.ts'

const open = (): Cells => new Cells('relief', 'Relief')
/** Types a vessel into the first row: outside diameter by a wall of nothing, length over flat heads. */
const vessel = (diameterIn: string, lengthFt: string): Cells =>
  open().type(`C${new Cells('relief', 'Basis').row('Heads (flat, 2:1, hemi, dished 6%, dished 10%)')}`, 'flat', 'Basis').type('C7', diameterIn).type('D7', '0').type('E7', lengthFt)

describe('capacity as air, f·D·L with f = 0.5 lb/(min·ft2) (ASHRAE 15-2004 as quoted by IRC 2005; ANSI/IIAR 2)', () => {
  it('6 ft × 16 ft wants 48 lb/min, the worked example of IRC 2005, 628.8 SCFM', () => {
    const cells = vessel('72', '16')
    expect(cells.number('J7')).toBeCloseTo(48, 1)
    expect(cells.number('K7')).toBeCloseTo(628.8, 0)
  })

  it('3 ft × 10 ft wants 15 lb/min; 37.5 with combustibles within 20 ft (factor from memory)', () => {
    const cells = vessel('36', '10')
    expect(cells.number('J7')).toBeCloseTo(15, 1)
    expect(cells.type('F7', 'within 20 ft').number('J7')).toBeCloseTo(37.5, 1)
  })
})

describe('dual valves', () => {
  it('count once: two valves of half the capacity do not carry the vessel', () => {
    const cells = vessel('36', '10').type('M7', '2').type('N7', '7.6')
    expect(cells.value('O7')).toBe(false)
    expect(cells.type('N7', '15.1').value('O7')).toBe(true)
  })

  it('are wanted from 10 ft3 on, one valve from 3 ft3 (from memory: ASHRAE 15 sec. 9.7)', () => {
    expect(vessel('24', '3.5').value('L7')).toBe('two on a three-way valve')
    expect(vessel('18', '5').value('L7')).toBe('one')
    expect(vessel('12', '3').value('L7')).toBe('one, or a fusible plug')
    expect(vessel('36', '10').type('M7', '1').value('P7')).toBe(false)
  })
})

describe('discharge line', () => {
  // Formula of ASHRAE 15-2004 App. H as quoted by IRC 2005, worked by hand: set 250 psig, 24 lb/min, 1 1/2 in Sch 40: 484.1 ft.
  it('is held to the rated capacity: 484.1 ft of 1 1/2 in for 24 lb/min at 250 psig', () => {
    const cells = open().type(`C${new Cells('relief', 'Basis').row('Design pressure of the low side')}`, '250', 'Basis')
    cells.type('N7', '24').type('Q7', "'1 1/2")
    expect(cells.number('S7') / 484.1).toBeCloseTo(1, 2.3)
    cells.type('R7', '500')
    expect(cells.value('T7')).toBe(false)
  })

  it('allows less for a larger valve on the same vessel, though the vessel wants no more', () => {
    const cells = open()
    const [wanted, longest] = [cells.number('J7'), cells.number('S7')]
    cells.type('N7', String(2 * cells.number('N7')))
    expect(cells.number('J7')).toBe(wanted)
    expect(cells.number('S7')).toBeLessThan(longest / 3)
  })
})

it('fire case of EN 13136 for 1.0 m × 3.0 m, 2:1 heads, 21 bar(g): 410.85 kg/h (equation from memory, heat of vaporisation by CoolProp 8.0.0)', () => {
  const cells = open()
  const basis = new Cells('relief', 'Basis')
  const design = basis.row('Design pressure of the low side')
  cells.type(`C${design}`, '21', 'Basis').type(`D${design}`, 'bar(g)', 'Basis').type('C7', String(1000 / 25.4)).type('D7', '0').type('E7', String(3 / 0.3048))
  expect((cells.si('V7', 'V6') * 3600) / 410.85).toBeCloseTo(1, 2.3)
})

it('a header that many valves blow into takes their sum', () => {
  const cells = open()
  const sum = cells.row('Valves that blow into it in one fire')
  const before = cells.number(`C${sum}`)
  cells.type('W15', '1')
  expect(cells.number(`C${sum}`)).toBeCloseTo(before + cells.number('N15'), 9)
  expect(before).toBeCloseTo(Array.from({ length: 8 }, (_, i) => cells.number(`N${7 + i}`)).reduce((one, other) => one + other), 9)
})

it('restating keeps every result', () => expectRestated('relief'))
