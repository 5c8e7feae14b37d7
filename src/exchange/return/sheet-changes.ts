import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import { isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import { labelOf } from '../../workbook/words-beside.ts'
import type { ReadCell, ReadSheet } from '../reading/contents.ts'
import { cellDifference } from './cell-changes.ts'
import type { NewCell } from './changes.ts'
import type { ExpectedCell, ExpectedRow } from './expected-sheet.ts'
import { contentInFile, plainContent } from './file-content.ts'
import type { Found } from './find-changes.ts'
import type { Back } from './formula-back.ts'
import type { FormulasCompared } from './formulas-compared.ts'
import type { RowMap, RowShift } from './row-shifts.ts'
import { sameText } from './same-value.ts'
import { readRows } from './sheet-matching.ts'

export interface Compared {
  readonly sheet: Sheet
  readonly expected: readonly ExpectedRow[]
  /** The sheet of the file; undefined where it is gone. */
  readonly read: ReadSheet | undefined
  readonly shifts: readonly RowShift[]
  readonly map: RowMap | undefined
  readonly formulas: FormulasCompared
  readonly back: Back
}

/** What differs on a sheet of the workbook. */
export function* sheetChanges({ sheet, expected, read, shifts, map = SAME_ROWS, formulas, back }: Compared): Generator<Found> {
  const words = quoteSheetName(sheet.name)
  if (read === undefined) {
    yield { kind: 'sheetRemoved', place: words, was: rowsInWords(sheet.rows.length), is: 'gone', sheet: sheet.name, taking: { words: 'Takes the sheet away; formulas that refer to it show that it is missing.' } }
    return
  }
  if (read.name !== sheet.name) {
    yield { kind: 'sheetRenamed', place: words, was: sheet.name, is: read.name, sheet: sheet.name, name: read.name, taking: { words: 'Gives the sheet that name, in every formula as well.' } }
  }
  for (const shift of shifts) yield rowsShifted(sheet, shift, read, back)

  const lastOld = expected.at(-1)?.row ?? -1
  const seen = new Set<number>()
  for (const { row, cells } of expected) {
    const now = map.after(row)
    if (now === undefined) continue
    seen.add(now)
    const found = read.rows[now] ?? []
    for (let column = 0; column < Math.max(cells.length, found.length); column++) yield* cellChanges(row, column, cells[column], found[column])
  }
  // Rows below the last one of the export that follow each other are one change, others come cell by cell.
  let added: AddedRows | undefined
  for (const { row: now, cells } of readRows(read)) {
    const row = seen.has(now) ? undefined : map.before(now)
    if (row === undefined || !cells.some(isFilled)) continue
    if (row > lastOld && cells.filter(isFilled).length > 1) {
      if (added && added.row + added.count === row) added = { ...added, count: added.count + 1, rows: [...added.rows, [now, cells]] }
      else {
        if (added) yield rowsAdded(sheet, added, back)
        added = { row, count: 1, rows: [[now, cells]] }
      }
    } else for (const [column, cell] of cells.entries()) yield* cellChanges(row, column, undefined, cell)
  }
  if (added) yield rowsAdded(sheet, added, back)

  function* cellChanges(row: number, column: number, exported: ExpectedCell | undefined, inFile: ReadCell | undefined): Generator<Found> {
    if (exported === undefined && inFile === undefined) return
    const cell = sheet.rows[row]?.[column]
    const place = `${words}!${printAddress(row, column)}`
    const difference = cellDifference({ cell, exported, inFile, host: sheet.name, formulas, back })
    if (difference) {
      const at = { sheet: sheet.name, row, column, place }
      if (difference.kind === 'input') {
        const label = labelOf(sheet, { row, column })
        yield { ...difference, ...at, place: label === undefined ? place : `${place} ${label}` }
      } else yield { ...difference, ...at }
    }
    const [noteBefore, noteNow] = [sameText(exported?.note ?? '').trim(), sameText(inFile?.note ?? '').trim()]
    if (noteBefore === noteNow) return
    yield { kind: 'noteChanged', sheet: sheet.name, row, column, place, was: noteBefore || 'no note', is: noteNow || 'no note', ...noteTaken(cell, noteBefore, noteNow) }
  }
}

const SAME_ROWS: RowMap = { after: (row) => row, before: (row) => row, reference: (first, last) => [first, last] }

const isFilled = (cell: ReadCell | undefined): boolean => cell !== undefined && (cell.formula !== undefined || (cell.value !== null && cell.value !== ''))

/** What the export adds to a note is no part of it. */
function noteTaken(cell: Cell | undefined, before: string, now: string): { readonly note: string; readonly taking: { readonly words: string } } {
  const own = sameText(cell?.note ?? '').trim()
  const added = before.slice(own.length).trim()
  const note = added !== '' && now.endsWith(added) ? now.slice(0, -added.length).trim() : added !== '' && added === now ? '' : now
  return { note, taking: { words: note === '' ? 'Takes the note away.' : 'Puts the note of the file in its place.' } }
}

function rowsShifted(sheet: Sheet, shift: RowShift, read: ReadSheet, back: Back): Found {
  const { kind, at, now, count } = shift
  const place = `${quoteSheetName(sheet.name)}!${rowNumbers(at, kind === 'inserted' ? 1 : count)}`
  if (kind === 'deleted') {
    const cells = sheet.rows.slice(at, at + count).reduce((sum, row) => sum + (row?.filter((cell) => cell?.content != null).length ?? 0), 0)
    return { kind: 'rowsDeleted', place, was: `${rowsInWords(count)} with ${cellsInWords(cells)}`, is: 'gone', shift, cells: [], taking: { words: 'Takes the rows away; formulas follow.' } }
  }
  const { cells, refused } = newCells(Array.from({ length: count }, (_, index) => [index, read.rows[now + index] ?? []] as const), sheet.name, back)
  return {
    kind: 'rowsInserted', place, was: 'no such rows', is: `${rowsInWords(count)} before it: ${listed(cells)}`, shift, cells,
    taking: { words: `Inserts ${rowsInWords(count)} with ${cellsInWords(cells.length)}; formulas follow.${refusedWords(refused)}` },
  }
}

interface AddedRows {
  readonly row: number
  readonly count: number
  readonly rows: readonly (readonly [now: number, cells: readonly (ReadCell | undefined)[]])[]
}

function rowsAdded(sheet: Sheet, { row, count, rows }: AddedRows, back: Back): Found {
  const { cells, refused } = newCells(rows.map(([, found], index) => [index, found] as const), sheet.name, back)
  return {
    kind: 'rowsAdded', place: `${quoteSheetName(sheet.name)}!${rowNumbers(row, count)}`, was: 'nothing', is: `${rowsInWords(count)}: ${listed(cells)}`, sheet: sheet.name, row, cells,
    taking: { words: `Puts ${cellsInWords(cells.length)} there.${refusedWords(refused)}` },
  }
}

/** The cells of new rows; a formula that cannot be brought back stays as a text of it. */
export function newCells(rows: Iterable<readonly [row: number, cells: readonly (ReadCell | undefined)[]]>, host: string, back: Back): { readonly cells: readonly NewCell[]; readonly refused: number } {
  const cells: NewCell[] = []
  let refused = 0
  for (const [row, found] of rows) {
    for (const [column, cell] of found.entries()) {
      if (cell === undefined || !isFilled(cell)) continue
      const content = contentInFile(cell, host, back)
      if ('refused' in content) {
        refused++
        const text = cell.formula === undefined ? plainContent({ value: cellText(cell) }) : { content: `'=${cell.formula}` }
        if ('content' in text) cells.push({ row, column, content: text.content, note: `In the file: ${cell.formula === undefined ? cellText(cell) : `=${cell.formula}`}. Not taken over as it is: ${content.refused}.` })
      } else if (content.content !== null) cells.push({ row, column, content: content.content, ...(cell.note === undefined ? {} : { note: cell.note }) })
    }
  }
  return { cells, refused }
}

const cellText = ({ value }: ReadCell): string => (typeof value === 'object' && value !== null ? value.error : String(value))

const refusedWords = (count: number): string => (count === 0 ? '' : ` ${count === 1 ? 'One of them cannot be had as it is and stays as a text with a note' : `${count} of them cannot be had as they are and stay as texts with notes`}.`)

const listed = (cells: readonly NewCell[]): string => {
  const texts = cells.slice(0, LISTED).map(({ content }) => (isFormula(content) ? content : String(content)))
  return cells.length === 0 ? 'empty' : `${texts.join(', ')}${cells.length > LISTED ? ', …' : ''}`
}
const LISTED = 5

const rowNumbers = (row: number, count: number): string => (count === 1 ? `${row + 1}:${row + 1}` : `${row + 1}:${row + count}`)
const rowsInWords = (count: number): string => `${count} ${count === 1 ? 'row' : 'rows'}`
const cellsInWords = (count: number): string => `${count} ${count === 1 ? 'cell' : 'cells'}`
