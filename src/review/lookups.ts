import type { CellValue } from '../calc/values.ts'
import { printReference, type Reference } from '../workbook/address.ts'
import { foldCase, type Sheet } from '../workbook/document.ts'
import { namedReference } from '../workbook/formula/references.ts'
import { eachNode, type FormulaNode } from '../workbook/formula/tree.ts'
import type { Referred, Survey } from './survey.ts'

/** A search of a formula for a value in a row or column of cells. */
export interface Lookup {
  readonly name: string
  readonly sought: FormulaNode | undefined
  /** The row or column that is searched. */
  readonly range: Referred
  /** As it is written. */
  readonly text: string
  /** Exactly the value, or the last one up to it where all rise, or fall. */
  readonly match: 'exact' | 'rising' | 'falling'
}

/** All calls of MATCH, VLOOKUP, HLOOKUP and LOOKUP in a formula whose range is written out (OpenFormula 6.14). */
export function lookupsOf(survey: Survey, formula: string, home: Sheet): readonly Lookup[] {
  if (!SEARCH.test(formula)) return []
  const tree = survey.tree(formula)
  return tree === undefined ? [] : lookupsIn(survey, tree, home)
}

export const lookupsIn = (survey: Survey, node: FormulaNode, home: Sheet): readonly Lookup[] =>
  [...eachNode(node)].flatMap((one) => (one.kind === 'call' ? (lookupOf(survey, one, home) ?? []) : []))

const SEARCH = /(?:MATCH|LOOKUP)\(/i

function lookupOf(survey: Survey, { name, arguments: [sought, table, third, fourth] }: FormulaNode & { readonly kind: 'call' }, home: Sheet): Lookup | undefined {
  if (name !== 'MATCH' && name !== 'VLOOKUP' && name !== 'HLOOKUP' && name !== 'LOOKUP') return undefined
  const reference = table?.kind === 'reference' ? table.reference : table?.kind === 'name' ? namedReference(survey.workbook.names, table.name) : undefined
  const whole = reference && survey.resolve(reference, home)
  const match = name === 'MATCH' ? matchOf(third) : name === 'LOOKUP' ? 'rising' : isExact(fourth) ? 'exact' : 'rising'
  if (reference === undefined || whole === undefined || match === undefined) return undefined
  const { top, left } = whole.area
  const area = name === 'VLOOKUP' ? { ...whole.area, right: left } : name === 'HLOOKUP' ? { ...whole.area, bottom: top } : whole.area
  return { name, sought, range: { ...whole, area }, text: textOf(table, reference), match }
}

const textOf = (node: FormulaNode | undefined, reference: Reference): string => (node?.kind === 'name' ? node.name : printReference(reference))

/** Undefined where it depends on other cells. */
function matchOf(node: FormulaNode | undefined): Lookup['match'] | undefined {
  if (node === undefined) return 'rising'
  if (node.kind === 'sign' && node.operator === '-' && node.of.kind === 'number') return node.of.value === 0 ? 'exact' : 'falling'
  if (node.kind !== 'number') return undefined
  return node.value === 0 ? 'exact' : 'rising'
}

const isExact = (node: FormulaNode | undefined): boolean =>
  (node?.kind === 'boolean' && !node.value) || (node?.kind === 'number' && node.value === 0) || (node?.kind === 'call' && node.name === 'FALSE')

const held = new WeakMap<Survey, Map<string, ReadonlySet<CellValue>>>()

/** Whether a value stands in a row or column of cells, texts in whatever capitals. */
export function holds(survey: Survey, range: Referred, value: CellValue): boolean {
  const known = held.get(survey) ?? new Map<string, ReadonlySet<CellValue>>()
  held.set(survey, known)
  const { sheet, area: { top, left, bottom, right } } = range
  const key = `${top}:${left}:${bottom}:${right}:${sheet.name}`
  const values = known.get(key) ?? new Set(valuesIn(survey, range).map(folded))
  known.set(key, values)
  return values.has(folded(value))
}

const folded = (value: CellValue): CellValue => (typeof value === 'string' ? foldCase(value) : value)

/** The values of a row or column of cells, empty ones left out. */
export function valuesIn(survey: Survey, { sheet, area: { top, left, bottom, right } }: Referred): CellValue[] {
  const values: CellValue[] = []
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const value = survey.value(sheet.name, row, column)
      if (value !== null && value !== '') values.push(value)
    }
  }
  return values
}
