import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { disagreementFault, exponentFault, factorFault, percentFault, zeroAddedFault, type Verb } from './disagreements.ts'
import { isDimensionless } from './dimension.ts'
import type { Fault, Stretch } from './fault.ts'
import { callMeaning } from './function-rules.ts'
import { joinedText } from './joined-text.ts'
import { countOf, sameFactor, UNKNOWN, type Meaning, type Quantity } from './meaning.ts'
import { inverse, isLoose, numberProduct, power, product, scaled, unfitFactor } from './products.ts'
import { oneOfPlain, single } from './several.ts'
import { either, negated, sum, withNumber, zeroOf } from './sums.ts'

/** A part of a formula with what it is. */
export interface Operand {
  readonly node: FormulaNode
  readonly meaning: Meaning
}

/** What stands in the cells that a reference or a name of the formula refers to. */
export type MeaningOf = (node: FormulaNode & { readonly kind: 'reference' | 'name' }) => Meaning

/** What of the workbook around a formula its faults are told with. */
export interface Surroundings {
  /** The unit that the cell with the formula is declared in, where a known one is. */
  readonly declared: string | undefined
  /** How formulas of the workbook refer to the pressure of its site. */
  readonly sitePressure: string | undefined
  /** False where that is the standard atmosphere anyway. */
  readonly siteMatters: boolean
  /** Whether a reference is to the unit cell of what another refers to. */
  readonly isUnitOf: (unit: Stretch, value: Stretch) => boolean
  /** Whether a reference is to a cell that has a unit cell of its own. */
  readonly hasUnitCell: (value: Stretch) => boolean
}

/**
 * Works out the unit of a formula from its parts, and what in it cannot be.
 *
 * The other way, to recalculate with the scale of a unit changed and see what moves, was weighed and left: it needs every literal number's
 * dimension all the same, tells that a result moves wrongly but not which of its terms is at fault, cannot see a comparison unless it turns,
 * a lookup that jumps looks like a fault, and gauge and absolute differ by an addition that no scale shows.
 */
export class Inference {
  readonly faults: Fault[] = []
  readonly surroundings: Surroundings
  readonly #meaningOf: MeaningOf

  constructor(meaningOf: MeaningOf, surroundings: Surroundings) {
    this.#meaningOf = meaningOf
    this.surroundings = surroundings
  }

  /** Of a range all that is in it. */
  meaning(node: FormulaNode): Meaning {
    switch (node.kind) {
      case 'number': return { kind: 'number', value: node.value, factors: [node.value], loose: false }
      case 'text': return { kind: 'text', text: node.text, unit: undefined }
      case 'boolean': return { kind: 'truth' }
      case 'error': return UNKNOWN
      case 'reference':
      case 'name': return this.#meaningOf(node)
      case 'call': return callMeaning(node, this)
      case 'operation': return this.#operation(node)
      case 'sign': return node.operator === '+' ? this.value(node.of) : this.#negative(this.value(node.of))
      case 'percent': return this.#percent(this.value(node.of))
      case 'array': return this.join(node.rows.flat().map((one) => this.operand(one)), 'lists')
    }
  }

  /** Of a range what each of its cells is, where all are the same. */
  value(node: FormulaNode): Meaning {
    return single(this.meaning(node))
  }

  operand(node: FormulaNode): Operand {
    return { node, meaning: this.value(node) }
  }

  report(fault: Fault): void {
    this.faults.push(fault)
  }

  /** The whole formula, with what is wrong with it in the end. */
  whole(tree: FormulaNode): Operand {
    const root = this.operand(tree)
    this.#settle(root.meaning)
    return root
  }

  /** Where a quantity goes no further in arithmetic, what was pending is a fault. */
  #settle(meaning: Meaning): void {
    if (meaning.kind === 'quantity' && meaning.pending) this.report(meaning.pending)
  }

  /** One of several, as IF and MAX give it. A number without unit and a text go with everything. */
  join(operands: readonly Operand[], verb: Verb): Meaning {
    const [first, ...others] = operands.filter(({ meaning }) => meaning.kind === 'quantity')
    if (verb === 'compares') for (const { meaning } of operands) this.#settle(meaning)
    let joined = first
    for (const other of others) {
      if (joined?.meaning.kind !== 'quantity' || other.meaning.kind !== 'quantity') break
      const agreement = either(joined.meaning, other.meaning)
      if ('disagreement' in agreement) this.report(disagreementFault(agreement.disagreement, joined, other, verb, this.surroundings))
      joined = 'quantity' in agreement && agreement.quantity ? { ...joined, meaning: agreement.quantity } : undefined
    }
    if (operands.some(({ meaning }) => meaning.kind === 'unknown')) return UNKNOWN
    if (first !== undefined) return joined?.meaning ?? UNKNOWN
    return oneOfPlain(operands.map(({ meaning }) => meaning))
  }

  #operation(node: FormulaNode & { readonly kind: 'operation' }): Meaning {
    const { operator } = node
    if (operator === '&') return joinedText(node, this)
    if (operator === '+' || operator === '-') return this.#sum(node)
    const [left, right] = [this.operand(node.left), this.operand(node.right)]
    if (operator === '*' || operator === '/') return this.times(left, right, operator === '*' ? 1 : -1, node)
    if (operator === '^') return this.power(left, right.meaning, node)
    this.compare(left, right)
    return { kind: 'truth' }
  }

  times(left: Operand, right: Operand, exponent: 1 | -1, whole: FormulaNode): Meaning {
    const [one, other] = [asNumber(left.meaning), asNumber(right.meaning)]
    const isShare = (meaning: Meaning): boolean => meaning.kind === 'number' || meaning.kind === 'unknown' || (meaning.kind === 'quantity' && isDimensionless(meaning.dimension))
    for (const [factor, beside, isDivisor] of [[left, right, false], [right, left, exponent === -1]] as const) {
      if (factor.meaning.kind !== 'quantity') continue
      const unfit = unfitFactor(factor.meaning)
      // Times a number it is a share of itself, or is converted: 1.1 times the set pressure, 1.8 times a temperature in °C.
      if (unfit === undefined || (isShare(asNumber(beside.meaning)) && !isDivisor)) continue
      const fault = factorFault(unfit, factor, isDivisor ? 'divides by' : exponent === -1 ? 'divides' : 'multiplies', this.surroundings, whole)
      if (unfit === 'temperature' && !isDivisor && one.kind === 'quantity' && other.kind === 'quantity') return { ...product(one, other, exponent), pending: fault }
      this.report(fault)
      return UNKNOWN
    }
    if (one.kind === 'number' && other.kind === 'number') return numberProduct(one, other, exponent)
    if (one.kind === 'quantity' && other.kind === 'number') return scaled(one, other, exponent)
    if (one.kind === 'number' && other.kind === 'quantity') return exponent === 1 ? scaled(other, one, 1) : inverse(one, other)
    return one.kind === 'quantity' && other.kind === 'quantity' ? product(one, other, exponent) : UNKNOWN
  }

  power(base: Operand, exponentMeaning: Meaning, whole: FormulaNode): Meaning {
    const [meaning, exponent] = [asNumber(base.meaning), asNumber(exponentMeaning)]
    if (exponent.kind === 'quantity' && !isDimensionless(exponent.dimension)) this.report(exponentFault({ node: whole, meaning: exponent }, 'the exponent', exponent))
    if (meaning.kind === 'number' && exponent.kind === 'number') {
      const value = meaning.value === undefined || exponent.value === undefined ? undefined : meaning.value ** exponent.value
      return { ...meaning, value, factors: value === undefined || !Number.isFinite(value) ? [] : [value], loose: isLoose(meaning) }
    }
    if (meaning.kind !== 'quantity') return UNKNOWN
    const unfit = unfitFactor(meaning)
    if (unfit !== undefined) {
      this.report(factorFault(unfit, base, 'raises', this.surroundings, whole))
      return UNKNOWN
    }
    const value = exponent.kind === 'number' ? exponent.value : undefined
    // Other powers than halves and thirds are empirical: what they give has no unit that could be told.
    return value !== undefined && isSimplePower(value) ? power(meaning, value) : isDimensionless(meaning.dimension) && sameFactor(meaning.factor, 1) ? countOf() : UNKNOWN
  }

  compare(left: Operand, right: Operand): void {
    const [one, other] = [left.meaning, right.meaning]
    if (one.kind === 'quantity' && other.kind === 'quantity') this.join([left, right], 'compares')
    this.#compareShare(left, right)
    this.#compareShare(right, left)
  }

  /** 0.85 beside a cell in %. */
  #compareShare(quantity: Operand, number: Operand): void {
    const { meaning } = quantity
    if (meaning.kind !== 'quantity' || number.meaning.kind !== 'number') return
    const { value } = number.meaning
    if (isPercent(meaning) && value !== undefined && value >= 0.2 && value <= 1 && number.node.kind !== 'reference') this.report(percentFault(quantity, number, 'compares'))
  }

  #sum(node: FormulaNode): Meaning {
    const terms = termsOf(node, 1).map(({ node: term, sign }) => ({ node: term, sign, meaning: asNumber(this.value(term)) }))
    const quantities = terms.filter(({ meaning }) => meaning.kind === 'quantity')
    const numbers = terms.flatMap(({ meaning, sign, node: term }) => (meaning.kind === 'number' ? [{ number: meaning, meaning, sign, node: term }] : []))
    const known = numbers.every(({ number }) => number.value !== undefined)
    const number = known ? numbers.reduce((total, { number: { value = 0 }, sign }) => total + value * sign, 0) : undefined
    // What is taken away comes last: a difference of temperatures first, then what is added to it.
    const [first, ...others] = [...quantities.filter(({ sign }) => sign === 1), ...quantities.filter(({ sign }) => sign === -1)]
    if (first?.meaning.kind !== 'quantity') {
      if (terms.some(({ meaning }) => meaning.kind !== 'number')) return UNKNOWN
      return { kind: 'number', value: number, factors: number === undefined ? [] : [number], loose: numbers.some((one) => one.number.loose) }
    }
    let total: Quantity | undefined = first.sign === 1 ? first.meaning : negated(first.meaning)
    let operand: Operand = first
    for (const other of others) {
      if (other.meaning.kind !== 'quantity' || total === undefined) break
      const agreement = sum(total, other.meaning, other.sign)
      if ('disagreement' in agreement) this.report(disagreementFault(agreement.disagreement, operand, other, other.sign === 1 ? 'adds' : 'subtracts', this.surroundings))
      // What does not go with the first may be several: each is told of.
      total = 'quantity' in agreement ? agreement.quantity : total
      operand = total === undefined ? operand : { node: first.node, meaning: total }
    }
    if (total === undefined || terms.some(({ meaning }) => meaning.kind !== 'number' && meaning.kind !== 'quantity')) return UNKNOWN
    const [share] = numbers
    const degrees = zeroOf(total, number)
    if (degrees !== undefined) this.report(zeroAddedFault(operand, degrees))
    if (share && isPercent(total) && number !== undefined && number !== 0 && Math.abs(number) <= 1.5) {
      const asShare = inShares(total)
      if (asShare === undefined) this.report(percentFault(operand, share, share.sign === 1 ? 'adds' : 'subtracts'))
      return asShare ?? UNKNOWN
    }
    return withNumber(total, number)
  }

  #negative(meaning: Meaning): Meaning {
    if (meaning.kind === 'quantity') return negated(meaning)
    return meaning.kind === 'number' ? numberProduct(meaning, countOf(-1), 1) : meaning.kind === 'truth' ? countOf() : UNKNOWN
  }

  #percent(meaning: Meaning): Meaning {
    return meaning.kind === 'number' ? numberProduct(meaning, countOf(0.01), 1) : UNKNOWN
  }
}

/** In arithmetic TRUE is 1. */
const asNumber = (meaning: Meaning): Meaning => (meaning.kind === 'truth' ? countOf() : meaning)

const isSimplePower = (exponent: number): boolean => Number.isInteger(exponent * 2) || Number.isInteger(Math.round(exponent * 3e9) / 1e9)

/** Known to be in % whatever is made of its constants, or perhaps. */
const isPercent = ({ dimension, factor }: Quantity): boolean => isDimensionless(dimension) && sameFactor(factor, 0.01)

/** What was in % and is over 100, as a share of 1. */
function inShares(quantity: Quantity): Quantity | undefined {
  const over = quantity.constants.findIndex((constant) => sameFactor(constant, 0.01))
  return over < 0 ? undefined : { ...quantity, factor: 1, constants: quantity.constants.toSpliced(over, 1), symbol: [] }
}

interface Term {
  readonly node: FormulaNode
  readonly sign: 1 | -1
}

/** The terms of a sum in the order of writing, those in parentheses too. A list of thousands stands on the left: no recursion there. */
function termsOf(node: FormulaNode, sign: 1 | -1): Term[] {
  const terms: Term[] = []
  const rest: Term[] = [{ node, sign }]
  for (let next = rest.pop(); next !== undefined; next = rest.pop()) {
    const { node: one } = next
    const turned = next.sign === 1 ? -1 : 1
    if (one.kind === 'operation' && (one.operator === '+' || one.operator === '-')) rest.push({ node: one.right, sign: one.operator === '+' ? next.sign : turned }, { node: one.left, sign: next.sign })
    else if (one.kind === 'sign') rest.push({ node: one.of, sign: one.operator === '+' ? next.sign : turned })
    else terms.push(next)
  }
  return terms
}
