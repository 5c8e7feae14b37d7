import { quantity, quantityOf, site, unit } from '../arguments.ts'
import { define } from '../define.ts'
import { outOfRange, wrong } from '../fault.ts'
import { ISO_2533, SP_811 } from '../sources.ts'
import { STANDARD_ATMOSPHERE_PA } from '../units/constants.ts'
import { formatQuantity } from '../units/format.ts'
import { num, unless } from '../workings/expression.ts'

/** Pressure of the standard atmosphere at an elevation of up to 11 000 m, Pa (ISO 2533). */
export const standardAtmospherePa = (elevationM: number): number => STANDARD_ATMOSPHERE_PA * (1 - LAPSE_PER_M * elevationM) ** EXPONENT

const LAPSE_PER_M = 2.25577e-5
const EXPONENT = 5.25588

const convertUnit = define({
  name: 'UNIT.CONVERT',
  group: 'Site and units',
  gives: 'the quantity in another unit of the same dimension',
  use: 'Restates a value beside its own unit. A temperature is converted with its zero point, a temperature difference without; gauge pressures count from the site’s atmospheric pressure.',
  arguments: { quantity: quantityOf([], 'the quantity to convert'), unit: unit([]), site },
  equation: 'SI value = value × factor + offset (+ site pressure for gauge units)',
  sources: [SP_811],
  cautions: ['A gauge pressure means nothing without its site: give the site argument away from sea level.'],
  examples: [
    { formula: '=UNIT.CONVERT("50 TR","kW")', value: '175.8426' },
    { formula: '=UNIT.CONVERT("12 inHg vac","psia")', value: '8.802' },
  ],
  result: 'as asked',
  compute: ({ quantity: given, unit: asked }, { sitePa }) => {
    if (given.unit.dimension !== asked.dimension) {
      return wrong(`quantity is in ${given.unit.code} (${given.unit.dimension}), the unit of the result is ${asked.code} (${asked.dimension})`)
    }
    // A plain pressure may be a difference and negative; one on a gauge is a pressure.
    const fromZero = asked.dimension === 'temperature' || given.unit.gauge || asked.gauge
    return fromZero && given.si < 0
      ? outOfRange(`quantity is ${formatQuantity(given.si, given.unit, sitePa)}; accepted is at least ${formatQuantity(0, given.unit, sitePa)} (absolute zero)`)
      : given.si
  },
  workings: ({ quantity: given, unit: asked }) => {
    const fromZero = `OR(${asked.dimension}="temperature",${given.gauge}=1,${asked.gauge}=1)`
    return unless(`AND(${given.dimension}=${asked.dimension},OR(${given.si}>=0,NOT(${fromZero})))`, given.si)
  },
})

const sitePressure = define({
  name: 'SITE.PRESSURE',
  group: 'Site and units',
  gives: 'the standard-atmosphere pressure at an elevation',
  use: 'Gauge readings and regulator set points depend on it: 20 psig is 5.6 °F at sea level but 2.3 °F at 5 280 ft. Give its result as the site argument of other functions.',
  arguments: {
    elevation: quantity('length', 'elevation of the site above sea level', { min: -500, max: 11000, limit: 'troposphere of ISO 2533' }),
    unit: unit(['pressure'], { gaugeRefused: 'atmospheric' }),
  },
  equation: 'p = 101 325 Pa × (1 − 2.25577×10⁻⁵ × z / m)^5.25588',
  sources: [ISO_2533],
  cautions: ['Weather moves the real pressure by up to about 3 % either way (common practice).'],
  examples: [{ formula: '=SITE.PRESSURE("5280 ft","psia")', value: '12.100' }],
  result: 'pressure',
  compute: ({ elevation }) => standardAtmospherePa(elevation),
  workings: ({ elevation }) => `${num(STANDARD_ATMOSPHERE_PA)}*(1-${num(LAPSE_PER_M)}*${elevation})^${num(EXPONENT)}`,
})

export const siteDefinitions = [convertUnit, sitePressure]
