import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { saturationPressure, saturationRange, saturationSlope } from '../../functions/ammonia/saturation.ts'
import type { Given } from '../../functions/given.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { frictionFactor, frictionGradient, fullyRoughFrictionFactor } from '../../functions/lines/friction.ts'
import { greatestLoss, linePenalty } from '../../functions/lines/line-penalty.ts'
import { pipeLoss } from '../../functions/lines/pipe-loss.ts'
import { nextPipeSize, pipeBore, pipeSizes, schedules } from '../../functions/lines/pipe-sizes.ts'
import { saturatedMixture, twoPhaseGradient, type TwoPhaseModel } from '../../functions/lines/two-phase-loss.ts'

const call = (name: string, ...given: Given[]) => functionByName(name)?.call(given)

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const temperatures = double(saturationRange.minK, saturationRange.maxK)
const bores = double(0.01, 0.6)
const phases = fc.constantFrom('liquid', 'vapor')
const models = fc.constantFrom<TwoPhaseModel>('MSH', 'Friedel')

describe('friction factor', () => {
  // Relative steps of the argument: what a continuous law of slope at most 10 (in logarithms) can do.
  it('has no step anywhere from Reynolds 1 to 1e8', () => {
    fc.assert(fc.property(double(0, 8), double(0, 0.05), (magnitude, roughness) => {
      const reynolds = 10 ** magnitude
      expect(Math.abs(frictionFactor(reynolds * (1 + 1e-7), roughness) / frictionFactor(reynolds, roughness) - 1)).toBeLessThan(1e-6)
    }), { numRuns: 1000 })
  })

  it('is 64/Re where the flow dies away, down to the smallest number', () => {
    fc.assert(fc.property(double(-300, 0), double(0, 0.05), (magnitude, roughness) => {
      expect(Math.abs((frictionFactor(10 ** magnitude, roughness) * 10 ** magnitude) / 64 - 1)).toBeLessThan(1e-12)
    }))
  })

  it('rises with roughness in turbulent flow, and comes to the fully rough value', () => {
    fc.assert(fc.property(double(4, 8), double(1e-6, 0.04), double(1.01, 1.25), (magnitude, roughness, rougher) => {
      expect(frictionFactor(10 ** magnitude, roughness * rougher)).toBeGreaterThan(frictionFactor(10 ** magnitude, roughness))
    }))
    for (const roughness of [1e-3, 1e-2, 0.05]) expect(Math.abs(frictionFactor(1e12, roughness) / fullyRoughFrictionFactor(roughness) - 1)).toBeLessThan(0.003)
  })

  it('agrees with Colebrook’s to 2 % from Reynolds 10 000 on in pipes of relative roughness up to 0.003, to 3.2 % from 4000 in any', () => {
    const colebrook = (reynolds: number, roughness: number) => {
      let root = 5
      for (let step = 0; step < 100; step++) root = -2 * Math.log10(roughness / 3.7 + (2.51 * root) / reynolds)
      return root ** -2
    }
    fc.assert(fc.property(double(Math.log10(4000), 8), double(0, 0.05), (magnitude, roughness) => {
      const reynolds = 10 ** magnitude
      const off = Math.abs(frictionFactor(reynolds, roughness) / colebrook(reynolds, roughness) - 1)
      expect(off).toBeLessThan(reynolds >= 1e4 && roughness <= 0.003 ? 0.02 : 0.0325)
    }), { numRuns: 1000 })
  })
})

describe('loss of a line', () => {
  it('rises with the flow, and falls with the bore', () => {
    fc.assert(fc.property(double(1e-4, 10), bores, temperatures, phases, double(1.001, 3), (kgPerS, boreM, temperatureK, phase, more) => {
      const loss = (flow: number, bore: number) => pipeLoss(flow, { boreM: bore, lengthM: 10, roughnessM: 4.572e-5 }, temperatureK, phase, 2)
      expect(loss(kgPerS * more, boreM)).toBeGreaterThan(loss(kgPerS, boreM))
      expect(loss(kgPerS, boreM * more)).toBeLessThan(loss(kgPerS, boreM))
    }))
  })

  it('goes with the length, and nothing flows without loss', () => {
    fc.assert(fc.property(double(1e-4, 10), bores, temperatures, phases, (kgPerS, boreM, temperatureK, phase) => {
      const loss = (flow: number, lengthM: number) => pipeLoss(flow, { boreM, lengthM, roughnessM: 4.572e-5 }, temperatureK, phase, 0)
      expect(Math.abs(loss(kgPerS, 30) / loss(kgPerS, 10) / 3 - 1)).toBeLessThan(1e-12)
      expect(loss(0, 10)).toBe(0)
    }))
  })

  it('of a mixture ends at that of liquid and that of vapour', () => {
    fc.assert(fc.property(double(0, 500), bores, temperatures, models, (massFlux, boreM, temperatureK, model) => {
      const mixture = saturatedMixture(temperatureK)
      const gradient = (quality: number) => twoPhaseGradient[model](massFlux, quality, boreM, 4.572e-5, mixture)
      expect(gradient(0)).toBeCloseTo(frictionGradient(massFlux, boreM, 4.572e-5, mixture.liquidDensity, mixture.liquidViscosity), 9)
      const vapor = frictionGradient(massFlux, boreM, 4.572e-5, mixture.vaporDensity, mixture.vaporViscosity)
      expect(Math.abs(gradient(1) - vapor)).toBeLessThanOrEqual(1e-12 * vapor)
    }))
  })

  it('of a mixture rises with the flow, and stays sound for the smallest', () => {
    fc.assert(fc.property(double(1, 300), double(1.001, 3), double(0, 1), bores, temperatures, models, (massFlux, more, quality, boreM, temperatureK, model) => {
      const gradient = (flux: number) => twoPhaseGradient[model](flux, quality, boreM, 4.572e-5, saturatedMixture(temperatureK))
      expect(gradient(massFlux * more)).toBeGreaterThan(gradient(massFlux))
      for (const tiny of [0, 5e-324, 1e-200, 1e-30]) expect(gradient(tiny)).toSatisfy((value: number) => Number.isFinite(value) && value >= 0 && value < 1e-12)
    }))
  })

  it('an omitted roughness is 0.00015 ft, an omitted ΣK 0, an omitted model MSH', () => {
    const dry: Given[] = ['25 lb/min', '4.026 in', '100 ft', '20 °F', 'vapor', 'psi']
    expect(call('PIPE.LOSS', ...dry)).toBe(call('PIPE.LOSS', ...dry, '0.00015 ft', 0))
    const wet: Given[] = ['72 lb/min', '25 %', '4.026 in', '100 ft', '20 °F', 'psi']
    expect(call('WETRETURN.LOSS', ...wet)).toBe(call('WETRETURN.LOSS', ...wet, 'MSH', '0.00015 ft'))
  })

  it('PIPE.LOSS is the law, whatever the units', () => {
    fc.assert(fc.property(double(0.01, 1), double(1, 8), double(0, 100), double(-40, 100), (kgPerS, inches, metres, fahrenheit) => {
      const law = pipeLoss(kgPerS, { boreM: inches * 0.0254, lengthM: metres, roughnessM: 0.00015 * 0.3048 }, (fahrenheit + 459.67) / 1.8, 'liquid', 1.5)
      fc.pre(law < 1e7)
      const result = call('PIPE.LOSS', `${kgPerS * 3600} kg/h`, { rows: [[inches, 'in']] }, `${metres} m`, `${fahrenheit} °F`, 'liquid', 'kPa', '0.00015 ft', '1.5')
      expect(Math.abs(Number(result) * 1000 - law)).toBeLessThanOrEqual(1e-9 * law)
    }))
  })
})

describe('line penalty', () => {
  it('leads to a temperature whose saturation pressure is lower by the loss', () => {
    fc.assert(fc.property(temperatures, double(0, 1), (temperatureK, share) => {
      const lossPa = share * greatestLoss(temperatureK)
      const after = saturationPressure(temperatureK - linePenalty(temperatureK, lossPa))
      expect(Math.abs(saturationPressure(temperatureK) - lossPa - after)).toBeLessThan(1e-9 * saturationPressure(temperatureK))
    }))
  })

  it('is above the tangent’s, and the tangent’s for small losses', () => {
    fc.assert(fc.property(double(200, saturationRange.maxK), (temperatureK) => {
      const slope = saturationSlope(temperatureK)
      expect(linePenalty(temperatureK, 0.1 * saturationPressure(temperatureK))).toBeGreaterThan((0.1 * saturationPressure(temperatureK)) / slope)
      const small = 1e-6 * saturationPressure(temperatureK)
      expect(Math.abs((linePenalty(temperatureK, small) * slope) / small - 1)).toBeLessThan(1e-5)
    }))
  })
})

describe('pipe sizes', () => {
  it('PIPE.NEXT of a size’s bore is the size, through any unit of length', () => {
    for (const schedule of schedules) {
      for (const size of pipeSizes.filter((one) => pipeBore(one, schedule) !== undefined)) {
        for (const unit of ['in', 'mm', 'ft', 'm']) {
          const bore = call('PIPE.BORE', size, schedule, unit)
          expect(call('PIPE.NEXT', `${String(bore)} ${unit}`, schedule)).toBe(size)
        }
      }
    }
  })

  it('PIPE.NEXT gives a bore at least as large, and no smaller size does', () => {
    fc.assert(fc.property(double(0.001, 0.547), fc.constantFrom(...schedules), (boreM, schedule) => {
      const size = nextPipeSize(boreM, schedule)
      expect(size).toBeDefined()
      const smaller = pipeSizes.slice(0, size === undefined ? 0 : pipeSizes.indexOf(size))
      expect(size === undefined ? 0 : (pipeBore(size, schedule) ?? 0)).toBeGreaterThanOrEqual(boreM * (1 - 1e-9))
      for (const one of smaller) expect(pipeBore(one, schedule) ?? 0).toBeLessThan(boreM)
    }))
  })

  it.each<[Given[], number]>([
    [['1/2', '½', 'NPS 1/2', '1/2 in', 0.5, '0.5'], 0.622],
    [['1-1/2', '1 1/2', '1½', ' NPS 1-1/2 ', 'nps1-1/2', '1-1/2"', '1 1/2 inch', 1.5, { rows: [['1-1/2', 'in']] }, { rows: [[1.5]] }], 1.61],
    [['2', 2, '2 in', '2in.', 'NPS 2', '2 NPS', { rows: [[2, 'in']] }, { rows: [['2', 'NPS']] }], 2.067],
  ])('%j all name the size of %d in', (spellings, bore) => {
    for (const spelling of spellings) expect(call('PIPE.BORE', spelling, 'std', 'in')).toBeCloseTo(bore, 12)
  })
})
