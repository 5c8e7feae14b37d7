import { liquidDensity, vaporDensity } from '../ammonia/saturation.ts'
import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { quantity, unit } from '../arguments.ts'
import { define, type Source } from '../define.ts'
import { GAO_2023 } from '../sources.ts'
import type { Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'

/** Vapour velocity of a separation factor K, both m/s; densities kg/m3, the liquid's above the vapour's. Souders and Brown 1934. */
export const soudersBrownVelocity = (factorMps: number, liquidKgPerM3: number, vaporKgPerM3: number): number =>
  factorMps * densityRoot(liquidKgPerM3, vaporKgPerM3)

/** Separation factor K of a vapour velocity, both m/s: inverse of {@link soudersBrownVelocity}. */
export const soudersBrownFactor = (velocityMps: number, liquidKgPerM3: number, vaporKgPerM3: number): number =>
  velocityMps / densityRoot(liquidKgPerM3, vaporKgPerM3)

const densityRoot = (liquidKgPerM3: number, vaporKgPerM3: number): number => Math.sqrt((liquidKgPerM3 - vaporKgPerM3) / vaporKgPerM3)

/** The same root in workings, for saturated ammonia. */
function densityRootSteps(temperatureK: Expression, steps: Steps): Expression {
  const { liquidDensity: liquid, vaporDensity: vapor } = saturatedAt(temperatureK, steps)
  const vaporKgPerM3 = steps.step('density of the vapour', 'kg/m3', vapor)
  return `SQRT((${liquid}-${vaporKgPerM3})/${vaporKgPerM3})`
}

const SOURCES: readonly Source[] = [
  { cite: 'Souders and Brown, Industrial and Engineering Chemistry 26, 98 (1934)', confidence: 'confirmed' },
  GAO_2023,
]

const FACTOR_CAUTION =
  'K is practice, not physics: it depends on the height above the liquid, the orientation and what stands in the way. ' +
  'Gravity-only ammonia drums are held to about 0.18 to 0.22 ft/s with 24 to 36 in of height and to a quarter of that with 10 in (derived from a table known from memory); ' +
  'confirm it against the current handbook. Pulsing flow asks for less.'

export const separationVelocity = define({
  name: 'SEPARATION.VELOCITY',
  group: 'Vapour–liquid separation',
  gives: 'the vapour velocity that a separation factor K allows in saturated ammonia',
  use: 'To size a drum from a K that experience or a handbook gives. DROPLET.DIAMETER of the result tells which droplet that K lets through.',
  arguments: {
    K: quantity('velocity', 'separation factor, a velocity', { above: 0, limit: 'a separation factor is a velocity' }),
    temperature: saturationTemperatureArgument('saturation temperature in the drum'),
    unit: unit(['velocity']),
  },
  result: 'velocity',
  equation: 'v = K √((ρL − ρV) / ρV), ρL and ρV at saturation',
  sources: SOURCES,
  cautions: [FACTOR_CAUTION],
  examples: [{ formula: '=SEPARATION.VELOCITY("0.18 ft/s","20 °F","ft/min")', value: '166.55' }],
  compute: ({ K, temperature }) => soudersBrownVelocity(K, liquidDensity(temperature), vaporDensity(temperature)),
  workings: ({ K, temperature }, steps) => `${K}*${densityRootSteps(temperature, steps)}`,
})

export const separationFactor = define({
  name: 'SEPARATION.FACTOR',
  group: 'Vapour–liquid separation',
  gives: 'the separation factor K of a vapour velocity in saturated ammonia',
  use: 'To compare a velocity, computed or taken from a table, with K values at any temperature. Inverse of SEPARATION.VELOCITY.',
  arguments: {
    velocity: quantity('velocity', 'velocity of the vapour', { above: 0, limit: 'the vapour moves' }),
    temperature: saturationTemperatureArgument('saturation temperature in the drum'),
    unit: unit(['velocity']),
  },
  result: 'velocity',
  equation: 'K = v / √((ρL − ρV) / ρV), ρL and ρV at saturation',
  sources: SOURCES,
  cautions: [FACTOR_CAUTION],
  examples: [{ formula: '=SEPARATION.FACTOR("172 ft/min","20 °F","ft/s")', value: '0.18589' }],
  compute: ({ velocity, temperature }) => soudersBrownFactor(velocity, liquidDensity(temperature), vaporDensity(temperature)),
  workings: ({ velocity, temperature }, steps) => `${velocity}/${densityRootSteps(temperature, steps)}`,
})
