import type { Sheet } from '../workbook/document.ts'
import { mayHeadNumbers, standsOverNumbers } from '../workbook/over-numbers.ts'
import { rowKind } from '../workbook/row-kind.ts'
import type { Band } from './bands.ts'
import { bodies, MOST_KEPT_WHOLE } from '../pages/bodies.ts'
import { element, type Child, type Html } from '../pages/html.ts'
import { mark } from '../pages/marks.ts'
import { outlineOf, type Outline } from './outline.ts'
import type { PrintedCell } from './printed-cell.ts'
import type { PrintedCells } from './printed-cells.ts'

/** What of a sheet stands in a band of its columns. */
export type BandRows = Pick<Outline, 'head' | 'blocks'>

/** All rows, or where the first columns only repeat what an earlier band has, those with something in the band's own columns, and their headings. */
export function bandRows(sheet: Sheet, printed: PrintedCells, { columns, repeated }: Band): BandRows {
  const { head, blocks } = outlineOf(sheet)
  if (repeated === 0) return { head, blocks }
  const own = columns.slice(repeated)
  const hasOwn = (row: number): boolean => own.some(({ column }) => printed.at(row, column) !== undefined)
  const isHeading = (row: number): boolean => rowKind(sheet.rows[row]) !== 'plain'
  return { head: head.filter(hasOwn), blocks: blocks.filter((block) => block.some(hasOwn)).map((block) => block.filter((row) => hasOwn(row) || isHeading(row))) }
}

/** A band of a sheet: one table headed by the rows that stay in view; a long block with column headings of its own is a table headed by those. */
export function bandTables(sheet: Sheet, printed: PrintedCells, band: Band, { head, blocks }: BandRows, className: string): readonly Html[] {
  const repeatedFrom = firstRepeated(sheet, head)
  const tables: { head: readonly number[]; readonly blocks: (readonly number[])[] }[] = [
    ...(repeatedFrom > 0 ? [{ head: [], blocks: [head.slice(0, repeatedFrom)] }] : []), { head: head.slice(repeatedFrom), blocks: [] },
  ]
  for (const block of withHeads(sheet, printed, band, blocks)) {
    const ownHead = headOf(sheet, printed, band, block)
    const last = tables.at(-1)
    if (ownHead === 0 || block.length - ownHead <= MOST_KEPT_WHOLE) {
      last?.blocks.push(block)
      continue
    }
    const table = { head: block.slice(0, ownHead), blocks: [block.slice(ownHead)] }
    // A table of its head alone is none.
    if (last?.blocks.length === 0) tables.splice(-1, 1, { ...table, head: [...last.head, ...table.head] })
    else tables.push(table)
    tables.push({ head: [], blocks: [] })
  }
  return tables.filter(({ head: rows, blocks: some }) => rows.length + some.length > 0).map((table) => bandTable(sheet, printed, band, table, className))
}

/** A browser repeats no head that takes more than a quarter of the page. */
const MOST_REPEATED_ROWS = 6

/** From which of the rows that stay in view on they head every page: of many only the last headings with what follows them. */
function firstRepeated(sheet: Sheet, head: readonly number[]): number {
  if (head.length <= MOST_REPEATED_ROWS) return 0
  const last = head.findLastIndex((row) => rowKind(sheet.rows[row]) === 'heading')
  const before = head.findLastIndex((row, index) => index < last && rowKind(sheet.rows[row]) !== 'heading')
  return last < 0 ? 0 : before + 1
}

/** Fewer headings are no head of a table. */
const LEAST_HEADINGS = 3

/** Blocks, those that are nothing but a head made one with what they head. */
function withHeads(sheet: Sheet, printed: PrintedCells, band: Band, blocks: BandRows['blocks']): BandRows['blocks'] {
  const made: (readonly number[])[] = []
  for (const block of blocks) {
    const before = made.at(-1)
    const isHeaded = before !== undefined && headOf(sheet, printed, band, before) === before.length && rowKind(sheet.rows[block[0] ?? 0]) === 'plain'
    if (isHeaded) made.splice(-1, 1, [...before, ...block])
    else made.push(block)
  }
  return made
}

/** How many rows at the start of a block head its columns: headings, and the units under them. */
function headOf(sheet: Sheet, printed: PrintedCells, { columns }: Band, block: readonly number[]): number {
  const cellsOf = (row: number): readonly PrintedCell[] => columns.flatMap(({ column }) => printed.at(row, column) ?? [])
  const isHeading = (row: number): boolean => rowKind(sheet.rows[row]) === 'heading'
  const isUnits = (row: number): boolean => cellsOf(row).every(({ role }) => role === 'unit')
  const headings = rowsAtStart(block, isHeading)
  return block.slice(0, headings).some((row) => cellsOf(row).length >= LEAST_HEADINGS) ? headings + rowsAtStart(block.slice(headings), isUnits) : 0
}

function rowsAtStart(rows: readonly number[], is: (row: number) => boolean): number {
  const end = rows.findIndex((row) => !is(row))
  return end < 0 ? rows.length : end
}

function bandTable(sheet: Sheet, printed: PrintedCells, band: Band, { head, blocks }: BandRows, className: string): Html {
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
    const isOver = mayHeadNumbers(cell.role) && standsOverNumbers(sheet.rows, row, column) && comesToNumbers(printed, row, column)
    let end = place + 1
    if (!cell.staysIn && !isOver) while (end < places && !isFilled(printed, row, columns[end]?.column)) end++
    const attributes = {
      class: [`role-${cell.role}`, ...(cell.kind === 'text' ? [] : [cell.kind]), ...(isOver ? ['over-numbers'] : []), ...(cell.checked === undefined ? [] : [CHECKED[cell.checked]])].join(' '),
      colspan: end - place > 1 ? end - place : undefined,
    }
    const pad = cell.kind === 'number' ? printed.padOf(row, column) : ''
    cells.push(element(cellTag, attributes, cellContent(cell, printed.numbersOf(row, column), pad)))
    place = end
  }
  const kind = rowKind(sheet.rows[row])
  return element('tr', { class: [...(kind === 'plain' ? [] : [`row-${kind}`]), ...(isFirst ? ['first'] : [])].join(' ') || undefined }, cells)
}

const CHECKED = { good: 'checked', stale: 'checked-stale' } as const

/** A formula may come to a text. */
const comesToNumbers = (printed: PrintedCells, row: number, column: number): boolean =>
  Array.from({ length: ROWS_LOOKED_AT }, (_, index) => printed.at(row + 1 + index, column)).some((cell) => cell?.kind === 'number')

const ROWS_LOOKED_AT = 8

const isFilled = (printed: PrintedCells, row: number, column: number | undefined): boolean => column !== undefined && printed.at(row, column) !== undefined

function cellContent({ kind, role, text }: PrintedCell, footnotes: readonly number[], pad: string): Child {
  const isMarked = kind === 'met' || kind === 'not-met' || kind === 'error'
  const content: Child = [
    isMarked ? mark(kind) : undefined,
    text,
    pad === '' ? undefined : element('i', {}, pad),
    footnotes.length === 0 ? undefined : element('sup', {}, footnotes.join(', ')),
  ]
  // The line under an input lies under the last line of its text.
  return role === 'input' ? element('span', {}, content) : content
}
