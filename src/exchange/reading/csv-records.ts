import Papa from 'papaparse'
import { MAX_COLUMNS, MAX_ROWS, MAX_TEXT } from '../../workbook/limits.ts'
import type { Dialect } from './contents.ts'
import { Refusal } from './refusal.ts'

type Delimiter = Dialect['delimiter']

export interface Records {
  readonly rows: readonly (readonly string[])[]
  /** Lines, counted from 1, where quotation marks are out of order. */
  readonly oddQuotes: readonly number[]
  /** Lines that open a quotation mark which nothing closes: its marks are taken as ordinary characters, else the rest of the file would be one cell. */
  readonly unclosed: readonly number[]
}

/** The records of a text with lines ended by LF (RFC 4180, section 2). */
export function csvRecords(text: string, delimiter: Delimiter): Records {
  refuseWideLines(text, delimiter)
  let rows: string[][] = []
  const [odd, unclosed]: [number[], number[]] = [[], []]
  let from = 0
  const take = (until: number, quoteChar: string): number | undefined => {
    const found = parsed(text.slice(from, until), delimiter, quoteChar, MAX_ROWS - rows.length)
    rows = rows.length === 0 ? found.rows : rows.concat(found.rows)
    for (const place of found.odd) odd.push(from + place)
    return found.unclosed === undefined ? undefined : from + found.unclosed
  }
  for (;;) {
    const open = take(text.length, '"')
    if (open === undefined) break
    unclosed.push(open)
    from = open
    const end = text.indexOf('\n', from)
    // Each one costs a look through the rest of the file.
    const isLast = end < 0 || unclosed.length >= MOST_UNCLOSED
    take(isLast ? text.length : end, '\0')
    if (isLast) break
    from = end + 1
  }
  return { rows, oddQuotes: lineNumbers(text, odd), unclosed: lineNumbers(text, unclosed) }
}

const MOST_UNCLOSED = 20

interface Parsed {
  readonly rows: string[][]
  /** Where records with odd quotation marks begin, in characters. */
  readonly odd: number[]
  readonly unclosed: number | undefined
}

function parsed(text: string, delimiter: Delimiter, quoteChar: string, mostRows: number): Parsed {
  const [rows, odd]: [string[][], number[]] = [[], []]
  let [from, unclosed]: [number, number | undefined] = [0, undefined]
  let tooMany: Refusal | undefined
  Papa.parse<string[]>(text, {
    delimiter, quoteChar, escapeChar: quoteChar, newline: '\n',
    step({ data, errors, meta: { cursor } }, parser) {
      if (errors.some(({ code }) => code === 'MissingQuotes')) {
        unclosed = from
        parser.abort()
        return
      }
      if (errors.some(({ type }) => type === 'Quotes')) odd.push(from)
      if (data.length > MAX_COLUMNS) tooMany = new Refusal(`Row ${rows.length + 1} of the file has ${data.length} columns; accepted: up to ${MAX_COLUMNS}.`)
      rows.push(data)
      from = cursor
      if (rows.length > mostRows && (rows.length > mostRows + 1 || data.length > 1 || data[0] !== '')) tooMany = new Refusal(`The file has more than ${MAX_ROWS} rows; accepted: up to ${MAX_ROWS}.`)
      if (tooMany !== undefined) parser.abort()
    },
  })
  if (tooMany) throw tooMany
  return { rows, odd, unclosed }
}

/** Before anything is taken apart: a line of nothing but delimiters costs far more memory than its length. */
function refuseWideLines(text: string, delimiter: Delimiter): void {
  let [from, at, count] = [text.indexOf('\n'), -1, 0]
  while ((at = text.indexOf(delimiter, at + 1)) >= 0) {
    if (from >= 0 && at > from) {
      count = 0
      from = text.indexOf('\n', at)
    }
    if (++count > MAX_COLUMNS + MAX_TEXT) throw new Refusal(`A line of the file has more than ${MAX_COLUMNS} columns; accepted: up to ${MAX_COLUMNS}.`)
  }
}

function lineNumbers(text: string, places: readonly number[]): number[] {
  let [line, at] = [1, 0]
  return places.map((place) => {
    for (let next = text.indexOf('\n', at); next >= 0 && next < place; next = text.indexOf('\n', at)) {
      line++
      at = next + 1
    }
    return line
  })
}

const DELIMITERS: readonly Delimiter[] = ['\t', ';', '|', ',']

/** The delimiter that divides the first lines into the same number of fields most often; of equals, the one rarest in ordinary text. */
export function foundDelimiter(text: string): Delimiter {
  const lines = text.slice(0, SAMPLE).replace(/"(?:[^"]|"")*"/g, '').split('\n').filter((line) => line.trim() !== '')
  // The last may be cut.
  if (text.length > SAMPLE && lines.length > 1) lines.pop()
  let [best, bestScore]: [Delimiter, number] = [',', LEAST_SCORE]
  for (const delimiter of DELIMITERS) {
    const counts = new Map<number, number>()
    for (const line of lines) {
      const fields = line.split(delimiter).length
      if (fields > 1) counts.set(fields, (counts.get(fields) ?? 0) + 1)
    }
    const score = Math.max(0, ...counts.values()) / Math.max(1, lines.length)
    if (score > bestScore) [best, bestScore] = [delimiter, score]
  }
  return best
}

const SAMPLE = 64_000
/** What divides fewer of the lines alike is a sign in their texts. */
const LEAST_SCORE = 0.3
