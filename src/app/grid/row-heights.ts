import { columnWidth, type Role, type Row, type Sheet } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
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
/** No character is wider, in px, in any role that wraps. */
const WIDEST_CHARACTER = 15

/** These go on in a further line rather than be cut off where the cell on their right is filled. */
const WRAPPING: ReadonlySet<Role> = new Set(['label', 'heading', 'note', 'text'])

/** The heights of the rows that hold something, from the content alone, so that they are the same wherever one scrolls. */
export function createRowHeights(textWidth: TextWidth): (sheet: Sheet) => readonly number[] {
  let before: { readonly sheet: Sheet; readonly heights: readonly number[] } | undefined
  return (sheet) => {
    const kept = before?.sheet.columns === sheet.columns ? before : undefined
    let heights = kept?.heights ?? []
    if (kept?.sheet.rows !== sheet.rows) {
      heights = Array.from(sheet.rows, (row, index) => {
        const known = kept && kept.sheet.rows[index] === row ? kept.heights[index] : undefined
        return known ?? rowHeight(row, sheet, textWidth)
      })
    }
    before = { sheet, heights }
    return heights
  }
}

/** A row with a title or a heading in it stands apart, and all its cells with it. */
export function rowKind(row: Row): 'title' | 'heading' | 'plain' {
  const roles = row?.map((cell) => cell?.role) ?? []
  return roles.includes('title') ? 'title' : roles.includes('heading') ? 'heading' : 'plain'
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

function rowHeight(row: Row, sheet: Sheet, textWidth: TextWidth): number {
  let lines = 1
  for (let column = 0; column < (row?.length ?? 0); column++) {
    const cell = row?.[column]
    const text = cell && wraps(row, column) ? meantText(cell.content) : undefined
    if (!cell || text === undefined) continue
    const width = columnWidth(sheet, column) - CELL_PADDING
    if (!text.includes('\n') && text.length * WIDEST_CHARACTER <= width) continue
    lines = Math.max(lines, text.split('\n').reduce((sum, line) => sum + wrappedLines(line, width, (part) => widthInRole(part, cell.role, textWidth)), 0))
  }
  return ROW_HEIGHT + (lines - 1) * LINE_HEIGHT + EXTRA_HEIGHT[rowKind(row)]
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
