import { formatNumber as plainNumber } from '../../functions/units/format.ts'
import { findUnit } from '../../functions/units/units.ts'
import { switchCase } from '../workbook/case-switching.ts'
import { caseName, casesOf } from '../workbook/cases.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { formatNumber, type NumberFormat } from '../workbook/number-format.ts'
import { labelInRow } from '../workbook/words-beside.ts'
import { checkCells } from './check-cells.ts'
import { differenceUnit, isProportional } from './check.ts'
import type { Graph } from './graph.ts'
import { isCellError, type CellValue, type Check } from './values.ts'

/** What a compared cell comes to in a case. */
export interface ComparedValue {
  /** What the cell is called in its row. */
  readonly label: string | undefined
  readonly value: CellValue
  readonly unit?: string
  /** Of a check. */
  readonly check?: Check
}

/** A check that is not met. */
export interface UnmetCheck extends CellPlace {
  readonly label: string | undefined
  readonly words: string
}

export interface CaseOutcome {
  readonly name: string
  /** In the order of what is compared. */
  readonly compared: readonly ComparedValue[]
  /** Of the whole workbook. */
  readonly checks: number
  readonly notMet: readonly UnmetCheck[]
  readonly errors: number
}

/** What comes out in the base and in each case. The graph goes through them all and is then as it was: let it be one that nothing else looks at meanwhile. */
export function caseOutcomes(graph: Graph): CaseOutcome[] {
  const { list, current } = casesOf(graph.workbook)
  const outcomes = [null, ...list.keys()].map((at) => {
    graph.apply(switchCase(graph.workbook, at))
    return outcomeNow(graph)
  })
  graph.apply(switchCase(graph.workbook, current))
  return outcomes
}

/** What comes out in the case that is current. */
export function outcomeNow(graph: Graph): CaseOutcome {
  const { workbook } = graph
  const { current, compared } = casesOf(workbook)
  const states = graph.states()
  const notMet = workbook.sheets.flatMap((sheet) => checkCells(sheet).flatMap(({ row, column }): UnmetCheck[] =>
    graph.value(sheet.name, row, column) === false
      ? [{ sheet: sheet.name, row, column, label: labelAt(graph, { sheet: sheet.name, row, column }), words: graph.check(sheet.name, row, column)?.words ?? 'not met' }]
      : []))
  const sum = (count: (state: (typeof states)[number]) => number): number => states.reduce((total, state) => total + count(state), 0)
  return {
    name: caseName(workbook, current), compared: compared.map((place) => comparedValue(graph, place)),
    checks: sum(({ checks }) => checks), notMet, errors: sum(({ errors }) => errors),
  }
}

function comparedValue(graph: Graph, { sheet, row, column }: CellPlace): ComparedValue {
  const held = graph.workbook.sheets.find(({ name }) => name === sheet)
  if (!held) return { label: undefined, value: { error: '#REF!', message: `the sheet ${sheet} is missing` } }
  const value = graph.value(sheet, row, column)
  const unit = graph.unitAt(sheet, row, column)
  const check = held.rows[row]?.[column]?.role === 'check' ? graph.check(sheet, row, column) : undefined
  return { label: labelAt(graph, { sheet, row, column }), value, ...(unit === undefined ? {} : { unit }), ...(check ? { check } : {}) }
}

function labelAt(graph: Graph, { sheet, row, column }: CellPlace): string | undefined {
  const held = graph.workbook.sheets.find(({ name }) => name === sheet)
  return held && labelInRow(held, { row, column }, (left) => {
    const value = graph.value(sheet, row, left)
    return typeof value === 'string' && value !== '' ? value : undefined
  })
}

/** A compared value as it is read. */
export function comparedText({ value, check }: ComparedValue, format: NumberFormat = {}): string {
  if (isCellError(value)) return value.error
  if (check) return check.words
  if (typeof value === 'number') return formatNumber(value, format)
  return value === null ? '' : typeof value === 'boolean' ? (value ? 'TRUE' : 'FALSE') : value
}

/**
 * How much a case's value is above or below the base's, with its unit; its share of the base's where zero means nothing of the thing. Words
 * where they are no two numbers in one unit; undefined where there is no difference to tell.
 */
export function differenceText(base: ComparedValue, other: ComparedValue): string | undefined {
  if (base.value === other.value) return undefined
  if (typeof base.value !== 'number' || typeof other.value !== 'number') return base.check || other.check ? undefined : 'differs'
  if (base.unit !== other.unit) return `in ${other.unit ?? 'no unit'}`
  const unit = base.unit === undefined ? undefined : findUnit(base.unit)
  const difference = other.value - base.value
  if (Math.abs(difference) <= 1e-12 * Math.abs(base.value)) return undefined
  const size = `${signed(difference, 3)} ${differenceUnit(unit) ?? base.unit ?? ''}`.trimEnd()
  const inShare = unit && unit.code !== '%' && isProportional(unit) && base.value !== 0 ? ` (${signed((difference / Math.abs(base.value)) * 100, 2)}\u00a0%)` : ''
  return size + inShare
}

/** With the sign that print has for a number below zero. */
function signed(number: number, digits: number): string {
  const rounded = Number(Math.abs(number).toPrecision(digits))
  return `${number < 0 ? '\u2212' : '+'}${plainNumber(rounded)}`
}
