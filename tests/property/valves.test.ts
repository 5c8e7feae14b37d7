import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { saturationPressure } from '../../functions/ammonia/saturation.ts'
import { valveFunctions } from '../../functions/valves/valves-definitions.ts'
import { expansionFactor, vaporFlowCoefficient } from '../../functions/valves/vapor-valve.ts'
import type { Given } from '../../functions/given.ts'

const call = (name: string, ...given: Given[]) => valveFunctions.find((one) => one.name === name)?.call(given)

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A liquid, the pressure before the valve, at or above its saturation, and FL. */
const cases = fc.record({ liquidK: double(200, 340), excess: double(0, 1), FL: double(0.3, 1) })
  .map(({ liquidK, excess, FL }) => ({ liquid: `${liquidK} K`, inletPa: saturationPressure(liquidK) * (1 + excess), FL }))

const needed = ({ liquid, inletPa, FL }: { liquid: string; inletPa: number; FL: number }, dropPa: number): number =>
  Number(call('VALVE.LIQUID', '1 kg/s', `${inletPa} Pa`, `${inletPa - dropPa} Pa`, liquid, FL, 'Kv'))

const choke = ({ liquid, inletPa, FL }: { liquid: string; inletPa: number; FL: number }): number => Number(call('VALVE.CHOKE', `${inletPa} Pa`, liquid, FL, 'Pa'))

describe('a valve for liquid', () => {
  it('is continuous where it chokes, smaller before, and the same beyond', () => {
    fc.assert(fc.property(cases, double(0.01, 0.99), (one, share) => {
      const chokePa = choke(one)
      const at = needed(one, chokePa)
      expect(Math.abs(needed(one, chokePa * (1 - 1e-6)) / at - 1)).toBeLessThan(1e-6)
      expect(needed(one, share * chokePa)).toBeGreaterThan(at)
      const beyond = chokePa + share * (one.inletPa - chokePa)
      expect(Math.abs(needed(one, beyond) / at - 1)).toBeLessThan(1e-9)
    }))
  })

  it('chokes at a drop above nothing and below the inlet pressure; a tenth of it, or FL² of that, where the liquid is saturated', () => {
    fc.assert(fc.property(cases, (one) => {
      expect(choke(one)).toBeGreaterThan(0)
      expect(choke(one)).toBeLessThan(one.inletPa)
    }))
    fc.assert(fc.property(double(233, 308), double(0.3, 1), (liquidK, FL) => {
      const share = choke({ liquid: `${liquidK} K`, inletPa: saturationPressure(liquidK), FL }) / saturationPressure(liquidK) / FL ** 2
      expect(share).toBeGreaterThan(0.04)
      expect(share).toBeLessThan(0.15)
    }))
  })

  it('goes with the flow', () => {
    fc.assert(fc.property(double(1e-6, 100), (kgPerS) => {
      const kv = (flow: number) => Number(call('VALVE.LIQUID', `${flow} kg/s`, '200 psia', '180 psia', '86 °F', 0.9, 'Kv'))
      expect(Math.abs(kv(2 * kgPerS) - 2 * kv(kgPerS))).toBeLessThanOrEqual(1e-12 * kv(2 * kgPerS))
    }))
  })
})

describe('a valve for vapour', () => {
  it('needs less coefficient for more drop, until it chokes; then no less', () => {
    fc.assert(fc.property(double(200, 340), double(0.2, 0.85), double(0.01, 0.99), double(0.01, 0.99), (temperatureK, xT, a, b) => {
      const inletPa = saturationPressure(temperatureK)
      const kv = (ratio: number) => Number(call('VALVE.VAPOR', '1 kg/s', `${temperatureK} K`, `${ratio * inletPa} Pa`, xT, 'Kv'))
      const [less, more] = [Math.min(a, b), Math.max(a, b)]
      const chokeRatio = (1.3 / 1.4) * xT
      if (less >= chokeRatio) expect(Math.abs(kv(more) / kv(less) - 1)).toBeLessThan(1e-12)
      // Flat where it comes to the choke: there rounding decides.
      else if (Math.min(more, chokeRatio) > less * 1.001) expect(kv(more)).toBeLessThan(kv(less))
    }))
  })

  it('expands by two thirds at the choke', () => {
    fc.assert(fc.property(double(0.1, 1), double(1, 3), (chokeRatio, times) => {
      expect(expansionFactor(chokeRatio * times, chokeRatio)).toBeCloseTo(2 / 3, 12)
    }))
  })

  it('comes to the liquid’s equation as the drop dies away: N6² is its water, 999.1 kg/m3, rounded', () => {
    const dropPa = 1e-3
    const volume = (Math.sqrt(2.7 / 999.1) * 3600) / 2.7 / Math.sqrt(dropPa / 1e5)
    expect(Math.abs(vaporFlowCoefficient(1, 3e5, 2.7, dropPa, 0.7, 1.3) / volume - 1)).toBeLessThan(4e-4)
  })
})
