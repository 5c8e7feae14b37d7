import { isFault, wrong, type Fault } from './fault.ts'
import { formatNumber, shortened } from './units/format.ts'
import { parseQuantity, unknownUnit, type Quantity } from './units/quantity.ts'
import { findUnit, unitCodes, type Dimension } from './units/units.ts'

/** A cell's value as a function receives it: `null` is an empty cell. Error values never come this far; the caller passes them on. */
export type Scalar = number | string | boolean | null

/** What stands at an argument's place: a value, the rows of a range, or nothing at all. */
export type Given = Scalar | { readonly rows: readonly (readonly Scalar[])[] } | undefined

/** A value given directly, or the one cell of a one-cell range. */
export const single = (given: Given): Scalar | undefined =>
  typeof given === 'object' && given !== null
    ? given.rows.length === 1 && given.rows[0]?.length === 1 ? given.rows[0][0] : undefined
    : given

/** The quantity that stands at an argument's place, or a fault that says how to write one. */
export function readQuantity(given: Given, label: string, dimensions: readonly Dimension[]): Quantity | Fault {
  if (typeof given === 'object' && given !== null) {
    const row = given.rows[0]
    if (given.rows.length === 1 && row?.length === 2) return readPair(row[0] ?? null, row[1] ?? null, label, dimensions)
    if (given.rows.length !== 1 || row?.length !== 1) {
      return wrong(`${label} takes two adjacent cells in a row, value then unit (C5:D5); given are ${given.rows.length} × ${row?.length ?? 0} cells`)
    }
  }
  const plain = single(given)
  if (plain === null || plain === undefined) return wrong(`${label} is empty: ${howToWrite(dimensions)}`)
  if (typeof plain === 'boolean') return wrong(`${label} is ${String(plain).toUpperCase()}: ${howToWrite(dimensions)}`)
  if (typeof plain === 'number' || (plain.trim() !== '' && Number.isFinite(Number(plain)))) return wrong(`${label} needs a unit: ${howToWrite(dimensions)}`)
  const read = parseQuantity(plain)
  return isFault(read) ? wrong(`${label}: ${read.message}`) : read
}

function readPair(value: Scalar, unitText: Scalar, label: string, dimensions: readonly Dimension[]): Quantity | Fault {
  if (value === null) return wrong(`${label} has no number: its first cell is empty`)
  if (typeof value !== 'number') return wrong(`${label} is not a number: its first cell holds ${shown(value)}`)
  if (unitText === null || unitText === '') return wrong(`${label} needs a unit: its second cell is empty; write ${exampleUnits(dimensions)} there`)
  const found = typeof unitText === 'string' ? findUnit(unitText) : undefined
  if (found !== undefined) return { value, unit: found }
  return wrong(`${label}: ${typeof unitText === 'string' ? unknownUnit(unitText).message : `its second cell holds ${shown(unitText)}, not a unit`}`)
}

const shown = (value: Scalar): string => (typeof value === 'string' ? `"${shortened(value)}"` : String(value).toUpperCase())

/** One or two units as they would be written, for a message. */
export const exampleUnits = (dimensions: readonly Dimension[]): string =>
  dimensions.length === 0 ? '"°F"' : dimensions.flatMap((one) => unitCodes(one).slice(0, 2)).slice(0, 2).map((code) => `"${code}"`).join(' or ')

/** Typical quantities for the messages that show how to write one. */
const EXAMPLE: Partial<Record<Dimension, string>> = {
  'temperature': '31 °F', 'temperature difference': '10 Δ°F', 'pressure': '48.2 psia', 'length': '10 ft', 'volume': '40 ft3', 'power': '85 TR',
  'mass flow': '20 lb/min', 'volume flow': '120 cfm', 'velocity': '0.18 ft/s', 'area': '3 ft2', 'mass': '100 lb', 'share': '25 %',
}

const howToWrite = (dimensions: readonly Dimension[]): string => {
  const [first] = dimensions
  const example = first === undefined ? '31 °F' : (EXAMPLE[first] ?? `${formatNumber(1)} ${unitCodes(first)[0] ?? ''}`)
  return `write C5:D5 or "${example}"`
}
