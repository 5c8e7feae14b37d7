import { isFormula } from '../../workbook/document.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import type { Survey } from '../survey.ts'
import { cellOf, isOneCell, isPair, referredCells, surveySource, type FormulaSource, type ReferredCells } from './formula-source.ts'

/** The cell whose value a cell passes on, as it is or in another unit: `=Basis!C5`, `=UNIT.CONVERT(Basis!C5:D5,D7)`. Undefined where it does more. */
export function linkedTo(survey: Survey, { sheet, area: { top, left } }: ReferredCells): ReferredCells | undefined {
  const cell = cellOf(sheet, top, left)
  const tree = isFormula(cell?.content) && cell.role !== 'check' ? survey.tree(cell.content) : undefined
  if (tree === undefined) return undefined
  const source = surveySource(survey, sheet, { row: top, column: left })
  const of = tree.kind === 'call' && tree.name === 'UNIT.CONVERT' && tree.arguments.length === 2 ? tree.arguments[0] : tree
  const next = of && (cellAlone(of, source) ?? (of === tree ? undefined : quantityCell(of, source)))
  return next === undefined || (next.sheet === sheet && next.area.top === top && next.area.left === left) ? undefined : next
}

function cellAlone(node: FormulaNode, source: FormulaSource): ReferredCells | undefined {
  const cells = referredCells(node, source)
  return cells !== undefined && isOneCell(cells.area) ? cells : undefined
}

/** `C5:D5`, `C12&C$4`, `C12&" "&C$4` */
function quantityCell(node: FormulaNode, source: FormulaSource): ReferredCells | undefined {
  if (node.kind === 'operation' && node.operator === '&') {
    const { left, right } = node
    const number = left.kind === 'operation' && left.operator === '&' && left.right.kind === 'text' && left.right.text.trim() === '' ? left.left : left
    const unit = cellAlone(right, source)
    return right.kind === 'text' || (unit !== undefined && cellOf(unit.sheet, unit.area.top, unit.area.left)?.role === 'unit') ? cellAlone(number, source) : undefined
  }
  const cells = referredCells(node, source)
  return cells !== undefined && isPair(cells) ? { sheet: cells.sheet, area: { ...cells.area, right: cells.area.left } } : undefined
}
