import type { CellPlace } from '../../workbook/cell-place.ts'
import { isFormula } from '../../workbook/document.ts'
import { eachNode, type FormulaNode } from '../../workbook/formula/tree.ts'
import { isOrder, type Order } from '../comparisons.ts'
import { formulaValues } from '../derivation/formula-values.ts'
import type { FindingKind, Found } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import { merge, type CellFound } from '../merge.ts'
import { shapesOf } from '../shapes.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { handedOn } from '../value-source.ts'

/** Comparisons that are decided by a number that was rounded first. */
export const roundedThresholds: FindingKind = {
  kind: 'rounded-thresholds',
  heading: 'Thresholds compared in rounded numbers',
  about:
    'Close to a limit a rounded number decides wrongly. Named are comparisons with a side that is rounded, to fewer than 6 decimals, in the comparison itself or in the cell that it refers to. Comparisons for equality are left alone, and so are cells that hold a size rounded up to the next step.',
  find: (survey) => merge(shapesOf(survey).flatMap(({ tree, cells }) => {
    const isComparing = tree !== undefined && [...eachNode(tree)].some(isOrder)
    return isComparing ? cells.flatMap((cell) => findings(survey, cell)) : []
  })),
}

function findings(survey: Survey, cell: FormulaCell): CellFound[] {
  const tree = survey.tree(cell.formula)
  const found: CellFound[] = []
  for (const node of tree === undefined ? [] : eachNode(tree)) {
    if (isOrder(node)) for (const side of [node.left, node.right]) found.push(...roundedSide(survey, cell, node, side))
  }
  return found.slice(0, MOST_OF_ONE)
}

const MOST_OF_ONE = 2

/** Rounding to a step on the way up is a choice of size; the rest is rounding for print. */
const ROUNDINGS: ReadonlySet<string> = new Set(['ROUND', 'INT', 'TRUNC', 'ROUNDDOWN', 'ROUNDUP', 'MROUND', 'TEXT', 'FIXED'])
const FOLLOWED: ReadonlySet<string> = new Set(['ROUND', 'INT', 'TRUNC', 'ROUNDDOWN', 'TEXT', 'FIXED'])
/** Rounding to as many decimals only takes away what computing in binary numbers adds. */
const HARMLESS_DECIMALS = 6

function roundedSide(survey: Survey, cell: FormulaCell, comparison: Order, side: FormulaNode): CellFound[] {
  const direct = roundingIn(survey, cell, side, ROUNDINGS)
  const place = direct === undefined ? handedOn(side, survey.workbook, cell.sheet) : undefined
  const from = place && formulaCellAt(survey, place)
  const tree = from && survey.tree(from.formula)
  const rounding = direct ?? (from && tree && roundingIn(survey, from, tree, FOLLOWED))
  if (rounding === undefined) return []
  const { sheet, row, column } = cell
  const where = from === undefined ? 'A side of the comparison' : cellWords({ sheet: from.sheet.name, row: from.row, column: from.column }, sheet.name)
  const differs = from === undefined ? verdictUnrounded(survey, cell, comparison) : undefined
  return [made(cell, `${where} is rounded by ${rounding.name} before it is compared${differs === undefined ? '' : `: unrounded the comparison comes to ${differs}`}. Compare the numbers as they are, and round what is shown.`,
    `rounded by ${rounding.name}`, place === undefined ? [] : [place], `${survey.shape({ formula: cell.formula, row, column })}`)]
}

/** The rounding that a part comes to, whatever unit it is put into. */
function roundingIn(survey: Survey, cell: FormulaCell, node: FormulaNode, names: ReadonlySet<string>): Extract<FormulaNode, { kind: 'call' }> | undefined {
  if (node.kind === 'operation' && node.operator === '&') return roundingIn(survey, cell, node.left, names)
  if (node.kind === 'sign') return roundingIn(survey, cell, node.of, names)
  if (node.kind !== 'call') return undefined
  const [first, digits] = node.arguments
  if (node.name === 'UNIT.CONVERT' || node.name === 'VALUE') return first && roundingIn(survey, cell, first, names)
  if (!names.has(node.name)) return undefined
  const decimals = digits === undefined ? 0 : valuesOf(survey, cell).single(digits)
  return typeof decimals === 'number' && decimals >= HARMLESS_DECIMALS && node.name.startsWith('ROUND') ? undefined : node
}

const valuesOf = (survey: Survey, { sheet: home, row, column }: FormulaCell) =>
  formulaValues({ workbook: survey.workbook, home, at: { row, column }, value: (sheet, ...at) => survey.value(sheet, ...at) })

function formulaCellAt(survey: Survey, { sheet: name, row, column }: CellPlace): FormulaCell | undefined {
  const sheet = survey.workbook.sheets.find((one) => one.name === name)
  const cell = sheet?.rows[row]?.[column]
  return sheet !== undefined && cell !== undefined && isFormula(cell.content) ? { sheet, row, column, cell, formula: cell.content } : undefined
}

/** What the comparison comes to without the rounding, where that is something else. */
function verdictUnrounded(survey: Survey, cell: FormulaCell, { operator, left, right, ...extent }: Order): string | undefined {
  const values = valuesOf(survey, cell)
  const rounded = values.single({ kind: 'operation', operator, left, right, start: extent.start, end: extent.end })
  const plain = values.single({ kind: 'operation', operator, left: unrounded(left), right: unrounded(right), start: extent.start, end: extent.end })
  return typeof rounded === 'boolean' && typeof plain === 'boolean' && rounded !== plain ? String(plain).toUpperCase() : undefined
}

function unrounded(node: FormulaNode): FormulaNode {
  if (node.kind === 'operation') return { ...node, left: unrounded(node.left), right: unrounded(node.right) }
  if (node.kind === 'sign') return { ...node, of: unrounded(node.of) }
  if (node.kind !== 'call') return node
  const [first] = node.arguments
  if (first !== undefined && ROUNDINGS.has(node.name) && node.name !== 'TEXT') return unrounded(first)
  return { ...node, arguments: node.arguments.map((one) => one && unrounded(one)) }
}

function made({ sheet, row, column }: FormulaCell, reason: string, key: string, causes: readonly CellPlace[], alike: string): CellFound {
  const found: Found = {
    severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, reason, key, ...(causes.length > 0 && { causes }),
  }
  return { found, alike: `${key} ${alike}` }
}
