import { describe, it } from 'vitest'
import { expectWorkingsToAgree } from './compare.ts'

describe('workings of the separation functions in a plain engine against the computation, 1 000 random calls each', () => {
  for (const name of ['DROPLET.VELOCITY', 'SEPARATION.VELOCITY', 'SEPARATION.FACTOR', 'DEMISTER.FACTOR', 'DRUM.DIAMETER']) {
    it(name, () => expectWorkingsToAgree(name))
  }

  // Droplets of 1 µm to 5 mm fall at 1e-5 to some 10 m/s: beyond both ends calls are refused.
  it('DROPLET.DIAMETER', () => expectWorkingsToAgree('DROPLET.DIAMETER', { bounds: { velocity: [1e-6, 50] } }))

  for (const name of ['LIQUID.AREA', 'VAPOR.AREA']) {
    it(name, () => expectWorkingsToAgree(name, { bounds: { diameter: [0.3, 4], level: [0, 4] } }))
  }

  it('DRUM.TRAVEL with one inlet, or a number of them that is refused', () =>
    expectWorkingsToAgree('DRUM.TRAVEL', { bounds: { diameter: [0.3, 4], level: [0, 4] } }))
  it('DRUM.TRAVEL with two inlets', () => expectWorkingsToAgree('DRUM.TRAVEL', { bounds: { diameter: [0.3, 4], level: [0, 4], inlets: [2, 2] } }))
})
