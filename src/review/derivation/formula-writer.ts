import { functionByName } from '../../../functions/catalogue.ts'
import type { FunctionDefinition } from '../../../functions/define.ts'
import { isCellError, type CellValue } from '../../calc/values.ts'
import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import { printCellPlace, type CellPlace } from '../../workbook/cell-place.ts'
import type { FormulaNode, Operator } from '../../workbook/formula/tree.ts'
import type { FunctionCall, Saying } from './formula-lines.ts'
import { cellOf, isOneCell, isPair, placeOf, referredCells, unitText, type FormulaSource, type ReferredCells } from './formula-source.ts'
import { formulaValues } from './formula-values.ts'
import { foundWords } from './found-words.ts'
import { conversionNeedsSite, functionPhrase } from './function-phrase.ts'
import { createQuantities, type Quantity } from './quantities.ts'
import { standardPhrase } from './standard-phrases.ts'
import { takenBranch } from './taken-branch.ts'
import { whereWords, type Where } from './where.ts'
import { withUnit } from './with-unit.ts'

/** A piece of writing, and how tight its outermost sign binds: what binds less than its surroundings is put in brackets. */
interface Piece {
  readonly text: string
  readonly binding: number
}

const LOOSE = 0
const ATOM = 9
const BINDING: Readonly<Record<Operator, number>> = { '=': 1, '<>': 1, '<': 1, '>': 1, '<=': 1, '>=': 1, '&': 2, '+': 3, '-': 3, '*': 4, '/': 4, '^': 5 }
const SIGNS: Readonly<Record<Operator, string>> = { '=': ' = ', '<>': ' ≠ ', '<': ' < ', '>': ' > ', '<=': ' ≤ ', '>=': ' ≥ ', '&': ' & ', '+': ' + ', '-': ' − ', '*': ' × ', '/': ' / ', '^': '^' }

type Mode = 'words' | 'numbers'

/** Writes the parts of one formula, in words and with numbers, and takes down on the way what had a part in it and what numbers come from. */
export class FormulaWriter {
  readonly reasons = new Set<string>()
  readonly wheres = new Map<string, Where>()
  readonly uses = new Map<string, ReferredCells>()
  readonly functions = new Set<FunctionDefinition>()
  readonly calls = new Map<FormulaNode, FunctionCall>()
  readonly #saying: Saying
  readonly #source: FormulaSource
  readonly #values
  readonly #quantities

  constructor(saying: Saying) {
    this.#saying = saying
    this.#source = saying.source
    this.#values = formulaValues(saying.source)
    this.#quantities = createQuantities(saying.source, this.#values)
  }

  /** The numbers put in; where the outermost part only converts or rounds, what that was given and came to before. */
  equalities(whole: FormulaNode): string[] {
    const node = this.#settled(whole, 'numbers')
    if (node.kind === 'call' && node.name === 'UNIT.CONVERT' && node.arguments[0] !== undefined) {
      const quantity = this.#quantities.of(this.#settled(node.arguments[0], 'numbers'))
      if (quantity?.kind === 'compound' && quantity.value !== undefined) {
        this.#use(node.arguments[1])
        this.#use(node.arguments[2])
        return [...this.equalities(quantity.of), this.#quantityText(quantity)]
      }
    }
    if (ROUNDINGS.has(node.kind === 'call' ? node.name : '') && node.kind === 'call' && node.arguments[0] !== undefined) {
      const [given, digits] = node.arguments
      const of = this.#settled(given, 'numbers')
      if (of.kind !== 'reference' && of.kind !== 'name') {
        this.#where(standardPhrase(node.name, ['the result', ...(digits === undefined ? [] : [this.write(digits, 'numbers').text])]) ?? '')
        return this.equalities(of)
      }
    }
    if (node.kind === 'call' && functionByName(node.name) !== undefined && node.name !== 'UNIT.CONVERT') return [this.#phrase(node, 'numbers')]
    if (node.kind === 'call' && node.name !== 'UNIT.CONVERT' && node.name !== 'INDEX') return [this.#standard(node, 'numbers', true).text]
    return [this.write(node, 'numbers').text]
  }

  write(whole: FormulaNode, mode: Mode): Piece {
    const node = this.#settled(whole, mode)
    const quantity = node.kind === 'operation' && node.operator === '&' ? this.#quantities.of(node) : undefined
    if (quantity !== undefined) return this.#quantity(quantity, mode)
    switch (node.kind) {
      case 'number': return atom(String(node.value))
      case 'text': return atom(this.#quantities.of(node) === undefined ? `“${node.text}”` : node.text)
      case 'boolean': return atom(node.value ? 'TRUE' : 'FALSE')
      case 'error': return atom(node.text)
      case 'reference':
      case 'name': return this.#cells(node, mode)
      case 'sign': return { text: `${node.operator === '-' ? '−' : '+'}${this.#within(node.of, mode, 6)}`, binding: 3 }
      case 'percent': return atom(`${this.#within(node.of, mode, ATOM)} %`)
      case 'operation': return this.#operation(node, mode)
      case 'array': return atom(`{${node.rows.map((row) => row.map((item) => this.write(item, mode).text).join(', ')).join('; ')}}`)
      case 'call': return this.#call(node, mode)
    }
  }

  #within(node: FormulaNode, mode: Mode, least: number): string {
    const { text, binding } = this.write(node, mode)
    return binding < least || (mode === 'numbers' && least > 3 && text.startsWith('-')) ? `(${text})` : text
  }

  #operation({ operator, left, right }: Extract<FormulaNode, { kind: 'operation' }>, mode: Mode): Piece {
    const binding = BINDING[operator]
    const first = this.#within(left, mode, binding)
    // A sum in a sum, a product in a product need no brackets; what is taken off or divided by does.
    const second = this.#within(right, mode, binding + (operator === '+' || operator === '*' || operator === '&' ? 0 : 1))
    return { text: `${first}${SIGNS[operator]}${mode === 'numbers' && second.startsWith('-') ? `(${second})` : second}`, binding }
  }

  /** Through IF and IFERROR to what counts; the reason is told with the numbers. */
  #settled(whole: FormulaNode, mode: Mode): FormulaNode {
    const { node, decisions } = takenBranch(whole, this.#values)
    for (const decision of decisions) {
      if (mode === 'words') this.#use(decision.kind === 'error' ? decision.of : decision.condition)
      else this.reasons.add(decision.kind === 'error' ? `since ${this.write(decision.of, 'words').text} is an error, ${decision.error.error}` : this.#reason(decision.condition, decision.holds))
    }
    return node
  }

  /** In words and with numbers why a branch was taken: `since Position [3] is “vertical”`. */
  #reason(condition: FormulaNode, holds: boolean): string {
    if (condition.kind === 'operation' && (condition.operator === '=' || condition.operator === '<>') && (condition.right.kind === 'text' || condition.right.kind === 'number')) {
      const [name, wanted] = [this.write(condition.left, 'words').text, this.write(condition.right, 'words').text]
      const value = this.write(condition.left, 'numbers').text
      return value === wanted || (condition.operator === '=') === holds ? `since ${name} is ${wanted}` : `since ${name} is ${value}, not ${wanted}`
    }
    const [words, numbers] = [this.write(condition, 'words').text, this.write(condition, 'numbers').text]
    // What has been said to hold of names says enough, but where it compares numbers.
    const isPlain = condition.kind === 'call' && holds
    return `${holds ? 'since' : 'since it is not so that'} ${words}${words === numbers || isPlain ? '' : `: ${numbers}`}`
  }

  /** Cells by their name, or by what they hold. */
  #cells(node: FormulaNode, mode: Mode): Piece {
    const referred = referredCells(node, this.#source)
    if (referred === undefined) return atom(node.kind === 'reference' ? this.#missing(node) : node.kind === 'name' ? node.name : '')
    const quantity = isPair(referred) ? this.#quantities.of(node) : undefined
    if (quantity !== undefined) return this.#quantity(quantity, mode)
    this.#note(referred)
    if (!isOneCell(referred.area)) return atom(this.#saying.rangeName(referred))
    const place = placeOf(referred)
    return mode === 'words' ? this.#name(referred) : atom(this.#cellText(referred, this.#source.value(place.sheet, place.row, place.column), unitText(this.#source, referred.sheet, place.row, place.column)))
  }

  #missing(node: Extract<FormulaNode, { kind: 'reference' }>): string {
    const { sheet } = node.reference
    if (sheet !== null) this.#where(`there is no sheet “${sheet}”`)
    const { row, column } = node.reference.from
    return `${sheet === null ? '' : `${quoteSheetName(sheet)}!`}${printAddress(row ?? 0, column ?? 0)}`
  }

  /** A unit or a text that heads something is what it says. */
  #name({ sheet, area: { top, left } }: ReferredCells): Piece {
    const [cell, value] = [cellOf(sheet, top, left), this.#source.value(sheet.name, top, left)]
    return atom(cell?.role === 'unit' && typeof value === 'string' ? value : this.#saying.nameOf({ sheet: sheet.name, row: top, column: left }))
  }

  #cellText({ sheet, area: { top, left } }: ReferredCells, value: CellValue | undefined, unit: string | undefined): string {
    const place = { sheet: sheet.name, row: top, column: left }
    if (value === undefined) return this.#saying.nameOf(place)
    const about = this.#saying.about?.(place)
    if (about !== undefined) this.#where(about.what, about.comes)
    if (cellOf(sheet, top, left)?.role === 'check' && typeof value === 'boolean') return value ? 'met' : 'not met'
    return this.#valueText(value, unit, place)
  }

  #valueText(value: CellValue, unit: string | undefined, place?: CellPlace): string {
    if (typeof value === 'number') return withUnit(this.#saying.print(value, place), unit)
    if (value === null) return 'empty'
    if (isCellError(value)) return value.error
    return typeof value === 'boolean' ? String(value).toUpperCase() : `“${value}”`
  }

  #quantity(quantity: Quantity, mode: Mode): Piece {
    if (quantity.kind === 'text') return atom(quantity.text)
    if (quantity.kind === 'cell') {
      this.#note(quantity.cell)
      const words = this.#name(quantity.cell)
      this.#found(quantity)
      return mode === 'words' ? words : atom(this.#cellText(quantity.cell, quantity.value, quantity.unit))
    }
    if (mode === 'words') return this.write(quantity.of, 'words')
    if (quantity.value === undefined) return { text: `${this.#within(quantity.of, mode, BINDING['+'])} ${quantity.unit}`, binding: LOOSE }
    const text = this.#quantityText(quantity)
    const numbers = this.equalities(quantity.of)
    if (numbers.at(-1) !== text) this.#where(numbers.join(' = '), text)
    return atom(text)
  }

  #quantityText({ value, unit }: Extract<Quantity, { kind: 'compound' }>): string {
    return withUnit(this.#saying.print(value ?? 0), unit)
  }

  /** Which row a lookup found. */
  #found({ through, cell }: Extract<Quantity, { kind: 'cell' }>): void {
    if (through?.kind !== 'call' || through.arguments[0] === undefined) return
    this.#use(through.arguments[1])
    this.#use(through.arguments[2])
    const range = referredCells(through.arguments[0], this.#source)
    if (range !== undefined) this.#where(`${foundWords(range, cell)} is ${printCellPlace(placeOf(cell))}`)
  }

  #call(node: Extract<FormulaNode, { kind: 'call' }>, mode: Mode): Piece {
    if (node.name === 'UNIT.CONVERT') return this.#conversion(node, mode)
    const quantity = node.name === 'INDEX' ? this.#quantities.of(node) : undefined
    if (quantity !== undefined) return this.#quantity(quantity, mode)
    const definition = functionByName(node.name)
    if (definition === undefined) return this.#standard(node, mode)
    const phrase = this.#phrase(node, mode)
    const value = mode === 'numbers' ? this.#values.single(node) : undefined
    if (value === undefined) return { text: phrase, binding: phrase.startsWith(`${node.name}(`) ? ATOM : LOOSE }
    const unitAt = Object.keys(definition.arguments).indexOf('unit')
    const unit = unitAt < 0 ? undefined : this.#values.single(node.arguments[unitAt])
    const text = this.#valueText(value, typeof unit === 'string' ? unit : undefined)
    this.#where(phrase, text)
    return atom(text)
  }

  #phrase(node: Extract<FormulaNode, { kind: 'call' }>, mode: Mode): string {
    const definition = functionByName(node.name)
    if (definition === undefined) return node.name
    this.functions.add(definition)
    for (const [at, argument] of Object.values(definition.arguments).entries()) if (argument.kind === 'unit') this.#use(node.arguments[at])
    const phrase = functionPhrase(definition, node.arguments, (argument) => this.write(argument, mode).text, mode === 'words')
    const given = mode === 'numbers' ? this.#values.given(node) : undefined
    if (given !== undefined) this.calls.set(node, { definition, given, phrase })
    return phrase
  }

  /** A conversion is no step of its own: what it was given, in the unit it is wanted in. */
  #conversion(node: Extract<FormulaNode, { kind: 'call' }>, mode: Mode): Piece {
    const [given, unit, site] = node.arguments
    if (given === undefined) return atom(node.name)
    this.#use(unit)
    const of = this.#settled(given, mode)
    if (mode === 'words') {
      this.#use(site)
      return this.write(of, 'words')
    }
    const [value, wanted] = [this.#values.single(node), unit === undefined ? undefined : this.#values.single(unit)]
    if (typeof value !== 'number' || typeof wanted !== 'string') return { text: `${this.write(of, mode).text} in ${typeof wanted === 'string' ? wanted : 'its unit'}`, binding: LOOSE }
    const text = withUnit(this.#saying.print(value), wanted)
    const before = this.write(of, mode).text
    if (before !== text) this.#where(`${before}${this.#atSite(before, wanted, site)}`, text)
    return atom(text)
  }

  #atSite(before: string, wanted: string, site: FormulaNode | undefined): string {
    if (!conversionNeedsSite(before, wanted)) return ''
    return ` with the atmosphere at ${site === undefined ? '101.325 kPa' : this.write(site, 'numbers').text}`
  }

  #standard(node: Extract<FormulaNode, { kind: 'call' }>, mode: Mode, isWhole = false): Piece {
    const match = node.name === 'MATCH' ? this.#match(node, mode) : undefined
    if (match !== undefined) return match
    const phrase = standardPhrase(node.name, node.arguments.map((argument) => (argument === undefined ? '' : this.write(argument, mode).text)))
    if (node.name === 'PI') return atom('π')
    const text = phrase ?? `${node.name}(${node.arguments.map((argument) => (argument === undefined ? '' : this.write(argument, mode).text)).join(', ')})`
    if (mode === 'words' || isWhole || INLINE.has(node.name)) return { text, binding: phrase === undefined || /[)|]$/.test(text) ? ATOM : LOOSE }
    const value = this.#values.single(node)
    if (value === undefined || isCellError(value)) return { text, binding: ATOM }
    const shown = this.#valueText(value, undefined)
    if (shown !== text) this.#where(text, shown)
    return atom(shown)
  }

  /** Of the range that something was looked for in, only the cell where it was found has a part. */
  #match(node: Extract<FormulaNode, { kind: 'call' }>, mode: Mode): Piece | undefined {
    const [wanted, from] = node.arguments
    const [range, place] = [from === undefined ? undefined : referredCells(from, this.#source), this.#values.single(node)]
    if (wanted === undefined || range === undefined || typeof place !== 'number') return undefined
    const { top, left, right } = range.area
    const at = left === right ? { row: top + place - 1, column: left } : { row: top, column: left + place - 1 }
    const found = { sheet: range.sheet, area: { top: at.row, left: at.column, bottom: at.row, right: at.column } }
    this.#note(found)
    this.#where(`${foundWords(range, found)} is ${printCellPlace(placeOf(found))}`)
    return atom(standardPhrase('MATCH', [this.write(wanted, mode).text, this.#saying.rangeName(range)]) ?? '')
  }

  #where(what: string, comes?: string): void {
    const where = comes === undefined ? { what } : { what, comes }
    this.wheres.set(whereWords(where), where)
  }

  /** Notes cells as having a part without writing them. */
  #use(node: FormulaNode | undefined): void {
    if (node !== undefined) this.write(node, 'words')
  }

  #note(cells: ReferredCells): void {
    const { sheet, area: { top, left, bottom, right } } = cells
    this.uses.set(`${sheet.name}!${top}:${left}:${bottom}:${right}`, cells)
  }
}

const ROUNDINGS: ReadonlySet<string> = new Set(['ROUND', 'ROUNDUP', 'ROUNDDOWN'])

/** Standard functions that stand in a line as they are; any other gives way to what it comes to. */
const INLINE: ReadonlySet<string> = new Set(['MIN', 'MAX', 'ABS', 'SQRT', 'ROUND', 'ROUNDUP', 'ROUNDDOWN', 'AND', 'OR', 'NOT', 'EXP', 'LN', 'LOG10', 'ISNUMBER', 'PI', 'IF', 'IFERROR', 'N'])

const atom = (text: string): Piece => ({ text, binding: ATOM })
