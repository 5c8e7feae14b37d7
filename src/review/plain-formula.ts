import { parseReference, printReference, type Corner, type Reference } from '../workbook/address.ts'
import { foldCase } from '../workbook/document.ts'
import { isReferenceKind, tokenise, type Token, type TokenKind } from '../workbook/formula/tokenise.ts'

/** A token of a formula, and what it comes to whatever way it is spelt. */
export interface PlainToken {
  readonly kind: TokenKind
  readonly text: string
  readonly plain: string
}

/** The tokens of a formula without blanks. A `$` says nothing of what a formula refers to where it stands, nor does the name of its own sheet. */
export function plainTokens(formula: string, home: string): PlainToken[] {
  return tokenise(formula).filter(({ kind }) => kind !== 'whitespace' && kind !== 'start').map((token) => ({ kind: token.kind, text: token.text, plain: plainText(token, home) }))
}

/** Whether two formulas say the same of the same cells where they stand. */
export const sameFormula = (one: string, other: string, home: string): boolean => one === other || plainFormula(one, home) === plainFormula(other, home)

const plainFormula = (formula: string, home: string): string => plainTokens(formula, home).map(({ plain }) => plain).join('\u0001')

function plainText({ kind, text }: Token, home: string): string {
  if (isReferenceKind(kind)) {
    const reference = parseReference(text)
    return reference === undefined ? text : printReference(plainReference(reference, home))
  }
  if (kind === 'number') return String(Number(text))
  if (kind === 'function' || kind === 'boolean' || kind === 'error') return text.toUpperCase()
  return kind === 'name' ? foldCase(text) : kind === 'separator' ? ',' : text
}

function plainReference({ sheet, from, to }: Reference, home: string): Reference {
  const name = sheet === null || foldCase(sheet) === foldCase(home) ? null : foldCase(sheet)
  return { sheet: name, from: withoutDollars(from), to: to && withoutDollars(to) }
}

const withoutDollars = (corner: Corner): Corner => ({ ...corner, rowAbsolute: false, columnAbsolute: false })
