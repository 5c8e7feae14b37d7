import type { CellAddress } from './address.ts'
import { cellsIn } from './cells.ts'
import { emptied, withContent } from './commands.ts'
import { sheetByName, type Cell, type Sheet, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import { contentOf, entryOf } from './entry.ts'
import { MAX_COLUMNS } from './limits.ts'

/** What of a cell is looked through: what was typed, what it shows, or its note. */
export const FIND_PLACES = ['contents', 'values', 'notes'] as const
export type FindPlace = (typeof FIND_PLACES)[number]

export interface FindQuery {
  readonly text: string
  readonly place: FindPlace
  /** All of the text, not a part of it. */
  readonly whole: boolean
  readonly matchCase: boolean
  /** Looked through alone; all sheets where left out. */
  readonly sheet?: string
}

export interface Found extends CellAddress {
  readonly sheet: string
  /** The text that was looked through. */
  readonly text: string
}

/** What a cell shows, where that is known. */
export type ShownText = (sheet: Sheet, row: number, column: number, cell: Cell) => string | undefined

/** Some rows of a sheet that are looked through together, and how much of the whole is done with them, from 0 to 1. */
export interface Stretch {
  readonly sheet: Sheet
  readonly cells: readonly CellChange[]
  readonly share: number
}

/** About a millisecond's work. */
const ROWS_IN_STRETCH = 256

/** What is to be looked through, in the order of the sheets and in reading order; nothing for an empty text. */
export function* stretchesOf(workbook: Workbook, query: FindQuery): Generator<Stretch> {
  if (query.text === '') return
  const only = query.sheet === undefined ? undefined : sheetByName(workbook, query.sheet)
  const sheets = only ? [only] : workbook.sheets
  const all = sheets.reduce((sum, { rows }) => sum + rows.length, 0)
  let done = 0
  for (const sheet of sheets) {
    for (let top = 0; top < sheet.rows.length; top += ROWS_IN_STRETCH) {
      const bottom = Math.min(sheet.rows.length, top + ROWS_IN_STRETCH) - 1
      done += bottom + 1 - top
      yield { sheet, cells: cellsIn(sheet, { top, left: 0, bottom, right: MAX_COLUMNS - 1 }), share: done / all }
    }
  }
}

/** The cells of a stretch that have the text. */
export function findIn({ sheet, cells }: Stretch, query: FindQuery, shownText: ShownText = () => undefined): Found[] {
  const fits = matcher(query)
  return cells.flatMap(({ row, column, cell }) => {
    const text = cell && (query.place === 'values' ? shownText(sheet, row, column, cell) : typedText(cell, query.place))
    return text !== undefined && text !== null && text !== '' && fits(text) ? [{ sheet: sheet.name, row, column, text }] : []
  })
}

/**
 * Writes another text for the one found, in notes or in contents: formulas included, each read as if it had been typed.
 * What a cell shows cannot be replaced, only what was typed.
 */
export function replace(workbook: Workbook, query: FindQuery & { readonly place: Exclude<FindPlace, 'values'> }, replacement: string, found: readonly Found[]): Edit[] {
  const change = replacer(query, replacement)
  return workbook.sheets.flatMap((sheet): Edit[] => {
    const cells = found.filter((one) => one.sheet === sheet.name).flatMap(({ row, column }): CellChange[] => {
      const cell = sheet.rows[row]?.[column]
      return cell ? [{ row, column, cell: query.place === 'notes' ? withNote(cell, change(cell.note ?? '')) : withTyped(cell, change(entryOf(cell.content))) }] : []
    })
    return cells.length > 0 ? [{ kind: 'cells', sheet: sheet.name, cells }] : []
  })
}

function withTyped(cell: Cell, typed: string): Cell | null {
  const content = contentOf(typed)
  return content === null ? emptied(cell) : withContent(cell, content)
}

const typedText = (cell: Cell, place: FindPlace): string | undefined => (place === 'notes' ? cell.note : entryOf(cell.content))

function withNote({ note: _before, ...cell }: Cell, note: string): Cell {
  return note === '' ? cell : { ...cell, note }
}

function matcher(query: FindQuery): (text: string) => boolean {
  const pattern = patternOf(query, '')
  return (text) => pattern.test(text)
}

function replacer(query: FindQuery, replacement: string): (text: string) => string {
  const pattern = patternOf(query, 'g')
  return (text) => text.replace(pattern, () => replacement)
}

function patternOf({ text, whole, matchCase }: FindQuery, flags: 'g' | ''): RegExp {
  const literal = text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
  return new RegExp(whole ? `^${literal}$` : literal, `u${flags}${matchCase ? '' : 'i'}`)
}
