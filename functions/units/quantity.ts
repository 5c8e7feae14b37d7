import { wrong, type Fault } from '../fault.ts'
import { shortened } from './format.ts'
import { findUnit, similarUnit, type Unit } from './units.ts'

/** A number with its unit, as it stands in a cell. */
export interface Quantity {
  readonly value: number
  readonly unit: Unit
}

const NUMBER_THEN_UNIT = /^([+\-−]?(?:\d+\.?\d*|\.\d+)(?:[eE][+\-−]?\d+)?)(.*)$/s

/** Reads `"31 °F"`, `"-40°C"`, `"1e-5 m"`: a number with a decimal point, then a unit. The fault says what is missing or unknown. */
export function parseQuantity(text: string): Quantity | Fault {
  const match = NUMBER_THEN_UNIT.exec(text.trim())
  if (match === null) return wrong(`"${shortened(text)}" is not a number with a unit: write for example "31 °F"`)
  const [, number = '', rest = ''] = match
  const unitText = rest.trim()
  const value = Number(number.replace(/−/g, '-'))
  if (!Number.isFinite(value)) return wrong(`"${shortened(number)}" is too large for a number`)
  if (unitText === '') return wrong(`"${shortened(text)}" has no unit: write for example "${shortened(number)} °F"`)
  const unit = findUnit(unitText)
  return unit === undefined ? unknownUnit(unitText) : { value, unit }
}

/** The message for a text that names no unit. */
export function unknownUnit(text: string): Fault {
  const similar = similarUnit(text)
  return wrong(
    similar === undefined
      ? `unknown unit "${shortened(text)}": the guide lists the units, for example °F, psia, ft, lb/min, TR, kW`
      : `unknown unit "${shortened(text)}": did you mean ${similar.code}?`,
  )
}
