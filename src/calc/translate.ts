import type { Corner } from '../workbook/address.ts'
import type { CellContent } from '../workbook/document.ts'
import { referencesIn, rewriteReferences } from '../workbook/formula/references.ts'
import { tokenise, type Token } from '../workbook/formula/tokenise.ts'
import { unreadableAt, unreadableWords } from '../workbook/formula/unreadable.ts'
import { countsLinesOfComputed } from './lines-of-computed.ts'
import { mayBeBlock, ONE_VALUE } from './one-value.ts'

/** What the engine reads for a cell: a number, a boolean, text with a leading apostrophe, or a formula in the engine's dialect. */
export type EngineContent = number | boolean | string | null

/** Called in place of a formula that cannot be read, so that the cell and what depends on it show the reason. */
export const UNREADABLE = 'UNREADABLE.FORMULA'

export function engineContent(content: CellContent): EngineContent {
  if (typeof content !== 'string') return content
  if (content.startsWith('=')) return engineFormula(content)
  return content.startsWith("'") ? content : `'${content}`
}

/** The formula of a cell in the engine's dialect; one that cannot be read becomes a call that gives the reason as an error. */
export function engineFormula(formula: string): string {
  const read = translated(formula)
  return 'reason' in read ? unreadableFormula(read.reason) : mayBeBlock(read.tokens) ? `=${ONE_VALUE}(${read.text.slice(1)})` : read.text
}

function translated(formula: string): { readonly text: string; readonly tokens: readonly Token[] } | { readonly reason: string } {
  const tokens = tokenise(formula)
  const unreadable = unreadableAt(formula, tokens)
  if (unreadable !== undefined) return { reason: unreadableWords(formula, unreadable) }
  let braces = 0
  const text = tokens
    .map((token, index) => {
      if (token.kind === 'openBrace') braces++
      if (token.kind === 'closeBrace') braces--
      if (token.kind === 'separator' && braces === 0) return ','
      return countsLinesOfComputed(tokens, index) ?? TRANSLATION[token.kind]?.(token.text) ?? token.text
    })
    .join('')
  return { text, tokens }
}

/** What a defined name refers to, in the engine's dialect. The engine takes absolute references only; a name means the same cells from anywhere. */
export function engineName(name: string, refersTo: string): string {
  const withoutSheet = referencesIn(tokenise(refersTo)).find(({ reference }) => reference.sheet === null)
  if (withoutSheet !== undefined) return unreadableFormula(`the name ${name} refers to ${withoutSheet.token.text} of no sheet: write for example Duty!$C$5`)
  const read = translated(`=${rewriteReferences(refersTo, (reference) => ({ ...reference, from: absolute(reference.from), to: reference.to && absolute(reference.to) }))}`)
  return 'reason' in read ? unreadableFormula(read.reason) : read.text
}

const absolute = (corner: Corner): Corner => ({ ...corner, rowAbsolute: true, columnAbsolute: true })

const unreadableFormula = (reason: string): string => `=${UNREADABLE}(${engineText(reason)})`

const TRANSLATION: { readonly [K in Token['kind']]?: (text: string) => string } = {
  // Other blanks than a space or a line break are not read.
  whitespace: (text) => text.replace(/[^\n ]/g, ' '),
  // Only a small e is read, and no point without digits.
  number: (text) => (/^\d+$/.test(text) ? text : String(Number(text)).replace('e+', 'e')),
  string: (text) => engineText(text.slice(1, -1).replace(/""/g, '"')),
  boolean: (text) => `${text.toUpperCase()}()`,
}

/** A text as the engine reads it: it has no way to write a quote inside one, and keeps a backslash in the value. */
function engineText(text: string): string {
  let plain = text
  let wrap = (written: string) => written
  for (const character of ['"', '\\']) {
    if (!plain.includes(character)) continue
    const standIn = unusedIn(plain)
    const inner = wrap
    plain = plain.replaceAll(character, standIn)
    wrap = (written) => `SUBSTITUTE(${inner(written)},"${standIn}",CHAR(${character.charCodeAt(0)}))`
  }
  return wrap(`"${plain}"`)
}

/** A character for private use that the text does not have. */
function unusedIn(text: string): string {
  let code = 0xe000
  while (text.includes(String.fromCharCode(code))) code++
  return String.fromCharCode(code)
}
