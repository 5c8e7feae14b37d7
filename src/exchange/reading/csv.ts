import { MAX_TEXT } from '../../workbook/limits.ts'
import { CellRows, Holdings } from './cell-rows.ts'
import type { Dialect, FileContents, ReadCell } from './contents.ts'
import { cellNumber, foundDecimalMark } from './csv-number.ts'
import { csvRecords, foundDelimiter, type Records } from './csv-records.ts'
import { ACCEPTED, Refusal } from './refusal.ts'
import { RemarkBook } from './remark-book.ts'
import { decodeText } from './text-encoding.ts'

/**
 * A text file of values (RFC 4180, and what else goes by that name) as one sheet. Texts stay texts: nothing becomes a formula or a date,
 * and numbers only what cannot be anything else, see `cellNumber`.
 * @param wanted what the user says of the file; the rest is found in it
 */
export function readCsv(bytes: Uint8Array, sheetName: string, wanted: Partial<Dialect> = {}, report: (share: number) => void = () => undefined): FileContents {
  const remarks = new RemarkBook()
  const { text: decoded, encoding, guessed } = decodeText(bytes, wanted.encoding)
  if (guessed) remarks.say('', 'The file is not in UTF-8. It is read as Windows-1252; look whether signs such as ° and ² are right.')
  const text = decoded.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n')
  const stated = /^"?sep=([,;\t|])"?(?:\n|$)/i.exec(text)
  const body = stated === null ? text : text.slice(stated[0].length)
  const delimiter = wanted.delimiter ?? (stated?.[1] as Dialect['delimiter'] | undefined) ?? foundDelimiter(body)
  const records = csvRecords(body, delimiter)
  remarkQuotes(records, stated === null ? 0 : 1, remarks)

  const evident = wanted.decimalMark ?? foundDecimalMark(records.rows)
  // Where "," divides cells, it seldom stands for a fraction too.
  const mark = evident ?? (delimiter === ',' ? '.' : undefined)
  const cells = new CellRows(sheetName, new Holdings(), remarks)
  let formulas = 0
  for (const [row, fields] of records.rows.entries()) {
    if (row % REPORT_ROWS === 0) report(row / records.rows.length)
    for (const [column, field] of fields.entries()) {
      if (field === '') continue
      const cell = csvCell(field, mark)
      if (cell === 'unsure') remarks.cell(sheetName, row, column, `“${field.slice(0, 40)}” can be read as more than one number; it is kept as text. State the decimal mark to have it as a number.`)
      else if (typeof cell.value === 'string' && LIKE_FORMULA.test(cell.value)) formulas++
      cells.put(row, column, cell === 'unsure' ? { value: field } : cell)
    }
  }
  if (cells.rows.length === 0) throw new Refusal(`The file holds no values. ${ACCEPTED}`)
  if (formulas > 0) remarks.say('', `${formulas === 1 ? 'One cell begins' : `${formulas} cells begin`} like a formula (with =, +, - or @) and ${formulas === 1 ? 'is' : 'are'} kept as text: a text file holds values only.`)
  return {
    kind: 'csv', sheets: [{ name: sheetName, hidden: false, widthsPx: [], rows: cells.rows }], names: new Map(), remarks: remarks.remarks(),
    dialect: { encoding, delimiter, decimalMark: mark ?? (delimiter === ';' ? ',' : '.') },
  }
}

const REPORT_ROWS = 5000
const LIKE_FORMULA = /^(?:[=@]|[+-][^\s-])/

function csvCell(field: string, mark: Dialect['decimalMark'] | undefined): ReadCell | 'unsure' {
  // A text of ours that begins like a formula was given an apostrophe on its way out.
  if (/^'+[=+\-@\t\n]/.test(field)) return { value: field.slice(1) }
  if (field === 'TRUE' || field === 'FALSE') return { value: field === 'TRUE' }
  if (field.length > MAX_TEXT) return { value: field }
  const number = cellNumber(field, mark)
  return number === 'text' ? { value: field } : number
}

function remarkQuotes({ oddQuotes, unclosed }: Records, before: number, remarks: RemarkBook): void {
  const [first] = oddQuotes
  if (first !== undefined) {
    remarks.say('', `Line ${first + before}: a quotation mark stands in the middle of a cell, where it should be doubled.${oddQuotes.length > 1 ? ` So do those of ${oddQuotes.length - 1} more rows.` : ''} Look whether the cells there are right.`)
  }
  if (unclosed.length > 0) {
    const lines = unclosed.map((line) => line + before)
    remarks.say('', `${lines.length === 1 ? `Line ${lines[0]} opens` : `Lines ${lines.join(', ')} open`} a quotation mark that is never closed; ${lines.length === 1 ? 'on that line' : 'on those lines'}, quotation marks are taken as ordinary characters.`)
  }
}
