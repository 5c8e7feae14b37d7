import { isCellError, type CellValue } from '../../calc/values.ts'
import { TABLE_BLOCKS } from '../../exchange/workings/table-blocks.ts'
import { stepValue } from '../../exchange/workings/step-values.ts'
import { isFault } from '../../../functions/fault.ts'
import { single, type Given } from '../../../functions/given.ts'
import { parseQuantity } from '../../../functions/units/quantity.ts'
import { findUnit } from '../../../functions/units/units.ts'
import { fillMarks } from '../../../functions/workings/expression.ts'
import type { CallPart, Column } from '../../../functions/workings/workings.ts'
import { emptyWorkbook } from '../../workbook/document.ts'
import { formulaTree } from '../../workbook/formula/tree.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { formulaLines, type FunctionCall } from './formula-lines.ts'
import { withUnit } from './with-unit.ts'

/** A step of a function's computation, in SI units. */
export interface FunctionStep {
  readonly label: string
  /** How it comes of the steps before, where that is short; what is read from a table has none. */
  readonly how?: string
  readonly value: string
  /** What it is given, in SI. */
  readonly isGiven?: true
}

/** More steps of one call are not told: what lies between is an iteration, or a table looked up. */
const MOST_STEPS = 12

/**
 * What a function computes on the way from what it is given to its result, as its workings in exported files do: first what it is given, in SI, where that is
 * another unit, then its own steps. Of an iteration only the last turn is told.
 */
export function functionSteps({ definition, given }: FunctionCall): readonly FunctionStep[] {
  const { columns } = definition.workings
  const values: CellValue[] = []
  for (const { given: part, formula } of columns) values.push(formula === undefined ? (part === undefined ? null : partValue(given[part.argument], part)) : stepValue(formula, TABLE_BLOCKS)(values))
  const argumentEnd = columns.findLastIndex(isOfArgument) + 1
  const found = columns.flatMap((column, at): FunctionStep[] => {
    const value = values[at]
    if (value === undefined || value === null || isCellError(value) || value === '' || at === columns.length - 1 || HIDDEN.test(column.label) || isUntold(columns, at)) return []
    if (at >= argumentEnd) return [step(columns, at, value)]
    return column.label.endsWith(', SI') && isConverted(columns, values, at) ? [step(columns, at, value)] : []
  })
  return found.length <= MOST_STEPS ? found : [...found.slice(0, MOST_STEPS - 2), ...found.slice(-2)]
}

const OF_ARGUMENT = /, (?:unit|row of the unit|unit fits|SI|within its range|known)$/
const isOfArgument = ({ label, given }: Column): boolean => given !== undefined || (OF_ARGUMENT.test(label) && label !== 'result, SI')

/** What only finds its way in a table. */
const HIDDEN = /interval of the table|ACOS of its place|across the root|end below the root|^row of |^a little (?:above|below) it$/

/** A turn of an iteration that is not the last one. */
function isUntold(columns: readonly Column[], at: number): boolean {
  const turn = turnOf(columns[at])
  return turn !== undefined && columns.slice(at + 1).some((other) => turnOf(other) === turn)
}

const turnOf = (column: Column | undefined): string | undefined => /^(.*)[, ]+step \d+/.exec(column?.label ?? '')?.[1]

function step(columns: readonly Column[], at: number, value: CellValue): FunctionStep {
  const column = columns[at]
  const isGiven = column !== undefined && isOfArgument(column)
  const how = column?.formula === undefined || isGiven ? undefined : howWords(column.formula, columns)
  const label = (column?.label ?? '').replace(/^result, SI$/, 'result').replace(/, SI$/, '')
  return { label, ...(isGiven ? { isGiven } : {}), ...(how === undefined ? {} : { how }), value: typeof value === 'number' ? withUnit(formatNumber(value), column?.unit) : String(value) }
}

/** Whether an argument is given in another unit than SI. */
function isConverted(columns: readonly Column[], values: readonly CellValue[], at: number): boolean {
  const label = columns[at]?.label.replace(/, SI$/, '')
  const given = columns.findIndex((column) => column.label === label && column.given !== undefined)
  return given >= 0 && values[given] !== values[at]
}

const LONGEST_HOW = 150

/** A step's formula with the names of the steps before it; undefined where it is long, or reads tables. */
function howWords(formula: string, columns: readonly Column[]): string | undefined {
  let readsTable = false
  const named = fillMarks(formula, (mark) => {
    if (typeof mark === 'string') readsTable = true
    return `step_${mark}`
  })
  const tree = readsTable || /\bIF\(/.test(named) ? undefined : formulaTree(named)
  if (tree === undefined) return undefined
  const workbook = emptyWorkbook()
  const [home] = workbook.sheets
  if (home === undefined) return undefined
  const { words } = formulaLines(tree, { source: { workbook, home, value: () => undefined }, print: String, nameOf: () => '', rangeName: () => '' })
  const text = words.replace(/step_(\d+)(\^)?/g, (_, column: string, power = '') => bracketed((columns[Number(column)]?.label ?? '').replace(OF_ARGUMENT, ''), power !== '') + power)
  return text.length > LONGEST_HOW ? undefined : text
}

/** A name that could be read as a sum, or of which only the end would be raised to a power. */
const bracketed = (name: string, isRaised: boolean): string => (/[−+×/]/.test(name) || (isRaised && name.includes(' ')) ? `(${name})` : name)

/** What a column that holds no formula takes from an argument: its number, its unit by its first spelling, or its text. */
function partValue(given: Given, { row, part, whenOmitted }: CallPart): CellValue {
  if (given === undefined) return whenOmitted ?? null
  if (part === 'text') return String(single(given) ?? '')
  const cells = typeof given === 'object' && given !== null ? given.rows[row ?? 0] : undefined
  const plain = single(given)
  if (cells !== undefined && cells.length > 1) return part === 'value' ? (cells[0] ?? null) : unitCode(cells[1])
  if (part === 'unit' && typeof plain === 'string' && findUnit(plain) !== undefined) return unitCode(plain)
  if (typeof plain !== 'string') return part === 'value' ? (plain ?? null) : ''
  const quantity = parseQuantity(plain)
  if (isFault(quantity)) return part === 'value' ? (Number.isFinite(Number(plain)) ? Number(plain) : null) : ''
  return part === 'value' ? quantity.value : quantity.unit.code
}

const unitCode = (text: unknown): string => (typeof text === 'string' ? (findUnit(text)?.code ?? text) : '')
