import type { Argument, BlockRow } from '../../../functions/arguments.ts'
import { isFault } from '../../../functions/fault.ts'
import { STANDARD_ATMOSPHERE_PA } from '../../../functions/units/constants.ts'
import { parseQuantity } from '../../../functions/units/quantity.ts'
import { findUnit } from '../../../functions/units/units.ts'
import type { CallPart } from '../../../functions/workings/workings.ts'
import { areaOf, printReference, type Area, type CellAddress, type Reference } from '../../workbook/address.ts'
import { calls } from '../../workbook/formula/calls.ts'
import { tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { arrayConstant } from './array-constant.ts'
import { numberInText, unitInText } from './text-quantity.ts'

/** What stands in a cell of the workings: a number or a text, nothing, or a formula without its "=". */
export type Content = number | string | { readonly formula: string }

/** What an argument's text means where it stands. */
export interface Surroundings {
  /** An expression for use on another sheet: references with their sheet, own calls replaced by their results. */
  readonly elsewhere: (expression: string) => string
  /** The cells that a reference, or a defined name, stands for; undefined where it is none or its sheet is not known. */
  readonly cells: (token: Token) => Reference | undefined
}

const NOT_GIVEN: Content = ''
const REFUSED: Content = { formula: 'NA()' }

/**
 * What stands in the columns that take an argument of a call, number and unit kept apart. What the function refuses whatever the cells
 * hold is an error here too; the rest is for the checks of the workings to find.
 */
export function argumentParts(argument: Argument<unknown>, text: string | undefined, around: Surroundings): (part: CallPart) => Content {
  const tokens = text === undefined ? [] : inner(tokenise(text))
  if (tokens.length === 0) return ({ whenOmitted }) => whenOmitted ?? NOT_GIVEN
  if (argument.kind === 'block') return blockParts(argument.rows, tokens, around)
  if (argument.kind === 'unit') return () => unitText(tokens, around)
  if (argument.kind === 'choice' || argument.kind === 'text') return () => plainText(argument, tokens, around)
  const { value, unit } = quantityParts(argument, tokens, around)
  return ({ part }) => (part === 'unit' ? unit : value)
}

interface Parts {
  readonly value: Content
  readonly unit: Content
}

const REFUSED_PARTS: Parts = { value: REFUSED, unit: REFUSED }

function quantityParts(argument: Argument<unknown>, given: readonly Token[], around: Surroundings): Parts {
  const tokens = inner(given)
  const [only] = tokens
  if (only === undefined || hasTopLevel(tokens, COMPARISONS)) return REFUSED_PARTS
  const constant = constantParts(argument, tokens)
  if (constant !== undefined) return constant
  const reference = tokens.length === 1 ? around.cells(only) : undefined
  if (reference !== undefined) return cellParts(argument, reference)
  const branches = branchesOfIf(tokens, around)
  if (branches !== undefined) {
    const [whenTrue, whenFalse] = [quantityParts(argument, branches.whenTrue, around), quantityParts(argument, branches.whenFalse, around)]
    const either = (one: Content, other: Content): Content => ({ formula: `IF(${branches.condition},${written(one)},${written(other)})` })
    return { value: either(whenTrue.value, whenFalse.value), unit: either(whenTrue.unit, whenFalse.unit) }
  }
  const joint = tokens.findIndex((token, index) => token.text === '&' && isTopLevel(tokens, index))
  if (joint >= 0) return joinedParts(argument, tokens.slice(0, joint), tokens.slice(joint + 1), around)
  const expression = around.elsewhere(textOf(tokens))
  if (argument.kind === 'number' && isArithmetic(tokens)) return { value: { formula: expression }, unit: NOT_GIVEN }
  return isArithmetic(tokens) ? REFUSED_PARTS : textParts(argument, expression)
}

/** Number and unit of a quantity whose text is in the formula itself; undefined where it is not. */
function constantParts(argument: Argument<unknown>, tokens: readonly Token[]): Parts | undefined {
  const constant = literal(tokens)
  if (typeof constant === 'number') return argument.kind === 'number' ? { value: constant, unit: NOT_GIVEN } : REFUSED_PARTS
  if (typeof constant === 'string') {
    if (argument.kind === 'number' && constant.trim() !== '' && Number.isFinite(Number(constant))) return { value: Number(constant), unit: NOT_GIVEN }
    const read = parseQuantity(constant)
    return isFault(read) ? REFUSED_PARTS : { value: read.value, unit: read.unit.code }
  }
  const rows = arrayConstant(tokens)
  if (rows === undefined) return undefined
  const [value, unit] = rows[0] ?? []
  return rows.length === 1 && rows[0]?.length === 2 && typeof value === 'number' && typeof unit === 'string' ? { value, unit: canonical(unit) } : REFUSED_PARTS
}

function cellParts(argument: Argument<unknown>, reference: Reference): Parts {
  const area = areaOf(reference)
  const [width, height] = [area.right - area.left + 1, area.bottom - area.top + 1]
  const [first, second] = [cellText(reference, area, 0, 0), cellText(reference, area, 0, 1)]
  if (height === 1 && width === 2) return { value: numberAt(first), unit: unitAt(argument, second, false) }
  return height === 1 && width === 1 ? textParts(argument, first) : REFUSED_PARTS
}

/** A text with number and unit, taken apart by formulas; for a plain number a number will do. */
function textParts({ kind }: Argument<unknown>, text: string): Parts {
  const [number, unit] = [numberInText(text), unitInText(text)]
  if (kind !== 'number') return { value: { formula: number }, unit: { formula: unit } }
  return { value: { formula: `IF(ISNUMBER(${text}),${text},${number})` }, unit: { formula: `IF(ISNUMBER(${text}),"",${unit})` } }
}

/** `number & unit`: what stands on either side is the number and the unit, and no text has to be taken apart. */
function joinedParts(argument: Argument<unknown>, left: readonly Token[], right: readonly Token[], around: Surroundings): Parts {
  const [number, unit] = [inner(left), inner(right)]
  const [constant, constantUnit] = [literal(number), literal(unit)]
  if (typeof constant === 'string') return textParts(argument, around.elsewhere(`${textOf(left)}&${textOf(right)}`))
  return {
    value: constant ?? (isArithmetic(number) ? { formula: around.elsewhere(textOf(number)) } : numberAt(expressionOf(number, around))),
    unit: typeof constantUnit === 'string' ? canonical(constantUnit) : unitAt(argument, unit.length === 1 ? expressionOf(unit, around) : `TRIM(${around.elsewhere(textOf(unit))})`, true),
  }
}

function blockParts(rows: readonly BlockRow[], tokens: readonly Token[], around: Surroundings): (part: CallPart) => Content {
  const [only] = tokens
  const constants = arrayConstant(tokens)
  if (constants !== undefined) {
    if (constants.length !== rows.length || constants.some(({ length }) => length !== 2)) return () => REFUSED
    return ({ row = 0, part }) => {
      const [value = '', unit = ''] = constants[row] ?? []
      return part === 'value' ? value : typeof unit === 'string' ? canonical(unit) : unit
    }
  }
  const reference = only !== undefined && tokens.length === 1 ? around.cells(only) : undefined
  const area = reference && areaOf(reference)
  if (!reference || !area || area.bottom - area.top + 1 !== rows.length || area.right - area.left !== 1) return () => REFUSED
  return ({ row = 0, part }) => {
    if (part === 'value') return numberAt(cellText(reference, area, row, 0))
    const unit = cellText(reference, area, row, 1)
    return { formula: rows[row]?.kind === 'number' ? emptyAsText(unit) : unit }
  }
}

function unitText(tokens: readonly Token[], around: Surroundings): Content {
  const constant = literal(tokens)
  if (constant !== undefined) return typeof constant === 'string' ? canonical(constant) : REFUSED
  return { formula: oneCell(tokens, around) ?? 'NA()' }
}

/** A name out of a list, as the list has it where it stands in the formula itself; a size in several cells with a blank between. */
function plainText(argument: Argument<unknown>, tokens: readonly Token[], around: Surroundings): Content {
  const constant = literal(tokens)
  if (constant !== undefined) {
    const listed = argument.resolve(constant, '', STANDARD_ATMOSPHERE_PA)
    return typeof listed === 'string' ? listed : REFUSED
  }
  const [only] = tokens
  const reference = only !== undefined && tokens.length === 1 ? around.cells(only) : undefined
  if (argument.kind === 'text' && reference !== undefined) {
    const area = areaOf(reference)
    const places = Array.from({ length: area.bottom - area.top + 1 }, (_, row) => Array.from({ length: area.right - area.left + 1 }, (_, column) => cellText(reference, area, row, column))).flat()
    if (places.length > 1) return { formula: `TRIM(${places.join('&" "&')})` }
  }
  const cell = oneCell(tokens, around)
  return cell === undefined ? REFUSED : { formula: reference === undefined ? cell : emptyAsText(cell) }
}

/** An expression that comes to one value; undefined for a block of cells. */
function oneCell(tokens: readonly Token[], around: Surroundings): string | undefined {
  const [only] = tokens
  const reference = only !== undefined && tokens.length === 1 ? around.cells(only) : undefined
  if (reference === undefined) return around.elsewhere(textOf(tokens))
  const area = areaOf(reference)
  return area.top === area.bottom && area.left === area.right ? cellText(reference, area, 0, 0) : undefined
}

const expressionOf = (tokens: readonly Token[], around: Surroundings): string => oneCell(tokens, around) ?? 'NA()'

/** An empty cell that is referred to reads as 0 elsewhere: only a number counts. */
const numberAt = (expression: string): Content => ({ formula: `IF(ISNUMBER(${expression}),${expression},NA())` })
const emptyAsText = (expression: string): string => `IF(${expression}="","",${expression})`

/** The unit's text. Where the workings take a number without unit for one in SI, a missing unit has to be an error; a joined plain number may lack it. */
function unitAt({ kind, optional }: Argument<unknown>, expression: string, joined: boolean): Content {
  if (kind === 'number' && joined) return { formula: emptyAsText(expression) }
  return { formula: kind === 'number' || optional ? `IF(${expression}="",NA(),${expression})` : expression }
}

/** The unit as the table of units has it first. */
const canonical = (text: string): string => findUnit(text)?.code ?? text.trim()

const cellText = ({ sheet }: Reference, area: Area, row: number, column: number): string => addressText(sheet, { row: area.top + row, column: area.left + column })

export const addressText = (sheet: string | null, { row, column }: CellAddress): string =>
  printReference({ sheet, from: { row, column, rowAbsolute: false, columnAbsolute: false }, to: null })

/** As part of a formula. */
const written = (content: Content): string =>
  typeof content === 'object' ? content.formula : typeof content === 'number' ? (content < 0 ? `(${content})` : String(content)) : `"${content.replaceAll('"', '""')}"`

const textOf = (tokens: readonly Token[]): string => tokens.map(({ text }) => text).join('')

/** A number, a number with its sign, or a text; undefined for anything else. */
function literal(tokens: readonly Token[]): number | string | undefined {
  const [first, second] = tokens
  if (first?.kind === 'string' && tokens.length === 1) return first.text.slice(1, -1).replaceAll('""', '"')
  if (first?.kind === 'number' && tokens.length === 1) return Number(first.text)
  return first?.kind === 'operator' && first.text === '-' && second?.kind === 'number' && tokens.length === 2 ? -Number(second.text) : undefined
}

const COMPARISONS: ReadonlySet<string> = new Set(['=', '<>', '<', '>', '<=', '>='])
const ARITHMETIC: ReadonlySet<string> = new Set(['+', '-', '*', '/', '^', '%'])

const hasTopLevel = (tokens: readonly Token[], operators: ReadonlySet<string>): boolean =>
  tokens.some(({ kind, text }, index) => kind === 'operator' && operators.has(text) && isTopLevel(tokens, index))

/** Whether it can only come to a number or an error. */
const isArithmetic = (tokens: readonly Token[]): boolean => {
  if (hasTopLevel(tokens, new Set([...COMPARISONS, '&']))) return false
  return literal(tokens) === undefined ? hasTopLevel(tokens, ARITHMETIC) || isNumberCall(tokens) : typeof literal(tokens) === 'number'
}

const NUMBER_FUNCTIONS: ReadonlySet<string> = new Set(
  'ABS AVERAGE COUNT COUNTA COUNTIF COUNTIFS EXP INT LN LOG10 MAX MIN N PI PRODUCT ROUND ROUNDDOWN ROUNDUP SQRT SUM SUMIF SUMIFS SUMPRODUCT'.split(' '),
)

function isNumberCall(tokens: readonly Token[]): boolean {
  const call = wholeCall(tokens)
  return call !== undefined && NUMBER_FUNCTIONS.has(call.name.toUpperCase())
}

/** The call that the tokens are, from the first to the last. */
function wholeCall(tokens: readonly Token[]) {
  const [first] = tokens
  const last = tokens.at(-1)
  return first?.kind === 'function' ? calls(tokens).find(({ start, end }) => start === first.start && end === last?.end) : undefined
}

/** The branches of an `IF` that is all there is. */
function branchesOfIf(tokens: readonly Token[], around: Surroundings) {
  const call = wholeCall(tokens)
  if (call?.name.toUpperCase() !== 'IF' || call.arguments.length !== 3) return undefined
  const [condition, whenTrue, whenFalse] = call.arguments.map(({ start, end }) => tokens.filter((token) => token.start >= start && token.end <= end))
  if (condition === undefined || whenTrue === undefined || whenFalse === undefined) return undefined
  return { condition: around.elsewhere(textOf(condition)), whenTrue: inner(whenTrue), whenFalse: inner(whenFalse) }
}

function isTopLevel(tokens: readonly Token[], at: number): boolean {
  let depth = 0
  for (const { kind } of tokens.slice(0, at)) {
    if (kind === 'open' || kind === 'openBrace') depth++
    if (kind === 'close' || kind === 'closeBrace') depth--
  }
  return depth === 0
}

/** Without blanks at the ends and without brackets around all of it. */
function inner(tokens: readonly Token[]): readonly Token[] {
  const from = tokens.findIndex(({ kind }) => kind !== 'whitespace')
  const to = tokens.findLastIndex(({ kind }) => kind !== 'whitespace')
  const trimmed = from < 0 ? [] : tokens.slice(from, to + 1)
  if (trimmed[0]?.kind !== 'open' || trimmed.at(-1)?.kind !== 'close') return trimmed
  const isAround = trimmed.every((_, index) => index === 0 || !isTopLevel(trimmed, index))
  return isAround ? inner(trimmed.slice(1, -1)) : trimmed
}
