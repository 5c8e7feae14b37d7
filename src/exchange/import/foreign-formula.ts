import { parseReference, printReference, quoteSheetName, type Reference } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import { rewriteReferences } from '../../workbook/formula/references.ts'
import { isReferenceKind, tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { unreadableAt, unreadableWords } from '../../workbook/formula/unreadable.ts'
import { knownFunction, plainName } from './known-functions.ts'
import { shortened } from './shortened.ts'

/** What a file's names are called in the workbook. */
export interface ImportedNames {
  /** Names of the sheets that are brought in, by the name in the file in small letters. */
  readonly sheets: ReadonlyMap<string, string>
  /** Names of all other sheets of the file, in small letters. */
  readonly otherSheets: ReadonlySet<string>
  /** Defined names that are brought in, by the name in the file in small letters. */
  readonly names: ReadonlyMap<string, string>
  /** Why the other defined names are not, by the name in the file in small letters. */
  readonly lostNames: ReadonlyMap<string, string>
}

/** The formula in Lowside's dialect, with its "="; or why Lowside cannot compute it. */
export type Translated = { readonly formula: `=${string}`; readonly tokens: readonly Token[] } | { readonly reason: string }

/**
 * A formula of a spreadsheet file (without "=", A1 form, "," between arguments) as Lowside computes it. References and names follow sheets
 * and names that are called otherwise in the workbook. Whatever would compute another thing, or nothing, is refused with its reason.
 * @param array the cells that it fills as an array formula
 */
export function translateFormula(written: string, names: ImportedNames, array?: string): Translated {
  const filled = array === undefined ? undefined : parseReference(array.replace(/^.*!/, ''))
  if (filled?.to && (filled.to.row !== filled.from.row || filled.to.column !== filled.from.column)) {
    return { reason: `it fills the cells ${array}: here a cell has one value` }
  }
  const text = plainSpelling(written.trim(), names.names)
  const foreign = foreignPart(text, names)
  if (foreign !== undefined) return { reason: foreign }
  const tokens = tokenise(`=${text}`)
  for (const token of tokens) {
    const reason = refusedToken(token, names)
    if (reason !== undefined) return { reason }
  }
  const wrongName = tokens.find((token) => token.kind === 'name' && !isKnownName(token.text, names))
  if (wrongName !== undefined) return { reason: nameReason(wrongName.text, names) }
  const renamed = tokens.map((token) => (token.kind === 'function' ? (knownFunction(token.text) ?? token.text) : token.text)).join('')
  const formula = rewriteReferences(renamed, (reference) => followedSheet(reference, names))
  const translated = tokenise(formula)
  const unreadable = unreadableAt(formula, translated)
  if (unreadable !== undefined) return { reason: unreadableWords(formula, unreadable) }
  return { formula: formula as `=${string}`, tokens: translated }
}

/** The reference text of a defined name as the workbook has it; or why the name cannot come along. */
export function translateName(refersTo: string, names: ImportedNames): { readonly refersTo: string } | { readonly reason: string } {
  const text = plainSpelling(refersTo.replace(/^=/, '').trim(), new Map())
  const foreign = foreignPart(text, names)
  if (foreign !== undefined) return { reason: foreign }
  const reference = parseReference(text)
  if (reference !== undefined) {
    if (reference.sheet === null) return { reason: `it stands for ${text} of no sheet` }
    const sheet = names.sheets.get(foldCase(reference.sheet))
    return sheet === undefined ? { reason: sheetReason(reference.sheet, names) } : { refersTo: printReference({ ...reference, sheet }) }
  }
  if (/^[-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:E[-+]?[0-9]+)?$/i.test(text) || /^"(?:[^"]|"")*"$/.test(text)) return { refersTo: text }
  return { reason: `it stands for ${shortened(text, 60)}: a name here stands for cells, a number or a text` }
}

const isKnownName = (name: string, names: ImportedNames): boolean => names.names.has(foldCase(name)) || [...names.names.values()].includes(name)

/** Text, sheet names in quotes, and all between them. */
const PARTS = /("(?:[^"]|"")*"?)|('(?:[^']|'')*'?)|([^"']+)/g

/** Sheet names that no reference could have bare are put in quotes, names are called as in the workbook, and `S!A1:S!B2` is `S!A1:B2`. */
function plainSpelling(text: string, renamed: ReadonlyMap<string, string>): string {
  const spelled = text.replace(PARTS, (part: string, _text, _quoted, other?: string) =>
    other === undefined ? part : other.replace(WORD, (word: string) => {
      if (word.endsWith('!')) return /^[A-Za-z0-9_]+!$/.test(word) ? word : `${quoteSheetName(word.slice(0, -1))}!`
      return renamed.get(foldCase(word)) ?? word
    }))
  return spelled.replace(SAME_SHEET_TWICE, '$1$2:$3')
}

/** Not what a number or an address goes on with, nor a function's name. */
const WORD = /(?<![\p{L}\p{N}_.\\$\]])[\p{L}_\\](?:[\p{L}\p{M}\p{N}_.\\?]|-(?=[\p{L}\p{N}_.]*!))*(?:!|(?![\p{L}\p{N}_.\\?(!]))/gu
const SAME_SHEET_TWICE = /((?:'(?:[^']|'')*'|[A-Za-z0-9_]+)!)(\$?[A-Z]{1,3}\$?[0-9]+):\1(\$?[A-Z]{1,3}\$?[0-9]+)/gi

/** What is looked for where no text and no quoted sheet name stands. */
const FOREIGN: readonly (readonly [RegExp, string])[] = [
  [/#REF!/i, 'a cell that it refers to was gone in the file already (#REF!)'],
  [/\[\d+\]|\[[^\]]*\.[a-z]{3,4}\]/i, 'it refers to another file'],
  [/\|/, 'it asks another program for data'],
  [/\[/, 'it refers to a table by its name and columns'],
  [/@|_xlfn\.SINGLE\(/i, 'it takes the cell of its own row or column out of a range (@)'],
  [/_xlfn\.ANCHORARRAY\(|[A-Za-z0-9$)]#(?![A-Za-z/])/i, 'it refers to the cells that another formula fills (#)'],
  [/[\p{L}\p{N}_]\s*:\s*[\p{L}_][\p{L}\p{N}_.]*!/u, 'it refers to the same cells of several sheets'],
  [/[A-Za-z0-9)]\s*~\s*[$A-Za-z(]/, 'it joins several ranges'],
]

function foreignPart(text: string, names: ImportedNames): string | undefined {
  // Another file, or several sheets, may also be named within quotes.
  for (const [, , quoted] of text.matchAll(PARTS)) {
    if (quoted === undefined || isSheet(quoted.slice(1, -1).replaceAll("''", "'"), names)) continue
    if (/\[[^\]]+\]/.test(quoted) || /^'(?:file|https?):/i.test(quoted)) return 'it refers to another file'
    if (/[^:]:[^:]/.test(quoted.slice(1, -1)) && text.includes(`${quoted}!`)) return 'it refers to the same cells of several sheets'
  }
  const bare = text.replace(/"(?:[^"]|"")*"?/g, '""').replace(/'(?:[^']|'')*'/g, "''")
  if (/\|/.test(bare) && /!/.test(bare)) return 'it asks another program for data'
  return FOREIGN.find(([pattern]) => pattern.test(bare))?.[1]
}

/** Some programs' sheets have names that elsewhere stand for several sheets, or another file. */
const isSheet = (name: string, { sheets, otherSheets }: ImportedNames): boolean => sheets.has(foldCase(name)) || otherSheets.has(foldCase(name))

function refusedToken(token: Token, names: ImportedNames): string | undefined {
  const { kind, text } = token
  if (kind === 'function' && knownFunction(text) === undefined) return `${plainName(text)} is not known here`
  if (kind === 'operator' && text === ':') return 'a corner of a range is computed (:)'
  if (!isReferenceKind(kind)) return undefined
  const sheet = parseReference(text)?.sheet
  return sheet == null || names.sheets.has(foldCase(sheet)) ? undefined : sheetReason(sheet, names)
}

const sheetReason = (sheet: string, names: ImportedNames): string =>
  names.otherSheets.has(foldCase(sheet)) ? `it refers to the sheet "${sheet}", which is not brought in` : `the file has no sheet "${sheet}"`

function nameReason(name: string, names: ImportedNames): string {
  const lost = names.lostNames.get(foldCase(name))
  if (lost !== undefined) return `the name ${name} is not brought in: ${lost}`
  if (/^R(?:\d+|\[-?\d+\])?C(?:\d+|\[-?\d+\])?$/i.test(name)) return `${name} is an address by numbers of row and column`
  return `the file has no name ${name}`
}

function followedSheet(reference: Reference, names: ImportedNames): Reference {
  if (reference.sheet === null) return reference
  const sheet = names.sheets.get(foldCase(reference.sheet))
  return sheet === undefined || sheet === reference.sheet ? reference : { ...reference, sheet }
}
