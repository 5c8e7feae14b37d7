import { printReference, type Area, type Corner } from '../../workbook/address.ts'
import type { Extent } from '../../workbook/formula/calls.ts'
import { tokenise, type TokenKind } from '../../workbook/formula/tokenise.ts'
import type { Typed } from './cycling.ts'

/** What is pointed at: cells, or whole columns or rows of a sheet. */
export interface Pointed {
  /** null: the sheet that the formula stands on. */
  readonly sheet: string | null
  readonly area: Area
  readonly whole?: 'columns' | 'rows'
}

/** Whether a reference could be written at the caret: a value is wanted there and none stands there yet. */
export function referenceFits({ text, caret }: Typed): boolean {
  if (!text.startsWith('=') || caret < 1) return false
  const tokens = tokenise(text)
  if (tokens.some(({ kind, start, end }) => kind !== 'whitespace' && start < caret && caret < end)) return false
  const solid = tokens.filter(({ kind }) => kind !== 'whitespace')
  const before = solid.findLast(({ end }) => end <= caret)
  const after = solid.find(({ start }) => start >= caret)
  // A list of constants in braces takes no references.
  const inBraces = solid.filter(({ end }) => end <= caret).reduce((depth, { kind }) => depth + (BRACES[kind] ?? 0), 0) > 0
  return !inBraces && before !== undefined && FITS_AFTER.has(before.kind) && before.text !== '%' && (after === undefined || FITS_BEFORE.has(after.kind))
}

const BRACES: { readonly [K in TokenKind]?: number } = { openBrace: 1, closeBrace: -1 }
const FITS_AFTER: ReadonlySet<TokenKind> = new Set<TokenKind>(['start', 'open', 'separator', 'operator'])
const FITS_BEFORE: ReadonlySet<TokenKind> = new Set<TokenKind>(['close', 'separator', 'operator'])

/** The text with a reference in place of that stretch, the caret after it; all else stays as typed. */
export function putReference(text: string, at: Extent, pointed: Pointed): Typed & { readonly extent: Extent } {
  const written = printReference(referenceTo(pointed))
  const end = at.start + written.length
  return { text: text.slice(0, at.start) + written + text.slice(at.end), caret: end, extent: { start: at.start, end } }
}

function referenceTo({ sheet, area: { top, left, bottom, right }, whole }: Pointed): Parameters<typeof printReference>[0] {
  const corner = (row: number, column: number): Corner => ({
    row: whole === 'columns' ? null : row, column: whole === 'rows' ? null : column, rowAbsolute: false, columnAbsolute: false,
  })
  const isOneCell = whole === undefined && top === bottom && left === right
  return { sheet, from: corner(top, left), to: isOneCell ? null : corner(bottom, right) }
}
