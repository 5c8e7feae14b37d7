import { isFault, wrong, type Fault } from './fault.ts'
import { exampleUnits, readQuantity, single, type Given } from './given.ts'
import { outside, rangeWords, type Range } from './range.ts'
import { STANDARD_ATMOSPHERE_PA } from './units/constants.ts'
import { toSi } from './units/convert.ts'
import { formatQuantity, shortened } from './units/format.ts'
import { unknownUnit, type Quantity } from './units/quantity.ts'
import { formatForReading } from './units/reading.ts'
import { findUnit, unitCodes, type Dimension, type Unit } from './units/units.ts'

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
    accepts: `a number${rangeWords(range, (bound) => formatQuantity(bound, DIMENSIONLESS))}`,
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
        return wrong(`${label} of the result is ${found.code}, ${withArticle(found.dimension)}; accepted is ${codesOf(dimensions)}`)
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

function acceptedQuantity(dimensions: readonly Dimension[], options: QuantityOptions): string {
  if (dimensions.length === 0) return 'a quantity'
  const [first] = dimensions
  const isDifference = options.gaugeRefused === 'difference'
  return `${withArticle(`${isDifference ? 'difference of ' : ''}${dimensions.join(' or ')}`)}${first === undefined ? '' : rangeWords(options, (bound) => formatForReading(bound, first, isDifference))}`
}

const wrongDimension = (unit: Unit, label: string, dimensions: readonly Dimension[]): Fault => {
  const mixed =
    unit.dimension === 'temperature difference' && dimensions.includes('temperature') ? ', a difference of temperature, not a temperature'
    : unit.dimension === 'temperature' && dimensions.includes('temperature difference') ? ', a temperature, not a difference of temperature'
    : `, ${withArticle(unit.dimension)}`
  return wrong(`${label} is in ${unit.code}${mixed}; accepted is ${codesOf(dimensions)}`)
}

const refuseGauge = (unit: Unit, label: string, reason: GaugeRefused): Fault =>
  wrong(`${label} is ${reason === 'difference' ? 'a difference of pressure' : 'the pressure of the atmosphere itself'}, which ${unit.code}, counted from the atmosphere, cannot state: write psi, kPa or bar`)

const codesOf = (dimensions: readonly Dimension[]): string => dimensions.flatMap(unitCodes).join(', ')

function withArticle(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`
}
