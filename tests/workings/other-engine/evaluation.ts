import { isArrayNode, isBinaryNode, isCallNode, isErrorNode, isLiteralNode, isReferenceNode, isUnaryNode } from '@borgar/fx'
import type { Area } from './areas.ts'
import type { Expression } from './expressions.ts'
import { cellByCell, ofAll, type Given } from './functions.ts'
import { CellFault, compared, faultOf, isMatrix, numberOf, textOf, truthOf, type Matrix, type Scalar, type Value } from './values.ts'

export interface Surroundings {
  /** The cells of a reference or a name. */
  readonly area: (reference: string, sheet: string) => Area | undefined
  readonly valueAt: (sheet: string, row: number, column: number) => Scalar
}

export interface Cell extends Surroundings {
  readonly sheet: string
  readonly row: number
  readonly column: number
  /** It holds an array formula: areas are computed with cell by cell. Elsewhere one cell of an area counts, that in the formula's row or column. */
  readonly isArray: boolean
}

/** What a cell's formula comes to (OpenFormula 1.3, part 4, sections 3.3 and 6.2 to 6.4). */
export function evaluated(formula: Expression, cell: Cell): Scalar {
  const value = first(valueOf(formula, cell, cell.isArray))
  return typeof value === 'number' && !Number.isFinite(value) ? faultOf('#NUM!') : (value ?? 0)
}

const first = (value: Value): Scalar => (isMatrix(value) ? (value.rows[0]?.[0] ?? null) : value)

function valueOf(node: Expression | null, cell: Cell, array: boolean): Value {
  if (node === null) return null
  if (isLiteralNode(node)) return node.value
  if (isErrorNode(node)) return faultOf(node.value)
  if (isReferenceNode(node)) return oneCellOf(whole(node, cell), node, cell, array)
  if (isArrayNode(node)) return { rows: node.elements.map((row) => row.map((one) => first(valueOf(one, cell, array)))) }
  if (isUnaryNode(node)) return spread([valueOf(node.arguments[0] ?? null, cell, array)], ([one = null]) => UNARY[node.operator]?.(one) ?? faultOf('#VALUE!'))
  if (isBinaryNode(node)) return spread(node.arguments.map((one) => valueOf(one, cell, array)), ([one = null, other = null]) => operated(node.operator, one, other))
  return isCallNode(node) ? called(node.callee.name.toUpperCase().replace(/^_XLFN\./, ''), node.arguments as readonly (Expression | null)[], cell, array) : faultOf('#NAME?')
}

/** Everything that a reference stands for; one cell as its value. */
function whole(node: Expression, cell: Cell): Value {
  const area = isReferenceNode(node) ? cell.area(node.value, cell.sheet) : undefined
  if (area === undefined) return faultOf('#NAME?')
  if (area.top === area.bottom && area.left === area.right) return cell.valueAt(area.sheet, area.top, area.left)
  return { rows: Array.from({ length: area.bottom - area.top + 1 }, (_, down) => Array.from({ length: area.right - area.left + 1 }, (__, across) => cell.valueAt(area.sheet, area.top + down, area.left + across))) }
}

/** Where no array is computed, the one cell of an area that stands in the formula's row or column (3.3, implied intersection). */
function oneCellOf(value: Value, node: Expression, cell: Cell, array: boolean): Value {
  const area = isReferenceNode(node) ? cell.area(node.value, cell.sheet) : undefined
  if (array || !isMatrix(value) || area === undefined) return value
  if (area.left === area.right && cell.row >= area.top && cell.row <= area.bottom) return cell.valueAt(area.sheet, cell.row, area.left)
  if (area.top === area.bottom && cell.column >= area.left && cell.column <= area.right) return cell.valueAt(area.sheet, area.top, cell.column)
  return faultOf('#VALUE!')
}

/** A computation cell by cell: a row goes with every row, a column with every column, one value with all (3.3). */
function spread(values: readonly Value[], compute: (scalars: readonly Scalar[]) => Scalar): Value {
  const matrices = values.filter((value) => isMatrix(value))
  if (matrices.length === 0) return compute(values as readonly Scalar[])
  const rows = Math.max(...matrices.map((one) => one.rows.length))
  const columns = Math.max(...matrices.map((one) => one.rows[0]?.length ?? 0))
  const at = (value: Value, row: number, column: number): Scalar => {
    if (!isMatrix(value)) return value
    const line = value.rows[value.rows.length === 1 ? 0 : row]
    const found = line?.[line.length === 1 ? 0 : column]
    return found === undefined ? faultOf('#N/A') : found
  }
  return { rows: Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => compute(values.map((value) => at(value, row, column))))) }
}

const UNARY: Readonly<Record<string, (one: Scalar) => Scalar>> = {
  '-': (one) => numeric([one], ([number = 0]) => -number),
  '+': (one) => one,
  '%': (one) => numeric([one], ([number = 0]) => number / 100),
}

const ARITHMETIC: Readonly<Record<string, (one: number, other: number) => Scalar>> = {
  '+': (one, other) => one + other,
  '-': (one, other) => one - other,
  '*': (one, other) => one * other,
  '/': (one, other) => (other === 0 ? faultOf('#DIV/0!') : one / other),
  '^': (one, other) => (Number.isFinite(one ** other) ? one ** other : faultOf('#NUM!')),
}

const COMPARISON: Readonly<Record<string, (order: number) => boolean>> = {
  '=': (order) => order === 0, '<>': (order) => order !== 0, '<': (order) => order < 0, '>': (order) => order > 0, '<=': (order) => order <= 0, '>=': (order) => order >= 0,
}

function operated(operator: string, one: Scalar, other: Scalar): Scalar {
  if (one instanceof CellFault) return one
  if (other instanceof CellFault) return other
  const [arithmetic, comparison] = [ARITHMETIC[operator], COMPARISON[operator]]
  if (arithmetic !== undefined) return numeric([one, other], ([left = 0, right = 0]) => arithmetic(left, right))
  if (comparison !== undefined) return comparison(compared(one, other))
  return operator === '&' ? `${String(textOf(one))}${String(textOf(other))}` : faultOf('#VALUE!')
}

function numeric(values: readonly Scalar[], compute: (numbers: readonly number[]) => Scalar): Scalar {
  const numbers = values.map(numberOf)
  return numbers.find((one) => one instanceof CellFault) ?? compute(numbers as readonly number[])
}

function called(name: string, given: readonly (Expression | null)[], cell: Cell, array: boolean): Value {
  const special = SPECIAL[name]
  if (special !== undefined) return special(given, cell, array)
  const compute = cellByCell(name)
  if (compute !== undefined) return spread(given.map((one) => valueOf(one, cell, array)), compute)
  const all = ofAll(name)
  if (all === undefined) return faultOf('#NAME?')
  // Its arguments are arrays wherever it stands (3.3, ForceArray).
  const forced = array || name === 'SUMPRODUCT'
  return all(given.map((node): Given => {
    const isArea = node !== null && isReferenceNode(node)
    const value = isArea ? whole(node, cell) : valueOf(node, cell, forced)
    return { rows: isMatrix(value) ? value.rows : [[value]], isArea, isOmitted: node === null }
  }))
}

type Special = (given: readonly (Expression | null)[], cell: Cell, array: boolean) => Value

/** Functions that do not look at all of their arguments, or at where they stand instead of what they hold. */
const SPECIAL: Readonly<Record<string, Special>> = {
  IF: ([condition = null, whenTrue, whenFalse], cell, array) => {
    const truth = valueOf(condition, cell, array)
    const branch = (node: Expression | null | undefined, omitted: Scalar): Value => (node === undefined ? omitted : (valueOf(node, cell, array) ?? 0))
    if (!isMatrix(truth)) {
      const taken = truthOf(truth)
      return taken instanceof CellFault ? taken : taken ? branch(whenTrue, true) : branch(whenFalse, false)
    }
    return spread([truth, branch(whenTrue, true), branch(whenFalse, false)], ([one = null, yes = null, no = null]) => {
      const taken = truthOf(one)
      return taken instanceof CellFault ? taken : taken ? yes : no
    })
  },
  IFERROR: ([node = null, otherwise = null], cell, array) => {
    const value = valueOf(node, cell, array)
    return isMatrix(value) ? spread([value, valueOf(otherwise, cell, array)], ([one = null, other = null]) => (one instanceof CellFault ? other : one)) : value instanceof CellFault ? valueOf(otherwise, cell, array) : value
  },
  ROW: (given, cell) => lines(given, cell, ({ top, bottom }) => ({ rows: Array.from({ length: bottom - top + 1 }, (_, at) => [top + at + 1]) }), cell.row + 1),
  COLUMN: (given, cell) => lines(given, cell, ({ left, right }) => ({ rows: [Array.from({ length: right - left + 1 }, (_, at) => left + at + 1)] }), cell.column + 1),
  ROWS: (given, cell) => lines(given, cell, ({ top, bottom }) => bottom - top + 1, faultOf('#VALUE!')),
  COLUMNS: (given, cell) => lines(given, cell, ({ left, right }) => right - left + 1, faultOf('#VALUE!')),
}

function lines([node = null]: readonly (Expression | null)[], cell: Cell, of: (area: Area) => Value, withoutArgument: Scalar): Value {
  if (node === null) return withoutArgument
  const area = isReferenceNode(node) ? cell.area(node.value, cell.sheet) : undefined
  const value: Value = area === undefined ? faultOf('#VALUE!') : of(area)
  return isMatrix(value) && value.rows.flat().length === 1 ? first(value as Matrix) : value
}
