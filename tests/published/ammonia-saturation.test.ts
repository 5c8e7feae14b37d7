import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { saturationReference } from '../../functions/ammonia/saturation-reference.ts'
import * as table from '../../functions/ammonia/saturation.ts'
import { viscosity } from '../../functions/ammonia/transport.ts'

/**
 * Gao et al. 2023 solved in 32-digit arithmetic by an independent implementation, -70 to 60 °C;
 * the file's head says how, with sources.
 */
const rows = readSaturation(new URL('./data/ammonia-saturation.csv', import.meta.url))

interface Saturation {
  pressurePa: number
  slopePaPerK: number
  liquidDensity: number
  vaporDensity: number
  liquidEnthalpy: number
  vaporEnthalpy: number
  liquidViscosity: number
  vaporViscosity: number
  surfaceTension: number
}

const sources: Record<string, (temperatureK: number) => Saturation> = {
  'equal-Gibbs solve': (temperatureK) => {
    const { pressurePa, slopePaPerK, liquid, vapor } = saturationReference(temperatureK)
    return {
      pressurePa,
      slopePaPerK,
      liquidDensity: liquid.densityKgPerM3,
      vaporDensity: vapor.densityKgPerM3,
      liquidEnthalpy: liquid.enthalpyJPerKg,
      vaporEnthalpy: vapor.enthalpyJPerKg,
      liquidViscosity: viscosity(temperatureK, liquid.densityKgPerM3),
      vaporViscosity: viscosity(temperatureK, vapor.densityKgPerM3),
      surfaceTension: table.surfaceTension(temperatureK),
    }
  },
  table: (temperatureK) => ({
    pressurePa: table.saturationPressure(temperatureK),
    slopePaPerK: table.saturationSlope(temperatureK),
    liquidDensity: table.liquidDensity(temperatureK),
    vaporDensity: table.vaporDensity(temperatureK),
    liquidEnthalpy: table.liquidEnthalpy(temperatureK),
    vaporEnthalpy: table.vaporEnthalpy(temperatureK),
    liquidViscosity: table.liquidViscosity(temperatureK),
    vaporViscosity: table.vaporViscosity(temperatureK),
    surfaceTension: table.surfaceTension(temperatureK),
  }),
}

it('the published file has a row a degree from -70 to 60 °C', () => {
  expect(rows).toHaveLength(131)
  expect(rows.map((row) => row.T_K).slice(0, 2)).toEqual([203.15, 204.15])
})

describe.each(Object.entries(sources))('saturated ammonia by the %s against Gao et al. 2023, all rows', (_, solve) => {
  /** The largest relative difference over all rows. */
  function worst(ours: (state: Saturation) => number, theirs: (row: Row) => number): number {
    return Math.max(...rows.map((row) => relative(ours(solve(row.T_K)), theirs(row))))
  }

  it('pressure to 1e-9', () => {
    expect(worst((state) => state.pressurePa, (row) => row.p_Pa)).toBeLessThan(1e-9)
  })

  it('densities to 1e-9', () => {
    expect(worst((state) => state.liquidDensity, (row) => row.rhoL_kg_m3)).toBeLessThan(1e-9)
    expect(worst((state) => state.vaporDensity, (row) => row.rhoV_kg_m3)).toBeLessThan(1e-9)
  })

  it('slope dp/dT to 1e-9', () => {
    expect(worst((state) => state.slopePaPerK, (row) => row.dpdT_sat_Pa_K)).toBeLessThan(1e-9)
  })

  it('latent heat to 1e-8', () => {
    const ours = (state: Saturation) => (state.vaporEnthalpy - state.liquidEnthalpy) / 1e3
    expect(worst(ours, (row) => row.hfg_kJ_kg)).toBeLessThan(1e-8)
  })

  it('enthalpy differences from the first row to 1e-8', () => {
    const [coldest, ...others] = rows
    const start = solve(coldest?.T_K ?? Number.NaN)
    for (const row of others) {
      const ours = solve(row.T_K)
      const liquidRise = (ours.liquidEnthalpy - start.liquidEnthalpy) / 1e3
      const vaporRise = (ours.vaporEnthalpy - start.vaporEnthalpy) / 1e3
      expect(relative(liquidRise, row.hL_IIR_kJ_kg - (coldest?.hL_IIR_kJ_kg ?? Number.NaN))).toBeLessThan(1e-8)
      expect(relative(vaporRise, row.hV_IIR_kJ_kg - (coldest?.hV_IIR_kJ_kg ?? Number.NaN))).toBeLessThan(1e-8)
    }
  })

  it('viscosities to 1e-4', () => {
    expect(worst((state) => state.liquidViscosity, (row) => row.muL_Pa_s)).toBeLessThan(1e-4)
    expect(worst((state) => state.vaporViscosity, (row) => row.muV_Pa_s)).toBeLessThan(1e-4)
  })

  it('surface tension to 1e-9', () => {
    expect(worst((state) => state.surfaceTension, (row) => row.sigma_N_m)).toBeLessThan(1e-9)
  })

  it('IIR reference: 200 kJ/kg for saturated liquid at 273.15 K', () => {
    expect(solve(273.15).liquidEnthalpy).toBeCloseTo(200e3, 5)
  })
})

describe('entropy and heat capacity by the equal-Gibbs solve, against the same file', () => {
  it.each(rows)('at $T_K K to 1e-9', (row) => {
    const { liquid, vapor } = saturationReference(row.T_K)
    // Entropy of the liquid passes through zero at 220 K: 1 J/(kg K) and 1e-9 of it.
    expect(Math.abs(liquid.entropyJPerKgK - row.sL_IIR_kJ_kgK * 1e3)).toBeLessThan(1e-6)
    expect(relative(vapor.entropyJPerKgK, row.sV_IIR_kJ_kgK * 1e3)).toBeLessThan(1e-9)
    expect(relative(liquid.cpJPerKgK, row.cpL_kJ_kgK * 1e3)).toBeLessThan(1e-9)
    expect(relative(vapor.cpJPerKgK, row.cpV_kJ_kgK * 1e3)).toBeLessThan(1e-9)
  })
})

function relative(value: number, reference: number): number {
  return Math.abs(value / reference - 1)
}

type Row = Record<
  | 'T_K' | 'p_Pa' | 'rhoL_kg_m3' | 'rhoV_kg_m3' | 'hL_IIR_kJ_kg' | 'hV_IIR_kJ_kg' | 'hfg_kJ_kg'
  | 'sL_IIR_kJ_kgK' | 'sV_IIR_kJ_kgK' | 'cpL_kJ_kgK' | 'cpV_kJ_kgK' | 'muL_Pa_s' | 'muV_Pa_s'
  | 'sigma_N_m' | 'dpdT_sat_Pa_K',
  number
>

function readSaturation(file: URL): Row[] {
  const lines = readFileSync(file, 'utf8').trim().split('\n').filter((line) => !line.startsWith('#'))
  const [head = '', ...body] = lines
  const names = head.split(',')
  return body.map((line) => {
    const values = line.split(',').map(Number)
    // A column that is missing reads undefined and fails every comparison made with it.
    return Object.fromEntries(names.map((name, index) => [name, values[index]])) as Row
  })
}
