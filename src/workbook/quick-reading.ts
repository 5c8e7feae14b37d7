import { ROLES, type Cell, type CellContent, type Role, type Row } from './document.ts'
import { textContent } from './entry.ts'
import { MAX_JSON_DEPTH, PROTOTYPE_KEYS } from './json-text.ts'
import { MAX_CELLS, MAX_COLUMNS, MAX_ROWS, MAX_TEXT } from './limits.ts'
import { formatSchema } from './schema.ts'

/** Told from time to time how much is done, from 0 to 1. */
export type Report = (share: number) => void

export interface QuickCells {
  /** The parsed file, its sheets without their cells. What it holds beside them is yet to be checked. */
  readonly file: object
  /** The rows of each sheet. */
  readonly rows: readonly (readonly Row[])[]
}

/**
 * Nearly all of a large file is cells: here each is checked by hand, four times as fast as by the schema. Says nothing about what is wrong:
 * undefined where anything about the cells or the text is not in order, and the strict reading then finds what and where.
 */
export function quickCells(text: string, report: Report = () => undefined): QuickCells | undefined {
  const raw = parsed(text)
  report(PARSED)
  if (!isObject(raw) || !Array.isArray(raw['sheets'])) return undefined
  const sheets: readonly unknown[] = raw['sheets']
  const total = sheets.reduce((sum: number, sheet) => sum + (isObject(sheet) && isObject(sheet['cells']) ? Object.keys(sheet['cells']).length : 0), 0)
  if (total > MAX_CELLS) return undefined

  const rows: Row[][] = []
  const count: Count = { cells: 0, keys: 0, tell: (cells) => report(PARSED + (COUNTED - PARSED) * (cells / total)) }
  for (const sheet of sheets) {
    const found = isObject(sheet) && isObject(sheet['cells']) ? rowsOf(sheet['cells'], count) : undefined
    if (!found) return undefined
    rows.push(found)
  }
  const file = { ...raw, sheets: sheets.map((sheet) => ({ ...(sheet as object), cells: {} })) }
  const others = keysIn(file)
  // The parser keeps one of two members of the same name: then the text has more keys than what came of it.
  return others !== undefined && count.keys + others === keysWritten(text, (share) => report(COUNTED + (1 - COUNTED) * share)) ? { file, rows } : undefined
}

/** Shares of the time, measured on a charge inventory of 100 000 rows. */
const PARSED = 0.4
const COUNTED = 0.8

const REPORT_CELLS = 16_384
const REPORT_KEYS = 65_536

interface Count {
  cells: number
  keys: number
  readonly tell: (cells: number) => void
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function rowsOf(cells: Readonly<Record<string, unknown>>, count: Count): Row[] | undefined {
  const rows: (Cell | undefined)[][] = []
  for (const address of Object.keys(cells)) {
    const place = placeOf(address)
    const cell = cellOf(cells[address], count)
    if (place < 0 || !cell) return undefined
    ;(rows[Math.floor(place / MAX_COLUMNS)] ??= [])[place % MAX_COLUMNS] = cell
    count.keys++
    if (++count.cells % REPORT_CELLS === 0) count.tell(count.cells)
  }
  return rows
}

function cellOf(raw: unknown, count: Count): Cell | undefined {
  if (!Array.isArray(raw) || raw.length < 2 || raw.length > 3) return undefined
  const list: readonly unknown[] = raw
  const content = contentOf(list[0])
  const role = ROLE_BY_NAME.get(list[1])
  if (content === undefined || role === undefined) return undefined
  if (list.length === 2) return { content, role }
  const format = formatSchema.safeParse(list[2])
  if (!format.success) return undefined
  count.keys += Object.keys(format.data).length
  return { content, role, ...format.data }
}

const ROLE_BY_NAME: ReadonlyMap<unknown, Role> = new Map(ROLES.map((role) => [role, role]))

function contentOf(raw: unknown): CellContent | undefined {
  if (typeof raw === 'string') return raw !== '' && raw.length <= MAX_TEXT ? textContent(raw) : undefined
  if (typeof raw === 'number') return Number.isFinite(raw) ? raw : undefined
  return typeof raw === 'boolean' || raw === null ? raw : undefined
}

const [ZERO, NINE, LETTER_A, LETTER_Z] = [48, 57, 65, 90]

/** Row times `MAX_COLUMNS` plus column of an address as a file has it; -1 for anything else. */
function placeOf(address: string): number {
  let at = 0
  let column = 0
  for (; at < address.length; at++) {
    const code = address.charCodeAt(at)
    if (code < LETTER_A || code > LETTER_Z) break
    column = column * 26 + code - LETTER_A + 1
  }
  if (at === 0 || at > 3 || column > MAX_COLUMNS || at === address.length || address.length - at > 7 || address.charCodeAt(at) === ZERO) return -1
  let row = 0
  for (; at < address.length; at++) {
    const code = address.charCodeAt(at)
    if (code < ZERO || code > NINE) return -1
    row = row * 10 + code - ZERO
  }
  return row > MAX_ROWS ? -1 : (row - 1) * MAX_COLUMNS + column - 1
}

/** How many keys all objects in a value have; undefined if one may not be there, or if it nests too deep. */
function keysIn(value: unknown, depth = 0): number | undefined {
  if (!isObject(value)) return 0
  if (depth >= MAX_JSON_DEPTH) return undefined
  let keys = 0
  for (const [key, member] of Object.entries(value)) {
    const inside = keysIn(member, depth + 1)
    if (inside === undefined || PROTOTYPE_KEYS.has(key)) return undefined
    keys += inside + (Array.isArray(value) ? 0 : 1)
  }
  return keys
}

const [QUOTE, BACKSLASH, COLON, SPACE] = [34, 92, 58, 32]

/** How many keys a text has that is known to be JSON: texts with a colon after them. */
function keysWritten(text: string, report: Report): number {
  let keys = 0
  for (let start = text.indexOf('"'); start >= 0; ) {
    let at = start + 1
    for (let code = text.charCodeAt(at); code !== QUOTE; code = text.charCodeAt(at)) at += code === BACKSLASH ? 2 : 1
    do at++
    while (text.charCodeAt(at) <= SPACE)
    if (text.charCodeAt(at) === COLON && ++keys % REPORT_KEYS === 0) report(at / text.length)
    start = text.indexOf('"', at)
  }
  return keys
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}
