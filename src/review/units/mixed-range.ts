import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { isPressure, isTemperature, sameDimension } from './dimension.ts'
import { say, type Fault } from './fault.ts'
import { meaningText, sameFactor, type Meaning, type Quantity } from './meaning.ts'
import { unitWords } from './unit-words.ts'

/** A range that a function takes together although its cells are of different units. */
export function mixedFault(node: FormulaNode, { columns }: Meaning & { readonly kind: 'range' }, name: string): Fault | undefined {
  const quantities = columns.flat().filter((one): one is Quantity => one.kind === 'quantity')
  const [first] = quantities
  const other = quantities.find((one) => first !== undefined && !isAlike(first, one))
  if (first === undefined || other === undefined) return undefined
  const [one, two] = [unitWords(first), unitWords(other)].map((words) => (words === 'no unit' ? 'parts of 1' : words))
  return {
    kind: 'mixed-units', severity: 'warning',
    words: say`Takes ${node} together in ${name}, and it holds numbers in ${one ?? ''} (${{ firstIn: node, unit: meaningText(first) }}) and in ${two ?? ''} (${{ firstIn: node, unit: meaningText(other) }}).`,
    key: `${name} ${one}, ${two}`, causes: [node],
  }
}

function isAlike(one: Quantity, other: Quantity): boolean {
  if (!sameDimension(one.dimension, other.dimension) || !sameFactor(one.factor, other.factor)) return false
  if (isTemperature(one.dimension)) return Math.abs(one.zero.offset - other.zero.offset) < 1 && one.zero.points === other.zero.points
  return !isPressure(one.dimension) || one.zero.gauge === other.zero.gauge
}
