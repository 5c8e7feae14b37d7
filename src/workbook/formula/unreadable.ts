import { areaOf, parseReference } from '../address.ts'
import { LAST_WHOLE_COLUMN, LAST_WHOLE_ROW, MAX_FORMULA, MAX_NESTING, MAX_OPERATORS, MAX_RANGE_CELLS, MAX_WHOLE_COLUMNS, MAX_WHOLE_ROWS } from '../limits.ts'
import type { Extent } from './calls.ts'
import { tokenise, type Token, type TokenKind } from './tokenise.ts'

/** Why a formula cannot be read, and where. */
export interface Unreadable extends Extent {
  readonly words: string
  /** Only something at the end is missing: not yet a fault while the formula is being typed. */
  readonly unfinished: boolean
}

/** The first place from the left where a formula cannot be read; undefined where it can. */
export function unreadableAt(formula: string, tokens: readonly Token[] = tokenise(formula)): Unreadable | undefined {
  const tooMuch = (words: string): Unreadable => ({ start: 0, end: formula.length, words: `${words}: split it over several cells`, unfinished: false })
  if (formula.length > MAX_FORMULA) return tooMuch(`the formula is longer than ${MAX_FORMULA} characters`)
  const open: Token[] = []
  let before: Token | undefined
  let operators = 0
  for (const token of tokens) {
    if (token.kind === 'whitespace' || token.kind === 'start') continue
    const words = token.problem ?? wrongAfter(before, token, open) ?? tooWide(token)
    if (words !== undefined) return { start: token.start, end: token.end, words, unfinished: isUnclosed(token) }
    if (OPENERS.has(token.kind)) open.push(before?.kind === 'function' ? before : token)
    if (open.length > MAX_NESTING) return tooMuch(`the formula has brackets nested deeper than ${MAX_NESTING}`)
    if (token.kind === 'operator') operators++
    if (CLOSER_OF[token.kind]) open.pop()
    before = token
  }
  const atEnd = { start: formula.length, end: formula.length, unfinished: true }
  if (before === undefined) return { ...atEnd, words: 'the formula is empty: write something after =' }
  const innermost = open.at(-1)
  if (wantsValue(before) && !(innermost?.kind === 'function' && MAY_BE_EMPTY_AFTER.has(before.kind))) return { ...atEnd, words: `a value is missing after ${before.text}` }
  if (innermost !== undefined) return { ...atEnd, words: `the closing ${innermost.kind === 'openBrace' ? '}' : ')'} of ${innermost.text} is missing` }
  return operators > MAX_OPERATORS ? tooMuch(`the formula has more than ${MAX_OPERATORS} operators`) : undefined
}

/** The words of it, with the place where it is not the whole formula or its end. */
export function unreadableWords({ length }: string, { start, words }: Unreadable): string {
  return start === 0 || start === length ? words : `${words}, at character ${start + 1}`
}

type Kinds = ReadonlySet<TokenKind>

const VALUES: Kinds = new Set<TokenKind>(['number', 'string', 'boolean', 'error', 'function', 'reference', 'range', 'wholeColumns', 'wholeRows', 'name'])
const OPENERS: Kinds = new Set<TokenKind>(['open', 'openBrace'])
/** An argument may be left empty: right after "(" and after a comma. */
const MAY_BE_EMPTY_AFTER: Kinds = new Set<TokenKind>(['open', 'separator'])
const CLOSER_OF: { readonly [K in TokenKind]?: string } = { close: 'a closing bracket', closeBrace: 'a closing brace' }

/** After it a value must come, rather than an operator. */
const wantsValue = (before: Token | undefined): boolean =>
  before === undefined || OPENERS.has(before.kind) || before.kind === 'separator' || (before.kind === 'operator' && before.text !== '%')

function wrongAfter(before: Token | undefined, token: Token, open: readonly Token[]): string | undefined {
  const { kind, text } = token
  const innermost = open.at(-1)
  const mayBeEmpty = innermost?.kind === 'function' && before !== undefined && MAY_BE_EMPTY_AFTER.has(before.kind)
  const missing = before === undefined ? `a value is missing before ${text}` : `a value is missing between ${before.text} and ${text}`
  if (CLOSER_OF[kind]) {
    if (innermost === undefined || (kind === 'closeBrace') !== (innermost.kind === 'openBrace')) return `${CLOSER_OF[kind]} without its opening one`
    return wantsValue(before) && !mayBeEmpty ? missing : undefined
  }
  if (kind === 'separator') {
    if (innermost === undefined || innermost.kind === 'open') return `"${text}" stands outside of a function: it separates arguments`
    return wantsValue(before) && !mayBeEmpty ? missing : undefined
  }
  if (kind === 'operator') return wantsValue(before) && text !== '+' && text !== '-' ? missing : undefined
  if (kind === 'open' && before?.kind === 'function') return undefined
  if ((VALUES.has(kind) || OPENERS.has(kind)) && !wantsValue(before)) {
    return `an operator is missing between ${before?.text ?? ''} and ${text}`
  }
  return undefined
}

/** A range of more cells than the calculation can keep. */
function tooWide({ kind, text }: Token): string | undefined {
  if (kind !== 'range' && kind !== 'wholeColumns' && kind !== 'wholeRows') return undefined
  const reference = parseReference(text)
  if (reference === undefined) return undefined
  const { top, left, bottom, right } = areaOf(reference)
  const [rows, columns] = [bottom - top + 1, right - left + 1]
  if (kind === 'wholeColumns' && (columns > MAX_WHOLE_COLUMNS || right >= LAST_WHOLE_COLUMN)) {
    return `${text} is ${columns} whole columns; accepted: up to ${MAX_WHOLE_COLUMNS} of the first ${LAST_WHOLE_COLUMN}, or a range such as A1:B100`
  }
  if (kind === 'wholeRows' && (rows > MAX_WHOLE_ROWS || bottom >= LAST_WHOLE_ROW)) {
    return `${text} is ${rows} whole rows; accepted: up to ${MAX_WHOLE_ROWS} of the first ${LAST_WHOLE_ROW}, or a range such as A1:B100`
  }
  if (kind !== 'range') return undefined
  return rows * columns > MAX_RANGE_CELLS ? `${text} covers ${rows * columns} cells; accepted: up to ${MAX_RANGE_CELLS}` : undefined
}

/** A text or a sheet's name that goes on to the end for want of its closing mark. */
const isUnclosed = ({ kind, text, problem }: Token): boolean =>
  problem !== undefined && (kind === 'string' || (text.startsWith("'") && (text.length === 1 || !text.endsWith("'"))))
