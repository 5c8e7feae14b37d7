import { describe, expect, it } from 'vitest'
import type { Given } from '../../functions/given.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import { voidModels } from '../../functions/holdup/void-fraction.ts'
import { expectWorkingsToAgree } from './compare.ts'
import { workingsValues } from './plain-engine.ts'

describe('workings of holdup and void fraction in a plain engine against the computation, 1 000 random calls each', () => {
  it('HOLDUP.MASS', () => expectWorkingsToAgree('HOLDUP.MASS'))
  it('VOID.FRACTION', () => expectWorkingsToAgree('VOID.FRACTION', { valid: 2000 }))
  // In hot, fast and nearly liquid flow Premoli's root ends at 0: flow without slip beyond.
  it('VOID.FRACTION, qualities of a few percent and less', () => expectWorkingsToAgree('VOID.FRACTION', { bounds: { quality: [1e-9, 0.05], massFlux: [10, 1e4] } }))
})

describe('void fraction at the ends and without what a model needs', () => {
  const definition = functionByName('VOID.FRACTION')
  if (definition === undefined) throw new Error('there is no function VOID.FRACTION')
  const flow = (quality: number, model: string, ...rest: Given[]): readonly Given[] => [quality, { rows: [[20, '°F']] }, model, ...rest]
  const [flux, bore, tooFast, tooWide]: readonly Given[] = [{ rows: [[25, 'kg/(m2·s)']] }, { rows: [[2, 'in']] }, { rows: [[2e4, 'kg/(m2·s)']] }, { rows: [[3, 'm']] }]

  it.each(Object.keys(voidModels))('%s: liquid alone leaves 0, vapour alone 1, exactly', (model) => {
    expect(workingsValues(definition, [flow(0, model, flux, bore), flow(1, model, flux, bore)])).toEqual([0, 1])
  })

  it.each(Object.entries(voidModels))('%s: is an error exactly where mass flux or bore is missing that it needs, or either is out of range', (model, { needs }) => {
    const calls = [flow(0.2, model), flow(0.2, model, flux), flow(0.2, model, flux, bore), flow(0.2, model, tooFast, bore), flow(0.2, model, flux, tooWide)]
    const refused = calls.map((call) => isFault(definition.call(call)))
    expect(refused).toEqual([needs.length > 0, needs.length > 1, false, true, true])
    expect(workingsValues(definition, calls).map((value) => typeof value === 'string' && value.startsWith('#'))).toEqual(refused)
  })
})
