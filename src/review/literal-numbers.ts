import type { Argument } from '../../functions/arguments.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { isFault } from '../../functions/fault.ts'
import { parseQuantity } from '../../functions/units/quantity.ts'
import { findUnit } from '../../functions/units/units.ts'
import { eachNode, type FormulaNode } from '../workbook/formula/tree.ts'

/** A number that stands in a formula itself, where it may be a quantity: not a digit count, an index, an exponent or a plain 0, 1 or 2. */
export interface LiteralNumber {
  readonly value: number
  /** As the formula has it, with the unit that it is joined to: `0.75`, `20 °F`. */
  readonly text: string
  /** What is done with it. */
  readonly as: 'factor' | 'summand' | 'quantity' | 'other'
}

/** The numbers of a formula that one may want to change, or look up, in the order of writing. */
export function literalNumbers(tree: FormulaNode): LiteralNumber[] {
  const found: LiteralNumber[] = []
  const nodes = [...eachNode(tree)]
  const isGeometry = nodes.some((node) => node.kind === 'call' && node.name === 'PI')
  const hasSquare = nodes.some((node) => node.kind === 'operation' && node.operator === '^' && node.right.kind === 'number' && node.right.value === 2)
  walk(tree, 'other', false)
  return found

  function add(value: number, text: string, as: LiteralNumber['as']): void {
    const isPlain = PLAIN.has(Math.abs(value)) || (as === 'factor' && (value === 100 || (isGeometry && OF_CIRCLES.has(value)) || (hasSquare && value === 0.5)))
    if (!isPlain && !CONSTANTS.has(value)) found.push({ value, text, as })
  }

  /** @param wantsQuantity the value goes to an argument that is a quantity: a text there is a number with its unit */
  function walk(node: FormulaNode, as: LiteralNumber['as'], wantsQuantity: boolean): void {
    switch (node.kind) {
      case 'number': return add(node.value, String(node.value), as)
      case 'text': return wantsQuantity ? addText(node.text) : undefined
      case 'sign': return node.of.kind === 'number' ? add(node.operator === '-' ? -node.of.value : node.of.value, `${node.operator === '-' ? '−' : ''}${node.of.value}`, as) : walk(node.of, as, false)
      case 'percent': return node.of.kind === 'number' ? add(node.of.value / 100, `${node.of.value} %`, as) : walk(node.of, as, false)
      case 'array': return node.rows.flat().forEach((item) => walk(item, 'other', false))
      case 'call': return callOf(node, wantsQuantity)
      case 'operation': return operation(node, wantsQuantity)
      default: return undefined
    }
  }

  function addText(text: string): void {
    const read = parseQuantity(text)
    if (isFault(read)) return
    const isWhole = read.unit.dimension === 'share' && Math.abs(read.value * read.unit.factor) === 1
    // 0 °F is as good a temperature as any other; 0 ft is none of a length.
    if (isWhole || (read.unit.dimension !== 'temperature' && PLAIN.has(Math.abs(read.value)))) return
    found.push({ value: read.value, text: text.trim(), as: 'quantity' })
  }

  function operation(node: Extract<FormulaNode, { kind: 'operation' }>, wantsQuantity: boolean): void {
    const { operator, left, right } = node
    if (operator === '&') return join(node, wantsQuantity)
    if (operator === '^') {
      if (!(left.kind === 'number' && left.value === 10)) walk(left, 'other', false)
      if (!isOfNumbers(right)) walk(right, 'other', false)
      return
    }
    // 5/9 and 9/5 are one number each.
    if (operator === '/' && left.kind === 'number' && right.kind === 'number') return add(left.value / right.value, `${left.value}/${right.value}`, 'factor')
    const as = operator === '*' || operator === '/' ? 'factor' : operator === '+' || operator === '-' ? 'summand' : 'other'
    if (!(left.kind === 'number' && as !== 'factor' && isCount(right))) walk(left, as, false)
    if (!(right.kind === 'number' && as !== 'factor' && isCount(left))) walk(right, as, false)
  }

  function join(node: FormulaNode, wantsQuantity: boolean): void {
    const parts = joined(node)
    for (const [index, part] of parts.entries()) {
      const next = parts[index + 1]
      const unit = next?.kind === 'text' ? next.text.trim() : ''
      const isQuantity = index === 0 && (wantsQuantity || findUnit(unit) !== undefined)
      if (part.kind === 'number') {
        if (isQuantity) add(part.value, `${part.value} ${unit}`.trim(), 'quantity')
      } else if (part.kind === 'text') {
        if (isQuantity && part.text.trim() !== '' && Number.isFinite(Number(part.text))) add(Number(part.text), `${part.text.trim()} ${unit}`.trim(), 'quantity')
      } else walk(part, isQuantity ? 'quantity' : 'other', false)
    }
  }

  function callOf({ name, arguments: given }: Extract<FormulaNode, { kind: 'call' }>, wantsQuantity: boolean): void {
    const definition = functionByName(name)
    const own: readonly Argument<unknown>[] = definition === undefined ? [] : Object.values(definition.arguments)
    for (const [index, argument] of given.entries()) {
      if (argument === undefined || ORDINALS[name]?.includes(index) === true || (index > 0 && ALL_BUT_FIRST.has(name))) continue
      const described = own[index]
      const isWay = (name === 'IF' && index > 0) || (name === 'IFERROR' && index > 0)
      walk(argument, 'other', described === undefined ? isWay && wantsQuantity : described.kind === 'quantity' || described.kind === 'number')
    }
  }
}

const PLAIN: ReadonlySet<number> = new Set([0, 1, 2])
/** π D² / 4, π D³ / 6, 4 π r² and their like. */
const OF_CIRCLES: ReadonlySet<number> = new Set([3, 4, 6, 8, 12])
/** Of nature: standard gravity in m/s² and ft/s², the gas constant in J/(mol·K), π. Nobody changes them. */
const CONSTANTS: ReadonlySet<number> = new Set([9.80665, 9.81, 9.807, 32.174, 32.17, 32.2, 8.314462618, 8.314, 3.14, 3.1416, 3.14159, 3.141593])

/** Arguments, from 0, that say which, how many or of what kind, not how much. */
const ORDINALS: Readonly<Record<string, readonly number[]>> = {
  ROUND: [1], ROUNDUP: [1], ROUNDDOWN: [1], TRUNC: [1], FIXED: [1], INDEX: [1, 2], VLOOKUP: [2, 3], HLOOKUP: [2, 3], MATCH: [2], CHOOSE: [0], LARGE: [1], SMALL: [1],
  LEFT: [1], RIGHT: [1], MID: [1, 2], REPT: [1], POWER: [1], LOG: [1], MOD: [1], SUBTOTAL: [0], RANK: [2], SEQUENCE: [0, 1, 2, 3], TEXT: [1], SUBSTITUTE: [1, 2, 3],
}
const ALL_BUT_FIRST: ReadonlySet<string> = new Set(['OFFSET', 'DATE'])

const COUNTS: ReadonlySet<string> = new Set(['ROW', 'COLUMN', 'ROWS', 'COLUMNS', 'MATCH', 'COUNT', 'COUNTA', 'COUNTBLANK', 'COUNTIF', 'COUNTIFS', 'LEN'])

/** Whether a part only counts: rows, cells, characters. */
const isCount = (node: FormulaNode): boolean =>
  (node.kind === 'call' && COUNTS.has(node.name)) || (node.kind === 'operation' && (node.operator === '+' || node.operator === '-') && isCount(node.left))

const isOfNumbers = (node: FormulaNode): boolean => [...eachNode(node)].every(({ kind }) => kind === 'number' || kind === 'sign' || kind === 'operation')

/** The parts of texts that are joined, in the order of writing. */
const joined = (node: FormulaNode): readonly FormulaNode[] => (node.kind === 'operation' && node.operator === '&' ? [...joined(node.left), ...joined(node.right)] : [node])
