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
/** Bold small capitals, measured as capitals of this size, which no usual typeface exceeds, and the space after each. */
const SMALL_CAPITALS = 11.6
const SMALL_CAPITALS_SPACE = 0.8
/** What a text may be wider than its characters apart. */
const KERNING = 1.05

/** These go on in a further line rather than be cut off where the cell on their right is filled. */
const WRAPPING: ReadonlySet<Role> = new Set(['label', 'heading', 'note', 'text'])

/** The heights of the rows of a sheet that hold something, from the content alone, so that they are the same wherever one scrolls. */
export interface RowHeights {
  /** Of each row; the one it had before, or else the usual one, while its own is not worked out. */
  readonly sizes: ArrayLike<number>
  /** How many are still to be worked out. */
  readonly left: number
  /** Works out those of some rows; true if one of them is another one than before. */
  measure(first: number, last: number): boolean
  /** Works out some more, from the top on. */
  measureNext(): boolean
}

/** Rows worked out without anybody waiting: a tenth of a millisecond, a few where texts are long. */
const MEASURED_AT_ONCE = 200

/**
 * The heights after each change of a sheet. Of many changed rows the first are worked out at once, the others when they come into view or as
 * time allows. `sizes` is the very list of before if no height is another one, so that an edit lays nothing out again.
 */
export function createRowHeights(textWidth: TextWidth, linePx = LINE_HEIGHT): (sheet: Sheet) => RowHeights {
  const known = new WeakMap<Sheet['rows'], Measured>()
  let before: Measured | undefined
  return (sheet) => {
    const kept = known.get(sheet.rows)
    before = kept?.columns === sheet.columns ? kept : measured(sheet, before?.name === sheet.name ? before : undefined, (row) => rowHeight(row, sheet, textWidth, linePx))
    known.set(sheet.rows, before)
    return before
  }
}

interface Measured extends RowHeights {
  readonly name: string
  readonly sizes: Float64Array
  readonly rows: readonly Row[]
  readonly columns: readonly number[]
  readonly isKnown: Uint8Array
}

function measured(sheet: Sheet, before: Measured | undefined, heightOf: (row: Row) => number): Measured {
  const { name, rows, columns } = sheet
  const start = before ? carriedOver(sheet, before) : nothingKnown(rows.length)
  const { isKnown } = start
  let { sizes, left } = start
  let next = 0

  function measureOne(index: number): boolean {
    if (isKnown[index]) return false
    const height = heightOf(rows[index])
    isKnown[index] = 1
    left--
    if (sizes[index] === height) return false
    sizes[index] = height
    return true
  }
  function measureNext(): boolean {
    let isOther = false
    for (let done = 0; done < MEASURED_AT_ONCE && next < rows.length; next++) {
      if (isKnown[next]) continue
      if (measureOne(next)) isOther = true
      done++
    }
    return isOther
  }

  measureNext()
  if (before && canShare(before, sizes, isKnown)) sizes = before.sizes
  return {
    name, rows, columns, isKnown, sizes, measureNext,
    get left() {
      return left
    },
    measure(first, last) {
      let isOther = false
      for (let index = first; index <= Math.min(last, rows.length - 1); index++) if (measureOne(index)) isOther = true
      return isOther
    },
  }
}

interface Start {
  readonly sizes: Float64Array
  readonly isKnown: Uint8Array
  readonly left: number
}

const nothingKnown = (count: number): Start => ({ sizes: new Float64Array(count).fill(ROW_HEIGHT), isKnown: new Uint8Array(count), left: count })

/** What is known of rows that were there before. In a long sheet every row is passed here with each edit. */
function carriedOver({ rows, columns }: Sheet, before: Measured): Start {
  const { sizes, isKnown } = nothingKnown(rows.length)
  const isAsWide = before.columns === columns
  // Rows below an inserted or a deleted one are the same, only elsewhere; with formulas that follow, they have their other cells in common.
  const shift = before.rows.length - rows.length
  let left = 0
  for (let index = 0; index < rows.length; index++) {
    const row = rows[index]
    const [here, there] = [before.rows[index], before.rows[index + shift]]
    const from = here === row || (there !== row && there?.[0] !== row?.[0]) ? index : index + shift
    sizes[index] = before.sizes[from] ?? ROW_HEIGHT
    if (isAsWide && before.rows[from] === row && before.isKnown[from]) isKnown[index] = 1
    else left++
  }
  return { sizes, isKnown, left }
}

/** Whether a list of heights can go on as the one of before: none of what was known there is still to be worked out here. */
function canShare(before: Measured, sizes: Float64Array, isKnown: Uint8Array): boolean {
  return before.sizes.length === sizes.length && sizes.every((size, index) => size === before.sizes[index] && (isKnown[index] === 1 || before.isKnown[index] === 0))
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
