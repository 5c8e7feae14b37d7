import type { Dimension } from './dimension.ts'
import type { Fault } from './fault.ts'

/** What a part of a formula is, as far as its text and the units of its cells tell. */
export type Meaning =
  /** Never a reason for a finding. */
  | { readonly kind: 'unknown' }
  | PlainNumber
  | Quantity
  | { readonly kind: 'truth' }
  /** A text, and the unit that it names if it names one. */
  | { readonly kind: 'text'; readonly text: string | undefined; readonly unit: Quantity | undefined }
  /** A number with its unit, as a text or as two cells side by side; of an unknown unit undefined. */
  | { readonly kind: 'pair'; readonly unit: Quantity | undefined }
  /** Several cells: what stands in each column, each thing once. */
  | { readonly kind: 'range'; readonly columns: readonly (readonly Meaning[])[] }

/** A number without a unit: a factor, a count, a conversion; beside a quantity in a sum it takes that one's unit. */
export interface PlainNumber {
  readonly kind: 'number'
  readonly value: number | undefined
  /** The literal numbers that it is the product of. */
  readonly factors: readonly number[]
  /** The numbers of cells without unit that it is the product of and that may be conversions. */
  readonly given?: readonly number[]
  /** It may have a dimension that nobody wrote: a number of an empirical formula, a cell without unit. */
  readonly loose: boolean
}

/** SI value = number × factor. */
export interface Quantity {
  readonly kind: 'quantity'
  readonly dimension: Dimension
  readonly factor: number
  readonly zero: Zero
  /** Literal numbers that were multiplied in, each of which may be a conversion or no more than a number: 60 minutes, 2 drums. */
  readonly constants: readonly number[]
  /** The same that stand in cells: they may be conversions, and that they are not is no fault. */
  readonly given?: readonly number[]
  /** A number multiplied in may have brought a dimension. */
  readonly loose: boolean
  /**
   * A temperature in °F or °C has been a factor in it. That is wrong, unless the zero falls out again: m·cp·T less another, or the mean
   * of temperatures by their flows. The fault is told of where it has not.
   */
  readonly pending?: Fault
  /** The units that it is made of, as they are written. */
  readonly symbol: readonly (readonly [code: string, exponent: number])[]
}

/** From where a temperature or a pressure counts. Of no other quantity is it looked at. */
export interface Zero {
  /**
   * How many temperatures or pressures are in the sum: 1 for °F, psia and psig, 0 for Δ°F and for what is left of two of them,
   * NaN where it cannot be told, as of kPa.
   */
  readonly points: number
  /** Of a temperature: the kelvins at number 0. */
  readonly offset: number
  /** How many times the pressure of the atmosphere is left out. */
  readonly gauge: number
  /** A pressure about that of the atmosphere: added to a gauge pressure it makes an absolute one. */
  readonly atmospheric: boolean
  /** It may count from either zero, or be a difference: a number typed into the formula has seen to that, or may have. */
  readonly open: boolean
}

export const UNKNOWN: Meaning = { kind: 'unknown' }

export const ANY_ZERO: Zero = { points: NaN, offset: 0, gauge: 0, atmospheric: false, open: false }

/** A number that can bring no dimension: a count, a result of COUNT or ROW. */
export const countOf = (value?: number): PlainNumber => ({ kind: 'number', value, factors: [], loose: false })

export const sameFactor = (one: number, other: number, within = 1e-6): boolean => Math.abs(one / other - 1) <= within

/** Another meaning has another text. */
export function meaningText(meaning: Meaning): string {
  return JSON.stringify(meaning, (_, value: unknown) => (typeof value === 'number' && Number.isNaN(value) ? 'NaN' : value))
}
