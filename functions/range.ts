import { outOfRange, type Fault } from './fault.ts'
import { ROUNDING } from './rounding.ts'
import { formatQuantity } from './units/format.ts'
import type { Unit } from './units/units.ts'

/** The values an argument may have, in SI, and where the limit comes from. A bound is itself accepted unless it is `above` or `below`. */
export interface Range {
  readonly min?: number
  readonly max?: number
  readonly above?: number
  readonly below?: number
  readonly limit: string
}

/** The fault for a value outside its range, in the unit in which it was given; undefined for one within. */
export function outside(si: number, unit: Unit, label: string, range: Partial<Range>, sitePa: number): Fault | undefined {
  const { min = -Infinity, max = Infinity, above = -Infinity, below = Infinity } = range
  if (si >= lower(min) && si <= upper(max) && si > above && si < below) return undefined
  if (!Number.isFinite(si)) return outOfRange(`${label} is too large to compute with`)
  return outOfRange(`${label} is ${formatQuantity(si, unit, sitePa)}; accepted is${rangeWords(range, (bound) => formatQuantity(bound, unit, sitePa))}`)
}

/** A bound is met within the rounding of a converted unit. */
export const lower = (min: number): number => min - Math.abs(min) * ROUNDING
export const upper = (max: number): number => max + Math.abs(max) * ROUNDING

/** The range in words, its bounds as `show` prints them, with a blank before, and the reason in brackets. */
export function rangeWords({ min, max, above, below, limit }: Partial<Range>, show: (si: number) => string): string {
  const parts = [
    min !== undefined && max !== undefined
      ? `${show(min)} to ${show(max)}`
      : min !== undefined ? `at least ${show(min)}` : max !== undefined ? `at most ${show(max)}` : '',
    above !== undefined ? `more than ${show(above)}` : '',
    below !== undefined ? `less than ${show(below)}` : '',
  ].filter((part) => part !== '')
  if (parts.length === 0) return ''
  return ` ${parts.join(' and ')}${limit === undefined ? '' : ` (${limit})`}`
}
