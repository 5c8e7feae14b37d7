import type { AreaValues, SheetState } from '../calc/values.ts'
import { stateWords } from '../calc/state-words.ts'
import { columnLetters } from '../workbook/address.ts'
import { spans } from '../workbook/areas.ts'
import type { Sheet } from '../workbook/document.ts'
import { mayHeadNumbers, standsOverNumbers } from '../workbook/over-numbers.ts'
import type { Paper } from '../workbook/report-settings.ts'
import { rowKind } from '../workbook/row-kind.ts'
import { layOut, type Band, type Layout } from './bands.ts'
import { bodies } from './bodies.ts'
import { columnNeeds } from './column-needs.ts'
import { element, type Child, type Html } from './html.ts'
import { mark } from './marks.ts'
import { outlineOf, printedRowCount } from './outline.ts'
import type { PrintedCell } from './printed-cell.ts'
import { printedCells, type PrintedCells } from './printed-cells.ts'

/** A sheet of the report, and how its columns lie. */
export interface SheetSection {
  readonly markup: Html
  readonly layout: Layout
}

/** Parts of a wide sheet with so few rows share pages; longer ones begin pages of their own. */
const MOST_ROWS_OF_SHORT = 15

/** The sheet as it stands in the grid, as one table, or as several where it is wider than a page. */
export function sheetSection(sheet: Sheet, values: AreaValues, state: SheetState | undefined, paper: Paper, className: string): SheetSection {
  const printed = printedCells(sheet, values)
  const layout = layOut(columnNeeds(sheet, printed), sheet.frozen[1], paper)
  const words = stateWords(state).words
  const markup = element(
    'section', { class: `sheet ${className}` },
    element('h2', {}, `Sheet ${sheet.name}`, words === '' ? undefined : element('span', {}, words)),
    layout.bands.map((band, index) => {
      const table = bandTable(sheet, printed, band, `${className}-${index + 1}`)
      const isShort = printedRowCount(sheet) <= MOST_ROWS_OF_SHORT
      return layout.bands.length === 1 ? table : element('div', { class: isShort ? 'part short' : 'part' }, element('p', {}, partWords(band, index, layout.bands.length)), table)
    }),
    printed.remarks.length === 0 ? undefined : element('ol', { class: 'footnotes' }, printed.remarks.map(({ address, text }) => element('li', {}, element('b', {}, address), ` ${text}`))),
  )
  return { markup, layout }
}

const partWords = ({ columns }: Band, index: number, count: number): string => {
  const runs = spans(columns.map(({ column }) => ({ first: column, last: column })))
  const words = runs.map(({ first, last }) => (first === last ? columnLetters(first) : `${columnLetters(first)} to ${columnLetters(last)}`))
  return `Columns ${words.join(', ')} (part ${index + 1} of ${count})`
}

function bandTable(sheet: Sheet, printed: PrintedCells, band: Band, className: string): Html {
  const { head, blocks } = outlineOf(sheet)
  const rowOf = (row: number, cellTag: 'th' | 'td', isFirst: boolean): Html => tableRow(sheet, printed, band, row, cellTag, isFirst)
  return element(
    'table', { class: className },
    element('colgroup', {}, [...band.columns, ...(band.rest > 0 ? ['rest'] : [])].map(() => element('col', {}))),
    head.length === 0 ? undefined : element('thead', {}, head.map((row) => rowOf(row, 'th', false))),
    blocks.map((block) => bodies(block.map((row, index) => rowOf(row, 'td', index === 0)))),
  )
}

function tableRow(sheet: Sheet, printed: PrintedCells, { columns, rest }: Band, row: number, cellTag: 'th' | 'td', isFirst: boolean): Html {
  const cells: Html[] = []
  const places = columns.length + (rest > 0 ? 1 : 0)
  let place = 0
  while (place < places) {
    const column = columns[place]?.column
    const cell = column === undefined ? undefined : printed.at(row, column)
    if (column === undefined || cell === undefined) {
      cells.push(element(cellTag, {}))
      place++
      continue
    }
    const isOver = mayHeadNumbers(cell.role) && standsOverNumbers(sheet.rows, row, column)
    let end = place + 1
    if (!cell.staysIn && !isOver) while (end < places && !isFilled(printed, row, columns[end]?.column)) end++
    const pad = cell.kind === 'number' ? printed.padOf(row, column) : ''
    const attributes = {
      class: [`role-${cell.role}`, ...(cell.kind === 'text' ? [] : [cell.kind]), ...(isOver ? ['over-numbers'] : [])].join(' '),
      'colspan': end - place > 1 ? end - place : undefined,
      'data-pad': pad === '' ? undefined : pad,
    }
    cells.push(element(cellTag, attributes, cellContent(cell, printed.numbersOf(row, column))))
    place = end
  }
  const kind = rowKind(sheet.rows[row])
  return element('tr', { class: [...(kind === 'plain' ? [] : [`row-${kind}`]), ...(isFirst ? ['first'] : [])].join(' ') || undefined }, cells)
}

const isFilled = (printed: PrintedCells, row: number, column: number | undefined): boolean => column !== undefined && printed.at(row, column) !== undefined

function cellContent({ kind, text }: PrintedCell, footnotes: readonly number[]): Child {
  const isMarked = kind === 'met' || kind === 'not-met' || kind === 'error'
  return [
    isMarked ? mark(kind) : undefined,
    text,
    footnotes.length === 0 ? undefined : element('sup', {}, footnotes.join(', ')),
  ]
}
