import type { Corner, Reference } from '../address.ts'
import { foldCase } from '../document.ts'
import type { LineAxis } from '../line-edits.ts'
import { MAX_COLUMNS, MAX_ROWS } from '../limits.ts'

/** What becomes of the lines from the first to the last one of a reference: where they are then, or null if they are gone. */
export type LineShift = (first: number, last: number) => readonly [first: number, last: number] | null

/** Ranges that the new lines fall into grow. */
export function inserting(axis: LineAxis, at: number, count: number): LineShift {
  const end = axis === 'rows' ? MAX_ROWS - 1 : MAX_COLUMNS - 1
  const shifted = (line: number): number => (line >= at ? line + count : line)
  return (first, last) => (shifted(first) > end ? null : [shifted(first), Math.min(end, shifted(last))])
}

/** Ranges shrink by what they lose. */
export function deleting(at: number, count: number): LineShift {
  return (first, last) => {
    if (first >= at && last < at + count) return null
    const newFirst = first < at ? first : Math.max(at, first - count)
    const newLast = last < at ? last : Math.max(at - 1, last - count)
    return [newFirst, newLast]
  }
}

/**
 * A range follows its lines as long as they stay together. Where some of them are moved out it keeps the others, and where lines are moved in
 * between it takes them in.
 */
export function moving(at: number, count: number, to: number): LineShift {
  const isMoved = (line: number): boolean => line >= at && line < at + count
  const rest = (line: number): number => (line < at ? line : line - count)
  const shifted = (line: number): number => {
    if (isMoved(line)) return line - at + to
    return rest(line) < to ? rest(line) : rest(line) + count
  }
  return (first, last) => {
    const [firstStays, lastStays] = [isMoved(first) ? at + count : first, isMoved(last) ? at - 1 : last]
    if (firstStays > lastStays) return [shifted(first), shifted(last)]
    const stay = [shifted(firstStays), shifted(lastStays)] as const
    const [from, till] = [Math.max(first, at), Math.min(last, at + count - 1)]
    if (from > till) return stay
    const together = [Math.min(stay[0], shifted(from)), Math.max(stay[1], shifted(till))] as const
    return together[1] - together[0] === last - first ? together : stay
  }
}

/** The reference after lines of `sheet` were rearranged; `host` is the sheet that it is written on. The same object if nothing becomes of it. */
export function shiftedReference(reference: Reference, host: string | null, sheet: string, axis: LineAxis, shift: LineShift): Reference | null {
  const name = reference.sheet ?? host
  if (name === null || foldCase(name) !== foldCase(sheet)) return reference
  const to = reference.to ?? reference.from
  const [one, other] = [lineOf(reference.from, axis), lineOf(to, axis)]
  if (one === null || other === null) return reference
  const [first, last] = one <= other ? [one, other] : [other, one]
  const after = shift(first, last)
  if (after === null) return null
  if (after[0] === first && after[1] === last) return reference
  const [newOne, newOther] = one <= other ? after : [after[1], after[0]]
  return { ...reference, from: withLine(reference.from, axis, newOne), to: reference.to && withLine(to, axis, newOther) }
}

/**
 * Whether a formula can have a reference to a line from `first` on, by the numbers or the column letters that stand in its text. Never false where
 * there is one; most formulas above the lines that move are known by this at a twentieth of what reading them takes.
 */
export const mayReach = (formula: string, axis: LineAxis, first: number): boolean => (axis === 'rows' ? hasNumberFrom(formula, first + 1) : hasLettersFrom(formula, first + 1))

function hasNumberFrom(text: string, least: number): boolean {
  let number = 0
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index)
    number = code >= 48 && code <= 57 ? number * 10 + code - 48 : 0
    if (number >= least) return true
  }
  return false
}

/** Of up to three letters, with a row number, `$` or `:` right after them, or `$` or `:` right before. */
function hasLettersFrom(text: string, least: number): boolean {
  let start = 0
  let column = 0
  for (let index = 0; index <= text.length; index++) {
    const letter = (text.charCodeAt(index) | 32) - 96
    if (letter >= 1 && letter <= 26) {
      column = column * 26 + letter
      continue
    }
    if (column >= least && index - start <= 3 && (isBesideColumn(text.charCodeAt(index)) || MARKS.has(text.charCodeAt(start - 1)))) return true
    start = index + 1
    column = 0
  }
  return false
}

const MARKS: ReadonlySet<number> = new Set([':', '$'].map((mark) => mark.charCodeAt(0)))
const isBesideColumn = (code: number): boolean => (code >= 48 && code <= 57) || MARKS.has(code)

const lineOf = ({ row, column }: Corner, axis: LineAxis): number | null => (axis === 'rows' ? row : column)

const withLine = (corner: Corner, axis: LineAxis, line: number): Corner => (axis === 'rows' ? { ...corner, row: line } : { ...corner, column: line })
