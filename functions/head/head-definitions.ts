import { quantity, unit } from '../arguments.ts'
import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { saturatedAt, saturationTemperatureOf } from '../ammonia/saturation-workings.ts'
import { liquidDensity, saturationPressure, saturationRange, saturationTemperature } from '../ammonia/saturation.ts'
import { define } from '../define.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { HYDROSTATICS } from '../sources.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'
import { bracketedRootSteps } from '../workings/bracketed-root.ts'
import { num, unless, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import { drumTemperatureForCoil } from './liquid-column.ts'

const group = 'Static head and circulation'

// Saturation pressure plus head rises steadily with the drum's temperature up to some 40 m; gravity legs reach about 10 m.
const height = quantity('length', 'height of the liquid column', { min: 0, max: 30, limit: 'columns up to 30 m, three times the highest gravity leg in use' })
const drum = saturationTemperatureArgument('saturation temperature in the drum, at the liquid’s surface')

const pressureBelow = (drumK: number, heightM: number): number =>
  saturationPressure(drumK) + liquidDensity(drumK) * STANDARD_GRAVITY * heightM

function temperatureBelow(drumK: number, heightM: number): number | Fault {
  const pressurePa = pressureBelow(drumK, heightM)
  return pressurePa <= saturationPressure(saturationRange.maxK)
    ? saturationTemperature(pressurePa)
    : outOfRange('the pressure below the column is above saturation at 100 °C, where the property range ends')
}

/** The saturation temperature below the column, K, in workings; an error where it is past the property range. */
function temperatureBelowSteps(drumK: Expression, heightM: Expression, steps: Steps): Expression {
  const inDrum = saturatedAt(drumK, steps, 'drum')
  const below = steps.step('pressure below the column', 'Pa', `${inDrum.pressure}+${inDrum.liquidDensity}*${num(STANDARD_GRAVITY)}*${heightM}`)
  return saturationTemperatureOf(unless(`${below}<=${num(saturationRange.maxPa)}`, below), steps, 'below')
}

const UPPER_BOUND =
  'The bottom of the column is the upper bound of the penalty: the leg is full of liquid, the coil holds a mixture of liquid and vapour, so the mean over a coil is smaller.'

export const headDefinitions = [
  define({
    name: 'HEAD.PRESSURE', group,
    gives: 'the pressure of a column of saturated liquid',
    use: 'How much pressure the liquid leg adds between drum and coil.',
    arguments: { height, temperature: saturationTemperatureArgument('saturation temperature of the liquid'), unit: unit(['pressure'], { gaugeRefused: 'difference' }) },
    equation: 'Δp = ρL g H, g = 9.80665 m/s²',
    sources: [HYDROSTATICS],
    examples: [{ formula: '=HEAD.PRESSURE("10 ft","-40 °F","psi")', value: '2.990' }],
    result: 'pressure',
    compute: ({ height: heightM, temperature }) => liquidDensity(temperature) * STANDARD_GRAVITY * heightM,
    workings: ({ height: heightM, temperature }, steps) => `${saturatedAt(temperature, steps).liquidDensity}*${num(STANDARD_GRAVITY)}*${heightM}`,
  }),
  define({
    name: 'HEAD.TEMPERATURE', group,
    gives: 'the saturation temperature below a liquid column',
    use: 'The temperature at which liquid would boil at the foot of the leg, under the head of the column.',
    arguments: { drum, height, unit: unit(['temperature']) },
    equation: 'T = Tsat(psat(Tdrum) + ρL g H), on the curve, not its tangent',
    sources: [HYDROSTATICS], cautions: [UPPER_BOUND],
    examples: [{ formula: '=HEAD.TEMPERATURE("-40 °F","10 ft","°F")', value: '-31.301' }],
    result: 'temperature',
    compute: ({ drum: drumK, height: heightM }) => temperatureBelow(drumK, heightM),
    workings: ({ drum: drumK, height: heightM }, steps) => temperatureBelowSteps(drumK, heightM, steps),
  }),
  define({
    name: 'HEAD.RISE', group,
    gives: 'how much a liquid column raises the saturation temperature',
    use: 'The static head penalty. It depends on the temperature level: 10 ft cost 2.3 °F at +28 °F, 13.7 °F at −60 °F.',
    arguments: { drum, height, unit: unit(['temperature difference']) },
    equation: 'ΔT = Tsat(psat(Tdrum) + ρL g H) − Tdrum',
    sources: [HYDROSTATICS], cautions: [UPPER_BOUND, 'The tangent (ρL g H divided by SAT.SLOPE) overstates it, by about a fifth for 10 ft at −60 °F.'],
    examples: [{ formula: '=HEAD.RISE("-40 °F","10 ft","Δ°F")', value: '8.699' }],
    result: 'temperature difference',
    compute: ({ drum: drumK, height: heightM }) => {
      const below = temperatureBelow(drumK, heightM)
      return typeof below === 'number' ? below - drumK : below
    },
    workings: ({ drum: drumK, height: heightM }, steps) => `${temperatureBelowSteps(drumK, heightM, steps)}-${drumK}`,
  }),
  define({
    name: 'HEAD.DRUM', group,
    gives: 'the drum’s saturation temperature that gives a point below it its temperature',
    use: 'From the evaporating temperature that a coil needs at its reference point to the temperature, so the pressure, the drum has to be held at. The inverse of HEAD.TEMPERATURE.',
    arguments: { coil: saturationTemperatureArgument('saturation temperature wanted at the coil’s reference point'), height, unit: unit(['temperature']) },
    equation: 'Tdrum such that psat(Tdrum) + ρL(Tdrum) g H = psat(Tcoil)',
    sources: [HYDROSTATICS], cautions: [UPPER_BOUND],
    examples: [{ formula: '=HEAD.DRUM("-31.301 °F","10 ft","°F")', value: '-40.00' }],
    result: 'temperature',
    compute: ({ coil, height: heightM }) => {
      const drumK = drumTemperatureForCoil(coil, heightM)
      return drumK ?? outOfRange('a drum that cold lies below the range of the property functions (−77.6 °C = −107.7 °F): lower the column or raise the coil temperature')
    },
    workings: ({ coil, height: heightM }, steps) => {
      const wanted = steps.step('pressure at the coil', 'Pa', saturatedAt(coil, steps, 'coil').pressure)
      const coldest = saturationRange.minK
      const least = `${num(saturationRange.minPa)}+${num(liquidDensity(coldest) * STANDARD_GRAVITY)}*${heightM}`
      const low = unless(`${least}<=${wanted}`, num(coldest))
      // In logarithms of pressure the two sides are nearly in proportion to the temperature.
      return bracketedRootSteps(steps, 'drum', 'K', low, coil, 15, (drumK, what) => {
        const inDrum = saturatedAt(drumK, steps, what)
        return `LN((${inDrum.pressure}+${inDrum.liquidDensity}*${num(STANDARD_GRAVITY)}*${heightM})/${wanted})`
      })
    },
  }),
]
