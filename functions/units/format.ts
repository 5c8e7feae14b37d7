import { fromSi } from './convert.ts'
import type { Unit } from './units.ts'

/** A number for a message: at most six significant digits, no trailing zeros. */
export const formatNumber = (value: number): string => String(Number(value.toPrecision(6)))

/** A text for a message that quotes it: a cell can hold far more than a message should. */
export const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}…` : text)

/** An SI value in a unit, for a message: `-107.68 °F`. */
export const formatQuantity = (si: number, unit: Unit, sitePa?: number): string =>
  unit.code === '-' ? formatNumber(si) : `${formatNumber(fromSi(si, unit, sitePa))} ${unit.code}`
