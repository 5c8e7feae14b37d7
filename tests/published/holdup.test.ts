import { describe, expect, it } from 'vitest'
import { latentHeat } from '../../functions/ammonia/saturation.ts'
import type { Given } from '../../functions/given.ts'
import { meanVoidFraction } from '../../functions/circulation/coil-means.ts'
import { gaussLegendre, integrate } from '../../functions/holdup/gauss-legendre.ts'
import { holdupFunctions } from '../../functions/holdup/holdup-definitions.ts'
import { voidFraction, type VoidModel } from '../../functions/holdup/void-fraction.ts'
import { saturatedMixture } from '../../functions/lines/two-phase-loss.ts'

const mass = (...given: Given[]): number => {
  const result = holdupFunctions.find(({ name }) => name === 'HOLDUP.MASS')?.call(given)
  if (typeof result !== 'number') throw new Error(JSON.stringify(result))
  return result
}
const gap = (computed: number, published: number): number => Math.abs(computed / published - 1)

// Computed with the equation of state of Gao et al. 2023 in an independent library; pipe volumes of Schedule 40 (ASME B36.10M), 0.20063 and 0.02330 ft³/ft.
describe('HOLDUP.MASS', () => {
  it('vapour hardly counts: 100 ft of 6 in dry suction at 0 °F hold 2.20 lb, of 2 in liquid line at 86 °F 86.6 lb', () => {
    expect(mass('20.063 ft3', 0, '0 °F', 'lb')).toBeCloseTo(2.2, 2)
    expect(mass('2.330 ft3', 1, '86 °F', 'lb')).toBeCloseTo(86.6, 1)
  })

  // 529.8 kg of liquid in 0.40 of the diameter of a 36 in by 10 ft drum at 20 °F, 533.6 kg with the vapour (same library, 0.3 %); volumes 0.818114 and 2.201760 m³ (fluids library).
  it('agrees with the charge of a drum: 533.6 kg', () => {
    expect(gap(mass('2.201760 m3', 0.818114 / 2.20176, '20 °F', 'kg'), 533.6)).toBeLessThan(3e-3)
  })

  it('lies on the line between vapour alone and liquid alone, share in % or not', () => {
    const [vapor, liquid] = [mass('1 m3', 0, '-40 °F', 'kg'), mass('1 m3', 1, '-40 °F', 'kg')]
    expect(mass('1 m3', 0.25, '-40 °F', 'kg')).toBeCloseTo(0.75 * vapor + 0.25 * liquid, 9)
    expect(mass('1 m3', '25 %', '-40 °F', 'kg')).toBe(mass('1 m3', 0.25, '-40 °F', 'kg'))
    expect(mass('0 m3', 1, '-40 °F', 'kg')).toBe(0)
  })
})

// Computed with the open library `fluids`, properties of Gao et al. 2023: length-averaged liquid share of a 14.9 mm tube with 2 kW at 20 °F.
describe('liquid in an evaporator tube by void models', () => {
  const temperatureK = (20 + 459.67) / 1.8
  const fluid = saturatedMixture(temperatureK)
  const evaporated = 2e3 / latentHeat(temperatureK) // kg/s
  const rule = gaussLegendre(40)
  const pieces = [0, 1e-3, 1e-2, 0.1, 0.5, 1]

  /** Quality rises linearly from `from` to `to`; all of it that boils takes the 2 kW. */
  const liquidShare = (model: VoidModel, from: number, to: number) => {
    const massFlux = evaporated / (to - from) / ((Math.PI / 4) * 0.0149 ** 2)
    const liquid = (quality: number) => 1 - voidFraction(model, { ...fluid, quality, massFlux })
    return pieces.slice(1).reduce((sum, end, i) => sum + integrate(liquid, from + (pieces[i] ?? 0) * (to - from), from + end * (to - from), rule), 0) / (to - from)
  }

  it.each([
    ['flooded, circulation number 8', 0, 1 / 8, 0.322, 0.354, 0.112],
    ['overfed, number 4', 0, 1 / 4, 0.285, 0.23, 0.065],
    ['overfed, number 2', 0, 1 / 2, 0.247, 0.137, 0.036],
    ['direct expansion from quality 0.15', 0.15, 1, 0.119, 0.03, 0.005],
  ])('%s: quality %d to %d leaves %d (Rouhani), %d (Zivi), %d (homogeneous)', (_, from, to, rouhani, zivi, homogeneous) => {
    expect(Math.abs(liquidShare('Rouhani', from, to) - rouhani)).toBeLessThan(6e-4)
    expect(Math.abs(liquidShare('Zivi', from, to) - zivi)).toBeLessThan(6e-4)
    expect(Math.abs(liquidShare('homogeneous', from, to) - homogeneous)).toBeLessThan(6e-4)
  })

  it('is what the circulation balance counts in its coil', () => {
    const ratio = fluid.vaporDensity / fluid.liquidDensity
    expect(1 - meanVoidFraction(1, ratio, 1 / 8)).toBeCloseTo(liquidShare('homogeneous', 0, 1 / 8), 9)
    expect(1 - meanVoidFraction(ratio ** (-1 / 3), ratio, 1 / 8)).toBeCloseTo(liquidShare('Zivi', 0, 1 / 8), 9)
  })

  it.each<VoidModel>(['Zivi', 'homogeneous', 'Chisholm', 'Smith', 'Baroczy', 'Lockhart', 'Rouhani', 'Steiner'])(
    'flooded holds more than overfed, overfed more than direct expansion: %s',
    (model) => {
      const [flooded, overfed, direct] = [liquidShare(model, 0, 1 / 8), liquidShare(model, 0, 1 / 4), liquidShare(model, 0.15, 1)]
      expect(flooded).toBeGreaterThan(overfed)
      expect(overfed).toBeGreaterThan(direct)
    },
  )

  it('trap: flow without slip counts less than a quarter of Rouhani’s liquid in an overfed tube, less than a tenth under direct expansion', () => {
    expect(liquidShare('homogeneous', 0, 1 / 4) / liquidShare('Rouhani', 0, 1 / 4)).toBeLessThan(0.25)
    expect(liquidShare('homogeneous', 0.15, 1) / liquidShare('Rouhani', 0.15, 1)).toBeLessThan(0.1)
  })
})
