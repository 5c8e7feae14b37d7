import { columnLetters, printAddress } from '../../workbook/address.ts'
import { MAX_COLUMNS, MAX_ROWS, MAX_TEXT } from '../../workbook/limits.ts'
import type { ReadCell, ReadSheet } from './contents.ts'
import { MAX_READ_CELLS, MAX_READ_CHARACTERS } from './limits.ts'
import { Refusal, tooLarge } from './refusal.ts'
import type { RemarkBook } from './remark-book.ts'

/** What all sheets of a file together hold so far, held against the limits. */
export class Holdings {
  #cells = 0
  #characters = 0

  count(cells: number, characters: number): void {
    this.#cells += cells
    this.#characters += characters
    if (this.#cells > MAX_READ_CELLS) throw tooLarge(`its sheets hold more than ${MAX_READ_CELLS} cells`, `up to ${MAX_READ_CELLS} that hold something`)
    if (this.#characters > MAX_READ_CHARACTERS) throw tooLarge(`its cells hold more than ${MAX_READ_CHARACTERS} characters`, `up to ${MAX_READ_CHARACTERS}`)
  }
}

/** The cells of one sheet as they are read. */
export class CellRows {
  readonly rows: (ReadCell | undefined)[][] = []
  columns = 0
  readonly #hiddenRows = new Set<number>()
  readonly #sheet: string
  readonly #holdings: Holdings
  readonly #remarks: RemarkBook

  constructor(sheet: string, holdings: Holdings, remarks: RemarkBook) {
    this.#sheet = sheet
    this.#holdings = holdings
    this.#remarks = remarks
  }

  put(row: number, column: number, cell: ReadCell): void {
    if (row >= MAX_ROWS || column >= MAX_COLUMNS) {
      throw new Refusal(`Sheet “${this.#sheet}” has a cell in row ${row + 1}, column ${column + 1}; accepted: up to row ${MAX_ROWS}, column ${columnLetters(MAX_COLUMNS - 1)}.`)
    }
    const value = typeof cell.value === 'string' ? this.text(cell.value, row, column) : cell.value
    this.#holdings.count(1, (typeof value === 'string' ? value.length : 0) + (cell.formula?.length ?? 0) + (cell.note?.length ?? 0))
    const cells = (this.rows[row] ??= [])
    cells[column] = value === cell.value ? cell : { ...cell, value }
    if (column >= this.columns) this.columns = column + 1
  }

  /** The file hides the row, whatever it holds. */
  hide(row: number): void {
    if (row < MAX_ROWS) this.#hiddenRows.add(row)
  }

  /** Of the rows that hold something. */
  get hiddenRows(): ReadSheet['hiddenRows'] {
    const held = [...this.#hiddenRows].filter((row) => this.rows[row] !== undefined)
    const [first] = held
    return first === undefined ? undefined : { first, count: held.length }
  }

  note(row: number, column: number, text: string): void {
    const note = this.text(text, row, column)
    this.put(row, column, { ...(this.rows[row]?.[column] ?? { value: null }), note })
  }

  /** A text as long as a cell may hold. */
  text(text: string, row: number, column: number): string {
    if (text.length <= MAX_TEXT) return text
    this.#remarks.say(`${this.#sheet}!${printAddress(row, column)}`, `The text has ${text.length} characters; only the first ${MAX_TEXT} are taken over.`)
    return text.slice(0, MAX_TEXT)
  }
}
