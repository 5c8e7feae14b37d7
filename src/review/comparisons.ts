import type { FormulaNode } from '../workbook/formula/tree.ts'

/** A comparison by size; one for equality is none. */
export type Order = Extract<FormulaNode, { kind: 'operation' }> & { readonly operator: '<' | '>' | '<=' | '>=' }

export const isOrder = (node: FormulaNode): node is Order => node.kind === 'operation' && ORDERS.has(node.operator)

const ORDERS: ReadonlySet<string> = new Set(['<', '>', '<=', '>='])
