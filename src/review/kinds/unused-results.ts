import { findUnit, type Dimension } from '../../../functions/units/units.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { cellUses } from '../cell-uses.ts'
import type { FindingKind, Found } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import { merge, type CellFound } from '../merge.ts'
import { shapesOf } from '../shapes.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { handedOn } from '../value-source.ts'

/** Results that were meant to be used, and are not. */
export const unusedResults: FindingKind = {
  kind: 'unused-results',
  heading: 'Results used by nothing',
  about:
    'A result that nothing uses is often the end of a calculation. Named are those that something else shows to be a step on the way: the template uses it, the results above and below it are used, or the calculation goes on with the value from which it was made by a factor.',
  find(survey) {
    const shapes = shapesOf(survey)
    const { isUsed } = cellUses(survey)
    return merge(shapes.flatMap((shape) => {
      const feeding = new Set(shape.cells.filter(({ sheet, row, column }) => survey.isUsed(sheet, row, column)).map(placeKey))
      // Figures and cases may well show some of them only: that says nothing of the others.
      const isList = feeding.size > shape.cells.length / 2
      const loose = shape.cells.filter(({ cell, sheet, row, column }) => cell.role === 'result' && !isUsed(sheet, row, column))
      return loose.flatMap((cell) => found(survey, cell, isList && [-1, 1].some((step) => feeding.has(placeKey({ ...cell, row: cell.row + step })))))
    }))
  },
}

const placeKey = ({ sheet, row, column }: Pick<FormulaCell, 'sheet' | 'row' | 'column'>): string => `${row}:${column}:${sheet.name}`

/** @param isBesideUsed the result above or below is of the same formula, and it and most of them feed other formulas */
function found(survey: Survey, cell: FormulaCell, isBesideUsed: boolean): CellFound[] {
  const { sheet, row, column } = cell
  const make = (reason: string, causes?: readonly CellPlace[]): CellFound[] => {
    const one: Found = {
      severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, reason, key: 'used by nothing', ...(causes && { causes }),
    }
    return [{ found: one, alike: reason }]
  }
  if (survey.template !== undefined && cellUses(survey).isUsedInTemplate(sheet, row, column)) return make(`Nothing uses it, though formulas of the template “${survey.template.title}” do.`)
  if (isBesideUsed) return make('Nothing uses it, though the results beside it, of the same formula, are used: a range may end before it.')
  const passed = passedBy(survey, cell)
  if (passed === undefined) return []
  const { value, user } = passed
  return make(`Nothing uses it: it is ${cellWords(value, sheet.name)} with a factor, and ${cellWords(user, sheet.name)} goes on with ${cellWords(value, sheet.name)} itself.`, [value, user])
}

/** The cell of which a result is a multiple, and a formula further on that uses that cell in its place. */
function passedBy(survey: Survey, { sheet, row, column, formula }: FormulaCell): { readonly value: CellPlace; readonly user: CellPlace } | undefined {
  const tree = survey.tree(formula)
  const value = tree && multiplied(survey, tree, { sheet: sheet.name, row, column }, sheet)
  if (value === undefined) return undefined
  const user = survey.formulas.find((one) => {
    const isFurtherOn = one.sheet === sheet && (one.row > row || (one.row === row && one.column > column))
    return isFurtherOn && one.cell.role === 'result' && survey.referred(one.formula, one.sheet).some(({ sheet: { name }, area: { top, left, bottom, right } }) =>
      name === value.sheet && top === value.row && bottom === value.row && left === value.column && right <= left + 1)
  })
  return user && { value, user: { sheet: user.sheet.name, row: user.row, column: user.column } }
}

/** The one cell of the result's own dimension that a product is made of, its other factors being shares and pure numbers. */
function multiplied(survey: Survey, tree: FormulaNode, at: CellPlace, home: FormulaCell['sheet']): CellPlace | undefined {
  const dimension = dimensionOf(survey, at)
  if (dimension === undefined || dimension === 'share') return undefined
  const factors = factorsOf(inner(tree))
  if (factors.length < 2) return undefined
  const cells = factors.map((factor) => handedOn(factor, survey.workbook, home))
  const same = cells.filter((cell) => cell !== undefined && dimensionOf(survey, cell) === dimension)
  const [only] = same
  const others = cells.filter((cell) => cell !== only)
  return same.length === 1 && others.every((cell) => cell === undefined || (dimensionOf(survey, cell) ?? 'share') === 'share') ? only : undefined
}

function dimensionOf(survey: Survey, { sheet: name, row, column }: CellPlace): Dimension | undefined {
  const sheet = survey.workbook.sheets.find((one) => one.name === name)
  const unit = sheet && survey.unit(sheet, row, column)
  return unit === undefined ? undefined : findUnit(unit)?.dimension
}

/** What is put into the unit of the result. */
function inner(node: FormulaNode): FormulaNode {
  if (node.kind === 'call' && node.name === 'UNIT.CONVERT' && node.arguments[0] !== undefined) return inner(node.arguments[0])
  return node.kind === 'operation' && node.operator === '&' ? inner(node.left) : node
}

function factorsOf(node: FormulaNode): readonly FormulaNode[] {
  if (node.kind === 'operation' && node.operator === '*') return [...factorsOf(node.left), ...factorsOf(node.right)]
  return node.kind === 'operation' && node.operator === '/' ? [...factorsOf(node.left), node.right] : [node]
}
