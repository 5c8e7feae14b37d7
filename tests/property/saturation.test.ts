import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { saturationReference } from '../../functions/ammonia/saturation-reference.ts'
import { saturationTable } from '../../functions/ammonia/saturation-table.ts'
import {
  latentHeat,
  liquidDensity,
  liquidEnthalpy,
  liquidViscosity,
  saturationPressure,
  saturationRange,
  saturationSlope,
  saturationTemperature,
  surfaceTension,
  vaporDensity,
  vaporEnthalpy,
  vaporViscosity,
} from '../../functions/ammonia/saturation.ts'
import { viscosity } from '../../functions/ammonia/transport.ts'

const { minK, maxK, minPa, maxPa } = saturationRange
const anyTemperature = fc.double({ min: minK, max: maxK, noNaN: true })
/** Even in the logarithm, so that low pressures are tried as often as high ones. */
const anyPressure = fc
  .double({ min: Math.log(minPa), max: Math.log(maxPa), noNaN: true })
  .map((lnPa) => Math.min(maxPa, Math.max(minPa, Math.exp(lnPa))))
const runs = { numRuns: 1000 }

describe('saturationTemperature and saturationPressure undo each other', () => {
  const breaks = saturationTable.intervals.flatMap(({ fromK, toK }) => [[fromK], [toK]] as [number][])

  it('temperature comes back to 1e-12 K', () => {
    fc.assert(
      fc.property(anyTemperature, (temperatureK) => {
        const back = saturationTemperature(saturationPressure(temperatureK))
        expect(Math.abs(back - temperatureK)).toBeLessThan(1e-12)
      }),
      { ...runs, examples: breaks },
    )
  })

  it('pressure comes back to 1e-11 of itself', () => {
    fc.assert(
      fc.property(anyPressure, (pressurePa) => {
        const back = saturationPressure(saturationTemperature(pressurePa))
        expect(Math.abs(back / pressurePa - 1)).toBeLessThan(1e-11)
      }),
      { ...runs, examples: breaks.map(([temperatureK]) => [saturationPressure(temperatureK)]) },
    )
  })

  it('a temperature found from a pressure in range is itself in range', () => {
    fc.assert(
      fc.property(anyPressure, (pressurePa) => {
        const temperatureK = saturationTemperature(pressurePa)
        expect(temperatureK).toBeGreaterThanOrEqual(minK)
        expect(temperatureK).toBeLessThanOrEqual(maxK)
      }),
      { ...runs, examples: [[minPa], [maxPa]] },
    )
  })
})

describe('with rising temperature', () => {
  const rising = {
    saturationPressure,
    saturationSlope,
    vaporDensity,
    liquidEnthalpy,
    vaporViscosity,
  }
  const falling = { liquidDensity, latentHeat, surfaceTension, liquidViscosity }

  function changes(property: (temperatureK: number) => number, check: (change: number) => void): void {
    fc.assert(
      fc.property(anyTemperature, fc.double({ min: 1e-4, max: 50, noNaN: true }), (temperatureK, stepK) => {
        fc.pre(temperatureK + stepK <= maxK)
        check(property(temperatureK + stepK) - property(temperatureK))
      }),
      runs,
    )
  }

  it.each(Object.entries(rising))('%s rises', (_, property) => {
    changes(property, (change) => expect(change).toBeGreaterThan(0))
  })

  it.each(Object.entries(falling))('%s falls', (_, property) => {
    changes(property, (change) => expect(change).toBeLessThan(0))
  })
})

it('saturationSlope is the derivative of saturationPressure', () => {
  const stepK = 1e-3
  fc.assert(
    fc.property(fc.double({ min: minK + stepK, max: maxK - stepK, noNaN: true }), (temperatureK) => {
      const rise = saturationPressure(temperatureK + stepK) - saturationPressure(temperatureK - stepK)
      expect(rise / (2 * stepK) / saturationSlope(temperatureK)).toBeCloseTo(1, 7)
    }),
    runs,
  )
})

const tabulated: Record<string, [(temperatureK: number) => number, (temperatureK: number) => number]> = {
  saturationPressure: [saturationPressure, (at) => saturationReference(at).pressurePa],
  saturationSlope: [saturationSlope, (at) => saturationReference(at).slopePaPerK],
  liquidDensity: [liquidDensity, (at) => saturationReference(at).liquid.densityKgPerM3],
  vaporDensity: [vaporDensity, (at) => saturationReference(at).vapor.densityKgPerM3],
  vaporEnthalpy: [vaporEnthalpy, (at) => saturationReference(at).vapor.enthalpyJPerKg],
  latentHeat: [latentHeat, (at) => saturationReference(at).vapor.enthalpyJPerKg - saturationReference(at).liquid.enthalpyJPerKg],
  liquidViscosity: [liquidViscosity, (at) => viscosity(at, saturationReference(at).liquid.densityKgPerM3)],
  vaporViscosity: [vaporViscosity, (at) => viscosity(at, saturationReference(at).vapor.densityKgPerM3)],
}

describe.each(Object.entries(tabulated))('%s from the table', (_, [fromTable, fromSolve]) => {
  it('agrees with the equal-Gibbs solve to 1e-10', () => {
    fc.assert(
      fc.property(anyTemperature, (temperatureK) => {
        expect(Math.abs(fromTable(temperatureK) / fromSolve(temperatureK) - 1)).toBeLessThan(1e-10)
      }),
      runs,
    )
  })

  it.each(saturationTable.intervals.slice(1).map(({ fromK }) => fromK))('makes no step at %d K', (breakK) => {
    const below = breakK * (1 - Number.EPSILON)
    expect(below).toBeLessThan(breakK)
    expect(Math.abs(fromTable(below) / fromTable(breakK) - 1)).toBeLessThan(1e-12)
  })
})

it('liquidEnthalpy agrees with the equal-Gibbs solve to 1e-10 of the latent heat', () => {
  fc.assert(
    fc.property(anyTemperature, (temperatureK) => {
      const gap = liquidEnthalpy(temperatureK) - saturationReference(temperatureK).liquid.enthalpyJPerKg
      expect(Math.abs(gap) / latentHeat(temperatureK)).toBeLessThan(1e-10)
    }),
    runs,
  )
})

it('a sum of cosines, as exported workings compute it, gives the same pressure', () => {
  fc.assert(
    fc.property(anyTemperature, (temperatureK) => {
      const index = saturationTable.intervals.findIndex(({ toK }) => temperatureK <= toK)
      const { fromK = Number.NaN, toK = Number.NaN } = saturationTable.intervals[index] ?? {}
      const x = Math.max(-1, Math.min(1, (2 * temperatureK - fromK - toK) / (toK - fromK)))
      const terms = (saturationTable.series.lnPressure[index] ?? []).map((c, k) => c * Math.cos(k * Math.acos(x)))
      const pressurePa = Math.exp(terms.reduce((sum, term) => sum + term, 0))
      expect(Math.abs(pressurePa / saturationPressure(temperatureK) - 1)).toBeLessThan(1e-12)
    }),
    runs,
  )
})

it('the temperature series alone, with no step after it, is the inverse to 1e-10 K', () => {
  fc.assert(
    fc.property(anyPressure, (pressurePa) => {
      const lnPa = Math.log(pressurePa)
      const index = Math.max(0, saturationTable.intervals.findIndex(({ toLnPa }) => lnPa <= toLnPa))
      const { fromLnPa = Number.NaN, toLnPa = Number.NaN } = saturationTable.intervals[index] ?? {}
      const x = Math.max(-1, Math.min(1, (2 * lnPa - fromLnPa - toLnPa) / (toLnPa - fromLnPa)))
      const terms = (saturationTable.series.temperatureK[index] ?? []).map((c, k) => c * Math.cos(k * Math.acos(x)))
      const temperatureK = terms.reduce((sum, term) => sum + term, 0)
      expect(Math.abs(temperatureK - saturationTemperature(pressurePa))).toBeLessThan(1e-10)
    }),
    runs,
  )
})
