import { block, num, type Expression } from '../workings/expression.ts'
import type { WorkingsTable } from '../workings/tables.ts'
import type { Steps } from '../workings/workings.ts'
import type { SeriesName } from './fit-saturation.ts'
import { saturationTable } from './saturation-table.ts'
import { saturationRange } from './saturation.ts'

const { intervals, series } = saturationTable
const degree = (series.lnPressure[0]?.length ?? 1) - 1

/** The coefficients that the code evaluates, as a table: a row an interval, a column an order. */
export const saturationWorkingsTable: WorkingsTable = {
  name: 'saturation',
  title: `Saturated ammonia: Chebyshev coefficients up to order ${degree}, a row an interval of temperature (K) and ln p (Pa)`,
  source: 'Generated from the equation of state of Gao et al., J. Phys. Chem. Ref. Data 52, 013102 (2023), and the viscosity of Fenghour et al. (1995)',
  blocks: {
    interval: intervals.map((_, index) => [index + 1]),
    fromK: intervals.map(({ fromK }) => [fromK]),
    toK: intervals.map(({ toK }) => [toK]),
    fromLnPa: intervals.map(({ fromLnPa }) => [fromLnPa]),
    toLnPa: intervals.map(({ toLnPa }) => [toLnPa]),
    order: [Array.from({ length: degree + 1 }, (_, order) => order)],
    ...series,
  },
}

const of = (name: string): Expression => block('saturation', name)

/** Expressions for saturated ammonia at one temperature; each is a sum over the table, to be taken down as a step where it is used twice. */
export type SaturatedAmmonia = Readonly<Record<
  'pressure' | 'lnPressure' | 'slope' | 'liquidDensity' | 'vaporDensity' | 'liquidEnthalpy' | 'vaporEnthalpy' | 'liquidViscosity' | 'vaporViscosity' | 'surfaceTension',
  Expression
>>

/** Saturated ammonia at a temperature (K): two steps say where in the table, which every property then shares. */
export function saturatedAt(temperatureK: Expression, steps: Steps, what = 'temperature'): SaturatedAmmonia {
  const interval = steps.step(`${what}: interval of the table`, '', intervalOf(temperatureK, 'fromK', saturationRange.minK))
  const angle = steps.step(`${what}: ACOS of its place in the interval`, 'rad', angleOf(temperatureK, interval, 'fromK', 'toK'))
  const sum = (name: SeriesName) => seriesSum(name, interval, angle)
  const pressure = `EXP(${sum('lnPressure')})`
  const below = (power: number) => `(1-${temperatureK}/405.4)^${num(power)}`
  return {
    lnPressure: sum('lnPressure'),
    pressure,
    slope: `${pressure}*${sum('lnPressureSlope')}`,
    liquidDensity: sum('liquidDensity'),
    vaporDensity: `EXP(${sum('lnVaporDensity')})`,
    liquidEnthalpy: sum('liquidEnthalpy'),
    vaporEnthalpy: sum('vaporEnthalpy'),
    liquidViscosity: `EXP(${sum('lnLiquidViscosity')})`,
    vaporViscosity: `EXP(${sum('lnVaporViscosity')})`,
    surfaceTension: `(0.1028*${below(1.211)}-0.09453*${below(5.585)})`,
  }
}

/** The saturation temperature (K) of a pressure (Pa, absolute): the table's inverse series, then one of Newton's steps as in the code. */
export function saturationTemperatureOf(pressurePa: Expression, steps: Steps, what = 'pressure'): Expression {
  const lnPa = steps.step(`${what}: ln p`, 'ln Pa', `LN(${pressurePa})`)
  const interval = steps.step(`${what}: interval of the table`, '', intervalOf(lnPa, 'fromLnPa', Math.log(saturationRange.minPa)))
  const angle = steps.step(`${what}: ACOS of its place in the interval`, 'rad', angleOf(lnPa, interval, 'fromLnPa', 'toLnPa'))
  const estimate = steps.step(`${what}: temperature by the inverse series`, 'K', seriesSum('temperatureK', interval, angle))
  const back = steps.step(`${what}: ACOS for that temperature`, 'rad', angleOf(estimate, interval, 'fromK', 'toK'))
  const newton = `${estimate}-(${seriesSum('lnPressure', interval, back)}-${lnPa})/${seriesSum('lnPressureSlope', interval, back)}`
  const { minK, maxK } = saturationRange
  return steps.step(`${what}: saturation temperature`, 'K', `MIN(${num(maxK)},MAX(${num(minK)},${newton}))`)
}

/** The interval's number; below the table's first value the first, so that rounding at the end of the range does no harm. */
const intervalOf = (value: Expression, from: string, first: number): Expression => `SUMPRODUCT((${of(from)}<=MAX(${value},${num(first)}))*1)`

const angleOf = (value: Expression, interval: Expression, from: string, to: string): Expression => {
  const [low, high] = [`INDEX(${of(from)},${interval})`, `INDEX(${of(to)},${interval})`]
  return `ACOS(MAX(-1,MIN(1,(2*${value}-${low}-${high})/(${high}-${low}))))`
}

const seriesSum = (name: SeriesName, interval: Expression, angle: Expression): Expression =>
  `SUMPRODUCT((${of('interval')}=${interval})*${of(name)}*COS(${of('order')}*${angle}))`

