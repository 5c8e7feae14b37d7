import { isCellError, type CellValue } from '../../calc/values.ts'
import { findUnit, units } from '../../../functions/units/units.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import type { Effect } from './difference.ts'
import { withUnit } from './words.ts'

/** An effect as it reads: both values with their units, as many digits as tell them apart, and the change. */
export interface PrintedEffect {
  readonly was: string
  readonly is: string
  /** `+3.2 %`; `+4.1 Δ°F`, where the zero of the unit is an agreed one; "no longer met"; empty where there is nothing to say. */
  readonly change: string
}

export function printedEffect({ was, is, unitBefore, unit, change, step, turned }: Effect): PrintedEffect {
  const digits = digitsToTell(was, is)
  return {
    was: valueWords(was, unitBefore, digits), is: valueWords(is, unit, digits),
    change: turned ? (is === false ? 'no longer met' : 'met now') : step !== undefined ? stepWords(step, unit) : change === undefined ? '' : changeWords(change),
  }
}

/** `+3.2 %`; without sign where nothing changed. */
export function changeWords(change: number): string {
  if (change === 0) return 'no change'
  const percent = 100 * change
  const size = Math.abs(percent)
  const text = size >= 1e6 ? size.toExponential(1) : size >= 100 ? size.toFixed(0) : Number(size.toPrecision(2)).toString()
  return `${percent < 0 ? '−' : '+'}${text} %`
}

/** `+4.1 Δ°F`, `−0.35 psi` */
function stepWords(step: number, unit = ''): string {
  if (step === 0) return 'no change'
  return `${step < 0 ? '−' : '+'}${formatNumber(Math.abs(step), { digits: STEP_DIGITS })} ${stepUnit(unit)}`
}

const STEP_DIGITS = 3

/** The unit of a difference of two quantities in a unit whose zero is an agreed one. */
function stepUnit(text: string): string {
  const unit = findUnit(text)
  if (unit === undefined) return text
  const dimension = unit.dimension === 'temperature' ? 'temperature difference' : unit.dimension
  return units.find((one) => one.dimension === dimension && one.offset === 0 && !one.gauge && one.factor === Math.abs(unit.factor))?.code ?? text
}

const LEAST_DIGITS = 5
const MOST_DIGITS = 15

/** So many that two numbers do not read the same. */
function digitsToTell(was: CellValue, is: CellValue): number {
  if (typeof was !== 'number' || typeof is !== 'number' || was === is) return LEAST_DIGITS
  for (let digits = LEAST_DIGITS; digits < MOST_DIGITS; digits++) if (formatNumber(was, { digits }) !== formatNumber(is, { digits })) return digits
  return MOST_DIGITS
}

function valueWords(value: CellValue, unit: string | undefined, digits: number): string {
  if (value === null) return '–'
  if (isCellError(value)) return value.error
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  if (typeof value === 'string') return value
  return withUnit(formatNumber(value, { digits }), unit)
}
