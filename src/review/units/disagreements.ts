import { findUnit } from '../../../functions/units/units.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { dimensionWords } from './dimension.ts'
import { say, type Fault, type FaultKind, type MendPlan, type Piece } from './fault.ts'
import type { Operand, Surroundings } from './infer.ts'
import type { Quantity } from './meaning.ts'
import type { Disagreement } from './sums.ts'
import { unitWords } from './unit-words.ts'

/** What a formula does with two quantities that have to be alike. */
export type Verb = 'adds' | 'subtracts' | 'compares' | 'lists' | `takes by ${string}`

/** The fault of two parts that do not go together. */
export function disagreementFault(disagreement: Disagreement, left: Operand, right: Operand, verb: Verb, surroundings: Surroundings): Fault {
  const [one, other] = [quantityOf(left), quantityOf(right)]
  const [mine, theirs] = [unitWords(one), unitWords(other)]
  const declared = verb === 'adds' || verb === 'subtracts' ? declaredWords(surroundings) : []
  return {
    kind: KIND[disagreement], severity: 'warning',
    words: [...together(left, right, verb), ...say`: ${whyNot(disagreement, one, other)}${declared}.`],
    key: `${verb} ${theirs}, ${mine}`,
    causes: [left.node, right.node],
    ...mendOf(disagreement, left, right, verb, surroundings),
  }
}

/** The fault of a quantity that does not count from the absolute zero and is multiplied, divided or raised. */
export function factorFault(unfit: 'gauge' | 'temperature', factor: Operand, verb: 'multiplies' | 'divides' | 'divides by' | 'raises', { sitePressure }: Surroundings, whole: FormulaNode): Fault {
  const unit = unitWords(quantityOf(factor))
  const absolute = unfit === 'gauge' ? 'psia, kPa or bar' : 'K or °R'
  const what = verb === 'raises' ? 'to a power' : verb === 'divides' || verb === 'divides by' ? 'in a quotient' : 'in a product'
  const mend = sitePressure !== undefined && unfit === 'gauge' ? conversion(factor, 'psia', `,${sitePressure}`) : {}
  return {
    kind: unfit === 'gauge' ? 'gauge-as-absolute' : 'difference-as-temperature', severity: 'warning',
    words: say`${capital(verb)} ${named(factor)}${verb === 'raises' ? ' to a power' : ''}: ${unfit === 'gauge' ? 'it counts from the atmosphere' : 'it does not count from absolute zero'}, and ${what} only ${absolute} ${unfit === 'gauge' ? 'mean a pressure' : 'mean a temperature'}${unfit === 'temperature' ? ', or a difference in Δ°F or ΔK' : ''}.`,
    key: `${verb} ${unit}`, causes: factor.node === whole ? [whole] : [factor.node], ...mend,
  }
}

/** A number of 1 beside one of 100. */
export function percentFault(percent: Operand, number: Operand, verb: 'adds' | 'subtracts' | 'compares'): Fault {
  return {
    kind: 'percent-as-share', severity: 'warning',
    words: [...together(number, percent, verb, '%'), ...say`: the number in % is 100 times too large for that, and has to be divided by 100 first.`],
    key: `${verb} %`, causes: [percent.node],
  }
}

/** 32 and a difference of temperatures. */
export function zeroAddedFault(difference: Operand, degrees: number): Fault {
  const isConverted = quantityOf(difference).constants.length > 0
  return {
    kind: 'difference-as-temperature', severity: 'warning',
    words: say`${degrees < 0 ? 'Takes' : 'Adds'} ${String(Math.abs(degrees))} ${degrees < 0 ? 'from' : 'to'} ${isConverted ? [difference.node] : named(difference)}, a difference of temperatures: ${String(Math.abs(degrees))} belongs to the conversion of a temperature, not of a difference.`,
    key: `${degrees}, ${unitWords(quantityOf(difference))}`, causes: [difference.node],
  }
}

/** A logarithm, a power or an angle of something with a unit. */
export function exponentFault({ node }: Operand, what: string, quantity: Quantity): Fault {
  const unit = unitWords(quantity)
  return {
    kind: 'unit-in-exponent', severity: 'remark',
    words: say`Takes ${what} of ${node}, in ${unit}: it comes out otherwise in every other unit, so the formula holds for ${unit} only, or the value should be divided by another in ${unit} first.`,
    key: `${what} ${unit}`, causes: [node],
  }
}

export const quantityOf = ({ meaning }: Operand): Quantity => {
  if (meaning.kind !== 'quantity') throw new TypeError('a part of a formula that is no quantity')
  return meaning
}

/** "C7 in in" */
export function named(operand: Operand, unit = unitWords(quantityOf(operand))): readonly Piece[] {
  return unit === 'no unit' ? say`${operand.node}, a ratio without unit` : say`${operand.node} in ${unit}`
}

const KIND: Readonly<Record<Disagreement, FaultKind>> = {
  dimension: 'unlike-units', unit: 'unlike-units', share: 'percent-as-share', gauge: 'gauge-as-absolute', temperature: 'difference-as-temperature',
}

function together(left: Operand, right: Operand, verb: Verb, rightUnit?: string): readonly Piece[] {
  const one = left.meaning.kind === 'quantity' ? named(left) : [left.node]
  const other = named(right, rightUnit)
  if (verb === 'adds') return say`Adds ${other} to ${one}`
  if (verb === 'subtracts') return say`Subtracts ${other} from ${one}`
  if (verb === 'compares') return say`Compares ${one} with ${other}`
  if (verb === 'lists') return say`Lists ${one} and ${other} together`
  return say`Takes ${one} and ${other} together in ${verb.slice('takes by '.length)}`
}

function whyNot(disagreement: Disagreement, one: Quantity, other: Quantity): string {
  const [mine, theirs] = [unitWords(one), unitWords(other)]
  if (disagreement === 'gauge') return 'the one counts from the atmosphere, the other does not'
  if (disagreement === 'share') return 'the one is a share of 1, the other of 100'
  if (disagreement === 'temperature') return 'the one is a temperature, the other a difference of temperatures'
  if (disagreement === 'unit') return `${theirs} and ${mine} are not converted into one unit`
  const [a, b] = [dimensionWords(one.dimension), dimensionWords(other.dimension)]
  return a !== undefined && b !== undefined && a !== b ? `${theirs} is ${b}, ${mine} ${a}` : `${theirs} and ${mine} are units of different things`
}

const declaredWords = ({ declared }: Surroundings): readonly Piece[] => (declared === undefined ? [] : say`; the result is declared in ${declared} (${{ declared: 'address' }})`)

/** Converts the one that is not in the unit of the result. */
function mendOf(disagreement: Disagreement, left: Operand, right: Operand, verb: Verb, { declared, sitePressure }: Surroundings): { readonly mend?: MendPlan } {
  const [mine, theirs] = [codeOf(left), codeOf(right)]
  if (mine === undefined || theirs === undefined) return {}
  const [converted, code] = declared === theirs ? [left, theirs] : [right, mine]
  if (disagreement === 'unit' || disagreement === 'share') return conversion(converted, code)
  const isComparison = verb === 'compares' && sitePressure !== undefined
  return disagreement === 'gauge' && isComparison ? conversion(converted, code, `,${sitePressure}`) : {}
}

function conversion(operand: Operand, code: string, site = ''): { readonly mend?: MendPlan } {
  if (codeOf(operand) === undefined || operand.node.kind !== 'reference') return {}
  return { mend: { words: say`Convert ${operand.node} to ${code}`, replace: operand.node, by: ['UNIT.CONVERT(', { quantityOf: operand.node }, `,"${code}"${site})`] } }
}

/** Of what is a cell's own number in a unit that UNIT.CONVERT knows. */
export function codeOf({ meaning }: Operand): string | undefined {
  if (meaning.kind !== 'quantity' || meaning.constants.length > 0) return undefined
  const code = unitWords(meaning)
  return findUnit(code)?.code
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
