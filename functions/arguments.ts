import { isFault, outOfRange, wrong, type Fault } from './fault.ts'
import { ROUNDING } from './rounding.ts'
import { STANDARD_ATMOSPHERE_PA, toSi } from './units/convert.ts'
import { formatNumber, formatQuantity, shortened } from './units/format.ts'
import { parseQuantity, unknownUnit, type Quantity } from './units/quantity.ts'
import { findUnit, unitCodes, units, type Dimension, type Unit } from './units/units.ts'

/** A cell's value as a function receives it: `null` is an empty cell. Error values never come this far; the caller passes them on. */
export type Scalar = number | string | boolean | null

/** What stands at an argument's place: a value, the rows of a range, or nothing at all. */
export type Given = Scalar | { readonly rows: readonly (readonly Scalar[])[] } | undefined

/** One argument of a function: its words, and how what was given becomes what the computation sees, or a fault that says what is accepted. */
export interface Argument<T> {
  readonly kind: 'quantity' | 'number' | 'choice' | 'text' | 'unit' | 'block'
  readonly words: string
  readonly optional: boolean
  /** For hints and the guide: what is accepted, in words. */
  readonly accepts: string
  readonly dimensions: readonly Dimension[]
  readonly choices: readonly string[]
  /** Of a block: what stands in each of its rows, in order, and what is accepted there. */
  readonly rows: readonly BlockRow[]
  /** In SI; applies to the first of `dimensions`. */
  readonly range: Partial<Range>
  readonly gaugeRefused?: GaugeRefused
  /** Of an optional argument: the SI value, name or text that stands for it where it is omitted, if any does. */
  readonly whenOmitted?: unknown
  readonly resolve: (given: Given, label: string, sitePa: number) => T | Fault
}

export interface BlockRow extends Pick<Argument<unknown>, 'kind' | 'words' | 'accepts' | 'dimensions' | 'range'> {
  readonly name: string
}

/** The values an argument may have, in SI, and where the limit comes from. A bound is itself accepted unless it is `above` or `below`. */
export interface Range {
  readonly min?: number
  readonly max?: number
  readonly above?: number
  readonly below?: number
  readonly limit: string
}

interface QuantityOptions extends Partial<Range> {
  /** Gauge units, which count from the atmosphere, are refused: the pressure is a `difference`, or the atmosphere's own. */
  readonly gaugeRefused?: GaugeRefused
}

type GaugeRefused = 'difference' | 'atmospheric'

/** A quantity: a range of two adjacent cells, value then unit, or a text such as "31 °F". The computation sees its SI value. */
export function quantity(dimension: Dimension, words: string, options: QuantityOptions = {}): Argument<number> {
  const dimensions = [dimension]
  return {
    ...quantityOf(dimensions, words, options),
    // Straight to the number: most cells of a workbook come this way.
    resolve: (given, label, sitePa) => {
      const read = readQuantity(given, label, dimensions)
      return isFault(read) ? read : siOf(read, label, dimensions, options, sitePa)
    },
  }
}

/** A quantity of one of several dimensions, such as a level in m or in %. */
export interface SiQuantity {
  readonly si: number
  readonly unit: Unit
}

/** A quantity that may have one of several dimensions (an empty list: any). A range of validity applies to the first of them. */
export function quantityOf(dimensions: readonly Dimension[], words: string, options: QuantityOptions = {}): Argument<SiQuantity> {
  const { gaugeRefused } = options
  return {
    kind: 'quantity', words, optional: false, dimensions, choices: [], rows: [], range: options, accepts: acceptedQuantity(dimensions, options),
    ...(gaugeRefused === undefined ? {} : { gaugeRefused }),
    resolve: (given, label, sitePa) => {
      const read = readQuantity(given, label, dimensions)
      if (isFault(read)) return read
      const si = siOf(read, label, dimensions, options, sitePa)
      return isFault(si) ? si : { si, unit: read.unit }
    },
  }
}

/** The SI value of a quantity, or a fault where it is of a wrong dimension or out of range. */
function siOf({ value, unit }: Quantity, label: string, dimensions: readonly Dimension[], options: QuantityOptions, sitePa: number): number | Fault {
  if (dimensions.length > 0 && !dimensions.includes(unit.dimension)) return wrongDimension(unit, label, dimensions)
  if (options.gaugeRefused !== undefined && unit.gauge) return refuseGauge(unit, label, options.gaugeRefused)
  const si = toSi(value, unit, sitePa)
  const ranged = dimensions.length === 0 || unit.dimension === dimensions[0]
  return (ranged ? outside(si, unit, label, options, sitePa) : undefined) ?? si
}

/** A plain number, or a share in "-" or "%". */
export function number(words: string, range: Partial<Range> = {}): Argument<number> {
  return {
    kind: 'number', words, optional: false, dimensions: ['share'], choices: [], rows: [], range,
    accepts: `a number${rangeWords(range, DIMENSIONLESS, range.limit)}`,
    resolve: (given, label, sitePa) => {
      const plain = single(given)
      if (typeof plain === 'number') return outside(plain, DIMENSIONLESS, label, range, sitePa) ?? plain
      if (plain === null || given === undefined) return wrong(`${label} is empty: a number is needed`)
      const text = typeof plain === 'string' && Number.isFinite(Number(plain)) && plain.trim() !== '' ? `${plain} -` : given
      const read = readQuantity(text, label, ['share'])
      if (isFault(read)) return wrong(`${label} is not a number: write 0.25 or "25 %"`)
      if (read.unit.dimension !== 'share') return wrongDimension(read.unit, label, ['share'])
      const value = toSi(read.value, read.unit)
      return outside(value, read.unit, label, range, sitePa) ?? value
    },
  }
}

/** One name out of a short list; capitals do not matter. */
export function choice<const C extends string>(words: string, choices: readonly C[]): Argument<C> {
  const accepts = `one of ${choices.map((name) => `"${name}"`).join(', ')}`
  return {
    kind: 'choice', words, optional: false, dimensions: [], choices, rows: [], range: {}, accepts,
    resolve: (given, label) => {
      const plain = String(single(given) ?? '').trim()
      return choices.find((name) => name.toLowerCase() === plain.toLowerCase()) ?? wrong(`unknown ${label} "${shortened(plain)}": accepted is ${accepts}`)
    },
  }
}

/** The unit of the result: a text, or the cell that holds it. An empty list of dimensions means any. */
export function unit(dimensions: readonly Dimension[], options: Pick<QuantityOptions, 'gaugeRefused'> = {}): Argument<Unit> {
  return {
    kind: 'unit', words: 'unit of the result', optional: false, dimensions, choices: [], rows: [], range: {},
    ...(options.gaugeRefused === undefined ? {} : { gaugeRefused: options.gaugeRefused }),
    accepts: dimensions.length === 0 ? 'a unit' : `a unit of ${dimensions.join(' or ')}: ${codesOf(dimensions)}`,
    resolve: (given, label) => {
      const plain = single(given)
      if (typeof plain !== 'string' || plain.trim() === '') {
        return wrong(`${label} of the result is missing: write ${exampleUnits(dimensions)}, or the cell that holds it`)
      }
      const found = findUnit(plain)
      if (found === undefined) return unknownUnit(plain)
      if (dimensions.length > 0 && !dimensions.includes(found.dimension)) {
        return wrong(`${label} of the result is ${found.code}, a ${found.dimension}; accepted is ${codesOf(dimensions)}`)
      }
      const { gaugeRefused } = options
      return gaugeRefused !== undefined && found.gauge ? refuseGauge(found, `${label} of the result`, gaugeRefused) : found
    },
  }
}

/**
 * Many numbers as one argument: a range of rows `value | unit`, in the order of `rows`, whose keys are the rows' names.
 * The unit's cell of a plain number may be empty. A fault names the row.
 */
export function block<const R extends Readonly<Record<string, Argument<number>>>>(words: string, rows: R): Argument<{ readonly [K in keyof R]: number }> {
  const entries = Object.entries(rows)
  const list = entries.map(([name], index) => `${index + 1} ${name}`).join(', ')
  const accepts = `a range of ${entries.length} rows, value and unit side by side, in this order: ${list}`
  return {
    kind: 'block', words, optional: false, dimensions: [], choices: [], range: {}, accepts,
    rows: entries.map(([name, { kind, words: rowWords, accepts: rowAccepts, dimensions, range }]) => ({ name, kind, words: rowWords, accepts: rowAccepts, dimensions, range })),
    resolve: (given, label, sitePa) => {
      const cells = typeof given === 'object' && given !== null ? given.rows : undefined
      if (cells?.length !== entries.length || cells.some((row) => row.length !== 2)) {
        return wrong(`${label} is ${cells === undefined ? 'no range' : `${cells.length} × ${cells[0]?.length ?? 0} cells`}: accepted is ${accepts}`)
      }
      const resolved: Record<string, number> = {}
      for (const [index, [name, argument]] of entries.entries()) {
        const [value = null, unitText = null] = cells[index] ?? []
        const bare = argument.kind === 'number' && (unitText === null || unitText === '')
        const number = argument.resolve(bare ? value : { rows: [[value, unitText]] }, `${label} row ${index + 1}, ${name}`, sitePa)
        if (isFault(number)) return number
        resolved[name] = number
      }
      return resolved as { readonly [K in keyof R]: number } // its keys are those of `rows`, which the loop has just followed
    },
  }
}

/** The argument may be left out, and has no value then: the computation says where it cannot do without. */
export function optionalWithout<T>(argument: Argument<T>, inWords: string): Argument<T | undefined> {
  return {
    ...argument,
    optional: true,
    words: `${argument.words} (${inWords})`,
    resolve: (given, label, sitePa) => (given === undefined ? undefined : argument.resolve(given, label, sitePa)),
  }
}

/** The argument may be left out; it then has the one documented value, whatever the settings elsewhere. */
export function optional<T>(argument: Argument<T>, whenOmitted: T, inWords: string): Argument<T> {
  return {
    ...argument,
    optional: true,
    whenOmitted,
    words: `${argument.words} (${inWords} where omitted)`,
    resolve: (given, label, sitePa) => (given === undefined ? whenOmitted : argument.resolve(given, label, sitePa)),
  }
}

/** Atmospheric pressure of the site, from which gauge units count. */
export const site: Argument<number> = optional(
  quantity('pressure', 'atmospheric pressure of the site, from which gauge units count', {
    gaugeRefused: 'atmospheric', min: 20e3, max: 120e3, limit: 'atmospheric pressure from below sea level to 11 000 m',
  }),
  STANDARD_ATMOSPHERE_PA,
  '101.325 kPa',
)

const DIMENSIONLESS: Unit = { code: '-', aliases: [], dimension: 'share', factor: 1, offset: 0, gauge: false }

/** A value given directly, or the one cell of a one-cell range. */
const single = (given: Given): Scalar | undefined =>
  typeof given === 'object' && given !== null
    ? given.rows.length === 1 && given.rows[0]?.length === 1 ? given.rows[0][0] : undefined
    : given

function readQuantity(given: Given, label: string, dimensions: readonly Dimension[]): Quantity | Fault {
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

function outside(si: number, unit: Unit, label: string, range: Partial<Range>, sitePa: number): Fault | undefined {
  const { min = -Infinity, max = Infinity, above = -Infinity, below = Infinity } = range
  if (si >= lower(min) && si <= upper(max) && si > above && si < below) return undefined
  if (!Number.isFinite(si)) return outOfRange(`${label} is too large to compute with`)
  return outOfRange(`${label} is ${formatQuantity(si, unit, sitePa)}; accepted is${rangeWords(range, unit, range.limit, sitePa)}`)
}

/** A bound is met within the rounding of a converted unit. */
export const lower = (min: number): number => min - Math.abs(min) * ROUNDING
export const upper = (max: number): number => max + Math.abs(max) * ROUNDING

function rangeWords(range: Partial<Range>, unit: Unit, limit: string | undefined, sitePa?: number): string {
  const show = (si: number) => formatQuantity(si, unit, sitePa)
  const { min, max, above, below } = range
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

function acceptedQuantity(dimensions: readonly Dimension[], options: QuantityOptions): string {
  if (dimensions.length === 0) return 'a quantity'
  const [first] = dimensions
  const reference = first === undefined ? undefined : units.find((one) => one.dimension === first)
  return `a ${options.gaugeRefused === 'difference' ? 'difference of ' : ''}${dimensions.join(' or ')}${reference === undefined ? '' : rangeWords(options, reference, options.limit)}`
}

const wrongDimension = (unit: Unit, label: string, dimensions: readonly Dimension[]): Fault => {
  const mixed =
    unit.dimension === 'temperature difference' && dimensions.includes('temperature') ? ', a difference of temperature, not a temperature'
    : unit.dimension === 'temperature' && dimensions.includes('temperature difference') ? ', a temperature, not a difference of temperature'
    : `, a ${unit.dimension}`
  return wrong(`${label} is in ${unit.code}${mixed}; accepted is ${codesOf(dimensions)}`)
}

const refuseGauge = (unit: Unit, label: string, reason: GaugeRefused): Fault =>
  wrong(`${label} is ${reason === 'difference' ? 'a difference of pressure' : 'the pressure of the atmosphere itself'}, which ${unit.code}, counted from the atmosphere, cannot state: write psi, kPa or bar`)

const codesOf = (dimensions: readonly Dimension[]): string => dimensions.flatMap(unitCodes).join(', ')

const exampleUnits = (dimensions: readonly Dimension[]): string =>
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
