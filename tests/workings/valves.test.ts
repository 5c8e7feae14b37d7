import { describe, it } from 'vitest'
import { expectWorkingsToAgree } from './compare.ts'

// Liquid up to 40 °C has a saturation pressure of 15.5 bar: pressures from below it to well above, and outlets now and then above the inlet.
const PRESSURES = { inlet: [2e5, 20e5], outlet: [1e5, 18e5], liquid: [230, 313] } as const

describe('workings of the valve functions in a plain engine against the computation, 1 000 random calls each', () => {
  it('VALVE.LIQUID', () => expectWorkingsToAgree('VALVE.LIQUID', { bounds: { ...PRESSURES, FL: [0.4, 1] } }))
  it('VALVE.CHOKE', () => expectWorkingsToAgree('VALVE.CHOKE', { bounds: PRESSURES }))
  it('VALVE.VAPOR', () => expectWorkingsToAgree('VALVE.VAPOR', { bounds: { drop: [1e3, 8e5] } }))
  it('VALVE.VAPOR at small drops', () => expectWorkingsToAgree('VALVE.VAPOR', { bounds: { drop: [100, 2e4] } }))
})
