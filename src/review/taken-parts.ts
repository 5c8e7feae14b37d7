import { isCellError } from '../calc/values.ts'
import { partsOf, type FormulaNode } from '../workbook/formula/tree.ts'
import type { FormulaValues } from './derivation/formula-values.ts'

/**
 * The parts of a node that count for its value: of IF and CHOOSE the way that is taken, of the rest all. Which way is taken may not be known: then only
 * what decides it.
 */
export function takenParts(node: FormulaNode, values: FormulaValues): readonly FormulaNode[] {
  if (node.kind !== 'call' || (node.name !== 'IF' && node.name !== 'CHOOSE')) return partsOf(node)
  const [decides, ...ways] = node.arguments
  if (decides === undefined) return []
  const value = values.single(decides)
  const known = value !== undefined && !isCellError(value) && typeof value !== 'string'
  const way = !known ? undefined : node.name === 'IF' ? ways[value ? 0 : 1] : ways[Math.trunc(Number(value)) - 1]
  return way === undefined ? [decides] : [decides, way]
}

/** A node and all in it that counts for its value, each before what it consists of. */
export function* eachTaken(node: FormulaNode, values: FormulaValues): Generator<FormulaNode> {
  yield node
  for (const part of takenParts(node, values)) yield* eachTaken(part, values)
}
