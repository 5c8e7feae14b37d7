import { describe, expect, it } from 'vitest'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import { expectWorkingsToAgree } from './compare.ts'
import { workingsValues } from './plain-engine.ts'

// Set pressures from below the atmosphere to where ammonia, 10 % above, boils past the property range.
const SET = { setPressure: [0.8e5, 60e5] } as const

describe('workings of the relief functions in a plain engine against the computation, 1 000 random calls each', () => {
  it('RELIEF.CAPACITY', () => expectWorkingsToAgree('RELIEF.CAPACITY'))
  it('RELIEF.SCFM', () => expectWorkingsToAgree('RELIEF.SCFM'))
  it('RELIEF.AMMONIA', () => expectWorkingsToAgree('RELIEF.AMMONIA', { bounds: SET }))
  it('RELIEF.FIRE', () => expectWorkingsToAgree('RELIEF.FIRE', { bounds: SET }))
  it('RELIEF.PIPE', () => expectWorkingsToAgree('RELIEF.PIPE', { bounds: { ...SET, bore: [0.02, 0.2], ratedCapacity: [0.01, 2] } }))

  // The rule's two constants leave a sliver where the start lies above the choked end and the length is below nothing: random calls miss it.
  it('RELIEF.PIPE refuses a length below nothing', () => {
    const definition = functionByName('RELIEF.PIPE')
    if (definition === undefined) throw new Error('there is no function RELIEF.PIPE')
    // At 1 in the outlet stands at 0.6226 × 47.2 = 29.387 psia (ASHRAE 15-2004, Appendix H); 0.15 of the set pressure and the standard atmosphere make a little more.
    const call = (setPsig: number) => [{ rows: [[1, 'in']] }, { rows: [[47.2, 'lb/min']] }, { rows: [[setPsig, 'psig']] }, 'ft']
    const calls = [call(97.99), call(102)]
    const computed = calls.map((one) => definition.call(one))
    expect(computed.map(isFault)).toEqual([true, false])
    expect(workingsValues(definition, calls)).toEqual(['#N/A', expect.closeTo(Number(computed[1]), 9)])
  })
})
