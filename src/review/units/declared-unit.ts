import { functionByName } from '../../../functions/catalogue.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { codeOf } from './disagreements.ts'
import { isDimensionless } from './dimension.ts'
import { say, type Fault, type MendPlan, type Piece } from './fault.ts'
import type { Operand, Surroundings } from './infer.ts'
import type { Quantity } from './meaning.ts'
import { misfit, type Misfit } from './misfit.ts'
import { KIND_OF_MISFIT, misfitKey, misfitWords } from './misfit-words.ts'
import { differenceCode, quantityWords, unitWords } from './unit-words.ts'

/** What is wrong with the result of a formula in the unit that its cell is declared in. */
export function declaredFault(root: Operand, unit: Quantity, unitText: string, { sitePressure }: Surroundings): Fault | undefined {
  const { node, meaning } = root
  if (meaning.kind !== 'quantity') return undefined
  const wrong = misfit(meaning, unit)
  if (wrong === undefined) return undefined
  const isLink = node.kind === 'reference' || node.kind === 'name'
  const own = unitWords(meaning)
  const unitArgument = unitArgumentOf(node)
  const gives = isLink ? say`Shows ${node}, which is in ${own}, as a number in ${unitText} (${ADDRESS})`
    : unitArgument === undefined ? say`Gives ${quantityWords(meaning)}, and is declared in ${unitText} (${ADDRESS})`
    : say`Asks for ${own}${unitArgument.kind === 'text' ? '' : [' (', unitArgument, ')']}, and is declared in ${unitText} (${ADDRESS})`
  const isSlight = (wrong.how === 'pressure difference' && unit.zero.gauge === 0) || (wrong.how === 'difference' && Math.abs(unit.zero.offset) < 1)
  return {
    kind: isLink ? 'linked-unit' : KIND_OF_MISFIT[wrong.how], severity: isSlight ? 'remark' : 'warning',
    words: [...gives, ': ', ...misfitWords(wrong, meaning, unit, unitText), '.'],
    key: misfitKey(wrong, meaning, unitText), causes: [node],
    ...mendOf(root, wrong, unitText, unitArgument, sitePressure),
  }
}

/** A ratio of two units of one dimension, in a cell that says no unit. */
export function bareRatioFault({ node, meaning }: Operand): Fault | undefined {
  if (meaning.kind !== 'quantity' || meaning.loose || !isDimensionless(meaning.dimension) || meaning.symbol.length < 2) return undefined
  const one: Quantity = { ...meaning, factor: 1, constants: [], symbol: [] }
  const wrong = misfit(meaning, one)
  if (wrong?.how !== 'factor') return undefined
  return {
    kind: 'result-unit', severity: 'warning',
    words: [...say`Gives a ratio in ${unitWords(meaning)}: `, ...misfitWords(wrong, meaning, one, 'no unit'), '.'],
    key: misfitKey(wrong, meaning, 'a ratio'), causes: [node],
  }
}

const ADDRESS: Piece = { declared: 'address' }

/** The unit that an own function is asked for, if it is written out. */
function unitArgumentOf(node: FormulaNode): FormulaNode | undefined {
  const definition = node.kind === 'call' ? functionByName(node.name) : undefined
  if (definition === undefined || node.kind !== 'call') return undefined
  return node.arguments[Object.keys(definition.arguments).indexOf('unit')]
}

function mendOf(root: Operand, wrong: Misfit, unitText: string, unitArgument: FormulaNode | undefined, sitePressure: string | undefined): { readonly mend?: MendPlan } {
  const { node } = root
  const isOfZero = wrong.how === 'gauge' || wrong.how === 'absolute'
  const isConvertible = wrong.how === 'factor' || wrong.how === 'share' || wrong.how === 'zero' || (isOfZero && sitePressure !== undefined)
  const site = isOfZero && sitePressure !== undefined ? `,${sitePressure}` : ''
  if (isConvertible && unitArgument !== undefined && node.kind === 'call') {
    const isLast = node.arguments.at(-1) === unitArgument
    return { mend: { words: say`Ask for ${unitText}, the unit of the cell`, replace: unitArgument, by: [{ declared: 'reference' }, isLast ? site : ''] } }
  }
  if (isConvertible && node.kind === 'reference' && codeOf(root) !== undefined) {
    return { mend: { words: say`Convert ${node} to ${unitText}`, replace: node, by: ['UNIT.CONVERT(', { quantityOf: node }, ',', { declared: 'reference' }, `${site})`] } }
  }
  // The number is right, its unit is that of a temperature or of a pressure where it is a difference of two.
  const difference = wrong.how === 'difference' || wrong.how === 'pressure difference' ? differenceCode(unitText) : undefined
  return difference === undefined ? {} : { mend: { words: say`Write ${difference} into ${ADDRESS}`, unitCell: difference } }
}
