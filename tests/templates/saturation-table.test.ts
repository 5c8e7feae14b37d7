import { expect, it } from 'vitest'
import { Cells, expectRestated } from './cells.ts'

const open = (): Cells => new Cells('saturation-table', 'Saturation')

// CoolProp 8.0.0, Gao et al. 2023: psia; lb/ft3; ft3/lb; hg - hf in Btu/lb.
it.each([['-40', 10.39, 43.062, 24.889, 597.25], ['0', 30.389, 41.335, 9.1146, 568.24], ['20', 48.181, 40.429, 5.9068, 552.43], ['40', 73.295, 39.488, 3.9692, 535.6]])(
  'row at %s °F', (temperature, pressure, density, volume, latent) => {
    const cells = open().type('C5', temperature)
    expect(cells.number('C11') / pressure).toBeCloseTo(1, 4)
    expect(cells.number('F11') / density).toBeCloseTo(1, 4)
    expect(cells.number('G11') / volume).toBeCloseTo(1, 4)
    expect(cells.number('J11') / latent).toBeCloseTo(1, 4)
  })

it('gauge and vacuum follow the site: 0 °F is 18.29 psig and -40 °F 3.48 inHg vacuum at 5 280 ft (ICAO standard atmosphere, CoolProp 8.0.0)', () => {
  const elevation = `C${new Cells('saturation-table', 'Basis').row('Site elevation')}`
  const cells = open().type(elevation, '5280', 'Basis').type('C5', '0')
  expect(cells.number('D11')).toBeCloseTo(18.29, 2)
  expect(cells.value('E11')).toBe('–')
  expect(cells.type('C5', '-40').number('E11')).toBeCloseTo(3.48, 2)
})

it('goes by any step in any unit', () => {
  const cells = open().type('C5', '-40').type('C6', '2.5').type('B10', '°C')
  expect(cells.number('B11')).toBeCloseTo(-40, 9)
  expect(cells.number('B12')).toBeCloseTo(-40 + 2.5 / 1.8, 9)
  expect(cells.type('C6', '20').value('C7')).toBe(false)
})

it('restating keeps every result', () => expectRestated('saturation-table'))
