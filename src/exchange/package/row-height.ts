import type { FileCell } from './file-sheet.ts'
import { LOOKS, PLAIN_FONT, type LookParts } from './looks.ts'

/**
 * The height of a row, in points, in which every text that goes on several lines is seen whole; undefined where one line will do. Programs
 * take the height that the file gives, and few work one out themselves.
 */
export function heightFor(cells: readonly (FileCell | undefined)[], widthsPx: readonly number[]): number | undefined {
  let most = 1
  for (const [column, cell] of cells.entries()) {
    if (cell === undefined || typeof cell.value !== 'string') continue
    const parts: LookParts = LOOKS[cell.style.look]
    if (!cell.style.wrap && !parts.header) continue
    const widthPx = widthsPx.slice(column, column + (cell.across ?? 1)).reduce((sum, width) => sum + width, 0)
    const letterPx = (PX_PER_POINT * (parts.font?.size ?? PLAIN_FONT.size) * (parts.font?.bold ? BOLD : 1)) / 1000
    most = Math.max(most, linesOf(cell.value, (widthPx - INSET_PX) / letterPx))
  }
  return most === 1 ? undefined : Math.min(MOST_PT, most * LINE_PT + EDGE_PT)
}

const PX_PER_POINT = 96 / 72
/** Left free at both sides of a text together. */
const INSET_PX = 8
const BOLD = 1.08
const LINE_PT = 13
const EDGE_PT = 3
/** What a row has at most (ECMA-376, part 1, 18.3.1.73). */
const MOST_PT = 409

/** How many lines a text takes, broken at blanks; a word that is longer than a line at its letters. */
function linesOf(text: string, width: number): number {
  return text.split('\n').reduce((sum, paragraph) => {
    let [lines, used] = [1, 0]
    for (const word of paragraph.split(/\s+/)) {
      const length = widthOf(word)
      if (used > 0 && used + BLANK + length > width) [lines, used] = [lines + 1, 0]
      used += (used > 0 ? BLANK : 0) + length
      if (used > width) [lines, used] = [lines + Math.ceil(used / width) - 1, used % width]
    }
    return sum + lines
  }, 0)
}

/** In thousandths of the letters' height, of a common face without serifs; from memory of its published metrics. */
const WIDTHS: readonly (readonly [letters: string, width: number])[] = [
  ["'ijl|", 222], [' .,:;!/\\ftI[]·', 278], ['()-r`"°', 355], ['ckszvxyJ', 500], ['ABEKPSVXY&', 667], ['CDHNRUw', 722], ['GOQm', 800], ['MW%@—→Δ', 950],
]
const USUAL = 556
const BLANK = 278
const byLetter = new Map(WIDTHS.flatMap(([letters, width]) => [...letters].map((letter) => [letter, width] as const)))

const widthOf = (word: string): number => [...word].reduce((sum, letter) => sum + (byLetter.get(letter) ?? (letter > '\u2e80' ? 1000 : USUAL)), 0)
