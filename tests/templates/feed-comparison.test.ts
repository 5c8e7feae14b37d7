import { describe, expect, it } from 'vitest'
import { Cells, expectRestated } from './cells.ts'

const open = (): Cells => new Cells('feed-comparison', 'Comparison')
const FLOODED = 'C'
const OVERFED = 'E'
const DRY = 'G'
const number = (cells: Cells, label: string, column: string): number => cells.number(`${column}${cells.row(label)}`)

describe('the same duty by three ways to feed', () => {
  it('flooded holds more than overfed, and overfed more than direct expansion, by the fills of practice (common practice)', () => {
    const charges = [FLOODED, OVERFED, DRY].map((column) => number(open(), 'Charge in operation', column))
    expect(charges).toEqual(charges.toSorted((one, other) => other - one))
    const wrong = open().type(`C${open().row('Liquid share of the coils in operation')}`, '5')
    expect(wrong.value(`C${wrong.row('Flooded holds more than overfed')}`)).toBe(false)
  })

  it('specific charges lie about the published ones: pumped 23 and 20.1, direct expansion 7.5 lb/TR for whole plants (IARW 2014; Chapp 2016)', () => {
    const cells = open()
    expect(number(cells, 'Specific charge', OVERFED)).toBeGreaterThan(10)
    expect(number(cells, 'Specific charge', OVERFED)).toBeLessThan(23)
    expect(number(cells, 'Specific charge', DRY)).toBeLessThan(7.5)
  })

  it('a pumped plant at rate 4 moves 4 × 0.3520 lb/min a ton at 0 °F (latent basis, CoolProp 8.0.0; liquid 41.335 lb/ft3)', () => {
    const cells = open().type(`E${open().row('Evaporating temperature at the coil')}`, '0')
    const gallons = (4 * 0.352 * 100 / 41.335) * 7.480519
    expect(number(cells, 'Liquid the pumps move', OVERFED) / gallons).toBeCloseTo(1, 3)
  })

  it('a colder evaporation sweeps more vapour: 3.4380 cfm a ton at 5 °F and 86 °F liquid (CoolProp 8.0.0)', () => {
    const basis = new Cells('feed-comparison', 'Basis')
    const cells = open().type(`C${basis.row('Temperature of the liquid fed')}`, '86', 'Basis').type(`C${basis.row('Margin on the load')}`, '0', 'Basis')
    expect(number(cells, 'Vapour flow', DRY) / 100).toBeCloseTo(3.438, 3)
    expect(number(cells, 'Vapour to sweep, against flooded', DRY)).toBeGreaterThan(1)
  })
})

it('restating keeps every result', () => expectRestated('feed-comparison'))
