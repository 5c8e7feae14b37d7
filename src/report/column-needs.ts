import { columnWidth, type Sheet } from '../workbook/document.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import type { ColumnNeed } from './bands.ts'
import { outlineOf } from './outline.ts'
import { SHORT_TEXT, type PrintedCell } from './printed-cell.ts'
import type { PrintedCells } from './printed-cells.ts'

/** Type on paper against type on the screen: 8.5 pt for 13 px. */
const PAPER_SCALE = (8.5 * 96) / 72 / 13

/** In CSS px of the page; no usual typeface has wider digits, letters of a text being narrower on average. */
const DIGIT_WIDTH = 7.9
const LETTER_WIDTH = 6.6
/** Bold small capitals, spaced. */
const HEADING_LETTER_WIDTH = 9
const PADDING = 13
/** The mark before what an error or a check says. */
const MARK_WIDTH = 14

/** Texts may be broken into lines of this share of the width that they have on the screen; labels are what one looks for. */
const NARROWEST_SHARES = { labels: 0.8, texts: 0.5 } as const
/** A longer word is broken rather than be given more. */
const LONGEST_WORD = 130

/** What the columns of a sheet ask for on paper, from what stands in them. */
export function columnNeeds(sheet: Sheet, { at, padOf }: Pick<PrintedCells, 'at' | 'padOf'>): ColumnNeed[] {
  const { head, blocks, columns } = outlineOf(sheet)
  const rows = [...head, ...blocks.flat()]
  return columns.map((column) => {
    const wantedOnScreen = columnWidth(sheet, column) * PAPER_SCALE
    let [least, hasText, hasLabels, followsOn] = [PADDING, false, false, false]
    for (const row of rows) {
      const cell = at(row, column)
      if (!cell) continue
      const standsAlone = cell.staysIn || at(row, column + 1) !== undefined
      const isLong = standsAlone && cell.kind === 'text' && cell.text.length > SHORT_TEXT
      hasText ||= isLong
      hasLabels ||= isLong && cell.role === 'label'
      least = Math.max(least, leastWidth(cell, standsAlone, padOf(row, column)))
      followsOn ||= cell.role === 'unit' && column > 0 && unitOfValue(sheet, { row, column: column - 1 })?.column === column
    }
    const narrowed = hasText ? wantedOnScreen * NARROWEST_SHARES[hasLabels ? 'labels' : 'texts'] : 0
    const needed = Math.max(least, narrowed)
    return { column, wanted: Math.max(wantedOnScreen, needed), least: needed, isShort: !hasText, followsOn }
  })
}

function leastWidth({ text, kind, role, remarks }: PrintedCell, standsAlone: boolean, pad: string): number {
  const footnote = remarks.length > 0 ? DIGIT_WIDTH : 0
  if (kind === 'number' || role === 'unit') return (text.length + pad.length) * DIGIT_WIDTH + PADDING + footnote
  const room = PADDING + footnote + (kind === 'text' ? 0 : MARK_WIDTH)
  if (standsAlone && text.length <= SHORT_TEXT && role !== 'heading') return text.length * DIGIT_WIDTH + room
  const longest = text.split(/\s+/).reduce((most, word) => Math.max(most, word.length), standsAlone && kind !== 'text' ? SHORT_TEXT : 0)
  return Math.min(longest * (role === 'heading' ? HEADING_LETTER_WIDTH : LETTER_WIDTH), LONGEST_WORD) + room
}
