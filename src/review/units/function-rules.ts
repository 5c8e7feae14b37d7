import { functionByName } from '../../../functions/catalogue.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { exponentFault } from './disagreements.ts'
import { isDimensionless, isPressure, isTemperature } from './dimension.ts'
import type { Inference, Operand } from './infer.ts'
import { joinedParts } from './joined-text.ts'
import { ANY_ZERO, countOf, UNKNOWN, type Meaning } from './meaning.ts'
import { mixedFault } from './mixed-range.ts'
import { ownCallMeaning } from './own-functions.ts'
import { single } from './several.ts'

export type CallNode = FormulaNode & { readonly kind: 'call' }

/** What a call gives. Of a function without a rule nothing is known; what is wrong within its arguments is found all the same. */
export function callMeaning(node: CallNode, inference: Inference): Meaning {
  const definition = functionByName(node.name)
  if (definition !== undefined) return ownCallMeaning(node, definition, inference)
  const rule = RULES.get(node.name)
  if (rule !== undefined) return rule(given(node), inference, node)
  for (const argument of given(node)) inference.value(argument)
  return UNKNOWN
}

type Rule = (given: readonly FormulaNode[], inference: Inference, node: CallNode) => Meaning

const given = ({ arguments: all }: CallNode): readonly FormulaNode[] => all.flatMap((one) => one ?? [])

const TRUTH: Meaning = { kind: 'truth' }

/** Evaluates all arguments, for their own faults. */
const all = (nodes: readonly FormulaNode[], inference: Inference): readonly Operand[] => nodes.map((node) => inference.operand(node))

/** One of the numbers, or as large as they are. */
const likeAll: Rule = (nodes, inference, { name }) => {
  const operands = nodes.map((node) => cellsOf(node, inference, name))
  return operands.length === 0 ? UNKNOWN : inference.join(operands, `takes by ${name}`)
}

/** What is in a range, with a word on it where it is of different units. */
function cellsOf(node: FormulaNode, inference: Inference, name: string): Operand {
  const meaning = inference.meaning(node)
  if (meaning.kind !== 'range') return { node, meaning }
  const fault = mixedFault(node, meaning, name)
  if (fault) inference.report(fault)
  const [first, ...others] = meaning.columns.flat().filter(({ kind }) => kind === 'quantity')
  return { node, meaning: fault !== undefined ? UNKNOWN : first !== undefined && others.length === 0 ? first : inference.value(node) }
}

/** The sum of temperatures, or of gauge pressures, is of use only for their mean. */
const total: Rule = (nodes, inference, node) => summed(likeAll(nodes, inference, node))

function summed(meaning: Meaning): Meaning {
  if (meaning.kind !== 'quantity') return meaning
  const countsFromZero = isTemperature(meaning.dimension) ? Math.abs(meaning.zero.offset) > 1 : isPressure(meaning.dimension) && meaning.zero.gauge !== 0
  return countsFromZero ? UNKNOWN : meaning
}

const likeFirst: Rule = ([first, ...others], inference) => {
  all(others, inference)
  return first === undefined ? UNKNOWN : inference.value(first)
}

/** Rounds to multiples of the second, which is of the same unit. */
const toStep: Rule = (nodes, inference, { name }) => inference.join(all(nodes.slice(0, 2), inference), `takes by ${name}`)

const count: Rule = (nodes, inference) => {
  all(nodes, inference)
  return countOf()
}

const truth: Rule = (nodes, inference) => {
  all(nodes, inference)
  return TRUTH
}

const text: Rule = (nodes, inference) => {
  all(nodes, inference)
  return { kind: 'text', text: undefined, unit: undefined }
}

/** Of one of the arguments, each at its place. */
const oneOf = (choose: (nodes: readonly FormulaNode[]) => readonly FormulaNode[]): Rule => (nodes, inference, { name }) => {
  const chosen = choose(nodes)
  all(nodes.filter((node) => !chosen.includes(node)), inference)
  return inference.join(all(chosen, inference), `takes by ${name}`)
}

const everyOther = (from: number, last: boolean) => (nodes: readonly FormulaNode[]): readonly FormulaNode[] =>
  nodes.filter((_, index) => index >= from && ((index - from) % 2 === 0 || (last && index === nodes.length - 1)))

/** A column that is looked through for a value, which has to be of its unit; then what stands beside it. */
const match: Rule = (nodes, inference) => {
  const [sought, where, ...others] = nodes
  if (sought !== undefined && where !== undefined) inference.compare(inference.operand(sought), cellsOf(where, inference, 'MATCH'))
  all(others, inference)
  return countOf()
}

const lookUp: Rule = (nodes, inference, { name }) => {
  const [sought, where, result, otherwise] = nodes
  if (sought !== undefined && where !== undefined) inference.compare(inference.operand(sought), inference.operand(where))
  const found = result ?? where
  if (found === undefined) return UNKNOWN
  return inference.join([inference.operand(found), ...(name === 'XLOOKUP' && otherwise ? [inference.operand(otherwise)] : [])], `takes by ${name}`)
}

const verticalLookUp: Rule = ([sought, table, column], inference) => {
  const range = table && inference.meaning(table)
  if (sought === undefined || table === undefined || column === undefined || range?.kind !== 'range') return UNKNOWN
  inference.compare(inference.operand(sought), { node: table, meaning: inColumn(range, 1) })
  const at = inference.value(column)
  return at.kind === 'number' && at.value !== undefined ? inColumn(range, at.value) : UNKNOWN
}

const inColumn = ({ columns }: Meaning & { readonly kind: 'range' }, column: number): Meaning => {
  const held = columns[column - 1]
  return held === undefined ? UNKNOWN : single({ kind: 'range', columns: [held] })
}

/** `INDEX(range, row, [column])` */
const index: Rule = ([table, row, column], inference) => {
  const range = table && inference.meaning(table)
  const at = column === undefined ? undefined : inference.value(column)
  if (row !== undefined) inference.value(row)
  if (range === undefined) return UNKNOWN
  if (range.kind === 'range' && range.columns.length > 1 && at?.kind === 'number' && at.value !== undefined) return inColumn(range, at.value)
  return single(range)
}

const sumIf: Rule = (nodes, inference, node) => {
  const [where, , what] = nodes
  all(nodes.slice(1, 2), inference)
  const summedOver = what ?? where
  return summedOver === undefined ? UNKNOWN : node.name === 'SUMIF' ? summed(cellsOf(summedOver, inference, node.name).meaning) : cellsOf(summedOver, inference, node.name).meaning
}

const sumIfs: Rule = ([what, ...conditions], inference, { name }) => {
  all(conditions, inference)
  if (what === undefined) return UNKNOWN
  const { meaning } = cellsOf(what, inference, name)
  return name === 'SUMIFS' ? summed(meaning) : meaning
}

const multiplied: Rule = (nodes, inference, node) => {
  const [first, ...others] = nodes.map((one) => inference.operand(one))
  if (first === undefined) return UNKNOWN
  if (node.name === 'PRODUCT' && nodes.some((one) => inference.meaning(one).kind === 'range')) return UNKNOWN
  const result = others.reduce<Operand>((left, right) => ({ node: left.node, meaning: inference.times(left, right, 1, node) }), first)
  return node.name === 'SUMPRODUCT' ? summed(result.meaning) : result.meaning
}

const quotient: Rule = ([dividend, divisor], inference, node) =>
  dividend === undefined || divisor === undefined ? UNKNOWN : inference.times(inference.operand(dividend), inference.operand(divisor), -1, node)

const root: Rule = ([of], inference, node) => (of === undefined ? UNKNOWN : inference.power(inference.operand(of), countOf(0.5), node))

const raised: Rule = ([base, exponent], inference, node) =>
  base === undefined || exponent === undefined ? UNKNOWN : inference.power(inference.operand(base), inference.value(exponent), node)

/** Wants a number without unit, and gives one. */
const ofNumber = (words: string): Rule => (nodes, inference) => {
  for (const operand of all(nodes, inference)) {
    const { meaning } = operand
    if (meaning.kind === 'quantity' && !meaning.loose && !isDimensionless(meaning.dimension)) inference.report(exponentFault(operand, words, meaning))
  }
  return { kind: 'number', value: undefined, factors: [], loose: false }
}

const pi: Rule = () => ({ kind: 'number', value: Math.PI, factors: [Math.PI], loose: false })

const joined: Rule = (nodes, inference) => joinedParts(nodes, inference)

/** A number as text is still the number of its unit: `TEXT(C5,"0.0")&" psia"`. */
const shown: Rule = likeFirst

/** A spread has no zero: of temperatures it is a difference. */
const spread: Rule = (nodes, inference, node) => {
  const meaning = likeAll(nodes, inference, node)
  return meaning.kind === 'quantity' ? { ...meaning, zero: { ...ANY_ZERO, points: 0 } } : meaning
}



const RULES: ReadonlyMap<string, Rule> = new Map([
  ...named(likeAll, 'MIN MAX AVERAGE MEDIAN MODE MINA MAXA AVERAGEA GEOMEAN'),
  ...named(total, 'SUM'),
  ...named(spread, 'STDEV STDEVP STDEV.S STDEV.P'),
  ...named(likeFirst, 'ROUND ROUNDUP ROUNDDOWN TRUNC INT ABS N VALUE EVEN ODD LARGE SMALL PERCENTILE QUARTILE'),
  ...named(shown, 'TEXT FIXED'),
  ...named(toStep, 'CEILING FLOOR MROUND MOD CEILING.MATH FLOOR.MATH'),
  ...named(count, 'COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS ROW ROWS COLUMN COLUMNS LEN FIND SEARCH RANK SIGN'),

  ...named(truth, 'AND OR NOT XOR ISNUMBER ISTEXT ISBLANK ISERROR ISERR ISNA ISLOGICAL ISNONTEXT ISEVEN ISODD TRUE FALSE EXACT'),
  ...named(text, 'LEFT RIGHT MID TRIM UPPER LOWER PROPER SUBSTITUTE REPLACE REPT CHAR TEXTJOIN T'),
  ...named(joined, 'CONCATENATE CONCAT'),
  ...named(oneOf((nodes) => nodes.slice(1)), 'IF CHOOSE'),
  ...named(oneOf((nodes) => nodes), 'IFERROR IFNA'),
  ...named(oneOf(everyOther(1, false)), 'IFS'),
  ...named(oneOf(everyOther(2, true)), 'SWITCH'),
  ...named(match, 'MATCH XMATCH'),
  ...named(lookUp, 'XLOOKUP LOOKUP'),
  ...named(verticalLookUp, 'VLOOKUP'),
  ...named(index, 'INDEX'),
  ...named(sumIf, 'SUMIF AVERAGEIF'),
  ...named(sumIfs, 'SUMIFS AVERAGEIFS MAXIFS MINIFS'),
  ...named(multiplied, 'SUMPRODUCT PRODUCT'),
  ...named(quotient, 'QUOTIENT'),
  ...named(root, 'SQRT'),
  ...named(raised, 'POWER'),
  ...named(pi, 'PI'),
  ...named(ofNumber('the logarithm'), 'LN LOG LOG10'),
  ...named(ofNumber('the exponential'), 'EXP'),
  ...named(ofNumber('the angle'), 'SIN COS TAN ASIN ACOS ATAN SINH COSH TANH RADIANS DEGREES'),
])

function named(rule: Rule, names: string): (readonly [string, Rule])[] {
  return names.split(' ').map((name) => [name, rule] as const)
}

