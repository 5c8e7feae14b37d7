import { MAX_COLUMNS, MAX_ROWS } from './limits.ts'

export interface CellAddress {
  readonly row: number
  readonly column: number
}

/** One corner of a reference; `row` is null in a whole-column reference, `column` in a whole-row one. */
export interface Corner {
  readonly row: number | null
  readonly column: number | null
  readonly rowAbsolute: boolean
  readonly columnAbsolute: boolean
}

/** A reference as written: `Sheet!C5`, `'My sheet'!$C$5:$D$9`, `A:C`, `2:2`. */
export interface Reference {
  /** null: the sheet that the formula stands on. */
  readonly sheet: string | null
  readonly from: Corner
  /** null: a single cell. */
  readonly to: Corner | null
}

/** A reference's cells, both ends included; a whole column or row runs to the sheet's end. */
export interface Area {
  readonly top: number
  readonly bottom: number
  readonly left: number
  readonly right: number
}

/** Letters, as the calculation engine understands them, that a bare sheet name or a defined name may use. */
export const LETTERS = 'A-Za-z\\u00C0-\\u02AF'
export const SHEET_PREFIX = `(?:[${LETTERS}0-9_]+|'(?:[^']|'')*')!`
export const CELL = '\\$?[A-Za-z]{1,3}\\$?[0-9]{1,7}'
export const WHOLE_COLUMNS = '\\$?[A-Za-z]{1,3}:\\$?[A-Za-z]{1,3}'
export const WHOLE_ROWS = '\\$?[0-9]{1,7}:\\$?[0-9]{1,7}'

const REFERENCE = new RegExp(`^(${SHEET_PREFIX})?(?:(${CELL})(?::(${CELL}))?|(${WHOLE_COLUMNS})|(${WHOLE_ROWS}))$`)
const CORNER = /^(\$?)([A-Za-z]*)(\$?)([0-9]*)$/

export function isOnSheet(row: number, column: number): boolean {
  return Number.isInteger(row) && Number.isInteger(column) && row >= 0 && row < MAX_ROWS && column >= 0 && column < MAX_COLUMNS
}

/** 0 is A, 25 Z, 26 AA. */
export function columnLetters(column: number): string {
  let letters = ''
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters
  }
  return letters
}

/** `A` is 0; undefined for anything but letters, or beyond the last column. */
export function columnNumber(letters: string): number | undefined {
  if (letters.length < 1 || letters.length > 3) return undefined
  let column = 0
  for (let index = 0; index < letters.length; index++) {
    // Capitals and small letters differ in this bit only.
    const number = (letters.charCodeAt(index) | 32) - 96
    if (number < 1 || number > 26) return undefined
    column = column * 26 + number
  }
  return column <= MAX_COLUMNS ? column - 1 : undefined
}

export function printAddress(row: number, column: number): string {
  return columnLetters(column) + (row + 1)
}

/** `C5`, in any case and without `$`; undefined if it is no address, or off the sheet. */
export function parseAddress(text: string): CellAddress | undefined {
  const match = /^([A-Za-z]{1,3})([0-9]{1,7})$/.exec(text)
  if (!match) return undefined
  const [, letters = '', digits = ''] = match
  const column = columnNumber(letters)
  const row = Number(digits) - 1
  return column !== undefined && isOnSheet(row, column) ? { row, column } : undefined
}

/** Undefined if it is no reference, or off the sheet. */
export function parseReference(text: string): Reference | undefined {
  const match = REFERENCE.exec(text)
  if (!match) return undefined
  const [, prefix, first, second, wholeColumns, wholeRows] = match
  const [fromText = '', toText] = (wholeColumns ?? wholeRows)?.split(':') ?? [first, second]
  const from = parseCorner(fromText)
  const to = toText === undefined ? null : parseCorner(toText)
  if (!from || to === undefined) return undefined
  return { sheet: prefix === undefined ? null : unquoteSheetName(prefix.slice(0, -1)), from, to }
}

export function printReference({ sheet, from, to }: Reference): string {
  return (sheet === null ? '' : quoteSheetName(sheet) + '!') + printCorner(from) + (to ? ':' + printCorner(to) : '')
}

export function areaOf({ from, to }: Reference): Area {
  const end = to ?? from
  return {
    top: Math.min(from.row ?? 0, end.row ?? 0),
    bottom: from.row === null || end.row === null ? MAX_ROWS - 1 : Math.max(from.row, end.row),
    left: Math.min(from.column ?? 0, end.column ?? 0),
    right: from.column === null || end.column === null ? MAX_COLUMNS - 1 : Math.max(from.column, end.column),
  }
}

/** A sheet's name as a reference needs it: bare if that is safe in any spreadsheet program, else in quotes. */
export function quoteSheetName(name: string): string {
  const bare = /^[A-Za-z_][A-Za-z0-9_]*$/.test(name) && !/^(?:[A-Z]{1,3}[0-9]*|R[0-9]*C[0-9]*|TRUE|FALSE)$/i.test(name)
  return bare ? name : `'${name.replaceAll("'", "''")}'`
}

function unquoteSheetName(name: string): string {
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name
}

function parseCorner(text: string): Corner | undefined {
  const match = CORNER.exec(text)
  if (!match) return undefined
  const [, dollar, letters = '', secondDollar = '', digits = ''] = match
  const column = letters === '' ? null : columnNumber(letters)
  const row = digits === '' ? null : Number(digits) - 1
  if (column === undefined || !isOnSheet(row ?? 0, column ?? 0)) return undefined
  const rowDollar = letters === '' ? dollar : secondDollar
  return { row, column, rowAbsolute: rowDollar === '$', columnAbsolute: letters !== '' && dollar === '$' }
}

function printCorner({ row, column, rowAbsolute, columnAbsolute }: Corner): string {
  const letters = column === null ? '' : (columnAbsolute ? '$' : '') + columnLetters(column)
  return letters + (row === null ? '' : (rowAbsolute ? '$' : '') + (row + 1))
}
