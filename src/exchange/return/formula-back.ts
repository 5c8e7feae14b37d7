import { parseReference, printReference, quoteSheetName, type Reference } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import { rewriteReferences } from '../../workbook/formula/references.ts'
import { isReferenceKind, tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { unreadableAt, unreadableWords } from '../../workbook/formula/unreadable.ts'
import { COLUMNS_BEFORE, HEADER_ROWS, type FunctionRows } from '../workings/call-book.ts'
import { knownFunction, plainName } from '../import/known-functions.ts'
import { followed, type Layout } from './layout.ts'

/** What a sheet of the file is: one of the workbook, by its name there; the workings of a function; another that the export adds; or new. */
export type FileSheetPart =
  | { readonly part: 'own'; readonly name: string }
  | { readonly part: 'workings'; readonly rows: FunctionRows }
  | { readonly part: 'added' }
  | { readonly part: 'new' }

export interface Back {
  /** By the name in the file, in small letters. */
  readonly sheets: ReadonlyMap<string, FileSheetPart>
  readonly layout: Layout
  /** Defined names of the workbook and of the file, in small letters. */
  readonly names: ReadonlySet<string>
}

/**
 * A formula of the file, without "=", as the workbook would have it: references to workings become the calls again that stand there, sheets have the names that they
 * have in the workbook. Rows are counted as in the file. Or why it cannot be had.
 * @param host the sheet that it stands on, by its name in the workbook
 */
export function formulaBack(formula: string, host: string | null, back: Back): { readonly formula: string } | { readonly refused: string } {
  const tokens = tokenise(`=${formula}`)
  const texts: string[] = []
  for (const token of tokens) {
    const written = tokenBack(token, host, back)
    if (typeof written !== 'string') return written
    texts.push(written)
  }
  const text = texts.join('')
  const unreadable = unreadableAt(text)
  return unreadable === undefined ? { formula: text } : { refused: `Lowside cannot read it: ${unreadableWords(text, unreadable)}` }
}

function tokenBack({ kind, text, problem }: Token, host: string | null, back: Back): string | { readonly refused: string } {
  if (problem !== undefined) return { refused: `Lowside cannot read it: ${problem}` }
  if (kind === 'function') {
    return knownFunction(text) ?? { refused: `Lowside has no function ${plainName(text)}` }
  }
  if (kind === 'name' && !back.names.has(foldCase(text))) return { refused: `nothing is called ${text}` }
  const reference = isReferenceKind(kind) ? parseReference(text) : undefined
  if (reference === undefined || reference.sheet === null) return text
  const sheet = back.sheets.get(foldCase(reference.sheet))
  if (sheet === undefined) return { refused: `there is no sheet "${reference.sheet}"` }
  if (sheet.part === 'own') return printReference({ ...reference, sheet: sheet.name })
  if (sheet.part === 'new') return text
  return sheet.part === 'workings' ? callBack(reference, sheet.rows, host, back.layout) : { refused: `${text} is on a sheet that only the export has` }
}

/** The call whose result a reference means, with its own references followed and, on another sheet, named in full. */
function callBack(reference: Reference, { definition, sheet, rows }: FunctionRows, host: string | null, layout: Layout): string | { readonly refused: string } {
  const { from, to } = reference
  const call = to === null && from.column === COLUMNS_BEFORE + definition.workings.columns.length - 1 ? rows[(from.row ?? 0) - HEADER_ROWS] : undefined
  if (call === undefined) return { refused: `${printReference(reference)} is not the result of a call that the export wrote on ${quoteSheetName(sheet)}` }
  const text = followed(call.text, call.home, { ...layout, renamed: new Map() })
  return host === call.home ? text : rewriteReferences(text, (one) => (one.sheet === null ? { ...one, sheet: call.home } : one))
}
