import type { Argument } from '../../functions/arguments.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { argumentLabel, type FunctionDefinition } from '../../functions/define.ts'
import { isFault, type Fault } from '../../functions/fault.ts'
import { readQuantity, type Given } from '../../functions/given.ts'
import type { Range } from '../../functions/range.ts'
import { STANDARD_ATMOSPHERE_PA } from '../../functions/units/constants.ts'
import { findUnit, type Dimension, type Unit } from '../../functions/units/units.ts'
import { isCellError } from '../calc/values.ts'
import type { FormulaNode } from '../workbook/formula/tree.ts'
import type { FormulaValues } from './derivation/formula-values.ts'
import { isBlock, type Computed } from './derivation/standard-values.ts'
import { eachTaken } from './taken-parts.ts'

/** A number given to a function of the catalogue, with the range in which the function takes it. */
export interface ArgumentValue {
  readonly definition: FunctionDefinition
  /** What the function calls it: "drum diameter"; of a block also which row. */
  readonly label: string
  readonly node: FormulaNode
  /** Of a block: the row of it, from 0. */
  readonly blockRow?: number
  readonly range: Partial<Range>
  readonly dimension: Dimension
  /** Atmospheric pressure from which the call counts gauge pressures. */
  readonly sitePa: number
  /** The value in SI and the unit it was given in; or why it is outside of the range. */
  readonly value: { readonly si: number; readonly unit: Unit } | Fault
}

/** The numbers that the calls of a formula are given, as far as they can be told and count for its result. */
export function* argumentValues(tree: FormulaNode, values: FormulaValues): Generator<ArgumentValue> {
  for (const node of eachTaken(tree, values)) {
    const definition = node.kind === 'call' ? functionByName(node.name) : undefined
    if (definition === undefined || node.kind !== 'call') continue
    const { list, site } = argumentsOf(definition)
    const sitePa = sitePressure(node.arguments[site], list[site]?.argument, values)
    for (const [index, { label, argument }] of list.entries()) {
      const part = node.arguments[index]
      if (part === undefined || index === site) continue
      if (argument.kind === 'block') yield* rowValues(definition, argument, label, part, values, sitePa)
      else if ((argument.kind === 'quantity' || argument.kind === 'number') && hasRange(argument.range)) {
        const given = givenOf(values.of(part))
        const value = given === undefined ? undefined : valueOf(argument, given, label, sitePa)
        if (value !== undefined) yield { definition, label, node: part, range: argument.range, dimension: argument.dimensions[0] ?? 'share', sitePa, value }
      }
    }
  }
}

interface Named {
  readonly list: readonly { readonly label: string; readonly argument: Argument<unknown> }[]
  /** Which of them is the site's pressure; -1 where none is. */
  readonly site: number
}

const known = new WeakMap<FunctionDefinition, Named>()

function argumentsOf(definition: FunctionDefinition): Named {
  const before = known.get(definition)
  if (before !== undefined) return before
  const entries = Object.entries(definition.arguments)
  const named: Named = { list: entries.map(([key, argument]) => ({ label: argumentLabel(key), argument })), site: entries.findIndex(([key]) => key === 'site') }
  known.set(definition, named)
  return named
}

function* rowValues(definition: FunctionDefinition, { rows }: Argument<unknown>, label: string, node: FormulaNode, values: FormulaValues, sitePa: number): Generator<ArgumentValue> {
  const given = values.of(node)
  if (!isBlock(given)) return
  for (const [index, row] of rows.entries()) {
    const [number, unitText] = given.rows[index] ?? []
    const unit = typeof unitText === 'string' && unitText !== '' ? findUnit(unitText) : PURE
    const dimension = row.dimensions[0] ?? 'share'
    if (typeof number !== 'number' || unit === undefined || unit.dimension !== dimension || !hasRange(row.range)) continue
    const si = number * unit.factor + unit.offset + (unit.gauge ? sitePa : 0)
    yield { definition, label: `${label} row ${index + 1}, ${row.name}`, node, blockRow: index, range: row.range, dimension, sitePa, value: { si, unit } }
  }
}

/** What resolving tells: undefined where it is another fault than a number out of range, which the cell itself shows. */
function valueOf(argument: Argument<unknown>, given: Given, label: string, sitePa: number): ArgumentValue['value'] | undefined {
  const resolved = argument.resolve(given, label, sitePa)
  if (isFault(resolved)) return resolved.fault === '#NUM!' ? resolved : undefined
  const isPlain = argument.kind === 'number' && (typeof given === 'number' || (typeof given === 'string' && Number.isFinite(Number(given))))
  const read = isPlain ? undefined : readQuantity(given, label, argument.dimensions)
  const unit = read === undefined || isFault(read) ? PURE : read.unit
  const si = typeof resolved === 'number' ? resolved : typeof resolved === 'object' && resolved !== null && 'si' in resolved && typeof resolved.si === 'number' ? resolved.si : undefined
  // A level in % has the range of the level in m no more.
  return si === undefined || (argument.kind === 'quantity' && unit.dimension !== argument.dimensions[0]) ? undefined : { si, unit }
}

function sitePressure(node: FormulaNode | undefined, argument: Argument<unknown> | undefined, values: FormulaValues): number {
  const given = node === undefined ? undefined : givenOf(values.of(node))
  const pressure = given === undefined || argument === undefined ? undefined : argument.resolve(given, 'site', STANDARD_ATMOSPHERE_PA)
  return typeof pressure === 'number' ? pressure : STANDARD_ATMOSPHERE_PA
}

/** Undefined where it is not known, an error or empty. */
function givenOf(value: Computed): Given {
  if (value === undefined || value === null) return undefined
  if (!isBlock(value)) return isCellError(value) ? undefined : value
  const [row, ...others] = value.rows
  const cells = row?.map((cell) => (isCellError(cell) ? undefined : cell))
  return row === undefined || others.length > 0 || cells === undefined || cells.includes(undefined) ? undefined : { rows: [cells.map((cell) => cell ?? null)] }
}

const hasRange = ({ min, max, above, below }: Partial<Range>): boolean => min !== undefined || max !== undefined || above !== undefined || below !== undefined

const PURE: Unit = { code: '-', aliases: [], dimension: 'share', factor: 1, offset: 0, gauge: false }
