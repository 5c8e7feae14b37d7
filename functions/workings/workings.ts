import { argumentLabel } from '../argument-label.ts'
import type { Argument, BlockRow, SiQuantity } from '../arguments.ts'
import { lower, upper, type Range } from '../range.ts'
import { STANDARD_ATMOSPHERE_PA } from '../units/constants.ts'
import type { Dimension, Unit } from '../units/units.ts'
import { block, cell, num, quoted, unless, type Expression } from './expression.ts'

/** How the workings of a function see an argument that its computation sees as a `T`. */
export type Written<T> =
  | (T extends SiQuantity ? { readonly si: Expression; readonly dimension: Expression; readonly gauge: Expression } : never)
  | (T extends Unit ? { readonly dimension: Expression; readonly gauge: Expression } : never)
  | (T extends number | string ? Expression : never)
  | (T extends undefined ? never : T extends Readonly<Record<string, number>> ? { readonly [K in keyof T]: Expression } : never)

/**
 * The SI value of a quantity that the computation is given with its unit for the sake of its messages, though it has one dimension only:
 * workings are given its value alone.
 */
export const bareSi = (quantity: Expression | Written<SiQuantity>): Expression => (typeof quantity === 'string' ? quantity : quantity.si)

/** Takes the steps of a computation down, a column each. */
export interface Steps {
  /** Adds a column and gives back the expression for its value. The unit is the SI unit, for the reader. */
  step(label: string, unit: string, formula: Expression): Expression
}

/** What of a call stands in a column that holds no formula. */
export interface CallPart {
  /** The argument's place in the call. */
  readonly argument: number
  /** The row of a block, counted from 0. */
  readonly row?: number
  /**
   * A number, the text of its unit (empty for a plain number), or a text such as a name out of a list: where several cells are given
   * for it, what they hold with a blank between.
   */
  readonly part: 'value' | 'unit' | 'text'
  /** What stands there where the argument is omitted; empty where it then has no value. */
  readonly whenOmitted?: number | string
}

export interface Column {
  readonly label: string
  readonly unit: string
  readonly formula?: Expression
  readonly given?: CallPart
}

/** The workings of a function: a row of columns for a call, the last one the result in the unit asked for. */
export interface FunctionWorkings {
  readonly columns: readonly Column[]
}

type AnyArguments = Readonly<Record<string, Argument<unknown>>>

/**
 * Lays out a function's workings: what the call gives, its SI values with the checks of unit, dimension and range,
 * the function's own steps, and the result.
 */
export function layOut(
  named: AnyArguments, result: Dimension | 'number' | 'text' | 'as asked', computation: (given: never, steps: Steps) => Expression,
): FunctionWorkings {
  const columns: Column[] = []
  /** The column of each argument that is an error where the argument is refused; `optional` ones are not looked at in every case. */
  const checked: { readonly mark: Expression; readonly optional: boolean }[] = []
  const add = (column: Column): Expression => cell(columns.push(column) - 1)
  const steps: Steps = { step: (label, unit, formula) => add({ label, unit, formula }) }
  const entries = Object.entries(named)
  const argumentIndex = (key: string) => entries.findIndex(([name]) => name === key)

  const siteArgument = named['site']
  const sitePa = siteArgument === undefined
    ? num(STANDARD_ATMOSPHERE_PA)
    : writeArgument('site', siteArgument, num(STANDARD_ATMOSPHERE_PA)) as Expression
  const given: Record<string, unknown> = siteArgument === undefined ? {} : { site: sitePa }
  for (const [key, argument] of entries) if (key !== 'site') given[key] = writeArgument(key, argument, sitePa)

  const firstStep = columns.length

  // Its type is that of the definition's arguments, which the loop has just followed.
  const value = refusingUnused(computation(given as never, steps))
  const unit = given['unit'] as WrittenUnit | undefined
  add({ label: 'result', unit: unit === undefined ? '' : 'as asked', formula: unit === undefined ? value : inUnit(value, unit) })
  return { columns }

  /** An argument that the computation may not look at, such as the bore that only one void model needs, is refused all the same where it is wrong. */
  function refusingUnused(value: Expression): Expression {
    const written = [value, ...columns.slice(firstStep).map(({ formula }) => formula ?? '')]
    const unused = checked.filter(({ mark, optional }) => optional || !written.some((formula) => formula.includes(mark)))
    return unused.length === 0 ? value : `IF(OR(${unused.map(({ mark }) => `ISERROR(${mark})`).join(',')}),NA(),${value})`
  }

  function writeArgument(key: string, argument: Argument<unknown>, site: Expression): unknown {
    const index = argumentIndex(key)
    const label = argumentLabel(key)
    if (argument.kind === 'block') {
      return Object.fromEntries(argument.rows.map((row, number) => [row.name, writeNumber(row, `${row.name}`, { argument: index, row: number }, site).si]))
    }
    if (argument.kind === 'choice') return writeChoice(argument, label, index)
    if (argument.kind === 'text') return add({ label, unit: '', given: { argument: index, part: 'text', ...omitted(argument) } })
    if (argument.kind === 'unit') return writeUnit(argument, label, index)
    const written = writeNumber(argument, label, { argument: index, ...omitted(argument) }, site)
    return argument.kind === 'quantity' && argument.dimensions.length !== 1 ? written : written.si
  }

  function writeChoice(argument: Argument<unknown>, label: string, index: number): Expression {
    const text = add({ label, unit: '', given: { argument: index, part: 'text', ...omitted(argument) } })
    // A name such as "40" may stand in its cell as a number.
    const name = `TRIM(${text})`
    const known = `OR(${argument.choices.map((one) => `${name}=${quoted(one)}`).join(',')})`
    const mark = add({ label: `${label}, known`, unit: '', formula: unless(known, name) })
    checked.push({ mark, optional: false })
    return mark
  }

  function writeUnit(argument: Argument<unknown>, label: string, index: number): WrittenUnit {
    const text = add({ label: `${label} of the result`, unit: '', given: { argument: index, part: 'unit' } })
    const row = unitRow(label, text, argument.dimensions, argument.gaugeRefused !== undefined)
    return { row, dimension: `INDEX(${block('units', 'dimension')},${row})`, gauge: `INDEX(${block('units', 'gauge')},${row})` }
  }

  /** A number with its unit, in SI. An omitted argument is given in SI already, without a unit. */
  function writeNumber(argument: BlockRow | Argument<unknown>, label: string, at: Omit<CallPart, 'part'>, site: Expression) {
    const { whenOmitted, ...place } = at
    const value = add({ label, unit: 'as given', given: { ...at, part: 'value' } })
    const text = add({ label: `${label}, unit`, unit: '', given: { ...place, part: 'unit', ...('whenOmitted' in at ? { whenOmitted: '' } : {}) } })
    const gaugeRefused = 'gaugeRefused' in argument && argument.gaugeRefused !== undefined
    const row = unitRow(label, text, argument.dimensions, gaugeRefused)
    const column = (name: string) => `INDEX(${block('units', name)},${row})`
    const converted = `${value}*${column('factor')}+${column('offset')}+${column('gauge')}*${site}`
    const mayLackUnit = argument.kind === 'number' || 'whenOmitted' in at
    const mayBeEmpty = whenOmitted === ''
    const si = `IF(ISNUMBER(${value}),${mayLackUnit ? `IF(${text}="",${value},${converted})` : converted},${mayBeEmpty ? `IF(${value}="","",NA())` : 'NA()'})`
    const inSi = add({ label: `${label}, SI`, unit: SI_UNIT[argument.dimensions[0] ?? 'share'], formula: si })
    const dimension = argument.kind === 'number' ? quoted('share') : column('dimension')
    const range = rangeCheck(inSi, argument.range)
    const gauge = column('gauge')
    if (range === undefined) {
      checked.push({ mark: inSi, optional: mayBeEmpty })
      return { si: inSi, dimension, gauge }
    }
    const exempt = [
      ...(mayBeEmpty ? [`${inSi}=""`] : []),
      ...(argument.dimensions.length > 1 ? [`${dimension}<>${quoted(argument.dimensions[0] ?? '')}`] : []),
    ]
    const applies = exempt.length === 0 ? range : `OR(${exempt.join(',')},${range})`
    const within = add({ label: `${label}, within its range`, unit: SI_UNIT[argument.dimensions[0] ?? 'share'], formula: unless(applies, inSi) })
    checked.push({ mark: within, optional: mayBeEmpty })
    return { si: within, dimension, gauge }
  }

  /** Where the unit stands in the table of units; an error if it is not there to the letter, or of another dimension. */
  function unitRow(label: string, text: Expression, dimensions: readonly Dimension[], gaugeRefused: boolean): Expression {
    const at = add({ label: `${label}, row of the unit`, unit: '', formula: `IF(${text}="",0,MATCH(${text},${block('units', 'spelling')},0))` })
    const column = (name: string) => `INDEX(${block('units', name)},${at})`
    const conditions = [
      `EXACT(${column('spelling')},${text})`,
      ...(dimensions.length === 0 ? [] : [`OR(${dimensions.map((one) => `${column('dimension')}=${quoted(one)}`).join(',')})`]),
      ...(gaugeRefused ? [`${column('gauge')}=0`] : []),
    ]
    return add({ label: `${label}, unit fits`, unit: '', formula: `IF(${at}=0,NA(),${unless(conditions.length === 1 ? conditions[0] ?? '' : `AND(${conditions.join(',')})`, at)})` })
  }

  function inUnit(value: Expression, unit: WrittenUnit): Expression {
    const column = (name: string) => `INDEX(${block('units', name)},${unit.row})`
    const si = add({ label: 'result, SI', unit: result in SI_UNIT ? SI_UNIT[result as Dimension] : '', formula: value })
    const asked = result === 'density' ? `IF(${unit.dimension}="specific volume",1/${si},${si})` : si
    return `(${asked}-${column('offset')}-${column('gauge')}*${sitePa})/${column('factor')}`
  }
}

interface WrittenUnit {
  readonly row: Expression
  readonly dimension: Expression
  readonly gauge: Expression
}

const omitted = (argument: Argument<unknown>): { readonly whenOmitted?: number | string } => {
  if (!argument.optional) return {}
  const { whenOmitted } = argument
  const value = typeof whenOmitted === 'object' && whenOmitted !== null && 'si' in whenOmitted ? whenOmitted.si : whenOmitted
  return { whenOmitted: typeof value === 'number' || typeof value === 'string' ? value : '' }
}

function rangeCheck(value: Expression, { min, max, above, below }: Partial<Range>): Expression | undefined {
  const conditions = [
    ...(min === undefined ? [] : [`${value}>=${num(lower(min))}`]), ...(max === undefined ? [] : [`${value}<=${num(upper(max))}`]),
    ...(above === undefined ? [] : [`${value}>${num(above)}`]), ...(below === undefined ? [] : [`${value}<${num(below)}`]),
  ]
  return conditions.length === 0 ? undefined : conditions.length === 1 ? conditions[0] : `AND(${conditions.join(',')})`
}

/** For the reader of a step. */
const SI_UNIT: Readonly<Record<Dimension, string>> = {
  'temperature': 'K', 'temperature difference': 'ΔK', 'pressure': 'Pa', 'length': 'm', 'area': 'm2', 'volume': 'm3', 'mass': 'kg',
  'mass flow': 'kg/s', 'volume flow': 'm3/s', 'velocity': 'm/s', 'density': 'kg/m3', 'specific volume': 'm3/kg', 'energy per mass': 'J/kg',
  'power': 'W', 'viscosity': 'Pa·s', 'surface tension': 'N/m', 'flow coefficient': 'Kv', 'pressure per temperature difference': 'Pa/K',
  'specific charge': 'kg/W', 'heat flux': 'W/m2', 'mass flux': 'kg/(m2·s)', 'time': 's', 'share': '-',
}
