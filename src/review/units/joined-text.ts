import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { codeOf } from './disagreements.ts'
import { say, type MendPlan } from './fault.ts'
import type { Inference, Operand } from './infer.ts'
import { unitQuantity } from './known-unit.ts'
import type { Meaning, Quantity } from './meaning.ts'
import { misfit } from './misfit.ts'
import { KIND_OF_MISFIT, misfitKey, misfitWords } from './misfit-words.ts'
import { unitWords } from './unit-words.ts'

/** A text made of parts: a number with its unit where it is that, `C5&D5`, `C5&" psia"`. Units within messages are looked at as well. */
export function joinedText(node: FormulaNode, inference: Inference): Meaning {
  return joinedParts(partsOf(node), inference)
}

export function joinedParts(nodes: readonly FormulaNode[], inference: Inference): Meaning {
  // A blank between number and unit says nothing.
  const parts = nodes.filter((part) => part.kind !== 'text' || part.text.trim() !== '').map((part) => inference.operand(part))
  for (const [index, part] of parts.entries()) {
    const unit = parts[index + 1]
    if (unit !== undefined) lookAt(part, unit, parts.length > 2, inference)
  }
  const [first, second] = parts
  if (parts.length !== 2 || !first || !second || !isNumber(first.meaning)) return { kind: 'text', text: undefined, unit: undefined }
  const unit = unitIn(second, false)
  return unit === undefined && second.meaning.kind !== 'text' ? { kind: 'unknown' } : { kind: 'pair', unit: unit?.quantity }
}

function partsOf(node: FormulaNode): FormulaNode[] {
  const parts: FormulaNode[] = []
  const rest = [node]
  for (let next = rest.pop(); next !== undefined; next = rest.pop()) {
    if (next.kind === 'operation' && next.operator === '&') rest.push(next.right, next.left)
    else parts.push(next)
  }
  return parts
}

const isNumber = ({ kind }: Meaning): boolean => kind === 'number' || kind === 'quantity' || kind === 'unknown'

interface NamedUnit {
  readonly quantity: Quantity
  readonly text: string
}

/** The unit that a part names; in a message only where it cannot be a word. */
function unitIn({ node, meaning }: Operand, isMessage: boolean): NamedUnit | undefined {
  if (node.kind === 'text') {
    const text = isMessage ? (/^\s*([^\s,;:]+)/.exec(node.text)?.[1] ?? '') : node.text.trim()
    const quantity = isMessage && !IN_MESSAGES.has(text) ? undefined : unitQuantity(text)
    return quantity && { quantity, text }
  }
  return meaning.kind === 'text' && meaning.unit !== undefined ? { quantity: meaning.unit, text: unitText(meaning.unit) } : undefined
}

const IN_MESSAGES: ReadonlySet<string> = new Set(['psia', 'psig', 'psi', 'kPa', 'kPa(g)', 'bar(g)', '°F', '°C', 'Δ°F', 'ΔK', 'lb', 'kg', 'ft', 'ft3', 'm3', 'gpm', 'cfm', 'lb/min', 'lb/h', 'kg/s', 'kW', 'TR', 'ft/min', 'ft/s', 'm/s', 'mm', '%'])

const unitText = (unit: Quantity): string => (unitWords(unit) === 'no unit' ? '-' : unitWords(unit))

function lookAt(number: Operand, unit: Operand, isMessage: boolean, inference: Inference): void {
  const named = unitIn(unit, isMessage)
  if (named === undefined || number.meaning.kind !== 'quantity') return
  const quantity = number.meaning
  const wrong = misfit(quantity, named.quantity)
  const isCell = number.node.kind === 'reference'
  if (wrong === undefined) {
    const { isUnitOf, hasUnitCell } = inference.surroundings
    const isBorrowed = isCell && unit.node.kind === 'reference' && hasUnitCell(number.node) && !isUnitOf(unit.node, number.node)
    if (isBorrowed) inference.report(borrowed(number, unit, named.text))
    return
  }
  const kind = isCell || wrong.how === 'dimension' || wrong.how === 'factor' || wrong.how === 'surplus' || wrong.how === 'inverted' ? 'joined-unit' : KIND_OF_MISFIT[wrong.how]
  inference.report({
    kind, severity: 'warning',
    words: say`Joins ${unit.node.kind === 'text' ? named.text : [named.text, ' (', unit.node, ')']} to ${number.node}, which is in ${unitWords(quantity)}: ${misfitWords(wrong, quantity, named.quantity, named.text)}.`,
    key: misfitKey(wrong, quantity, named.text), causes: [number.node, unit.node],
    ...(isCell && codeOf(number) !== undefined && mend(number, unit)),
  })
}

/** It is right today, and no longer when either of the two is restated. */
const borrowed = (number: Operand, unit: Operand, text: string): Parameters<Inference['report']>[0] => ({
  kind: 'joined-unit', severity: 'remark',
  words: say`Takes the unit of ${number.node} from ${unit.node}, which belongs to another number: right only as long as both are in ${text}.`,
  key: `another number’s ${text}`, causes: [number.node, unit.node],
  mend: mend(number, unit).mend,
})

function mend(number: Operand, unit: Operand): { readonly mend: MendPlan } {
  return { mend: { words: say`Join the unit of ${number.node} itself`, replace: unit.node, by: [{ unitCellOf: number.node }] } }
}
