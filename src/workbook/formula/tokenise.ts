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

interface Rule {
  readonly kind: TokenKind
  readonly pattern: RegExp
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
  rule('number', '(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?'),
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

function tokenAt(formula: string, start: number): Token {
  for (const { kind, pattern, problem } of RULES) {
    pattern.lastIndex = start
    const text = pattern.exec(formula)?.[0]
    if (!text) continue
    const wrong = problem?.(text)
    return { kind, text, start, end: start + text.length, ...(wrong === undefined ? {} : { problem: wrong }) }
  }
  throw new Error('the last rule takes any character')
}

function rule(kind: TokenKind, source: string, problem?: Rule['problem']): Rule {
  return { kind, pattern: new RegExp(source, 'y'), ...(problem ? { problem } : {}) }
}

function offSheet(text: string): string | undefined {
  return parseReference(text) ? undefined : `${text} is off the sheet; the last cell is XFD${MAX_ROWS}`
}
