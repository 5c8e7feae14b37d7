import { parseReference, quoteSheetName, columnLetters, type Corner, type Reference } from '../../workbook/address.ts'
import { calls, type Call } from '../../workbook/formula/calls.ts'
import { isReferenceKind, tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { openFunctionName } from './open-function-names.ts'

/**
 * A formula of a spreadsheet file in OpenFormula (OpenDocument 1.3, part 4), without its "of:=".
 * @param text in the dialect that {@link fileFormula} gives: A1 references, "," between arguments, no "="
 */
export const openFormula = (text: string): string => movingOpenFormula(text)(0)

/**
 * The same for cells further down, which have the formula with its relative rows moved: it is read once.
 * @param written what becomes of its text where it is written, such as what an attribute needs in place of some signs
 */
export function movingOpenFormula(text: string, written = (piece: string): string => piece): (rowsDown: number) => string {
  const tokens = tokenise(text)
  const pieces = piecesOf(tokens, roundingModes(tokens)).map((piece) => (typeof piece === 'number' ? piece : written(piece)))
  return (rowsDown) => {
    let formula = ''
    for (const piece of pieces) formula += typeof piece === 'number' ? piece + rowsDown : piece
    return formula
  }
}

/** Text, or the number of a row that moves with the formula. */
type Piece = string | number

function piecesOf(tokens: readonly Token[], modes: ReadonlyMap<number, readonly Token[]>): Piece[] {
  const pieces: Piece[] = []
  let braces = 0
  const put = (piece: Piece): void => {
    const last = pieces.at(-1)
    if (typeof piece === 'string' && typeof last === 'string') pieces[pieces.length - 1] = last + piece
    else pieces.push(piece)
  }
  for (const token of tokens) {
    if (token.kind === 'openBrace') braces++
    if (token.kind === 'closeBrace') braces--
    const step = modes.get(token.start)
    if (step !== undefined) for (const piece of [';(', ...piecesOf(step, modes), ')<0']) put(piece)
    const reference = isReferenceKind(token.kind) ? parseReference(token.text) : undefined
    if (reference === undefined) put(plainText(token, braces > 0))
    else for (const piece of referencePieces(reference)) put(piece)
  }
  return pieces
}

/** Part 4, 5.3 to 5.6 and 5.13: ";" between arguments and between the columns of an array, "|" between its rows; truth values are functions. */
function plainText({ kind, text }: Token, inArray: boolean): string {
  if (kind === 'function') return openFunctionName(text)
  if (kind === 'boolean') return `${text.toUpperCase()}()`
  if (kind === 'separator') return inArray && text === ';' ? '|' : ';'
  return text
}

/** Part 4, 5.8: in brackets, a point before each cell; a sheet is always the same one. */
function referencePieces({ sheet, from, to }: Reference): Piece[] {
  const where = sheet === null ? '' : `$${quoteSheetName(sheet)}`
  return [`[${where}.`, ...cornerPieces(from), ...(to === null ? [] : [':.', ...cornerPieces(to)]), ']']
}

function cornerPieces({ row, column, rowAbsolute, columnAbsolute }: Corner): Piece[] {
  const letters = column === null ? '' : (columnAbsolute ? '$' : '') + columnLetters(column)
  if (row === null) return [letters]
  return rowAbsolute ? [`${letters}$${row + 1}`] : [letters, row + 1]
}

const ROUNDS_TO_STEPS: ReadonlySet<string> = new Set(['CEILING', 'FLOOR'])

/**
 * CEILING and FLOOR with a negative step round by size, which in OpenFormula a third argument asks for (part 4, 6.17.1 and 6.17.3):
 * what the step is, by the place of the ")" before which it is wanted. A step that cannot be negative needs none.
 */
function roundingModes(tokens: readonly Token[]): ReadonlyMap<number, readonly Token[]> {
  if (!tokens.some(({ kind, text }) => kind === 'function' && ROUNDS_TO_STEPS.has(text))) return new Map()
  return new Map(calls(tokens).filter((call) => call.closed && ROUNDS_TO_STEPS.has(call.name)).flatMap((call) => {
    const step = stepOf(call, tokens)
    return step.length === 0 || (step.length === 1 && step[0]?.kind === 'number') ? [] : [[call.end - 1, step] as const]
  }))
}

function stepOf({ arguments: given }: Call, tokens: readonly Token[]): readonly Token[] {
  const [, step] = given
  return step === undefined || given.length !== 2 ? [] : tokens.filter(({ kind, start, end }) => kind !== 'whitespace' && step.start <= start && end <= step.end)
}
