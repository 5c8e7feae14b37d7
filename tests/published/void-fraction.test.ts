import { describe, expect, it } from 'vitest'
import { holdupFunctions } from '../../functions/holdup/holdup-definitions.ts'
import { voidFraction, voidModels, type VoidModel } from '../../functions/holdup/void-fraction.ts'
import type { Given } from '../../functions/given.ts'

const circle = (boreM: number) => (Math.PI / 4) * boreM ** 2

// Ammonia of about −11 °C, properties fixed.
const fluid = { liquidDensity: 650, vaporDensity: 2.7, liquidViscosity: 2e-4, vaporViscosity: 8.85e-6, surfaceTension: 0.029 }

// Computed with the open library `fluids`; Premoli, which it lacks in this form, with an independent computation of its own. Tolerance 1e-4.
const columns: readonly VoidModel[] = ['homogeneous', 'Zivi', 'Chisholm', 'Smith', 'Steiner', 'Rouhani', 'Baroczy', 'Lockhart', 'Premoli']
const table: readonly (readonly [quality: number, massFlow: number, boreM: number, ...shares: number[]])[] = [
  [0.05, 0.2, 0.1, 0.92685, 0.670705, 0.778562, 0.777584, 0.647096, 0.61449, 0.727149, 0.753398, 0.755297],
  [0.1, 0.2, 0.1, 0.963963, 0.811317, 0.842583, 0.848584, 0.762133, 0.721085, 0.822466, 0.831219, 0.82955],
  [0.25, 0.2, 0.1, 0.987692, 0.928056, 0.911348, 0.923026, 0.863699, 0.820641, 0.912625, 0.90857, 0.9023],
  [0.5, 0.2, 0.1, 0.995863, 0.97481, 0.956327, 0.966771, 0.923805, 0.890753, 0.959265, 0.952498, 0.945628],
  [0.25, 1, 0.15, 0.987692, 0.928056, 0.911348, 0.923026, 0.886536, 0.841231, 0.912625, 0.90857, 0.921969],
]

describe('void fraction of ammonia near −11 °C (fluids library; Premoli computed independently)', () => {
  const cases = table.flatMap(([quality, massFlow, boreM, ...shares]) => columns.map((model, i) => ({ model, quality, massFlow, boreM, share: shares[i] ?? NaN })))
  it.each(cases)('$model: $share at quality $quality, $massFlow kg/s in $boreM m', ({ model, quality, massFlow, boreM, share }) => {
    expect(Math.abs(voidFraction(model, { ...fluid, quality, massFlux: massFlow / circle(boreM), boreM }) - share)).toBeLessThan(1e-4)
  })
})

// Examples in the documentation of the open library `fluids`, six digits: quality 0.4, densities 800 and 2.5, surface tension 0.02, 1 kg/s in 0.3 m.
describe('void fraction at quality 0.4, 800 and 2.5 kg/m³ (documented examples of the fluids library)', () => {
  it.each<[VoidModel, number]>([
    ['Zivi', 0.968934], ['Chisholm', 0.949526], ['Smith', 0.959981], ['Rouhani', 0.858842], ['Steiner', 0.89595],
  ])('%s: %d', (model, share) => {
    const computed = voidFraction(model, {
      quality: 0.4, liquidDensity: 800, vaporDensity: 2.5, liquidViscosity: 1e-3, vaporViscosity: 1e-5, surfaceTension: 0.02, massFlux: 1 / circle(0.3),
    })
    expect(Math.abs(computed - share)).toBeLessThan(6e-7)
  })

  it('Lockhart, from its parameter Xtt of 0.127617', () => {
    const computed = voidFraction('Lockhart', { quality: 0.4, liquidDensity: 800, vaporDensity: 2.5, liquidViscosity: 1e-3, vaporViscosity: 1e-5, surfaceTension: 0.02 })
    expect(computed).toBeCloseTo(1 / (1 + 0.28 * 0.127617 ** 0.71), 6)
  })
})

describe('traps', () => {
  // Same table: at quality 0.25 without slip 1.2 % of the section is liquid, by the other models 7 to 18 %.
  it('flow without slip counts five to fifteen times too little liquid', () => {
    const liquid = (model: VoidModel) => 1 - voidFraction(model, { ...fluid, quality: 0.25, massFlux: 0.2 / circle(0.1), boreM: 0.1 })
    for (const model of columns.filter((name) => name !== 'homogeneous')) {
      expect(liquid(model) / liquid('homogeneous')).toBeGreaterThan(5)
      expect(liquid(model) / liquid('homogeneous')).toBeLessThan(15)
    }
  })

  // 0.546377 in the same table, against 0.82 to 0.99 by every model offered.
  it('no model gives the collapsed void fraction of Rouhani’s second C0', () => {
    expect(Object.keys(voidModels).toSorted()).toEqual([...columns].toSorted())
    for (const model of columns) expect(voidFraction(model, { ...fluid, quality: 0.25, massFlux: 0.2 / circle(0.1), boreM: 0.1 })).toBeGreaterThan(0.8)
  })
})

describe('VOID.FRACTION', () => {
  const call = (...given: Given[]) => holdupFunctions.find(({ name }) => name === 'VOID.FRACTION')?.call(given)

  it('takes Zivi where no model is given', () => expect(call(0.1, '0 °F')).toBe(call(0.1, '0 °F', 'Zivi')))

  it('is 0 for liquid alone and 1 for vapour alone, by every model', () => {
    for (const model of columns) {
      expect(call(0, '20 °F', model, '25 kg/(m2·s)', '4 in')).toBe(0)
      expect(call(1, '20 °F', model, '25 kg/(m2·s)', '4 in')).toBe(1)
    }
  })
})
