import Papa from 'papaparse'
import { isCellError, type CellValue } from '../../calc/values.ts'

/** What is written before the first line, so that programs take the file for UTF-8 and show ° and ² as they are. */
export const BYTE_ORDER_MARK = '\ufeff'

/** The rows and columns that hold something. */
export interface Extent {
  readonly rows: number
  readonly columns: number
}

export function extentOf(values: readonly (readonly CellValue[])[]): Extent {
  let [rows, columns] = [0, 0]
  for (const [row, cells] of values.entries()) {
    const last = (cells ?? []).findLastIndex((value) => value !== null && value !== '' && value !== undefined)
    if (last >= 0) rows = row + 1
    columns = Math.max(columns, last + 1)
  }
  return { rows, columns }
}

/**
 * Values as comma-separated text (RFC 4180), in pieces: lines end with CR LF, the last one too, each with as many fields; numbers with every digit
 * and a point. A text that a program could take for a formula gets an apostrophe before it, and so does one that would look like such.
 */
export function* csvText(values: readonly (readonly CellValue[])[], tell: (rows: number) => void = () => undefined): Generator<string> {
  const { rows, columns } = extentOf(values)
  yield BYTE_ORDER_MARK
  for (let from = 0; from < rows; from += PIECE_ROWS) {
    const lines = Array.from({ length: Math.min(PIECE_ROWS, rows - from) }, (_, index) => Array.from({ length: columns }, (_, column) => field(values[from + index]?.[column] ?? null)))
    // A line of nothing would be no row to some.
    yield `${Papa.unparse(lines, { newline: '\r\n', quotes: columns === 1 ? (text: string) => text === '' : false })}\r\n`
    tell(from + lines.length)
  }
}

const PIECE_ROWS = 500

function field(value: CellValue): string {
  if (value === null) return ''
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  if (typeof value === 'number') return String(value)
  return isCellError(value) ? value.error : guarded(value)
}

const LIKE_A_FORMULA = /^'*[=+\-@\t\r\n]/

const guarded = (text: string): string => (LIKE_A_FORMULA.test(text) ? `'${text}` : text)
