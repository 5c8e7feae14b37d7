import type { AreaValues, SheetState } from '../calc/values.ts'
import { stateWords } from '../calc/state-words.ts'
import { columnLetters } from '../workbook/address.ts'
import { spans } from '../workbook/areas.ts'
import type { Sheet } from '../workbook/document.ts'
import type { Paper } from '../workbook/report-settings.ts'
import { layOut, type Band, type Layout } from './bands.ts'
import { columnNeeds } from './column-needs.ts'
import { element, type Html } from '../pages/html.ts'
import type { Orientation } from '../pages/paper.ts'
import { printedCells } from './printed-cells.ts'
import { bandRows, bandTables } from './sheet-tables.ts'

/** A sheet of the report, and how its columns lie. */
export interface SheetSection {
  readonly markup: Html
  readonly layout: Layout
}

/** Parts of a wide sheet with so few rows share pages; longer ones begin pages of their own. */
const MOST_ROWS_OF_SHORT = 25

/** The sheet as it stands in the grid, in several parts where it is wider than a page; then its figures. */
export function sheetSection(sheet: Sheet, values: AreaValues, state: SheetState | undefined, paper: Paper, className: string, figures: (orientation: Orientation) => readonly Html[], checkedAt?: Parameters<typeof printedCells>[2]): SheetSection {
  const printed = printedCells(sheet, values, checkedAt)
  const layout = layOut(columnNeeds(sheet, printed), sheet.frozen[1], paper)
  const words = stateWords(state).words
  const markup = element(
    'section', { class: `sheet ${className}${layout.orientation === 'landscape' ? ' turned' : ''}` },
    element('h2', {}, `Sheet ${sheet.name}`, words === '' ? undefined : element('span', {}, words)),
    layout.bands.map((band, index) => {
      const rows = bandRows(sheet, printed, band)
      const tables = bandTables(sheet, printed, band, rows, `${className}-${index + 1}`)
      if (layout.bands.length === 1) return tables
      const isShort = rows.blocks.reduce((sum, block) => sum + block.length, rows.head.length) <= MOST_ROWS_OF_SHORT
      return element('div', { class: isShort ? 'part short' : 'part' }, element('p', {}, `${sheet.name}: ${partWords(band, index, layout.bands.length)}`), tables)
    }),
    printed.remarks.length === 0 ? undefined : element('ol', { class: 'footnotes' }, printed.remarks.map(({ address, text }) => element('li', {}, element('b', {}, address), ` ${text}`))),
    figures(layout.orientation),
  )
  return { markup, layout }
}

const partWords = ({ columns }: Band, index: number, count: number): string => {
  const runs = spans(columns.map(({ column }) => ({ first: column, last: column })))
  const words = runs.map(({ first, last }) => (first === last ? columnLetters(first) : `${columnLetters(first)} to ${columnLetters(last)}`))
  return `columns ${words.join(', ')} (part ${index + 1} of ${count})`
}
