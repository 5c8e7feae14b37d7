import { isBinaryNode, isCallNode, isReferenceNode, isUnaryNode, isArrayNode, parse, tokenize, type AstExpression } from '@borgar/fx'

export type Expression = AstExpression

/** A formula, without its "=", as the reader of formulas sees it; undefined where it can make nothing of it. */
export function read(formula: string): Expression | undefined {
  try {
    return parse(tokenize(`=${formula}`))
  } catch {
    return undefined
  }
}

/** What a formula refers to: references and names as they are written, each once. */
export function references(formula: Expression): readonly string[] {
  const found = new Set<string>()
  const look = (node: Expression | null): void => {
    if (node === null) return
    if (isReferenceNode(node)) found.add(node.value)
    else if (isCallNode(node) || isBinaryNode(node) || isUnaryNode(node)) for (const one of node.arguments) look(one as Expression | null)
    else if (isArrayNode(node)) for (const one of node.elements.flat()) look(one as Expression)
  }
  look(formula)
  return [...found]
}
