import { parseReference, printReference, type Reference } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import { isReferenceKind, tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { plainName } from '../import/known-functions.ts'
import { sameDigits } from './same-value.ts'

/**
 * A formula in a form that is the same however a program spells it: capitals of functions and names, blanks, prefixes of functions younger than the file
 * format, quotes round sheet names, numbers, separators. `$` stays, as it means something.
 */
export function canonicalFormula(formula: string): string {
  const tokens = tokenise(plainTruth(formula)).filter(({ kind }) => kind !== 'start')
  let braces = 0
  return tokens.map((token, index) => {
    if (token.kind === 'openBrace') braces++
    if (token.kind === 'closeBrace') braces--
    if (token.kind === 'separator') return braces > 0 ? token.text : ','
    return token.kind === 'whitespace' ? blank(tokens[index - 1], tokens[index + 1]) : (CANONICAL[token.kind]?.(token.text) ?? token.text)
  }).join('')
}

/** Truth values stand as functions in some files; nothing else is taken for one, as texts stay in their quotes. */
const plainTruth = (formula: string): string => formula.replace(/"(?:[^"]|"")*"|(?<![\w.])(TRUE|FALSE)\s*\(\s*\)/gi, (found: string, truth: string | undefined) => truth ?? found)

const CANONICAL: { readonly [K in Token['kind']]?: (text: string) => string } = {
  number: (text) => sameDigits(Number(text)),
  boolean: (text) => text.toUpperCase(),
  error: (text) => text.toUpperCase(),
  function: plainName,
  name: foldCase,
  reference: canonicalReference,
  range: canonicalReference,
  wholeColumns: canonicalReference,
  wholeRows: canonicalReference,
}

/** A blank between two references is an operator, any other is none. */
const blank = (before: Token | undefined, after: Token | undefined): string => (before && after && isReferenceKind(before.kind) && isReferenceKind(after.kind) ? ' ' : '')

function canonicalReference(text: string): string {
  const reference = parseReference(text)
  return reference === undefined ? text : printReference(folded(reference))
}

const folded = (reference: Reference): Reference => (reference.sheet === null ? reference : { ...reference, sheet: foldCase(reference.sheet) })

/** What alignment of rows looks at in a formula: what stays when its references move, made twenty times as fast. */
export const formulaOutline = (formula: string): string => formula.toUpperCase().replace(/_XLFN\.|[\s'$]/g, '').replace(/[0-9]+(?:\.[0-9]+)?/g, '#')
