import { describe, expect, it } from 'vitest'
import { eachNode, formulaTree, type FormulaNode } from '../../../src/workbook/formula/tree.ts'

/** In full brackets, so that it shows what belongs to what. */
function bracketed(node: FormulaNode | undefined): string {
  switch (node?.kind) {
    case undefined: return '∅'
    case 'number': case 'boolean': return String(node.value)
    case 'text': return JSON.stringify(node.text)
    case 'error': return node.text
    case 'name': return node.name
    case 'reference': return `${node.reference.sheet ?? ''}:${node.reference.from.row},${node.reference.from.column}`
    case 'call': return `${node.name}(${node.arguments.map(bracketed).join(' ')})`
    case 'operation': return `(${bracketed(node.left)}${node.operator}${bracketed(node.right)})`
    case 'sign': return `(${node.operator}${bracketed(node.of)})`
    case 'percent': return `(${bracketed(node.of)}%)`
    case 'array': return `{${node.rows.map((row) => row.map(bracketed).join(' ')).join('|')}}`
  }
}

const read = (formula: string): string => bracketed(formulaTree(formula))

describe('the tree of a formula', () => {
  // OpenFormula (OASIS ODF 1.2 part 2), 5.5: order of operators, all from the left.
  it.each([
    ['=1+2*3', '(1+(2*3))'],
    ['=1-2-3', '((1-2)-3)'],
    ['=2^3^2', '((2^3)^2)'],
    ['=-2^2', '((-2)^2)'],
    ['=2^-1', '(2^(-1))'],
    ['=50%*2', '((50%)*2)'],
    ['=1+2&" ft"', '((1+2)&" ft")'],
    ['=A1&B1="x"', '((:0,0&:0,1)="x")'],
    ['=1<2=TRUE', '((1<2)=true)'],
    ['=(1+2)*3', '((1+2)*3)'],
    ['=--A1', '(-(-:0,0))'],
  ])('%s', (formula, tree) => expect(read(formula)).toBe(tree))

  it('reads calls with arguments left empty, arrays, names, texts with quotes and references to other sheets', () => {
    expect(read('=IF(,"a ""b""",)')).toBe('IF(∅ "a \\"b\\"" ∅)')
    expect(read('=pi()')).toBe('PI()')
    expect(read('=SUM({1,2;3,4})')).toBe('SUM({1 2|3 4})')
    expect(read("=load_margin+'Wet return'!C5")).toBe('(load_margin+Wet return:4,2)')
    expect(read('=#REF!+1')).toBe('(#REF!+1)')
  })

  it('says where each part stands, brackets included', () => {
    const formula = '=2*(C5+1)'
    const nodes = [...eachNode(formulaTree(formula) ?? expect.fail('unread'))]
    expect(nodes.map(({ start, end }) => formula.slice(start, end))).toEqual(['2*(C5+1)', '2', '(C5+1)', 'C5', '1'])
  })

  it.each(['=', '=1+', '=(1', '=1)', '=F(1', '=1 2', '="open', '=A1:', '={1', '=,', '=1,2'])('gives no tree of %s', (formula) => expect(formulaTree(formula)).toBeUndefined())
})
