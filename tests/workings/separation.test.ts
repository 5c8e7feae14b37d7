import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { expectWorkingsToAgree } from './compare.ts'
import { workingsValues } from './plain-engine.ts'

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

describe('workings at a bound that random calls miss', () => {
  const values = (name: string, calls: readonly (readonly Given[])[]) => {
    const definition = functionByName(name)
    if (definition === undefined) throw new Error(`there is no function ${name}`)
    return workingsValues(definition, calls)
  }
  const pair = (value: number, unit: string): Given => ({ rows: [[value, unit]] })

  it('a mesh pad’s K is 0.35 ft/s at 15 and at 40 psia (Svrcek and Monnery 1993), whichever unit says so', () => {
    const found = values('DEMISTER.FACTOR', [[pair(15, 'psia'), 'ft/s'], [pair(40, 'psia'), 'ft/s'], [pair(40 * 6.894757293168361, 'kPa'), 'ft/s']])
    for (const value of found) expect(value).toBeCloseTo(0.35, 12)
  })

  it('a full drum is full in both units, has no gas space, and no travel along it', () => {
    const full = [pair(36, 'in'), pair(3, 'ft')]
    expect(values('LIQUID.AREA', [[...full, 'ft2']])[0]).toBeCloseTo((Math.PI / 4) * 9, 12) // area of the circle
    expect(values('VAPOR.AREA', [[...full, 'ft2']])).toEqual([0])
    expect(values('DRUM.TRAVEL', [[...full, pair(126, 'cfm'), pair(112, 'ft/min'), 'in']])).toEqual(['#N/A'])
  })

  it('the droplets at both ends, 1 µm and 5 mm, come back from their velocities by every law', () => {
    const ends = ['Haider', 'Clift', 'Cheng', 'Stokes'].flatMap((law) => [200, 250, 370].flatMap((kelvin) => [1, 5000].map((micrometres) => ({ law, kelvin, micrometres }))))
    const velocities = values('DROPLET.VELOCITY', ends.map(({ law, kelvin, micrometres }) => [pair(micrometres, 'µm'), pair(kelvin, 'K'), 'm/s', law]))
    const back = values('DROPLET.DIAMETER', ends.map(({ law, kelvin }, index) => [pair(Number(velocities[index]), 'm/s'), pair(kelvin, 'K'), 'µm', law]))
    for (const [index, { micrometres }] of ends.entries()) expect(Number(back[index]) / micrometres).toBeCloseTo(1, 11)
  })
})
