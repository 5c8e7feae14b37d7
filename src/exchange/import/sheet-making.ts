import { columnLetters, printAddress } from '../../workbook/address.ts'
import { isFormula, type Cell, type CellContent, type Row, type Sheet } from '../../workbook/document.ts'
import { literalContent, textContent } from '../../workbook/entry.ts'
import { MAX_COLUMNS, MAX_COLUMN_WIDTH, MAX_ROWS, MAX_TEXT } from '../../workbook/limits.ts'
import type { ReadCell, ReadSheet, ReadValue } from '../reading/contents.ts'
import type { CoveredCells } from './covered-cells.ts'
import { dateKind, dateText, type DateSystem } from './date-text.ts'
import { guessRoles } from './guess-roles.ts'
import type { ImportRemark } from './import-remark.ts'
import { numberLook } from './number-look.ts'
import { Tally } from './tally.ts'

/** A sheet of the file with its formulas translated. */
export interface Draft {
  readonly name: string
  readonly from: ReadSheet
  /** By row and column: the formula, or the literal text that shows it. */
  readonly formulas: ((CellContent | undefined)[] | undefined)[]
}

/** Makes the cells of one sheet: contents first, then, with all of them there, what each is for. */
export class SheetMaking {
  readonly #draft: Draft
  readonly #system: DateSystem
  readonly #covered: CoveredCells
  readonly #remarks: ImportRemark[]
  readonly #contents: ((CellContent | undefined)[] | undefined)[] = []
  readonly #rests: ((Omit<Cell, 'content' | 'role'> | undefined)[] | undefined)[] = []
  readonly #tally = new Tally()

  constructor(draft: Draft, system: DateSystem, covered: CoveredCells, remarks: ImportRemark[]) {
    this.#draft = draft
    this.#system = system
    this.#covered = covered
    this.#remarks = remarks
  }

  fill(row: number): void {
    const cells = this.#draft.from.rows[row]
    if (cells === undefined || row >= MAX_ROWS) return
    const contents: (CellContent | undefined)[] = []
    const rests: (Omit<Cell, 'content' | 'role'> | undefined)[] = []
    for (const [column, cell] of cells.entries()) {
      if (cell === undefined || column >= MAX_COLUMNS) continue
      const made = this.#cell(cell, row, column)
      contents[column] = made.content
      rests[column] = made.rest
    }
    this.#contents[row] = contents
    this.#rests[row] = rests
  }

  finished(row: number): Row {
    const contents = this.#contents[row]
    const rests = this.#rests[row]
    if (contents === undefined || rests === undefined) return undefined
    const given = this.#draft.from.rows[row]
    const roles = guessRoles(this.#contents, row, (column) => typeof given?.[column]?.value === 'boolean')
    const cells: (Cell | undefined)[] = []
    for (const [column, content] of contents.entries()) {
      const rest = rests[column]
      if (content === undefined || (content === null && rest?.note === undefined)) continue
      const isKeptFormula = given?.[column]?.formula !== undefined && !isFormula(content)
      cells[column] = { content, role: isKeptFormula ? 'text' : (roles[column] ?? 'text'), ...rest }
    }
    return cells.length === 0 ? undefined : Array.from(cells)
  }

  sheet(rows: Row[]): Sheet {
    const { name, from } = this.#draft
    while (rows.length > 0 && rows.at(-1) === undefined) rows.pop()
    const hidden = from.widthsPx.flatMap((width, column) => (width === 0 ? [columnLetters(column)] : []))
    if (hidden.length > 0) this.#tally.add('looks otherwise', hidden.length === 1 ? `column ${hidden[0]}, which the file hides, is shown` : `${hidden.length} columns that the file hides are shown: ${listed(hidden)}`)
    const { hiddenRows } = from
    if (hiddenRows) this.#tally.add('looks otherwise', hiddenRows.count === 1 ? `row ${hiddenRows.first + 1}, which the file hides, is shown` : `${hiddenRows.count} rows that the file hides are shown, the first is row ${hiddenRows.first + 1}`)
    this.#remarks.push(...this.#tally.remarks(name))
    const columns = from.widthsPx.slice(0, MAX_COLUMNS).map((width) => (width > 0 ? Math.min(MAX_COLUMN_WIDTH, Math.max(LEAST_WIDTH, Math.round(width))) : HIDDEN_WIDTH))
    return { name, columns, frozen: frozenOf(from), rows }
  }

  #cell(cell: ReadCell, row: number, column: number): { readonly content: CellContent; readonly rest: Omit<Cell, 'content' | 'role'> } {
    const { value, format, formula } = cell
    const noted = cell.note === undefined || cell.note.trim() === '' ? [] : [cell.note]
    const address = printAddress(row, column)
    if (formula !== undefined) {
      const content = this.#draft.formulas[row]?.[column] ?? null
      if (!isFormula(content)) {
        return { content, rest: noteOf([...noted, `In the file: ${this.#shown(value, format)}`]) }
      }
      const kind = typeof value === 'number' ? dateKind(format) : undefined
      if (kind !== undefined) {
        this.#tally.add('looks otherwise', 'formulas that give a day or a time show its number; the notes have the day', address)
        return { content, rest: noteOf([...noted, `In the file: ${this.#shown(value, format)}`]) }
      }
      return { content, rest: { ...this.#look(format, address), ...noteOf(noted) } }
    }
    if (typeof value === 'number') return this.#number(value, format, row, column, noted)
    if (typeof value === 'boolean' || value === null) return { content: value, rest: noteOf(noted) }
    if (typeof value === 'string') {
      const content = value.startsWith('=') || value.startsWith("'") ? literalContent(this.#cut(value, address)) : value === '' ? null : textContent(this.#cut(value, address))
      return { content, rest: { ...(value.includes('\n') ? { wrap: true as const } : {}), ...noteOf(noted) } }
    }
    this.#tally.add('written otherwise', 'errors that the file holds without a formula are texts', address)
    return { content: textContent(value.error), rest: noteOf(noted) }
  }

  #number(value: number, format: string | undefined, row: number, column: number, noted: readonly string[]): { readonly content: CellContent; readonly rest: Omit<Cell, 'content' | 'role'> } {
    const address = printAddress(row, column)
    if (!Number.isFinite(value)) {
      this.#tally.add('written otherwise', 'numbers beyond what a number holds are texts', address)
      return { content: textContent(String(value)), rest: noteOf(noted) }
    }
    const kind = dateKind(format)
    const text = kind && dateText(value, kind, this.#system)
    if (kind === undefined || text === undefined) return { content: value, rest: { ...this.#look(format, address), ...noteOf(noted) } }
    if (this.#covered.has(this.#draft.name, row, column)) {
      this.#tally.add('looks otherwise', `days and times that formulas use stay numbers; the notes have the day`, address)
      return { content: value, rest: noteOf([...noted, `In the file: ${text}`]) }
    }
    this.#tally.add('written otherwise', 'days and times are texts such as 2006-02-01 or 10:05:54 (ISO 8601)', address)
    if (text.startsWith('1900-02-29')) this.#tally.add('written otherwise', 'the day 60 of the file would be 29 February 1900, which never was', address)
    return { content: textContent(text), rest: noteOf(noted) }
  }

  #look(format: string | undefined, address: string): Pick<Cell, 'digits' | 'decimals'> {
    const { digits, decimals, percent, words } = numberLook(format)
    if (percent) this.#tally.add('looks otherwise', 'the file shows shares in percent, 0.05 as 5 %; here they are the numbers themselves, of the unit "-"', address)
    if (words !== undefined) this.#tally.add('looks otherwise', `the file shows ${JSON.stringify(words)} with the number, by its format; a unit belongs into a cell of its own`, address)
    return { ...(digits === undefined ? {} : { digits }), ...(decimals === undefined ? {} : { decimals }) }
  }

  /** What the file shows, in words. */
  #shown(value: ReadValue, format: string | undefined): string {
    if (value === null) return 'nothing'
    if (typeof value === 'object') return value.error
    if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
    if (typeof value === 'string') return value
    const kind = dateKind(format)
    return (kind && dateText(value, kind, this.#system)) ?? String(value)
  }

  #cut(text: string, address: string): string {
    if (text.length < MAX_TEXT) return text
    this.#tally.add('left out', `texts are cut off after ${MAX_TEXT - 1} characters`, address)
    return text.slice(0, MAX_TEXT - 1)
  }
}

/** What a column that the file hides gets. */
const HIDDEN_WIDTH = 64
const MOST_LISTED = 8
const listed = (letters: readonly string[]): string => letters.slice(0, MOST_LISTED).join(', ') + (letters.length > MOST_LISTED ? ', …' : '')
const LEAST_WIDTH = 16

const noteOf = (parts: readonly string[]): { readonly note?: string } => (parts.length === 0 ? {} : { note: parts.join('\n\n').slice(0, MAX_TEXT) })

/** More than a screen must not stay in view. */
const MOST_FROZEN = 20
const frozenOf = ({ frozen: [rows, columns] = [0, 0] }: ReadSheet): readonly [number, number] => [rows <= MOST_FROZEN ? rows : 0, columns <= MOST_FROZEN ? columns : 0]
