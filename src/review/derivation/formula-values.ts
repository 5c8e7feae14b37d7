import { functionByName } from '../../../functions/catalogue.ts'
import { isFault } from '../../../functions/fault.ts'
import type { Given } from '../../../functions/given.ts'
import { isCellError, type CellError, type CellValue } from '../../calc/values.ts'
import type { FormulaNode, Operator } from '../../workbook/formula/tree.ts'
import { isOneCell, referredCells, type FormulaSource } from './formula-source.ts'
import { asNumber, asText, compare, isBlock, one, STANDARD, type Block, type Computed } from './standard-values.ts'

/** What parts of a formula come to. */
export interface FormulaValues {
  /** Undefined where it is not known: of a function that is not worked out here, or of cells that are not known. */
  readonly of: (node: FormulaNode) => Computed
  /** The same as a single value. */
  readonly single: (node: FormulaNode | undefined) => CellValue | undefined
  /** What a function of the catalogue is given; undefined where that is not known, or an error. */
  readonly given: (call: Extract<FormulaNode, { kind: 'call' }>) => readonly Given[] | undefined
}

/**
 * Works out the parts of a formula from what its cells come to, so that they can be told one by one. The calculation itself is the engine's: the
 * whole of a formula is never taken from here, and what is not among the few functions known here stays unknown.
 */
export function formulaValues(source: FormulaSource): FormulaValues {
  const known = new Map<FormulaNode, Computed>()
  const of = (node: FormulaNode): Computed => {
    if (!known.has(node)) known.set(node, compute(node))
    return known.get(node)
  }
  const single = (node: FormulaNode | undefined): CellValue | undefined => (node === undefined ? undefined : one(of(node)))
  return {
    of, single,
    given(call) {
      const values = argumentsOf(call)
      return Array.isArray(values) ? values : undefined
    },
  }

  function argumentsOf({ arguments: given }: Extract<FormulaNode, { kind: 'call' }>): Given[] | CellError | undefined {
    const values: Given[] = []
    for (const argument of given) {
      const value = argument === undefined ? undefined : of(argument)
      if (argument !== undefined && value === undefined) return undefined
      const error = firstError(value)
      if (error !== undefined) return error
      values.push(value as Given) // neither an error nor a block with one
    }
    return values
  }

  function compute(node: FormulaNode): Computed {
    switch (node.kind) {
      case 'number': return node.value
      case 'text': return node.text
      case 'boolean': return node.value
      case 'error': return { error: node.text, message: '' }
      case 'reference':
      case 'name': return cells(node)
      case 'sign': return each(of(node.of), 0, (value) => arithmetic(node.operator, 0, value))
      case 'percent': return each(of(node.of), 0, (value) => arithmetic('/', value, 100))
      case 'operation': return each(of(node.left), of(node.right), (left, right) => operate(node.operator, left, right))
      case 'array': return block(node.rows.map((row) => row.map((item) => single(item))))
      case 'call': return call(node)
    }
  }

  function cells(node: FormulaNode): Computed {
    const referred = referredCells(node, source)
    if (referred === undefined) return undefined
    const { sheet, area } = referred
    if (isOneCell(area)) return source.value(sheet.name, area.top, area.left)
    if ((area.bottom - area.top + 1) * (area.right - area.left + 1) > MOST_CELLS) return undefined
    return block(Array.from({ length: area.bottom - area.top + 1 }, (_, row) =>
      Array.from({ length: area.right - area.left + 1 }, (__, column) => source.value(sheet.name, area.top + row, area.left + column))))
  }

  function call(node: Extract<FormulaNode, { kind: 'call' }>): Computed {
    const { name, arguments: given } = node
    const definition = functionByName(name)
    if (definition !== undefined) {
      const values = argumentsOf(node)
      if (!Array.isArray(values)) return values
      const result = definition.call(values)
      return isFault(result) ? { error: result.fault, message: result.message } : result
    }
    if (name === 'ROW' && given.length === 0) return source.at === undefined ? undefined : source.at.row + 1
    if (name === 'COLUMN' && given.length === 0) return source.at === undefined ? undefined : source.at.column + 1
    if ((name === 'ROW' || name === 'COLUMN') && given[0] !== undefined) {
      const area = referredCells(given[0], source)?.area
      return area === undefined || !isOneCell(area) ? undefined : (name === 'ROW' ? area.top : area.left) + 1
    }
    const standard = STANDARD[name]
    return standard === undefined ? undefined : standard(given.map((argument) => () => (argument === undefined ? null : of(argument))))
  }
}

/** A range of more cells is not put into a formula cell by cell. */
const MOST_CELLS = 20_000

function block(rows: readonly (readonly (CellValue | undefined)[])[]): Block | undefined {
  return rows.every((row) => row.every((value) => value !== undefined)) ? { rows: rows as readonly (readonly CellValue[])[] } : undefined
}

function firstError(value: Computed): CellError | undefined {
  if (!isBlock(value)) return isCellError(value) ? value : undefined
  for (const row of value.rows) for (const cell of row) if (isCellError(cell)) return cell
  return undefined
}

/** Item by item where there are blocks; one row, or one column, is taken for every row or column. */
function each(left: Computed, right: Computed, compute: (left: CellValue, right: CellValue) => CellValue | undefined): Computed {
  if (left === undefined || right === undefined) return undefined
  if (!isBlock(left) && !isBlock(right)) return compute(left, right)
  const [first, second] = [isBlock(left) ? left.rows : [[left]], isBlock(right) ? right.rows : [[right]]]
  const [rows, columns] = [Math.max(first.length, second.length), Math.max(first[0]?.length ?? 0, second[0]?.length ?? 0)]
  const item = (from: Block['rows'], row: number, column: number): CellValue => {
    const line = from.length === 1 ? from[0] : from[row]
    return (line?.length === 1 ? line[0] : line?.[column]) ?? null
  }
  return block(Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => compute(item(first, row, column), item(second, row, column)))))
}

function operate(operator: Operator, left: CellValue, right: CellValue): CellValue | undefined {
  if (isCellError(left)) return left
  if (isCellError(right)) return right
  if (operator === '&') return asText(left) + asText(right)
  if (operator === '+' || operator === '-' || operator === '*' || operator === '/' || operator === '^') return arithmetic(operator, left, right)
  const order = compare(left, right)
  switch (operator) {
    case '=': return order === 0
    case '<>': return order !== 0
    case '<': return order < 0
    case '>': return order > 0
    case '<=': return order <= 0
    case '>=': return order >= 0
  }
}

function arithmetic(operator: '+' | '-' | '*' | '/' | '^', left: CellValue, right: CellValue): CellValue {
  const [first, second] = [asNumber(left), asNumber(right)]
  if (typeof first !== 'number') return first
  if (typeof second !== 'number') return second
  if (operator === '/' && second === 0) return { error: '#DIV/0!', message: '' }
  const result = operator === '+' ? first + second : operator === '-' ? first - second : operator === '*' ? first * second : operator === '/' ? first / second : first ** second
  return Number.isFinite(result) ? result : { error: '#NUM!', message: '' }
}
