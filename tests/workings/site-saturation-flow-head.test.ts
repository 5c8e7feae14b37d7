import { describe, it } from 'vitest'
import { expectWorkingsToAgree } from './compare.ts'

describe('workings in a plain engine against the computation, 1 000 random calls each', () => {
  for (const name of [
    'UNIT.CONVERT', 'SITE.PRESSURE', 'SAT.PRESSURE', 'SAT.TEMPERATURE', 'SAT.SLOPE', 'LIQUID.DENSITY', 'VAPOR.DENSITY', 'LIQUID.ENTHALPY', 'VAPOR.ENTHALPY',
    'LATENT.HEAT', 'LIQUID.VISCOSITY', 'VAPOR.VISCOSITY', 'SURFACE.TENSION', 'FLASH.FRACTION', 'FEED.FLOW', 'SUCTION.FLOW', 'BOILING.FLOW',
    'HEAD.PRESSURE', 'HEAD.TEMPERATURE', 'HEAD.DRUM',
  ]) it(name, () => expectWorkingsToAgree(name))

  // A rise is a difference of two temperatures near 300 K: engines take differences below 1e-13 of the terms for nothing, so that 1e-11 K is what can be held.
  it('HEAD.RISE', () => expectWorkingsToAgree('HEAD.RISE', { scale: () => 0.01 }))
})
