import { quantity, site, unit } from '../arguments.ts'
import { define, type Example, type Source } from '../define.ts'
import { FENGHOUR_1995, GAO_2023, MULERO_2012 } from '../sources.ts'
import type { Dimension } from '../units/units.ts'
import type { Expression } from '../workings/expression.ts'
import { saturationTemperatureArgument } from './saturation-argument.ts'
import { saturatedAt, saturationTemperatureOf, type SaturatedAmmonia } from './saturation-workings.ts'
import {
  latentHeat, liquidDensity, liquidEnthalpy, liquidViscosity, saturationPressure, saturationRange, saturationSlope, saturationTemperature,
  surfaceTension, vaporDensity, vaporEnthalpy, vaporViscosity,
} from './saturation.ts'

const group = 'Ammonia at saturation'
const PURE = 'For pure ammonia; oil and water in the charge raise the boiling temperature at a pressure.'

const pressureAtSaturation = define({
  name: 'SAT.PRESSURE',
  group,
  gives: 'the saturation pressure at a temperature',
  use: 'The pressure a drum stands at when its liquid boils at the temperature; in a gauge unit, what the gauge at that site reads.',
  arguments: { temperature: saturationTemperatureArgument('saturation temperature'), unit: unit(['pressure']), site },
  equation: 'equal pressure and Gibbs energy of liquid and vapour, solved from the equation of state; computed from a Chebyshev table of ln p that agrees to 1e-10',
  sources: [GAO_2023],
  cautions: [PURE, 'Below −28 °F at sea level the gauge reads vacuum.'],
  examples: [
    { formula: '=SAT.PRESSURE("5 °F","psia")', value: '34.2445' },
    { formula: '=SAT.PRESSURE("0 °F","psig",SITE.PRESSURE("5280 ft","psia")&" psia")', value: '18.29' },
  ],
  result: 'pressure',
  compute: ({ temperature }) => saturationPressure(temperature),
  workings: ({ temperature }, steps) => saturatedAt(temperature, steps).pressure,
})

const temperatureAtSaturation = define({
  name: 'SAT.TEMPERATURE',
  group,
  gives: 'the saturation temperature at a pressure',
  use: 'What temperature a gauge reading means. The inverse of SAT.PRESSURE.',
  arguments: {
    pressure: quantity('pressure', 'saturation pressure', {
      min: saturationPressure(saturationRange.minK), max: saturationPressure(saturationRange.maxK),
      limit: 'saturation from just above the triple point to 100 °C, Gao et al. 2023',
    }),
    unit: unit(['temperature']),
    site,
  },
  equation: 'the temperature at which SAT.PRESSURE gives the pressure',
  sources: [GAO_2023],
  cautions: [PURE, 'A reading in gauge units needs the site’s atmospheric pressure.'],
  examples: [{ formula: '=SAT.TEMPERATURE("20 psig","°F")', value: '5.56' }],
  result: 'temperature',
  compute: ({ pressure }) => saturationTemperature(pressure),
  workings: ({ pressure }, steps) => saturationTemperatureOf(pressure, steps),
})

/** A property of one temperature: the words around all of them are the same. */
function property(
  name: string, gives: string, use: string, dimensions: readonly [Dimension, ...Dimension[]], equation: string, source: Source,
  example: Example, compute: (temperatureK: number) => number, written: (saturated: SaturatedAmmonia) => Expression,
) {
  return define({
    name, group, gives, use, equation, sources: [source], cautions: [PURE], examples: [example],
    arguments: { temperature: saturationTemperatureArgument('saturation temperature'), unit: unit(dimensions) },
    result: dimensions[0],
    compute: ({ temperature }) => compute(temperature),
    workings: ({ temperature }, steps) => written(saturatedAt(temperature, steps)),
  })
}

const ENTHALPY_BASIS =
  'Reference: 200 kJ/kg for saturated liquid at 0 °C (IIR). Use differences only: other tables count from another zero and differ by about 19 kJ/kg or more.'
const TABLE = 'saturation state of the equation of state, from a Chebyshev table of it'

export const saturationDefinitions = [
  pressureAtSaturation,
  temperatureAtSaturation,
  property('SAT.SLOPE', 'how much the saturation pressure rises per degree',
    'Turns a small pressure difference into a temperature difference; over larger ones the curve bends, so use SAT.TEMPERATURE twice.',
    ['pressure per temperature difference'], 'dp/dT of the saturation curve; equal to hfg / [T (1/ρV − 1/ρL)] (Clapeyron)', GAO_2023,
    { formula: '=SAT.SLOPE("20 °F","psi/Δ°F")', value: '1.058' }, saturationSlope, ({ slope }) => slope),
  property('LIQUID.DENSITY', 'the density of saturated liquid, or its specific volume', 'Charge of a volume filled with liquid; static head.',
    ['density', 'specific volume'], TABLE, GAO_2023, { formula: '=LIQUID.DENSITY("-28 °F","lb/ft3")', value: '42.554' }, liquidDensity, ({ liquidDensity }) => liquidDensity),
  property('VAPOR.DENSITY', 'the density of saturated vapour, or its specific volume', 'Volume flow of suction vapour; charge of a volume filled with vapour.',
    ['density', 'specific volume'], TABLE, GAO_2023, { formula: '=VAPOR.DENSITY("20 °F","ft3/lb")', value: '5.9068' }, vaporDensity, ({ vaporDensity }) => vaporDensity),
  property('LIQUID.ENTHALPY', 'the enthalpy of saturated liquid', ENTHALPY_BASIS, ['energy per mass'], TABLE, GAO_2023,
    { formula: '=LIQUID.ENTHALPY("0 °C","kJ/kg")', value: '200.00' }, liquidEnthalpy, ({ liquidEnthalpy }) => liquidEnthalpy),
  property('VAPOR.ENTHALPY', 'the enthalpy of saturated vapour', ENTHALPY_BASIS, ['energy per mass'], TABLE, GAO_2023,
    { formula: '=VAPOR.ENTHALPY("-40 °C","kJ/kg")', value: '1408.1' }, vaporEnthalpy, ({ vaporEnthalpy }) => vaporEnthalpy),
  property('LATENT.HEAT', 'the heat of evaporation hg − hf', 'Evaporation inside the coil. For the flow of a drum use FEED.FLOW, which counts the flash gas as well.',
    ['energy per mass'], 'hfg = hg − hf', GAO_2023, { formula: '=LATENT.HEAT("0 °C","kJ/kg")', value: '1261.8' }, latentHeat,
    ({ liquidEnthalpy: liquid, vaporEnthalpy: vapor }) => `${vapor}-${liquid}`),
  property('LIQUID.VISCOSITY', 'the dynamic viscosity of saturated liquid', 'Friction of liquid lines.', ['viscosity'],
    'correlation in temperature and density, at the saturated liquid’s density', FENGHOUR_1995,
    { formula: '=LIQUID.VISCOSITY("-20 °C","mPa·s")', value: '0.2141' }, liquidViscosity, ({ liquidViscosity }) => liquidViscosity),
  property('VAPOR.VISCOSITY', 'the dynamic viscosity of saturated vapour', 'Settling of droplets; friction of suction lines.', ['viscosity'],
    'correlation in temperature and density, at the saturated vapour’s density', FENGHOUR_1995,
    { formula: '=VAPOR.VISCOSITY("-20 °C","µPa·s")', value: '8.449' }, vaporViscosity, ({ vaporViscosity }) => vaporViscosity),
  property('SURFACE.TENSION', 'the surface tension of saturated liquid', 'Void fraction and droplet questions.', ['surface tension'],
    'σ = 0.1028 (1 − T/405.4 K)^1.211 − 0.09453 (1 − T/405.4 K)^5.585 N/m', MULERO_2012,
    { formula: '=SURFACE.TENSION("0 °C","mN/m")', value: '26.29' }, surfaceTension, ({ surfaceTension }) => surfaceTension),
]
