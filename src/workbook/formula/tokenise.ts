import { CELL, LETTERS, parseReference, SHEET_PREFIX, WHOLE_COLUMNS, WHOLE_ROWS } from '../address.ts'
import { MAX_ROWS } from '../limits.ts'

export type TokenKind =
  | 'start'
  | 'whitespace'
  | 'number'
  | 'string'
  | 'boolean'
  | 'error'
  | 'function'
  | 'open'
  | 'close'
  | 'openBrace'
  | 'closeBrace'
  | 'separator'
  | 'operator'
  | 'reference'
  | 'range'
  | 'wholeColumns'
  | 'wholeRows'
  | 'name'
  | 'unknown'

export interface Token {
  readonly kind: TokenKind
  /** Exactly as typed; the texts of all tokens, joined, are the formula. */
  readonly text: string
  readonly start: number
  readonly end: number
  /** What is wrong with it, in words, if something is. */
  readonly problem?: string
}

/**
 * The tokens of a formula, with or without its "=", covering the whole text. Never throws: what makes no sense is a
 * token with a `problem`. A function is a name with "(" right after it; the "(" is a token of its own.
 */
export function tokenise(formula: string): Token[] {
  const tokens: Token[] = []
  let start = 0
  if (formula.startsWith('=')) {
    tokens.push({ kind: 'start', text: '=', start: 0, end: 1 })
    start = 1
  }
  while (start < formula.length) {
    const token = tokenAt(formula, start)
    tokens.push(token)
    start = token.end
  }
  return tokens
}

/**
 * Where references stand in a formula, in the order of writing: the tokens of those kinds in a single pass, without making the others.
 * Whole sheets are rewritten by this, where tokens would take three times as long.
 */
export function referenceExtents(formula: string): { readonly start: number; readonly end: number }[] {
  const found: { start: number; end: number }[] = []
  REFERENCE_OR_OTHER.lastIndex = 0
  for (let match = REFERENCE_OR_OTHER.exec(formula); match !== null; match = REFERENCE_OR_OTHER.exec(formula)) {
    const text = match[1] ?? match[2] ?? match[3] ?? match[4]
    if (text !== undefined) found.push({ start: match.index, end: match.index + text.length })
  }
  return found
}

interface Rule {
  readonly kind: TokenKind
  readonly pattern: string
  readonly problem?: (text: string) => string | undefined
}

const NOT_INSIDE_A_WORD = `(?![${LETTERS}0-9_.!(])`

/** The first that fits is taken. */
const RULES: readonly Rule[] = [
  rule('whitespace', '\\s+'),
  rule('string', '"(?:[^"]|"")*"'),
  rule('string', '"[\\s\\S]*', () => 'text without its closing "'),
  rule('error', '#[A-Za-z0-9/]+[?!]?'),
  rule('function', `[${LETTERS}_][${LETTERS}0-9_.]*(?=\\()`),
  rule('range', `(?:${SHEET_PREFIX})?${CELL}:${CELL}${NOT_INSIDE_A_WORD}`, offSheet),
  rule('wholeColumns', `(?:${SHEET_PREFIX})?${WHOLE_COLUMNS}${NOT_INSIDE_A_WORD}`, offSheet),
  rule('wholeRows', `(?:${SHEET_PREFIX})?${WHOLE_ROWS}${NOT_INSIDE_A_WORD}`, offSheet),
  rule('reference', `(?:${SHEET_PREFIX})?${CELL}${NOT_INSIDE_A_WORD}`, offSheet),
  rule('number', '(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?', (text) => (Number.isFinite(Number(text)) ? undefined : `${text} is too large for a number`)),
  rule('boolean', `(?:[Tt][Rr][Uu][Ee]|[Ff][Aa][Ll][Ss][Ee])${NOT_INSIDE_A_WORD}`),
  rule('name', `[${LETTERS}_][${LETTERS}0-9_.]*`),
  rule('open', '\\('),
  rule('close', '\\)'),
  rule('openBrace', '\\{'),
  rule('closeBrace', '\\}'),
  rule('separator', '[,;]'),
  rule('operator', '<>|<=|>=|[-+*/^&=<>%:]'),
  rule('unknown', "'[^']*'?", (text) => (text.length > 1 && text.endsWith("'") ? 'a sheet name without ! and a cell after it' : "a sheet name without its closing '")),
  rule('unknown', '[\\s\\S]', (text) => `"${text}" has no meaning in a formula`),
]

/** All rules at once, a group for each. */
const ANY_RULE = new RegExp(RULES.map(({ pattern }) => `(${pattern})`).join('|'), 'y')

const REFERENCE_KINDS: ReadonlySet<TokenKind> = new Set<TokenKind>(['reference', 'range', 'wholeColumns', 'wholeRows'])
export const isReferenceKind = (kind: TokenKind): boolean => REFERENCE_KINDS.has(kind)

/** Tokens inside of which no other could begin: passed over character by character they come to the same. */
const INDIVISIBLE: ReadonlySet<TokenKind> = new Set<TokenKind>(['whitespace', 'boolean', 'open', 'close', 'openBrace', 'closeBrace', 'separator', 'operator'])

/** The other rules in the same order, in groups those of references only. The last one, for any character, is what the search does by itself. */
const REFERENCE_OR_OTHER = new RegExp(
  RULES.slice(0, -1).filter(({ kind }) => !INDIVISIBLE.has(kind)).map(({ kind, pattern }) => (isReferenceKind(kind) ? `(${pattern})` : pattern)).join('|'), 'g',
)

function tokenAt(formula: string, start: number): Token {
  ANY_RULE.lastIndex = start
  const found = ANY_RULE.exec(formula)
  for (let index = 0; found !== null && index < RULES.length; index++) {
    const text = found[index + 1]
    const rule = RULES[index]
    if (text === undefined || rule === undefined) continue
    const { kind, problem } = rule
    const wrong = problem?.(text)
    return { kind, text, start, end: start + text.length, ...(wrong === undefined ? {} : { problem: wrong }) }
  }
  throw new Error('the last rule takes any character')
}

function rule(kind: TokenKind, pattern: string, problem?: Rule['problem']): Rule {
  return { kind, pattern, ...(problem ? { problem } : {}) }
}

function offSheet(text: string): string | undefined {
  return parseReference(text) ? undefined : `${text} is off the sheet; the last cell is XFD${MAX_ROWS}`
}
