import { describe, expect, it } from 'vitest'
import { Cells, expectRestated } from './cells.ts'

const open = (): Cells => new Cells('feed-valves', 'Feed')
const basis = (label: string): string => `C${new Cells('feed-valves', 'Basis').row(label)}`

describe('hand expansion valve', () => {
  /** Saturated liquid right at the valve: no loss before it, no solenoid drop to speak of, valves for just the make-up. */
  const saturated = (fahrenheit: string): Cells => {
    const cells = open().type(basis('Condensing temperature'), fahrenheit, 'Basis').type(basis('Temperature of the liquid fed'), fahrenheit, 'Basis').type(basis('Margin on the load'), '0', 'Basis')
    return cells.type('C6', '0').type('C7', '100').type('C8', '0.0001').type('I26', '1000')
  }

  it('saturated liquid at 86 °F: about a tenth of the pressure drives it, 122.56 kPa of 834 (IEC 60534-2-1 by CoolProp 8.0.0)', () => {
    // A solenoid without drop: the inlet may be a whisker below saturation, which counts as saturated.
    const cells = saturated('86').type(basis('Temperature of the liquid fed'), '85.999', 'Basis')
    const choke = cells.row('Drop that drives the hand expansion valve, at most')
    expect(cells.si(`C${choke}`, `D${choke}`) / 122_560).toBeCloseTo(1, 2)
  })

  it('0.16 kg/s of saturated liquid at 86 °F into 48.18 psia wants Kv 0.6746, choked (IEC 60534-2-1 by CoolProp 8.0.0)', () => {
    // 22.46 TR at 20 °F with liquid at 86 °F feed this much: the load that gives 0.16 kg/s is found by proportion.
    const cells = saturated('85.999')
    cells.type('C26', '100').type('D26', '20')
    const perTon = cells.si('E26', 'E25') / 100
    cells.type('C26', String(0.16 / perTon)).type('L25', 'Kv')
    expect(cells.si('E26', 'E25')).toBeCloseTo(0.16, 9)
    expect(cells.number('L26') / 0.6746).toBeCloseTo(1, 2)
    expect(cells.value('P26')).toBe('choked')
  })

  it('a colder drum brings no more liquid through a choked valve', () => {
    const cells = open().type('I26', '1e6')
    const before = cells.number('L26')
    // The make-up of the same load changes a little with the drum: compared by flow.
    const flow = cells.si('G26', 'G25')
    cells.type('D26', '-20')
    expect(cells.number('L26') / before / (cells.si('G26', 'G25') / flow)).toBeCloseTo(1, 9)
  })
})

describe('make-up and opening', () => {
  it('50 TR at 20 °F with liquid at 95 °F: 0.4274 lb/min a ton and 15.3 % flash gas (CoolProp 8.0.0)', () => {
    const cells = open().type(basis('Condensing temperature'), '100', 'Basis').type(basis('Temperature of the liquid fed'), '95', 'Basis').type(basis('Margin on the load'), '0', 'Basis')
    cells.type('C26', '50').type('D26', '20')
    expect(cells.number('E26') / 50).toBeCloseTo(0.4274, 4)
    expect(cells.number('F26')).toBeCloseTo(15.3, 1)
  })

  it('the solenoid is open as long as the valves are larger than the make-up', () => {
    const cells = open().type('C7', '200')
    expect(cells.number('Q26')).toBeCloseTo(50, 9)
  })

  it('an oversized valve cannot be set finely enough', () => {
    expect(open().type('M26', '40').value('O26')).toBe(false)
    expect(open().type('M26', '1.1').value('O26')).toBe(false)
  })

  it('a small solenoid and a liquid that flashes before the valve are told', () => {
    expect(open().type('I26', '2').value('J26')).toBe(false)
    const cells = open().type('C6', '14')
    expect(cells.value(`C${cells.row('Liquid is still liquid at the hand expansion valve')}`)).toBe(false)
  })
})

it('restating keeps every result', () => expectRestated('feed-valves'))
