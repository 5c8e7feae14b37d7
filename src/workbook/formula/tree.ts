import { parseReference, type Reference } from '../address.ts'
import type { Extent } from './calls.ts'
import { isReferenceKind, tokenise, type Token } from './tokenise.ts'

/** A formula as what it does: each part with the stretch of the formula's text that says it. */
export type FormulaNode = Extent & (
  | { readonly kind: 'number'; readonly value: number }
  /** What the text means, its quotes and doubled quotes resolved. */
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'boolean'; readonly value: boolean }
  | { readonly kind: 'error'; readonly text: string }
  | { readonly kind: 'reference'; readonly reference: Reference }
  /** A defined name, as typed. */
  | { readonly kind: 'name'; readonly name: string }
  /** An argument that is left empty is undefined. The function's name in capitals. */
  | { readonly kind: 'call'; readonly name: string; readonly arguments: readonly (FormulaNode | undefined)[] }
  | { readonly kind: 'operation'; readonly operator: Operator; readonly left: FormulaNode; readonly right: FormulaNode }
  | { readonly kind: 'sign'; readonly operator: '+' | '-'; readonly of: FormulaNode }
  | { readonly kind: 'percent'; readonly of: FormulaNode }
  | { readonly kind: 'array'; readonly rows: readonly (readonly FormulaNode[])[] }
)

export type Operator = '+' | '-' | '*' | '/' | '^' | '&' | '=' | '<>' | '<' | '>' | '<=' | '>='

/** From loose to tight, as in OpenFormula 5.5; all bind from the left, and a sign binds tighter than a power. */
const BINDING: Readonly<Record<Operator, number>> = { '=': 1, '<>': 1, '<': 1, '>': 1, '<=': 1, '>=': 1, '&': 2, '+': 3, '-': 3, '*': 4, '/': 4, '^': 5 }

/** The tree of a formula, with or without its "="; undefined where it cannot be read. */
export function formulaTree(formula: string): FormulaNode | undefined {
  const reader = new Reader(tokenise(formula).filter(({ kind }) => kind !== 'whitespace' && kind !== 'start'))
  try {
    return reader.whole()
  } catch (fault) {
    if (fault instanceof Unreadable) return undefined
    throw fault
  }
}

/** Every node of a tree, each before what it consists of. */
export function* eachNode(node: FormulaNode): Generator<FormulaNode> {
  yield node
  for (const part of partsOf(node)) yield* eachNode(part)
}

/** What a node consists of, in the order of writing. */
export function partsOf(node: FormulaNode): readonly FormulaNode[] {
  if (node.kind === 'call') return node.arguments.filter((one) => one !== undefined)
  if (node.kind === 'operation') return [node.left, node.right]
  if (node.kind === 'sign' || node.kind === 'percent') return [node.of]
  return node.kind === 'array' ? node.rows.flat() : []
}

class Unreadable extends Error {}

class Reader {
  readonly #tokens: readonly Token[]
  #at = 0

  constructor(tokens: readonly Token[]) {
    this.#tokens = tokens
  }

  whole(): FormulaNode {
    const node = this.#operation(1)
    if (this.#at < this.#tokens.length) throw new Unreadable()
    return node
  }

  #operation(least: number): FormulaNode {
    let left = this.#signed()
    for (let operator = this.#operator(); operator !== undefined && BINDING[operator] >= least; operator = this.#operator()) {
      this.#at++
      const right = this.#operation(BINDING[operator] + 1)
      left = { kind: 'operation', operator, left, right, start: left.start, end: right.end }
    }
    return left
  }

  #operator(): Operator | undefined {
    const token = this.#tokens[this.#at]
    return token?.kind === 'operator' && isOperator(token.text) ? token.text : undefined
  }

  #signed(): FormulaNode {
    const token = this.#tokens[this.#at]
    if (token?.kind !== 'operator' || (token.text !== '-' && token.text !== '+')) return this.#percent()
    this.#at++
    const of = this.#signed()
    return { kind: 'sign', operator: token.text, of, start: token.start, end: of.end }
  }

  #percent(): FormulaNode {
    let node = this.#value()
    for (let token = this.#tokens[this.#at]; token?.text === '%' && token.kind === 'operator'; token = this.#tokens[this.#at]) {
      this.#at++
      node = { kind: 'percent', of: node, start: node.start, end: token.end }
    }
    return node
  }

  #value(): FormulaNode {
    const token = this.#next()
    const { kind, text, start, end } = token
    if (token.problem !== undefined) throw new Unreadable()
    if (kind === 'number') return { kind, value: Number(text), start, end }
    if (kind === 'string') return { kind: 'text', text: text.slice(1, -1).replaceAll('""', '"'), start, end }
    if (kind === 'boolean') return { kind, value: text.toUpperCase() === 'TRUE', start, end }
    if (kind === 'error') return { kind, text, start, end }
    if (kind === 'name') return { kind, name: text, start, end }
    if (kind === 'function') return this.#call(token)
    if (kind === 'openBrace') return this.#array(token)
    if (kind === 'open') {
      const inner = this.#operation(1)
      return { ...inner, start, end: this.#expect('close').end }
    }
    const reference = isReferenceKind(kind) ? parseReference(text) : undefined
    if (reference === undefined) throw new Unreadable()
    return { kind: 'reference', reference, start, end }
  }

  #call({ text, start }: Token): FormulaNode {
    this.#expect('open')
    const given: (FormulaNode | undefined)[] = []
    if (this.#tokens[this.#at]?.kind === 'close') return { kind: 'call', name: text.toUpperCase(), arguments: given, start, end: this.#next().end }
    for (;;) {
      const kind = this.#tokens[this.#at]?.kind
      given.push(kind === 'separator' || kind === 'close' ? undefined : this.#operation(1))
      const after = this.#next()
      if (after.kind === 'close') return { kind: 'call', name: text.toUpperCase(), arguments: given, start, end: after.end }
      if (after.kind !== 'separator') throw new Unreadable()
    }
  }

  #array({ start }: Token): FormulaNode {
    const rows: FormulaNode[][] = [[]]
    for (;;) {
      rows.at(-1)?.push(this.#operation(1))
      const after = this.#next()
      if (after.kind === 'closeBrace') return { kind: 'array', rows, start, end: after.end }
      if (after.kind !== 'separator') throw new Unreadable()
      if (after.text === ';') rows.push([])
    }
  }

  #next(): Token {
    const token = this.#tokens[this.#at++]
    if (token === undefined) throw new Unreadable()
    return token
  }

  #expect(kind: Token['kind']): Token {
    const token = this.#next()
    if (token.kind !== kind) throw new Unreadable()
    return token
  }
}

const isOperator = (text: string): text is Operator => Object.hasOwn(BINDING, text)
