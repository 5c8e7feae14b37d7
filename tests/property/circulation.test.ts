import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { latentHeat } from '../../functions/ammonia/saturation.ts'
import { balanceAt, losses, slipModels, type Loop, type LoopFluid, type SlipModel } from '../../functions/circulation/balance.ts'
import { circulation, GREATEST_NUMBER } from '../../functions/circulation/circulation.ts'
import { meanFrictionGradient, meanVoidFraction } from '../../functions/circulation/coil-means.ts'
import { isFault } from '../../functions/fault.ts'
import { gaussLegendre, integrate } from '../../functions/holdup/gauss-legendre.ts'
import { voidFraction } from '../../functions/holdup/void-fraction.ts'
import { saturatedMixture, twoPhaseGradient } from '../../functions/lines/two-phase-loss.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Evenly over the powers of ten. */
const across = (min: number, max: number) => between(Math.log(min), Math.log(max)).map(Math.exp)

const fluids: fc.Arbitrary<LoopFluid> = between(200, 370).map((temperatureK) => ({ ...saturatedMixture(temperatureK), latentHeat: latentHeat(temperatureK) }))
const models = fc.constantFrom<SlipModel>('Zivi', 'homogeneous')

const orNone = (some: fc.Arbitrary<number>) => fc.oneof({ weight: 1, arbitrary: fc.constant(0) }, { weight: 9, arbitrary: some })
const branches = fc.record({ boreM: across(0.005, 1), lengthM: orNone(across(0.01, 100)), resistance: orNone(across(0.01, 50)) })
const loops: fc.Arbitrary<Loop> = fc.record({
  levelM: across(0.05, 30), leg: branches, coilHeightM: orNone(across(0.01, 10)), circuits: fc.integer({ min: 1, max: 200 }), circuitBoreM: across(0.004, 0.1),
  circuitLengthM: across(0.1, 100), wetReturn: branches, returnRiseM: orNone(across(0.01, 20)), roughnessM: orNone(across(1e-6, 1e-4)),
})
const loads = across(10, 1e6)

/** Loops of ordinary make, which mostly circulate: the level where the return ends. */
const ordinary = fc.record({
  fluid: between(220, 300).map((temperatureK) => ({ ...saturatedMixture(temperatureK), latentHeat: latentHeat(temperatureK) })),
  loop: fc.record({
    levelM: between(1, 6), leg: fc.record({ boreM: between(0.04, 0.1), lengthM: between(2, 10), resistance: between(0.5, 6) }),
    coilHeightM: between(0.5, 1), circuits: fc.integer({ min: 8, max: 24 }), circuitBoreM: between(0.015, 0.03), circuitLengthM: between(5, 20),
    wetReturn: fc.record({ boreM: between(0.07, 0.2), lengthM: between(2, 10), resistance: between(0.5, 6) }), returnRiseM: fc.constant(0), roughnessM: fc.constant(4.572e-5),
  }).map((loop) => ({ ...loop, returnRiseM: loop.levelM - loop.coilHeightM })),
  loadW: across(5e3, 100e3),
  model: models,
})

const numberOf = (loop: Loop, fluid: LoopFluid, loadW: number, model: SlipModel): number | undefined => {
  const found = circulation(loop, fluid, loadW, model)
  return isFault(found) ? undefined : found.circulationNumber
}

describe('means along a coil, closed form against numerical integration (40 nodes, in pieces)', () => {
  const rule = gaussLegendre(40)
  /** In pieces that grow from 0, where the void fraction bends most, and shrink towards 1, where the friction gradient is infinitely steep. */
  const mean = (f: (x: number) => number, to: number) => {
    const ends = [0, ...Array.from({ length: 20 }, (_, i) => (to / 2) * 2 ** (i - 19)), ...Array.from({ length: 50 }, (_, i) => to * (1 - 0.5 ** (i + 2))), to]
    return ends.slice(1).reduce((sum, end, i) => sum + integrate(f, ends[i] ?? 0, end, rule), 0) / to
  }

  it('void fraction without slip and by Zivi, to 1e-9', () => {
    fc.assert(fc.property(fluids, across(1e-3, 1), models, (fluid, outletQuality, model) => {
      const closed = meanVoidFraction(slipModels[model](fluid), fluid.vaporDensity / fluid.liquidDensity, outletQuality)
      expect(Math.abs(closed / mean((quality) => voidFraction(model, { ...fluid, quality }), outletQuality) - 1)).toBeLessThan(1e-9)
    }), { examples: [[{ ...saturatedMixture(263), latentHeat: 1.3e6 }, 1, 'homogeneous'], [{ ...saturatedMixture(370), latentHeat: 1.3e6 }, 1e-3, 'Zivi']] })
  })

  it('friction gradient by Müller-Steinhagen and Heck, to 1e-9', () => {
    fc.assert(fc.property(fluids, across(1e-3, 1), across(1, 1000), across(0.005, 0.1), (fluid, outletQuality, massFlux, boreM) => {
      const gradient = (quality: number) => twoPhaseGradient.MSH(massFlux, quality, boreM, 4.572e-5, fluid)
      const closed = meanFrictionGradient(gradient(0), gradient(1), outletQuality)
      expect(Math.abs(closed / mean(gradient, outletQuality) - 1)).toBeLessThan(1e-9)
    }), { examples: [[{ ...saturatedMixture(263), latentHeat: 1.3e6 }, 1, 100, 0.02]] })
  })
})

describe('losses of a loop at a load', () => {
  // This is why the balance has one root at most, and why that one is stable.
  it('rise with the circulation number, each of them, whatever the loop', () => {
    fc.assert(fc.property(loops, fluids, loads, models, across(1, GREATEST_NUMBER), across(1.001, 10), (loop, fluid, loadW, model, circulationNumber, factor) => {
      const [before, after] = [circulationNumber, circulationNumber * factor].map((it) => balanceAt(it, loop, fluid, loadW, model))
      if (before === undefined || after === undefined) throw new Error('two balances were asked for')
      for (const part of ['legLossPa', 'coilFrictionPa', 'coilAccelerationPa', 'coilColumnPa', 'returnFrictionPa', 'returnColumnPa'] as const) {
        // Equal where there is no such length, height or resistance, and where a submerged return's column hides the rise.
        expect(after[part]).toBeGreaterThanOrEqual(before[part])
      }
      expect(after.coilFrictionPa).toBeGreaterThan(before.coilFrictionPa)
      expect(after.drivingHeadPa).toBe(before.drivingHeadPa)
    }), { numRuns: 5000 })
  })
})

describe('natural circulation', () => {
  it('balances: what drives is what is taken up, to 1e-9', () => {
    fc.assert(fc.property(loops, fluids, loads, models, (loop, fluid, loadW, model) => {
      const found = circulation(loop, fluid, loadW, model)
      fc.pre(!isFault(found))
      const { drivingHeadPa } = found.balance
      expect(Math.abs(losses(found.balance) / drivingHeadPa - 1)).toBeLessThan(1e-9)
      expect(found.circulationNumber).toBeGreaterThanOrEqual(1)
      expect(found.circulationNumber).toBeLessThanOrEqual(GREATEST_NUMBER)
    }), { numRuns: 500 })
  })

  it('is refused only where the level cannot drive circulation number 1, or still drives the greatest', () => {
    fc.assert(fc.property(loops, fluids, loads, models, (loop, fluid, loadW, model) => {
      const excess = (it: number) => {
        const balance = balanceAt(it, loop, fluid, loadW, model)
        return balance.drivingHeadPa - losses(balance)
      }
      const found = circulation(loop, fluid, loadW, model)
      if (!isFault(found)) return
      expect(found.fault).toBe('#NUM!')
      if (/dry out/.test(found.message)) expect(excess(1)).toBeLessThan(0)
      else expect(excess(GREATEST_NUMBER)).toBeGreaterThan(0)
    }), { numRuns: 500 })
  })

  it('falls with the load', () => {
    fc.assert(fc.property(ordinary, between(1.01, 3), ({ loop, fluid, loadW, model }, factor) => {
      const [light, heavy] = [numberOf(loop, fluid, loadW, model), numberOf(loop, fluid, loadW * factor, model)]
      fc.pre(light !== undefined && heavy !== undefined)
      expect(heavy).toBeLessThan(light)
    }))
  })

  it('rises with the level up to where the return ends', () => {
    fc.assert(fc.property(ordinary, between(0.1, 0.99), ({ loop, fluid, loadW, model }, share) => {
      const [low, high] = [numberOf({ ...loop, levelM: loop.levelM * share }, fluid, loadW, model), numberOf(loop, fluid, loadW, model)]
      fc.pre(low !== undefined && high !== undefined)
      expect(high).toBeGreaterThan(low)
    }))
  })

  it('rises with a wider leg and a wider return', () => {
    fc.assert(fc.property(ordinary, between(1.05, 3), ({ loop, fluid, loadW, model }, factor) => {
      const wider = (branch: Loop['leg']) => ({ ...branch, boreM: branch.boreM * factor })
      const numbers = [loop, { ...loop, leg: wider(loop.leg) }, { ...loop, wetReturn: wider(loop.wetReturn) }].map((one) => numberOf(one, fluid, loadW, model))
      const [now, widerLeg, widerReturn] = numbers
      fc.pre(now !== undefined && widerLeg !== undefined && widerReturn !== undefined)
      expect(widerLeg).toBeGreaterThan(now)
      expect(widerReturn).toBeGreaterThan(now)
    }))
  })

  it('is larger without slip, which leaves less liquid in coil and return', () => {
    fc.assert(fc.property(ordinary, ({ loop, fluid, loadW }) => {
      const [homogeneous, zivi] = [numberOf(loop, fluid, loadW, 'homogeneous'), numberOf(loop, fluid, loadW, 'Zivi')]
      fc.pre(homogeneous !== undefined && zivi !== undefined)
      expect(homogeneous).toBeGreaterThan(zivi)
    }))
  })
})
