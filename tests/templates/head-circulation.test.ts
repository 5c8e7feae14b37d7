import { describe, expect, it } from 'vitest'
import { isCellError } from '../../src/calc/values.ts'
import { Cells, expectRestated } from './cells.ts'

const open = (): Cells => new Cells('head-circulation', 'Circulation')
const at = (label: string, column = 'C'): string => `${column}${open().row(label)}`
/** By its label, in the units of the sheet. */
const loop = (given: Readonly<Record<string, string>>): Cells => {
  const cells = open()
  for (const [label, typed] of Object.entries(given)) cells.type(at(label), typed)
  return cells
}
const metres = (length: number): string => String(length / 0.3048)

describe('static head (CoolProp 8.0.0, Gao et al. 2023)', () => {
  it.each([['-60', 10, 13.694], ['-40', 5, 4.573], ['0', 10, 3.767], ['28', 20, 4.43]] as const)('%s °F under %s ft: %s Δ°F', (drum, height, penalty) => {
    const cells = loop({ 'Drum temperature (saturation)': drum, 'Drum level above the coil’s bottom': String(height) })
    expect(cells.number(at('Static head penalty')) / penalty).toBeCloseTo(1, 2.5)
  })
})

describe('circulation', () => {
  // 70 kW, drum near -10 °C, leg 52.5 mm × 4 m, K 2.5, 12 circuits of 21.0 mm × 18 m; computed with fluids and fixed properties of -10 °C.
  const base = { 'Drum temperature (saturation)': '14', 'Refrigeration load of the coils': String(70 / 3.516853), 'Drum level above the coil’s bottom': metres(2.5),
    'Liquid leg, bore': String(52.5 / 25.4), 'Liquid leg, length': metres(4), 'Liquid leg, sum of loss coefficients': '2.5', 'Coil height': metres(1.2), Circuits: '12', 'Circuit bore': String(21 / 25.4),
    'Circuit length': metres(18), 'Wet return, bore': String(102.3 / 25.4), 'Wet return, length': metres(3), 'Wet return, sum of loss coefficients': '2', 'Wet return, rise': metres(1.3), Roughness: metres(45.72e-6) }

  it('70 kW on 12 circuits: 12.307 by Zivi, 15.761 homogeneous', () => {
    const cells = loop(base)
    expect(cells.number(at('Circulation number')) / 12.307).toBeCloseTo(1, 1.7)
    expect(cells.type(at('Void fraction (Zivi, homogeneous)'), 'homogeneous').number(at('Circulation number')) / 15.761).toBeCloseTo(1, 1.7)
  })

  it('rises steeply at part load: half of 70 kW gives 31.01', () => {
    const cells = loop(base).type('G6', '50')
    expect(cells.number(at('Circulation number', 'G')) / 31.01).toBeCloseTo(1, 1.7)
  })

  it('runs where losses equal the driving head', () => {
    const cells = loop(base)
    expect(cells.number(at('Losses together')) / cells.number(at('Driving head'))).toBeCloseTo(1, 6)
  })

  it('does not run with the drum below the coil, and says what is missing', () => {
    const cells = loop({ ...base, 'Drum level above the coil’s bottom': '0.2' })
    expect(cells.value(at('Drum stands above the coil'))).toBe(false)
    expect(cells.value(at('The loop runs'))).toBe(false)
    const number = cells.value(at('Circulation number'))
    expect(isCellError(number) && number.message).toMatch(/missing at best/)
  })
})

it('restating keeps every result', () => expectRestated('head-circulation'))
