import { describe, expect, it } from 'vitest'
import { molarGasConstant } from '../../functions/ammonia/equation-of-state.ts'
import * as table from '../../functions/ammonia/saturation.ts'
import { printedGap, printedTolerance } from './ammonia-printed.ts'

// NIST SP 811, appendix B.8.
const paPerPsi = 6894.757293168361
const kgM3PerLbFt3 = 16.01846337396014
const jKgPerBtuLb = 2326
const ft3PerUsGallon = 231 / 1728

const minus40K = 233.15

/** Tolerances between good sources of ammonia data (common practice: published tables differ by this much). */
const tolerance = {
  pressure: 0.003,
  liquidDensity: 0.002,
  vaporDensity: 0.005,
  enthalpyDifference: 0.003,
  // Haar & Gallagher heat the liquid by up to 0.83 % less between -40 and 0 °C than Gao et al.
  liquidEnthalpyRise: 0.009,
}

/** The independent library computes with R = 8.3144598; its pressures and enthalpies scale with that. */
const libraryGasConstant = 8.3144598 / molarGasConstant

/** Relative difference less what rounding of the printed value can hide. */
function gapBeyondRounding(value: number, printed: string): number {
  return Math.max(0, Math.abs(value - Number(printed)) - printedTolerance(printed)) / Math.abs(Number(printed))
}

function us(fahrenheit: number) {
  const temperatureK = (fahrenheit + 459.67) / 1.8
  const zero = table.liquidEnthalpy(minus40K)
  return {
    psia: table.saturationPressure(temperatureK) / paPerPsi,
    liquidLbFt3: table.liquidDensity(temperatureK) / kgM3PerLbFt3,
    vaporLbFt3: table.vaporDensity(temperatureK) / kgM3PerLbFt3,
    vaporFt3Lb: kgM3PerLbFt3 / table.vaporDensity(temperatureK),
    // Reference of the trade tables: liquid at -40 °F.
    hf: (table.liquidEnthalpy(temperatureK) - zero) / jKgPerBtuLb,
    hg: (table.vaporEnthalpy(temperatureK) - zero) / jKgPerBtuLb,
    hfg: table.latentHeat(temperatureK) / jKgPerBtuLb,
  }
}

function si(celsius: number) {
  const temperatureK = celsius + 273.15
  return {
    kPa: table.saturationPressure(temperatureK) / 1e3,
    liquid: table.liquidDensity(temperatureK),
    vapor: table.vaporDensity(temperatureK),
    hf: table.liquidEnthalpy(temperatureK) / 1e3,
    hg: table.vaporEnthalpy(temperatureK) / 1e3,
    hfg: table.latentHeat(temperatureK) / 1e3,
    rise: (table.liquidEnthalpy(temperatureK) - table.liquidEnthalpy(minus40K)) / 1e3,
  }
}

describe('Gao et al. 2023 in U.S. units, computed with an independent library: all digits', () => {
  it.each(
    [
      // °F, psia, liquid lb/ft3, vapour ft3/lb, hf and hg Btu/lb from liquid at -40 °F
      '-60 5.535 43.890 44.825 -21.12 589.51',
      '-40 10.390 43.062 24.889 0.00 597.25',
      '-28 14.683 42.554 18.014 12.77 601.65',
      '-20 18.271 42.211 14.682 21.33 604.47',
      '-10 23.716 41.777 11.501 32.07 607.87',
      '0 30.389 41.335 9.1146 42.87 611.11',
      '5 34.245 41.111 8.1473 48.29 612.67',
      '20 48.181 40.429 5.9068 64.65 617.08',
      '28 57.249 40.057 5.0183 73.43 619.26',
      '32 62.257 39.869 4.6350 77.84 620.31',
      '40 73.295 39.488 3.9692 86.69 622.29',
      '86 169.19 37.167 1.7708 138.71 630.79',
      '95 195.80 36.682 1.5332 149.16 631.77',
    ].map((line) => line.split(' ')),
  )('at %s °F: %s psia, %s lb/ft3, %s ft3/lb, hf %s, hg %s Btu/lb', (fahrenheit, psia = '', liquid = '', vapor = '', hf = '', hg = '') => {
    const ours = us(Number(fahrenheit))
    expect(printedGap(ours.psia * libraryGasConstant, psia)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.liquidLbFt3, liquid)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.vaporFt3Lb, vapor)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.hf * libraryGasConstant, hf)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.hg * libraryGasConstant, hg)).toBeLessThanOrEqual(1)
  })
})

describe('NBS Circular 142 (1923), values from memory: p 0.3 %, v 0.5 %, enthalpy differences 0.3 %', () => {
  it.each(
    [
      // °F, psia, vapour ft3/lb, hf and hg Btu/lb from liquid at -40 °F
      '-60 5.55 44.73 -21.2 589.6',
      '-40 10.41 24.86 0.0 597.6',
      '-28 14.71 18.00 12.8 602.1',
      '-20 18.30 14.68 21.4 605.0',
      '-10 23.74 11.50 32.1 608.5',
      '0 30.42 9.116 42.9 611.8',
      '5 34.27 8.150 48.3 613.3',
      '20 48.21 5.910 64.7 617.8',
      '28 57.28 5.021 73.5 619.9',
      '32 62.29 4.637 77.9 621.0',
      '40 73.32 3.971 86.8 623.0',
      '86 169.2 1.772 138.9 631.5',
      '95 195.8 1.534 149.4 632.6',
    ].map((line) => line.split(' ')),
  )('at %s °F: %s psia, %s ft3/lb, hf %s, hg %s Btu/lb', (fahrenheit, psia = '', vapor = '', hf = '', hg = '') => {
    const ours = us(Number(fahrenheit))
    const printedLatentHeat = (Number(hg) - Number(hf)).toFixed(1)
    expect(gapBeyondRounding(ours.psia, psia)).toBeLessThan(tolerance.pressure)
    expect(gapBeyondRounding(ours.vaporFt3Lb, vapor)).toBeLessThan(tolerance.vaporDensity)
    expect(gapBeyondRounding(ours.hg, hg)).toBeLessThan(tolerance.enthalpyDifference)
    expect(gapBeyondRounding(ours.hfg, printedLatentHeat)).toBeLessThan(tolerance.enthalpyDifference)
    if (Number(hf) === 0) expect(printedGap(ours.hf, hf)).toBeLessThanOrEqual(1)
    else expect(gapBeyondRounding(ours.hf, hf)).toBeLessThan(tolerance.enthalpyDifference)
  })

  it('saturation temperature at 34.27 psia is 5 °F, at 169.2 psia 86 °F, within 0.1 K', () => {
    expect(Math.abs(table.saturationTemperature(34.27 * paPerPsi) - 464.67 / 1.8)).toBeLessThan(0.1)
    expect(Math.abs(table.saturationTemperature(169.2 * paPerPsi) - 545.67 / 1.8)).toBeLessThan(0.1)
  })
})

describe('Wisconsin SPS 343 appendix, printed at -28 °F', () => {
  const ours = us(-28)

  it('latent heat 589.3 Btu/lb, within 0.3 %', () => {
    expect(gapBeyondRounding(ours.hfg, '589.3')).toBeLessThan(tolerance.enthalpyDifference)
  })

  it('liquid 42.57 lb/ft3 and 5.69 lb/US gal, within 0.2 %', () => {
    expect(gapBeyondRounding(ours.liquidLbFt3, '42.57')).toBeLessThan(tolerance.liquidDensity)
    expect(gapBeyondRounding(ours.liquidLbFt3 * ft3PerUsGallon, '5.69')).toBeLessThan(tolerance.liquidDensity)
  })

  it('vapour 0.05555 lb/ft3, within 0.5 %', () => {
    expect(gapBeyondRounding(ours.vaporLbFt3, '0.05555')).toBeLessThan(tolerance.vaporDensity)
  })
})

describe('SI, at saturation', () => {
  it.each(
    [
      // °C; Gao 2023: kPa, kg/m3, kg/m3, hf, hg kJ/kg (IIR); textbook: kPa, hf, hfg, hg kJ/kg from liquid at -40 °C
      '-40 71.63 689.78 0.6436 18.94 1408.14 71.7 0 1388.8 1388.8',
      '-30 119.38 677.54 1.0374 63.57 1423.32 119.5 44.26 1359.8 1404.0',
      '-20 190.03 664.97 1.6035 108.60 1437.41 190.2 89.05 1329.0 1418.0',
      '-10 290.64 652.01 2.3907 154.06 1450.27 290.9 134.41 1296.4 1430.8',
      '0 429.25 638.64 3.4560 200.00 1461.77 429.6 180.36 1261.8 1442.2',
      '10 614.79 624.78 4.8657 246.49 1471.73 615.2 226.97 1225.1 1452.0',
      '20 857.04 610.39 6.6980 293.64 1479.94 857.5 274.30 1185.9 1460.2',
      '30 1166.54 595.36 9.0460 341.57 1486.16 1167.0 322.42 1143.9 1466.3',
      '40 1554.53 579.61 12.0238 390.45 1490.10 1554.9 371.43 1098.8 1470.2',
    ].map((line) => line.split(' ')),
  )('at %s °C', (celsius, kPa = '', liquid = '', vapor = '', hf = '', hg = '', ...textbook) => {
    const ours = si(Number(celsius))
    // Gao et al. 2023 by an independent library: all digits.
    expect(printedGap(ours.kPa * libraryGasConstant, kPa)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.liquid, liquid)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.vapor, vapor)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.hf, hf)).toBeLessThanOrEqual(1)
    expect(printedGap(ours.hg, hg)).toBeLessThanOrEqual(1)

    // A textbook table after Haar & Gallagher, J. Phys. Chem. Ref. Data 7 (1978) 635.
    const [bookKPa = '', bookRise = '', bookLatentHeat = '', bookVaporRise = ''] = textbook
    expect(gapBeyondRounding(ours.kPa, bookKPa)).toBeLessThan(tolerance.pressure)
    expect(gapBeyondRounding(ours.hfg, bookLatentHeat)).toBeLessThan(tolerance.enthalpyDifference)
    expect(gapBeyondRounding(ours.rise + ours.hfg, bookVaporRise)).toBeLessThan(tolerance.enthalpyDifference)
    if (celsius === '-40') expect(ours.rise).toBeCloseTo(Number(bookRise), 9)
    else expect(gapBeyondRounding(ours.rise, bookRise)).toBeLessThan(tolerance.liquidEnthalpyRise)
  })

  it.each(
    [
      // °C, liquid and vapour Pa s, N/m
      '-40 2.802e-4 7.859e-6 0.03567',
      '-20 2.141e-4 8.449e-6 0.03100',
      '0 1.702e-4 9.056e-6 0.02629',
      '30 1.256e-4 9.995e-6 0.01935',
    ].map((line) => line.split(' ')),
  )('transport at %s °C: %s and %s Pa s, %s N/m (Fenghour 1995 and Mulero 2012, independent library)', (celsius, liquid = '', vapor = '', sigma = '') => {
    const temperatureK = Number(celsius) + 273.15
    expect(printedGap(table.liquidViscosity(temperatureK), liquid)).toBeLessThanOrEqual(1)
    expect(printedGap(table.vaporViscosity(temperatureK), vapor)).toBeLessThanOrEqual(1)
    expect(printedGap(table.surfaceTension(temperatureK), sigma)).toBeLessThanOrEqual(1)
  })
})

describe('fixed points along saturation', () => {
  it('normal boiling point (101.325 kPa): 239.834 K (Gao et al. 2023, independent library)', () => {
    expect(printedGap(table.saturationTemperature(101325), '239.834')).toBeLessThanOrEqual(1)
  })

  it('normal boiling point -28 °F (Wisconsin SPS 343 appendix), within 0.1 K', () => {
    expect(Math.abs(table.saturationTemperature(101325) - 431.67 / 1.8)).toBeLessThan(0.1)
  })

  it('from the -40 reference to the IIR reference: 18.94 kJ/kg (derived)', () => {
    expect(printedGap(table.liquidEnthalpy(minus40K) / 1e3, '18.94')).toBeLessThanOrEqual(1)
  })

  it('the table reaches from 195.55 K to 373.15 K', () => {
    expect([table.saturationRange.minK, table.saturationRange.maxK]).toEqual([195.55, 373.15])
    expect(table.saturationRange.maxPa).toBeLessThan(table.criticalPressurePa)
  })
})
