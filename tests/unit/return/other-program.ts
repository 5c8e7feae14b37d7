import { read, utils, write, type CellObject, type WorkBook, type WorkSheet } from 'xlsx'
import { Graph } from '../../../src/calc/graph.ts'
import { exportXlsx } from '../../../src/exchange/xlsx.ts'
import type { FileContents, ReadCell } from '../../../src/exchange/reading/contents.ts'
import type { Workbook } from '../../../src/workbook/document.ts'

export const EXPORTED = new Date('2025-03-04T05:06:07Z')

export const exported = async (workbook: Workbook): Promise<Uint8Array> => exportXlsx(workbook, new Graph(workbook).allValues(), { date: EXPORTED })

/** A file opened by a spreadsheet library, which is not the code that wrote it. */
export const openElsewhere = (bytes: Uint8Array): WorkBook => read(bytes, { type: 'array', dense: true, cellFormula: true })

/** The same file as that library saves it: other parts, other order, shared texts. */
export function savedElsewhere(book: WorkBook, bookType: 'xlsx' | 'ods' = 'xlsx'): Uint8Array {
  // The library does not write sheets with rows missing in between, or at the end.
  for (const sheet of Object.values(book.Sheets)) {
    const rows = rowsOf(sheet)
    const { e: { r: last } } = utils.decode_range(sheet['!ref'] ?? 'A1')
    for (let row = 0; row <= Math.max(last, rows.length - 1); row++) rows[row] ??= []
  }
  return new Uint8Array(write(book, { type: 'array', bookType, compression: false }) as ArrayBuffer)
}

/** A cell of a sheet opened elsewhere, to change it. */
export function cellElsewhere(book: WorkBook, sheet: string, row: number, column: number): CellObject {
  const rows = rowsOf(book.Sheets[sheet])
  const cells = (rows[row] ??= [])
  return (cells[column] ??= { t: 'z' })
}

/** Its rows; `!ref` has to take in those that are added. */
export const rowsOf = (sheet: WorkSheet | undefined): (CellObject | undefined)[][] => (sheet?.['!data'] ?? []) as (CellObject | undefined)[][]

export function typeElsewhere(book: WorkBook, sheet: string, row: number, column: number, typed: number | string | boolean | null): void {
  const rows = rowsOf(book.Sheets[sheet])
  const cells = (rows[row] ??= [])
  if (typed === null) delete cells[column]
  else if (typeof typed === 'string' && typed.startsWith('=')) cells[column] = { t: 'n', v: 0, f: typed.slice(1) }
  else cells[column] = { t: typeof typed === 'number' ? 'n' : typeof typed === 'boolean' ? 'b' : 's', v: typed }
  const own = book.Sheets[sheet]
  if (own) own['!ref'] = `A1:ZZ${Math.max(rows.length, 1)}`
}

/** What stands in a book opened elsewhere, as reading gives it. */
export function contentsOf(book: WorkBook): FileContents {
  return {
    kind: 'xlsx', remarks: [],
    names: new Map((book.Workbook?.Names ?? []).filter(({ Name }) => !Name.startsWith('_xlnm')).map(({ Name, Ref }) => [Name, Ref])),
    sheets: book.SheetNames.map((name, index) => ({
      name, hidden: (book.Workbook?.Sheets?.[index]?.Hidden ?? 0) !== 0, widthsPx: [],
      rows: rowsOf(book.Sheets[name]).map((row) => row?.map(readCell)),
    })),
  }
}

function readCell(cell: CellObject | undefined): ReadCell | undefined {
  if (cell === undefined) return undefined
  return {
    value: cell.t === 'e' ? { error: cell.w ?? '#VALUE!' } : cell.v === undefined || cell.v instanceof Date ? null : cell.v,
    ...(cell.f === undefined ? {} : { formula: cell.f }),
    ...(cell.c === undefined ? {} : { note: cell.c.map(({ t }) => t).join('\n') }),
  }
}
