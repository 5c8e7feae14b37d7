import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { formulaTree, type FormulaNode } from '../../../src/workbook/formula/tree.ts'
import { workbookOf } from '../../unit/workbook-of.ts'

const operand = fc.oneof(fc.integer({ min: 1, max: 9 }).map(String), fc.constantFrom('A1', 'B1', '$C$1', '50%'))

const { expression } = fc.letrec<{ expression: string }>((tie) => ({
  expression: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    operand,
    fc.tuple(tie('expression'), fc.constantFrom('+', '-', '*', '/', '^', ' + ', '<', '>=', '='), tie('expression')).map((parts) => parts.join('')),
    tie('expression').map((inner) => `(${inner})`),
    tie('expression').map((inner) => `-${inner}`),
    fc.tuple(tie('expression'), tie('expression')).map((given) => `MAX(${given.join(',')})`),
  ),
}))

const CELLS: Readonly<Record<string, number>> = { '0': 2, '1': 3, '2': 5 }

/** What the tree comes to, by arithmetic of its own. */
function valueOf(node: FormulaNode): number | boolean {
  const number = (one: FormulaNode): number => Number(valueOf(one))
  switch (node.kind) {
    case 'number': return node.value
    case 'reference': return CELLS[String(node.reference.from.column)] ?? NaN
    case 'percent': return number(node.of) / 100
    case 'sign': return node.operator === '-' ? -number(node.of) : number(node.of)
    case 'call': return Math.max(...node.arguments.flatMap((one) => (one === undefined ? [] : [number(one)])))
    case 'operation': {
      const [left, right] = [valueOf(node.left), valueOf(node.right)]
      switch (node.operator) {
        case '+': return Number(left) + Number(right)
        case '-': return Number(left) - Number(right)
        case '*': return Number(left) * Number(right)
        case '/': return Number(left) / Number(right)
        case '^': return Number(left) ** Number(right)
        case '<': return left < right
        case '>=': return left >= right
        case '=': return left === right
        default: return NaN
      }
    }
    default: return NaN
  }
}

const comparesTruths = (node: FormulaNode): boolean => {
  if (node.kind === 'operation') {
    const isComparison = (one: FormulaNode): boolean => one.kind === 'operation' && '<>='.includes(one.operator.charAt(0))
    if (isComparison(node) && (isComparison(node.left) || isComparison(node.right))) return true
    return comparesTruths(node.left) || comparesTruths(node.right)
  }
  if (node.kind === 'sign' || node.kind === 'percent') return comparesTruths(node.of)
  return node.kind === 'call' && node.arguments.some((one) => one !== undefined && comparesTruths(one))
}

describe('the tree of a formula', () => {
  it('says what the calculation engine makes of it', () => {
    const graph = new Graph(workbookOf({ S: { A1: 2, B1: 3, C1: 5 } }))
    fc.assert(fc.property(expression, (text) => {
      const tree = formulaTree(`=${text}`)
      expect(tree).toBeDefined()
      if (tree === undefined) return
      // How truths compare with numbers is the engine's own affair.
      fc.pre(!comparesTruths(tree))
      const [own, engine] = [valueOf(tree), graph.evaluate(`=${text}`, 'S')]
      fc.pre(typeof own === 'boolean' || (Number.isFinite(own) && Math.abs(own) < 1e100))
      if (typeof engine === 'object') return
      if (typeof own === 'boolean') expect(engine).toBe(own)
      else expect(Math.abs(Number(engine) - own)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(own)))
    }), { numRuns: 2000 })
  })

  it('never throws, whatever is typed', () => {
    fc.assert(fc.property(fc.string({ maxLength: 40 }), (text) => void formulaTree(`=${text}`)), { numRuns: 2000 })
  })
})
