import { functionByName } from '../../../functions/catalogue.ts'
import { findUnit } from '../../../functions/units/units.ts'
import { printAddress } from '../../workbook/address.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { isFormula, type Sheet } from '../../workbook/document.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { isOneCell, referredCells } from '../derivation/formula-source.ts'
import type { FindingKind, Found, Mend } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import { merge, type CellFound } from '../merge.ts'
import { isNumberLike } from '../number-like.ts'
import type { FormulaCell, Survey } from '../survey.ts'

/** Texts like numbers among the cells that a function adds up, or takes the greatest of, and so passes over. */
export const numbersAsText: FindingKind = {
  kind: 'numbers-as-text',
  heading: 'Numbers stored as text',
  about: 'SUM, AVERAGE, MAX, MIN and their like pass over text: a “12” or “12 ft” in the range is not counted, and nothing shows it.',
  find(survey) {
    const found = new Map<string, CellFound>()
    const looked = new Set<string>()
    for (const cell of survey.formulas) {
      if (!ADDS_UP.test(cell.formula)) continue
      const tree = survey.tree(cell.formula)
      for (const node of tree === undefined ? [] : rangesAdded(tree)) textsIn(survey, cell, node, looked, found)
    }
    return merge([...found.values()])
  },
}

const ADDS_UP = /\b(?:SUM|SUMIFS?|AVERAGE|MAX|MIN|PRODUCT|MEDIAN)\(/i

function textsIn(survey: Survey, cell: FormulaCell, node: FormulaNode, looked: Set<string>, found: Map<string, CellFound>): void {
  const referred = referredCells(node, { workbook: survey.workbook, home: cell.sheet })
  if (referred === undefined || isOneCell(referred.area)) return
  const { sheet, area: { top, left, bottom, right } } = referred
  const range = `${sheet.name}!${top}:${left}:${bottom}:${right}`
  if (looked.has(range)) return
  looked.add(range)
  const user: CellPlace = { sheet: cell.sheet.name, row: cell.row, column: cell.column }
  for (let row = top; row <= Math.min(bottom, sheet.rows.length - 1); row++) {
    for (let column = left; column <= Math.min(right, (sheet.rows[row]?.length ?? 0) - 1); column++) {
      const [value, role, key] = [survey.value(sheet.name, row, column), sheet.rows[row]?.[column]?.role, `${row}:${column}:${sheet.name}`]
      if (typeof value !== 'string' || role === undefined || !HOLDS_NUMBERS.has(role) || !isNumberLike(value) || found.has(key)) continue
      const mend = mendOf(survey, sheet, row, column, value)
      const one: Found = {
        severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, key: `“${value}” as text`, causes: [user],
        reason: `“${value}” is text, not a number: the formula in ${cellWords(user, sheet.name)} passes over ${printAddress(row, column)}.`, ...(mend && { mend }),
      }
      found.set(key, { found: one, alike: `${user.sheet}!${user.row}:${user.column}` })
    }
  }
}

/** Where the text is a number, be it with the unit that stands there, or with thousands set apart. */
function mendOf(survey: Survey, sheet: Sheet, row: number, column: number, text: string): Mend | undefined {
  const cell = sheet.rows[row]?.[column]
  const [, digits = '', unit = ''] = /^([+\-−]?[\d.,’ ]*\d)\s*(\D*)$/.exec(text.trim()) ?? []
  const number = Number(digits.replace('−', '-').replaceAll(/[,’ ](?=\d{3}(?:\D|$))/g, ''))
  const isSameUnit = unit === '' || (findUnit(unit) !== undefined && findUnit(unit) === findUnit(survey.unit(sheet, row, column) ?? ''))
  if (cell === undefined || isFormula(cell.content) || digits === '' || !Number.isFinite(number) || !isSameUnit) return undefined
  return { words: `Make it the number ${number}`, edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: { ...cell, content: number } }] }] }
}

const HOLDS_NUMBERS: ReadonlySet<string> = new Set(['input', 'result', 'text'])

/** The ranges that a formula adds up, or takes the least or greatest of. */
function* rangesAdded(node: FormulaNode): Generator<FormulaNode> {
  if (node.kind === 'operation') yield* [...rangesAdded(node.left), ...rangesAdded(node.right)]
  else if (node.kind === 'sign' || node.kind === 'percent') yield* rangesAdded(node.of)
  if (node.kind !== 'call') return
  const [first, , third] = node.arguments
  const added = node.name === 'SUMIFS' ? [first] : node.name === 'SUMIF' ? [third ?? first] : ADD_UP.has(node.name) ? node.arguments : []
  for (const argument of added) if (argument?.kind === 'reference' || argument?.kind === 'name') yield argument
  const isPassedOn = functionByName(node.name)?.name === 'UNIT.CONVERT' || functionByName(node.name) === undefined
  if (isPassedOn && node.name !== 'SUMIFS' && node.name !== 'SUMIF') for (const argument of node.arguments) if (argument !== undefined) yield* rangesAdded(argument)
}

const ADD_UP: ReadonlySet<string> = new Set(['SUM', 'AVERAGE', 'MAX', 'MIN', 'PRODUCT', 'MEDIAN'])
