import { functionByName } from '../../functions/catalogue.ts'
import { parseReference, printReference } from '../workbook/address.ts'
import { foldCase } from '../workbook/document.ts'
import { calls } from '../workbook/formula/calls.ts'
import { tokenise, type Token, type TokenKind } from '../workbook/formula/tokenise.ts'
import { ENGINE_ONLY, PREFIXED, RANGE_TAKERS } from './function-names.ts'

/** A formula as a spreadsheet file holds it (ECMA-376, part 1, 18.17). */
export interface FileFormula {
  /** Without "=". */
  readonly text: string
  /** It computes with whole ranges cell by cell, which a file's plain formula does not. */
  readonly array: boolean
}

/** What a defined name refers to, by the name in small letters. */
export type FileNames = ReadonlyMap<string, FileFormula>

/**
 * The formula of a workbook in a file's dialect. Undefined where no other program could compute it as Lowside does: it calls a function
 * of the catalogue or of the engine alone, uses a name that the file has not, or cannot be read.
 */
export function fileFormula(formula: string, names: FileNames): FileFormula | undefined {
  const tokens = tokenise(formula)
  const texts: string[] = []
  let braces = 0
  for (const token of tokens) {
    if (token.problem !== undefined) return undefined
    if (token.kind === 'openBrace') braces++
    if (token.kind === 'closeBrace') braces--
    const text = token.kind === 'separator' && braces === 0 ? ',' : fileText(token, names)
    if (text === undefined) return undefined
    texts.push(text)
  }
  const text = texts.join('').trim()
  return text === '' || text.length > MAX_FORMULA ? undefined : { text, array: computesWithRanges(formula, tokens, names) }
}

/** The defined names that a file can have: those whose reference text other programs understand. */
export function fileNames(names: ReadonlyMap<string, string>): ReadonlyMap<string, FileFormula> {
  const none: FileNames = new Map()
  return new Map([...names].flatMap(([name, refersTo]) => {
    const formula = fileFormula(refersTo, none)
    return formula === undefined ? [] : [[name, formula] as const]
  }))
}

/** What a formula, and a text in one, may have at most in a file. */
const MAX_FORMULA = 8192
const MAX_TEXT_IN_FORMULA = 255

const FILE_ERRORS: ReadonlySet<string> = new Set(['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A'])

const asTyped = (text: string): string => text
const reference = (text: string): string | undefined => {
  const parsed = parseReference(text)
  return parsed && printReference(parsed)
}

const FILE_TEXT: Readonly<Record<TokenKind, (text: string, names: FileNames) => string | undefined>> = {
  start: () => '',
  whitespace: (text) => text.replace(/[^\n ]/g, ' '),
  number: (text) => (/^\d+$/.test(text) ? text : String(Number(text)).replace('e', 'E')),
  string: (text) => (text.length - 2 > MAX_TEXT_IN_FORMULA ? undefined : text),
  boolean: (text) => text.toUpperCase(),
  error: (text) => (FILE_ERRORS.has(text.toUpperCase()) ? text.toUpperCase() : undefined),
  function: functionName,
  open: asTyped,
  close: asTyped,
  openBrace: asTyped,
  closeBrace: asTyped,
  separator: asTyped,
  operator: asTyped,
  reference,
  range: reference,
  wholeColumns: reference,
  wholeRows: reference,
  name: (text, names) => (names.has(foldCase(text)) ? text : undefined),
  unknown: () => undefined,
}

function fileText({ kind, text }: Token, names: FileNames): string | undefined {
  return FILE_TEXT[kind](text, names)
}

function functionName(typed: string): string | undefined {
  const name = typed.toUpperCase()
  if (functionByName(name) !== undefined || ENGINE_ONLY.has(name)) return undefined
  return PREFIXED.has(name) ? `_xlfn.${name}` : name
}

const RANGE_KINDS: ReadonlySet<TokenKind> = new Set<TokenKind>(['range', 'wholeColumns', 'wholeRows'])

/** Whether a range, or a name of one, stands elsewhere than alone as an argument of a function that takes ranges. */
function computesWithRanges(formula: string, tokens: readonly Token[], names: FileNames): boolean {
  const ranges = tokens.filter(({ kind, text }) => RANGE_KINDS.has(kind) || (kind === 'name' && isRangeName(text, names)))
  if (ranges.length === 0) return false
  const places = calls(tokens).filter(({ name }) => RANGE_TAKERS.has(name.toUpperCase())).flatMap((call) => call.arguments)
  return !ranges.every(({ text, start, end }) =>
    places.some((place) => place.start <= start && end <= place.end && formula.slice(place.start, place.end).trim() === text))
}

function isRangeName(name: string, names: FileNames): boolean {
  const refersTo = names.get(foldCase(name))
  return refersTo !== undefined && parseReference(refersTo.text)?.to !== null
}
