import type { CellValue } from '../calc/values.ts'
import { functionsCalled } from '../calc/functions-called.ts'
import { foldCase, isFormula, type Sheet, type Workbook } from '../workbook/document.ts'
import { printAddress } from '../workbook/address.ts'
import { coverSheet } from './cover-sheet.ts'
import { fileNames, type FileNames } from './file-formula.ts'
import type { FileSheet } from './package/file-sheet.ts'
import { userSheet, type ReplacedFormulas } from './user-sheet.ts'
import { CallBook, namesWithoutCalls } from './workings/call-book.ts'
import { functionSheet } from './workings/function-sheet.ts'
import { newSheetNames } from './workings/new-sheet-name.ts'
import { tableMarks } from './workings/row-formulas.ts'
import { tableFileSheet } from './workings/table-file-sheet.ts'
import { tableSheets } from './workings/table-sheets.ts'
import { workingsValues } from './workings/workings-values.ts'

export interface ExportOptions {
  readonly date: Date
  /** Told from time to time what share of the work is done; undefined while it cannot be said. */
  readonly report?: (share: number | undefined) => void
}

/** A workbook as the sheets of a spreadsheet file, whatever the format that they are written in. */
export interface ComputingFile {
  /** Cover, the workbook's sheets, a sheet of workings a function, tables; the rows of each are made as they are asked for, once. */
  readonly sheets: readonly FileSheet[]
  /** What a defined name stands for, in the file's dialect without "=", by name. */
  readonly names: ReadonlyMap<string, string>
}

/**
 * The workbook as sheets that recalculate in any spreadsheet program: each call of a function of Lowside stands as a reference to its row
 * on a sheet of workings, in standard formulas. A cover comes first.
 * @param values every value by sheet name, rows and columns from A1, as the calculation graph gives them
 */
export function computingFile(workbook: Workbook, values: ReadonlyMap<string, readonly (readonly CellValue[])[]>, { date, report = () => undefined }: ExportOptions): ComputingFile {
  const sheetName = newSheetNames(workbook.sheets.map(({ name }) => name))
  const cover = sheetName('Cover')
  const book = new CallBook(workbook, sheetName)
  const replacedNames = namesWithoutCalls(workbook, book)
  const replaced = new Map(workbook.sheets.map((sheet) => [sheet.name, replacedFormulas(sheet, book)]))
  const { functions } = book
  const tables = tableSheets(new Set(functions.flatMap(({ definition }) => tableMarks(definition))), sheetName)
  const names = fileNames(replacedNames)
  const foldedNames: FileNames = new Map([...names].map(([name, formula]) => [foldCase(name), formula]))
  const computed = workingsValues(book, values, replacedNames, (calls) => report((COMPUTING * calls) / book.inOrder.length))

  const all = workbook.sheets.reduce((sum, { rows }) => sum + rows.length, 0) + functions.reduce((sum, { rows }) => sum + rows.length, 0)
  let before = 0
  const counted = (rows: number): ((done: number) => void) => {
    const from = before
    before += rows
    return (done) => report(COMPUTING + ((1 - COMPUTING) * (from + done)) / all)
  }
  const sheets = [
    coverSheet({
      name: cover, workbook, values, date, methods: functionsCalled(workbook),
      added: [
        ...functions.map(({ sheet, definition, rows }) => ({ name: sheet, holds: `workings of ${rows.length} ${rows.length === 1 ? 'call' : 'calls'}: ${definition.gives}` })),
        ...tables.sheets.map(({ name }) => ({ name, holds: 'tables that the workings look things up in' })),
      ],
    }),
    ...workbook.sheets.map((sheet) => userSheet(sheet, values.get(sheet.name) ?? [], replaced.get(sheet.name) ?? [], foldedNames, counted(sheet.rows.length))),
    ...functions.map((rows) => functionSheet(rows, computed.get(rows.sheet) ?? [], tables.addresses, foldedNames, counted(rows.rows.length))),
    ...tables.sheets.map(tableFileSheet),
  ]
  return { sheets, names: new Map([...names].map(([name, { text }]) => [name, text])) }
}

/** About the part of the time that goes by before anything is written. */
const COMPUTING = 0.3

/** The formulas with own calls replaced; nothing where a cell has no formula. */
function replacedFormulas(sheet: Sheet, book: CallBook): ReplacedFormulas {
  const rows: (string | undefined)[][] = []
  for (const [key, cells] of Object.entries(sheet.rows)) {
    const row = Number(key)
    rows[row] = Array.from(cells ?? [], (cell, column) =>
      cell && isFormula(cell.content) ? book.replaceCalls(cell.content, { sheet: sheet.name, cell: { row, column }, words: `${sheet.name}!${printAddress(row, column)}` }) : undefined)
  }
  return rows
}
