import { isOnSheet, parseReference, printReference, type Corner, type Reference } from '../address.ts'
import { foldCase } from '../document.ts'
import { isReferenceKind, referenceExtents, type Token } from './tokenise.ts'

export interface FoundReference {
  readonly reference: Reference
  readonly token: Token
}

/** The references of a formula, in the order of writing. */
export function referencesIn(tokens: readonly Token[]): FoundReference[] {
  return tokens.flatMap((token) => {
    const reference = isReferenceKind(token.kind) ? parseReference(token.text) : undefined
    return reference ? [{ reference, token }] : []
  })
}

/** What a defined name refers to, whatever its capitals; undefined where there is no such name or its text is no reference. */
export function namedReference(names: ReadonlyMap<string, string>, typed: string): Reference | undefined {
  const refersTo = names.get(typed) ?? [...names].find(([name]) => foldCase(name) === foldCase(typed))?.[1]
  return refersTo === undefined ? undefined : parseReference(refersTo)
}

/** The defined names that a formula uses, as typed, in the order of writing. */
export function namesIn(tokens: readonly Token[]): string[] {
  return tokens.filter(({ kind }) => kind === 'name').map(({ text }) => text)
}

/**
 * The formula with each reference replaced by what `change` makes of it: the same object leaves it as typed,
 * null (its cells are gone) writes `#REF!`. All else stays as typed.
 */
export function rewriteReferences(formula: string, change: (reference: Reference) => Reference | null): string {
  return rewritten(piecesOf(formula), change)
}

/** For paste and fill: the relative parts move, the absolute ones stay; what would leave the sheet becomes `#REF!`. */
export function shiftReferences(formula: string, rows: number, columns: number): string {
  return shifter(formula)(rows, columns)
}

/** {@link shiftReferences} for one formula that goes to many places: it is read once. */
export function shifter(formula: string): (rows: number, columns: number) => string {
  const pieces = piecesOf(formula)
  return (rows, columns) =>
    rewritten(pieces, (reference) => {
      const from = shiftCorner(reference.from, rows, columns)
      const to = reference.to && shiftCorner(reference.to, rows, columns)
      if (!from || (reference.to && !to)) return null
      if (from === reference.from && to === reference.to) return reference
      return { ...reference, ...(to ? inOrder(from, to) : { from, to: null }) }
    })
}

/** A formula, or a defined name's reference text, after a sheet was given another name. */
export function renameSheetInFormula(formula: string, from: string, to: string): string {
  const folded = foldCase(from)
  return rewriteReferences(formula, (reference) =>
    reference.sheet !== null && foldCase(reference.sheet) === folded ? { ...reference, sheet: to } : reference,
  )
}

/** A reference of a formula, and what stands before it. */
interface Piece {
  readonly before: string
  readonly text: string
  readonly reference: Reference
}

interface Pieces {
  readonly formula: string
  readonly pieces: readonly Piece[]
  readonly end: string
}

function piecesOf(formula: string): Pieces {
  const pieces: Piece[] = []
  let last = 0
  for (const { start, end } of referenceExtents(formula)) {
    const text = formula.slice(start, end)
    const reference = parseReference(text)
    if (!reference) continue
    pieces.push({ before: formula.slice(last, start), text, reference })
    last = end
  }
  return { formula, pieces, end: formula.slice(last) }
}

/** The very same text if `change` changes nothing. */
function rewritten({ formula, pieces, end }: Pieces, change: (reference: Reference) => Reference | null): string {
  let text = ''
  let isSame = true
  for (const piece of pieces) {
    const after = change(piece.reference)
    isSame &&= after === piece.reference
    text += piece.before + (after === null ? '#REF!' : after === piece.reference ? piece.text : printReference(after))
  }
  return isSame ? formula : text + end
}

/** The same object if nothing moves; undefined if it leaves the sheet. */
function shiftCorner(corner: Corner, rows: number, columns: number): Corner | undefined {
  const row = corner.row === null || corner.rowAbsolute ? corner.row : corner.row + rows
  const column = corner.column === null || corner.columnAbsolute ? corner.column : corner.column + columns
  if (row === corner.row && column === corner.column) return corner
  return isOnSheet(row ?? 0, column ?? 0) ? { ...corner, row, column } : undefined
}

/** A relative corner may have passed an absolute one; a range is written from its upper left to its lower right. */
function inOrder(from: Corner, to: Corner): { readonly from: Corner; readonly to: Corner } {
  const [top, bottom] = (from.row ?? 0) <= (to.row ?? 0) ? [from, to] : [to, from]
  const [left, right] = (from.column ?? 0) <= (to.column ?? 0) ? [from, to] : [to, from]
  return { from: corner(top, left), to: corner(bottom, right) }
}

function corner({ row, rowAbsolute }: Corner, { column, columnAbsolute }: Corner): Corner {
  return { row, column, rowAbsolute, columnAbsolute }
}
