import { describe, expect, it } from 'vitest'
import { molarMass } from '../../functions/ammonia/equation-of-state.ts'
import { surfaceTension, viscosity } from '../../functions/ammonia/transport.ts'
import { printedGap } from './ammonia-printed.ts'

describe('viscosity, Fenghour et al., J. Phys. Chem. Ref. Data 24, 1649 (1995), printed values', () => {
  it.each([
    // K, mol/L, micropascal seconds
    ['196', '43.0041', '553.31'],
    ['196', '0.0039', '6.85'],
    ['240', '40.0318', '254.85'],
    ['300', '35.2298', '129.33'],
    ['300', '0.4845', '9.89'],
    ['350', '30.0867', '80.43'],
    ['350', '1.8399', '11.79'],
    ['402', '19.1642', '39.20'],
    ['402', '8.5479', '19.69'],
  ])('at %s K and %s mol/L: %s µPa s', (temperature, molPerLitre, printed) => {
    const value = viscosity(Number(temperature), Number(molPerLitre) * 1000 * molarMass) * 1e6
    expect(printedGap(value, printed)).toBeLessThanOrEqual(1)
  })
})

describe('surface tension, Mulero et al., J. Phys. Chem. Ref. Data 41, 043105 (2012)', () => {
  it('is 0.1028 th^1.211 - 0.09453 th^5.585 N/m with th = 1 - T/405.4 K', () => {
    // th = 0.25
    expect(surfaceTension(0.75 * 405.4)).toBeCloseTo(0.1028 * 0.25 ** 1.211 - 0.09453 * 0.25 ** 5.585, 14)
  })

  it('is 0 from its critical temperature 405.4 K to that of the equation of state, 405.56 K', () => {
    expect(surfaceTension(405.3)).toBeGreaterThan(0)
    for (const temperatureK of [405.4, 405.45, 405.5, 405.56]) expect(surfaceTension(temperatureK)).toBe(0)
  })
})
