import { columnWidth, type Role, type Row, type Sheet } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { rowKind } from '../../workbook/row-kind.ts'
import type { TextWidth } from './text-width.ts'

export const ROW_HEIGHT = 26
/** Left and right of a cell's text, together. */
export const CELL_PADDING = 16

const LINE_HEIGHT = 18

/** What a row with a title or a heading has more than others, all above its text. */
const EXTRA_HEIGHT = { title: 20, heading: 12, plain: 0 } as const
const FONT_SIZE: Partial<Record<Role, number>> = { title: 20, note: 12, text: 12 }
const USUAL_FONT_SIZE = 13
/** Bold small capitals, measured as capitals of this size, and the space after each. */
const SMALL_CAPITALS = 12
const SMALL_CAPITALS_SPACE = 0.8
/** What a text may be wider than its characters apart. */
const KERNING = 1.05

/** These go on in a further line rather than be cut off where the cell on their right is filled. */
const WRAPPING: ReadonlySet<Role> = new Set(['label', 'heading', 'note', 'text'])

/** The heights of the rows that hold something, from the content alone, so that they are the same wherever one scrolls. */
export function createRowHeights(textWidth: TextWidth, linePx = LINE_HEIGHT): (sheet: Sheet) => readonly number[] {
  let before: Measured | undefined
  return (sheet) => {
    const kept = before?.sheet.columns === sheet.columns ? before : undefined
    const heights = kept?.sheet.rows === sheet.rows ? kept.heights : heightsOf(sheet, kept, (row) => rowHeight(row, sheet, textWidth, linePx))
    before = { sheet, heights }
    return heights
  }
}

interface Measured {
  readonly sheet: Sheet
  readonly heights: readonly number[]
}

/** The very list kept if no height is another one, so that an edit lays nothing out again. In a long sheet every row is passed here with each edit. */
function heightsOf({ rows }: Sheet, kept: Measured | undefined, heightOf: (row: Row) => number): readonly number[] {
  if (!kept) return Array.from(rows, heightOf)
  // Rows below an inserted or a deleted one are the same, only elsewhere.
  const shift = kept.heights.length - rows.length
  const known = (row: Row, index: number): number | undefined => (kept.sheet.rows[index] === row ? kept.heights[index] : undefined)
  const heights: number[] = []
  let isSame = shift === 0
  for (let index = 0; index < rows.length; index++) {
    const row = rows[index]
    const height = known(row, index) ?? known(row, index + shift) ?? heightOf(row)
    heights.push(height)
    isSame &&= height === kept.heights[index]
  }
  return isSame ? kept.heights : heights
}

/** Whether a cell's text is broken into lines: where it is told to, or else would be cut off. */
export function wraps(row: Row, column: number): boolean {
  const cell = row?.[column]
  if (!cell || cell.wrap) return cell !== undefined
  return WRAPPING.has(cell.role) && (row?.[column + 1]?.content ?? null) !== null
}

/** How wide a text is in the type of its role, in px. */
export function widthInRole(text: string, role: Role, textWidth: TextWidth): number {
  if (role === 'heading') return textWidth(text.toUpperCase(), SMALL_CAPITALS) + text.length * SMALL_CAPITALS_SPACE
  return textWidth(text, FONT_SIZE[role] ?? USUAL_FONT_SIZE)
}

function rowHeight(row: Row, sheet: Sheet, textWidth: TextWidth, linePx: number): number {
  let lines = 1
  for (let column = 0; column < (row?.length ?? 0); column++) {
    const cell = row?.[column]
    const text = cell && wraps(row, column) ? meantText(cell.content) : undefined
    if (!cell || text === undefined) continue
    const width = columnWidth(sheet, column) - CELL_PADDING
    if (!text.includes('\n') && atMost(text, cell.role, textWidth) <= width) continue
    lines = Math.max(lines, text.split('\n').reduce((sum, line) => sum + wrappedLines(line, width, (part) => widthInRole(part, cell.role, textWidth)), 0))
  }
  return ROW_HEIGHT + Math.ceil((lines - 1) * linePx) + EXTRA_HEIGHT[rowKind(row)]
}

/** A width that a text does not exceed. Characters are few and known soon, while each new text would have to be measured. */
function atMost(text: string, role: Role, textWidth: TextWidth): number {
  let width = 0
  for (const character of text) width += widthInRole(character, role, textWidth)
  return width * KERNING
}

/** Lines that a text takes when broken at blanks, a longer word being broken inside. */
export function wrappedLines(text: string, width: number, widthOf: (part: string) => number): number {
  const blank = widthOf(' ')
  let lines = 1
  let used = 0
  for (const word of text.split(' ')) {
    const needed = widthOf(word)
    if (used === 0 || used + blank + needed <= width) used += needed + (used === 0 ? 0 : blank)
    else {
      lines++
      used = needed
    }
    if (used > width) {
      const whole = Math.ceil(used / Math.max(1, width)) - 1
      lines += whole
      used -= whole * width
    }
  }
  return lines
}
