import type { CellPlace } from '../../workbook/cell-place.ts'
import { sheetByName } from '../../workbook/document.ts'
import { partsOf, type FormulaNode } from '../../workbook/formula/tree.ts'
import { isOneCell, referredCells } from '../derivation/formula-source.ts'
import { formulaValues, type FormulaValues } from '../derivation/formula-values.ts'
import { indexPlace } from '../derivation/standard-values.ts'
import type { FindingKind, Found } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import { merge, type CellFound } from '../merge.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { isNumberLike } from '../number-like.ts'
import { takenParts } from '../taken-parts.ts'

/** Formulas that compute with a cell in which there is no number. */
export const referencesToNothing: FindingKind = {
  kind: 'references-to-nothing',
  heading: 'References to empty cells or text',
  about:
    'An empty cell counts as 0 in arithmetic, and a text as a number or as an error. What a formula looks at first, by ISNUMBER, by ="" or in a branch of IF that is not taken, is no fault; an empty cell that stops a function of the catalogue shows as its error.',
  find: (survey) => merge(survey.formulas.flatMap((cell) => findings(survey, cell))),
}

function findings(survey: Survey, cell: FormulaCell): CellFound[] {
  const tree = survey.tree(cell.formula)
  if (tree === undefined || !mayComputeWithNothing(survey, cell, tree)) return []
  const { sheet: home, row, column } = cell
  const values = formulaValues({ workbook: survey.workbook, home, at: { row, column }, value: (sheet, ...at) => survey.value(sheet, ...at) })
  const found = new Map<string, CellFound>()
  for (const { place, use } of numbersWanted(survey, cell, tree, values)) {
    const fault = faultOf(survey, place, use)
    if (fault === undefined) continue
    const where = cellWords(place, home.name)
    const one: Found = {
      severity: 'warning', sheet: home.name, area: { top: row, bottom: row, left: column, right: column },
      reason: `${fault.words(where)}`, key: fault.key, causes: [place],
    }
    found.set(where, { found: one, alike: `${fault.key} ${survey.shape(cell)}` })
  }
  return [...found.values()].slice(0, MOST_OF_ONE)
}

const MOST_OF_ONE = 3

/** A quick look first: whether any cell that a number is wanted of, on whatever way through the formula, has none. */
function mayComputeWithNothing(survey: Survey, { sheet: home, ...cell }: FormulaCell, tree: FormulaNode): boolean {
  const isNone = (node: FormulaNode | undefined): boolean => {
    if (node === undefined) return false
    if (node.kind === 'call') return node.name === 'INDEX'
    const referred = referredCells(node, { workbook: survey.workbook, home })
    if (referred === undefined) return false
    return !isOneCell(referred.area) || typeof survey.value(referred.sheet.name, referred.area.top, referred.area.left) !== 'number'
  }
  const within = (node: FormulaNode): boolean => {
    if (node.kind === 'operation') {
      if ((ARITHMETIC.has(node.operator) || ORDERS.has(node.operator)) && (isNone(node.left) || isNone(node.right))) return true
    } else if (node.kind === 'sign' || node.kind === 'percent') {
      if (isNone(node.of)) return true
    } else if (node.kind === 'call') {
      if (CATCHES.has(node.name)) return false
      if ((OF_NUMBERS.has(node.name) || LOOKUPS.has(node.name) || SUMS.has(node.name)) && node.arguments.some(isNone)) return true
    }
    return partsOf(node).some(within)
  }
  return (cell.cell.role === 'result' && (isNone(tree) || (tree.kind === 'call' && tree.name === 'IF' && tree.arguments.some(isNone)))) || within(tree)
}

/** What a cell is wanted for: a number to compute with, a number to compare, a key to look up, the value to show, one of many to add up. */
type Use = 'arithmetic' | 'comparison' | 'key' | 'shown' | 'sum'

interface Wanted {
  readonly place: CellPlace
  readonly use: Use
}

function* numbersWanted(survey: Survey, cell: FormulaCell, tree: FormulaNode, values: FormulaValues): Generator<Wanted> {
  const { sheet: home } = cell
  const wants = (node: FormulaNode | undefined, use: Use): Wanted[] => {
    const place = node === undefined ? undefined : cellOf(survey, home, node, values)
    return place === undefined ? [] : [{ place, use }]
  }
  const wantsNumber = cell.cell.role === 'result' && survey.unit(home, cell.row, cell.column) !== undefined
  const top = tree.kind === 'call' && tree.name === 'IF' ? takenParts(tree, values)[1] : tree
  if (wantsNumber || (top?.kind === 'reference' && isOffSheet(survey, home, top))) yield* wants(top, 'shown')
  yield* within(tree)

  function* within(node: FormulaNode): Generator<Wanted> {
    if (node.kind === 'operation') {
      const isOrder = ORDERS.has(node.operator)
      if (isOrder || ARITHMETIC.has(node.operator)) yield* [...wants(node.left, isOrder ? 'comparison' : 'arithmetic'), ...wants(node.right, isOrder ? 'comparison' : 'arithmetic')]
    } else if (node.kind === 'sign' || node.kind === 'percent') yield* wants(node.of, 'arithmetic')
    else if (node.kind === 'call') {
      // What is caught is no surprise; what is asked about is not computed with.
      if (CATCHES.has(node.name)) return
      if (OF_NUMBERS.has(node.name)) for (const argument of node.arguments) yield* wants(argument, 'arithmetic')
      if (LOOKUPS.has(node.name)) yield* wants(node.arguments[0], 'key')
      if (SUMS.has(node.name)) for (const argument of node.arguments) yield* emptyRange(survey, home, argument)
    }
    for (const part of takenParts(node, values)) yield* within(part)
  }
}

const ORDERS: ReadonlySet<string> = new Set(['<', '>', '<=', '>='])
const ARITHMETIC: ReadonlySet<string> = new Set(['+', '-', '*', '/', '^'])
const CATCHES: ReadonlySet<string> = new Set(['IFERROR', 'IFNA', 'ISERROR', 'ISNUMBER', 'ISBLANK', 'ISTEXT', 'COUNT', 'COUNTA', 'COUNTBLANK', 'N', 'SUMPRODUCT'])
const OF_NUMBERS: ReadonlySet<string> = new Set(['SQRT', 'ABS', 'ROUND', 'ROUNDUP', 'ROUNDDOWN', 'INT', 'TRUNC', 'EXP', 'LN', 'LOG', 'LOG10', 'POWER', 'MOD', 'CEILING', 'FLOOR', 'SIN', 'COS', 'TAN', 'ACOS', 'ASIN', 'ATAN'])
const SUMS: ReadonlySet<string> = new Set(['SUM', 'AVERAGE', 'MAX', 'MIN', 'PRODUCT', 'MEDIAN'])
const LOOKUPS: ReadonlySet<string> = new Set(['MATCH', 'VLOOKUP', 'HLOOKUP', 'LOOKUP'])

/** The one cell whose value a part of a formula is: a reference, a name, or what INDEX picks. */
function cellOf(survey: Survey, home: FormulaCell['sheet'], node: FormulaNode, values: FormulaValues): CellPlace | undefined {
  if (node.kind === 'call' && node.name === 'INDEX') {
    const [from, row, column] = node.arguments
    const block = from && referredCells(from, { workbook: survey.workbook, home })
    const [first, second] = [values.single(row), column === undefined ? undefined : values.single(column)]
    if (block === undefined || typeof first !== 'number' || (column !== undefined && typeof second !== 'number')) return undefined
    const { top, left, bottom, right } = block.area
    const [down, across] = indexPlace(bottom - top + 1, right - left + 1, first, typeof second === 'number' ? second : undefined)
    return down === undefined || across === undefined ? undefined : { sheet: block.sheet.name, row: top + down, column: left + across }
  }
  const referred = referredCells(node, { workbook: survey.workbook, home })
  return referred !== undefined && isOneCell(referred.area) ? { sheet: referred.sheet.name, row: referred.area.top, column: referred.area.left } : undefined
}

/** The first cell of a range in which no cell holds anything or has a role. */
function emptyRange({ workbook }: Survey, home: FormulaCell['sheet'], node: FormulaNode | undefined): Wanted[] {
  const referred = node && referredCells(node, { workbook, home })
  if (referred === undefined || isOneCell(referred.area)) return []
  const { sheet, area: { top, left, bottom, right } } = referred
  const isFilled = sheet.rows.slice(top, bottom + 1).some((row) => row?.slice(left, right + 1).some((cell) => cell !== undefined))
  return isFilled ? [] : [{ place: { sheet: sheet.name, row: top, column: left }, use: 'sum' }]
}

const isOffSheet = (survey: Survey, home: FormulaCell['sheet'], node: FormulaNode): boolean => {
  const referred = referredCells(node, { workbook: survey.workbook, home })
  return referred !== undefined && isOneCell(referred.area) && referred.sheet.rows[referred.area.top]?.[referred.area.left] === undefined
}

interface Fault {
  readonly key: string
  readonly words: (where: string) => string
}

function faultOf(survey: Survey, { sheet: name, row, column }: CellPlace, use: Use): Fault | undefined {
  const value = survey.value(name, row, column)
  const cell = sheetByName(survey.workbook, name)?.rows[row]?.[column]
  if (value === null) {
    if (use === 'sum') return { key: 'empty sum', words: (where) => `The range from ${where} on, which the formula takes together, is empty.` }
    const counts = use === 'key' ? 'there is nothing to look up' : use === 'shown' ? 'there is nothing to show' : 'it counts as 0'
    return { key: `empty ${use}`, words: (where) => `${where}, which the formula ${VERB[use]}, is empty: ${counts}.` }
  }
  if (typeof value !== 'string' || use === 'key' || use === 'shown' || use === 'sum') return undefined
  // An own text of a formula, "" or a dash, is the way in which it says that there is no number.
  if (use === 'comparison' && cell?.role !== 'label' && cell?.role !== 'heading' && !isNumberLike(value)) return undefined
  return { key: `text ${use}`, words: (where) => `${where}, which the formula ${VERB[use]}, holds text and no number: “${shortened(value)}”.` }
}

const VERB: Readonly<Record<Use, string>> = { arithmetic: 'computes with', comparison: 'compares', key: 'looks up', shown: 'takes over', sum: 'takes together' }

const shortened = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text)
