import { describe, expect, it } from 'vitest'
import {
  type AmmoniaState,
  ammoniaState,
  criticalPressurePa,
  molarGasConstant,
  molarMass,
} from '../../functions/ammonia/equation-of-state.ts'
import { saturationReference } from '../../functions/ammonia/saturation-reference.ts'
import { printedGap } from './ammonia-printed.ts'

/** Gao et al., J. Phys. Chem. Ref. Data 52, 013102 (2023), Table 7, as quoted by an open-source test suite. */
const table7 = [
  // T K, mol/dm3, MPa, cv and cp J/(mol K), w m/s, h kJ/mol, s J/(mol K)
  '200 50 555.5631 56.15976 74.22262 2940.432 9.541211 -11.61817',
  '250 42 108.7263 50.25907 72.04765 2049.168 5.715934 14.26145',
  '320 35 27.63275 46.95882 78.92022 1370.446 9.831787 36.06050',
  '380 26 8.174128 47.82965 125.1971 668.5456 15.45317 53.81385',
  '405 16.5 11.25287 77.13442 4137.738 247.2696 20.13541 65.30611',
  '406 13.696 11.45246 103.0508 52943.69 225.4458 21.30410 68.15535',
  '225 0 0.0 25.60265 33.91711 381.4709 26.38996',
  '275 0.2 0.4270652 32.60471 45.39676 402.6253 27.46383 104.2956',
  '325 0.95 2.093496 40.68660 65.25439 402.2104 27.92681 94.19375',
  '375 3 6.044096 48.91890 111.3738 379.4300 27.45404 86.36105',
  '405 10 11.22040 77.15007 2051.793 286.2398 23.20689 72.89756',
  '520 1.5 5.968880 36.52118 49.38647 538.8044 36.23166 106.6103',
  '520 13.696 35.83377 43.66588 98.36082 555.4454 28.71997 80.49762',
  '520 20 56.30750 43.81573 87.32996 741.1842 26.48937 73.89537',
  '620 5.5 24.38934 41.29819 61.81978 588.0372 38.40927 100.0682',
  '620 14 58.52754 43.50218 75.46188 692.5867 34.49909 87.78122',
  '620 45 1355.431 50.78124 64.36735 3201.084 50.78325 54.81426',
].map((line) => line.split(' '))

const columns: Record<string, (state: AmmoniaState) => number> = {
  'pressure MPa': (state) => state.pressurePa / 1e6,
  'cv J/(mol K)': (state) => state.cvJPerKgK * molarMass,
  'cp J/(mol K)': (state) => state.cpJPerKgK * molarMass,
  'speed of sound m/s': (state) => state.speedOfSoundMPerS,
  'enthalpy kJ/mol': (state) => (state.enthalpyJPerKg * molarMass) / 1e3,
  'entropy J/(mol K)': (state) => state.entropyJPerKgK * molarMass,
}

function stateAt(temperatureK: number, molPerM3: number): AmmoniaState {
  return ammoniaState(temperatureK, molPerM3 * molarMass)
}

describe.each(table7)('Gao et al. 2023, Table 7, at %s K and %s mol/dm3', (temperature, density, ...printed) => {
  const state = stateAt(Number(temperature), Number(density) * 1000)
  // The paper prints no entropy at zero density, where it is infinite.
  const rows = Object.entries(columns)
    .slice(0, printed.length)
    .map(([name, read], index) => ({ name, read, value: printed[index] ?? 'missing' }))

  it.each(rows)('$name is $value', ({ read, value }) => {
    expect(printedGap(read(state), value)).toBeLessThanOrEqual(1)
  })
})

it('Table 7 of Gao et al. 2023 gives 101 values', () => {
  expect(table7.flatMap(([, , ...printed]) => printed)).toHaveLength(101)
})

describe('relations between the properties (thermodynamics, no table)', () => {
  const temperatureK = 320
  const density = 520
  const step = 1e-4

  it('Gibbs energy is h - T s', () => {
    const state = ammoniaState(temperatureK, density)
    expect(state.gibbsJPerKg).toBeCloseTo(state.enthalpyJPerKg - temperatureK * state.entropyJPerKgK, 6)
  })

  it('the Gibbs energy falls by s a kelvin and rises by v a pascal', () => {
    const warmer = ammoniaState(temperatureK * (1 + step), density)
    const colder = ammoniaState(temperatureK * (1 - step), density)
    const state = ammoniaState(temperatureK, density)
    const change = warmer.gibbsJPerKg - colder.gibbsJPerKg
    const expected =
      -state.entropyJPerKgK * (warmer.temperatureK - colder.temperatureK) +
      (warmer.pressurePa - colder.pressurePa) / density
    expect(change / expected).toBeCloseTo(1, 6)
  })
})

describe('fixed points of Gao et al. 2023', () => {
  /** The critical and triple values below were computed with R = 8.3144598; pressure scales with R. */
  const gasConstantRatio = molarGasConstant / 8.3144598

  it('molar mass 17.03052 g/mol', () => {
    expect(molarMass * 1000).toBeCloseTo(17.03052, 10)
  })

  it('critical point 405.56 K, 233.25 kg/m3, 11.3634 MPa', () => {
    expect(printedGap(criticalPressurePa / 1e6, '11.3634')).toBeLessThanOrEqual(1)
    expect(criticalPressurePa / (11363391.2 * gasConstantRatio)).toBeCloseTo(1, 7)
    expect(13696 * molarMass).toBeCloseTo(233.25, 2)
  })

  it('at the critical point the isotherm is level (computed with an independent library: 405.55999997 K)', () => {
    const at = (factor: number) => stateAt(405.56, 13696 * factor).pressurePa
    expect(Math.abs(at(1.001) - at(0.999)) / criticalPressurePa).toBeLessThan(1e-6)
  })

  it('triple point 195.49 K: 6053.3868 Pa, 43090.546 and 3.7407892 mol/m3 (independent library); 6.056 kPa within 0.3 % (paper)', () => {
    const { pressurePa, liquid, vapor } = saturationReference(195.49)
    expect(pressurePa / (6053.3868321712 * gasConstantRatio)).toBeCloseTo(1, 9)
    expect(liquid.densityKgPerM3 / molarMass / 43090.546280754).toBeCloseTo(1, 9)
    expect(vapor.densityKgPerM3 / molarMass / 3.7407891417639).toBeCloseTo(1, 9)
    expect(Math.abs(pressurePa / 6056 - 1)).toBeLessThan(0.003)
  })

  it('the equation has u = 0 and s = 0 for saturated liquid at the triple point, h there 0.14048 J/mol', () => {
    const density = saturationReference(195.49).liquid.densityKgPerM3
    const state = ammoniaState(195.49, density)
    expect(state.enthalpyJPerKg * molarMass).toBeCloseTo(0.14048, 4)
    expect(state.entropyJPerKgK * molarMass).toBeCloseTo(0, 6)
  })
})
