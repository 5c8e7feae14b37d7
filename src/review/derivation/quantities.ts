import { parseQuantity } from '../../../functions/units/quantity.ts'
import { isFault } from '../../../functions/fault.ts'
import { findUnit } from '../../../functions/units/units.ts'
import type { CellValue } from '../../calc/values.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { isOneCell, isPair, referredCells, unitText, type FormulaSource, type ReferredCells } from './formula-source.ts'
import type { FormulaValues } from './formula-values.ts'
import { asNumber, indexPlace } from './standard-values.ts'

/** Number and unit in one, as a part of a formula gives them. */
export type Quantity =
  /** Written out: "31 °F". */
  | { readonly kind: 'text'; readonly text: string }
  /** Of one cell, by itself with its unit cell, joined to a unit, or looked up; `through` is the lookup. */
  | { readonly kind: 'cell'; readonly cell: ReferredCells; readonly value: CellValue | undefined; readonly unit: string | undefined; readonly through?: FormulaNode }
  /** A number that is computed, and the unit joined to it. */
  | { readonly kind: 'compound'; readonly of: FormulaNode; readonly value: number | undefined; readonly unit: string }

export interface Quantities {
  /** Undefined where the node is no quantity. */
  readonly of: (node: FormulaNode) => Quantity | undefined
}

export function createQuantities(source: FormulaSource, values: FormulaValues): Quantities {
  return { of }

  function of(node: FormulaNode): Quantity | undefined {
    if (node.kind === 'text') return isFault(parseQuantity(node.text)) ? undefined : { kind: 'text', text: node.text }
    if (node.kind === 'reference' || node.kind === 'name') {
      const cells = referredCells(node, source)
      if (cells === undefined || !isPair(cells)) return undefined
      const { sheet, area: { top, left, right } } = cells
      const unit = source.value(sheet.name, top, right)
      return { kind: 'cell', cell: { sheet, area: { ...cells.area, right: left } }, value: source.value(sheet.name, top, left), unit: typeof unit === 'string' ? unit : undefined }
    }
    if (node.kind === 'call' && node.name === 'INDEX') {
      const cell = found(node)
      return cell && { kind: 'cell', cell, value: source.value(cell.sheet.name, cell.area.top, cell.area.left), unit: unitText(source, cell.sheet, cell.area.top, cell.area.left), through: node }
    }
    return node.kind === 'operation' && node.operator === '&' ? joined(node.left, node.right) : undefined
  }

  /** `C12&C$4`, `C12&" "&C$4`, `(a+b)&" m3"` */
  function joined(left: FormulaNode, right: FormulaNode): Quantity | undefined {
    const unit = values.single(right)
    const number = left.kind === 'operation' && left.operator === '&' && left.right.kind === 'text' && left.right.text.trim() === '' ? left.left : left
    if (typeof unit !== 'string' || findUnit(unit.trim()) === undefined) return undefined
    const value = values.single(number)
    if (value !== undefined && typeof value !== 'number') return undefined
    const own = number.kind === 'reference' || number.kind === 'name' ? referredCells(number, source) : number.kind === 'call' && number.name === 'INDEX' ? found(number) : undefined
    if (own !== undefined && isOneCell(own.area)) return { kind: 'cell', cell: own, value, unit: unit.trim(), ...(number.kind === 'call' ? { through: number } : {}) }
    return { kind: 'compound', of: number, value, unit: unit.trim() }
  }

  /** The cell that a lookup gives. */
  function found(node: Extract<FormulaNode, { kind: 'call' }>): ReferredCells | undefined {
    const [from, row, column] = node.arguments
    const range = from === undefined ? undefined : referredCells(from, source)
    const first = row === undefined ? undefined : values.single(row)
    const second = column === undefined ? undefined : values.single(column)
    if (range === undefined || first === undefined || (column !== undefined && second === undefined)) return undefined
    const { top, left, bottom, right } = range.area
    const [down, across] = indexPlace(bottom - top + 1, right - left + 1, asNumber(first), second === undefined ? undefined : asNumber(second))
    if (down === undefined || across === undefined) return undefined
    return { sheet: range.sheet, area: { top: top + down, bottom: top + down, left: left + across, right: left + across } }
  }
}
