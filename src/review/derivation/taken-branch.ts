import { isCellError, type CellError } from '../../calc/values.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import type { FormulaValues } from './formula-values.ts'

/** Why one went on to a branch. */
export type Decision =
  | { readonly kind: 'condition'; readonly condition: FormulaNode; readonly holds: boolean }
  | { readonly kind: 'error'; readonly of: FormulaNode; readonly error: CellError }

export interface TakenBranch {
  /** The part that gives the value. */
  readonly node: FormulaNode
  readonly decisions: readonly Decision[]
}

/** Through IF, IFERROR and N to the part that counts, as far as it is known which one does. */
export function takenBranch(whole: FormulaNode, values: FormulaValues): TakenBranch {
  const decisions: Decision[] = []
  let node = whole
  for (;;) {
    const next = node.kind === 'call' ? stepInto(node) : undefined
    if (next === undefined) return { node, decisions }
    node = next
  }

  function stepInto({ name, arguments: [first, second, third] }: Extract<FormulaNode, { kind: 'call' }>): FormulaNode | undefined {
    if (first === undefined || (name !== 'IF' && name !== 'IFERROR' && name !== 'N')) return undefined
    const value = values.single(first)
    if (name === 'N') return typeof value === 'number' ? first : undefined
    if (name === 'IFERROR') {
      if (value === undefined) return undefined
      if (!isCellError(value)) return first
      if (second !== undefined) decisions.push({ kind: 'error', of: first, error: value })
      return second
    }
    if (typeof value !== 'boolean' && typeof value !== 'number') return undefined
    const holds = value !== false && value !== 0
    const branch = holds ? second : third
    if (branch !== undefined) decisions.push({ kind: 'condition', condition: first, holds })
    return branch
  }
}
