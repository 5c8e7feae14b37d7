import type { CaseOutcome } from '../calc/case-outcomes.ts'
import type { CellValue } from '../calc/values.ts'
import { functionsCalled } from '../calc/functions-called.ts'
import { casesOf } from '../workbook/cases.ts'
import { foldCase, isFormula, type Sheet, type Workbook } from '../workbook/document.ts'
import { printAddress } from '../workbook/address.ts'
import { CASES_HOLD, casesSheet } from './cases-sheet.ts'
import { coverSheet, type ChecksOfSheets } from './cover-sheet.ts'
import { fileNames, type FileNames } from './file-formula.ts'
import type { FileSheet } from './package/file-sheet.ts'
import { userSheet, type ReplacedFormulas } from './user-sheet.ts'
import { documentSheet, DOCUMENT_SHEET } from './return/document-sheet.ts'
import { readingMark } from './return/reading-mark.ts'
import { CallBook, namesWithoutCalls, type FunctionRows } from './workings/call-book.ts'
import { functionSheet } from './workings/function-sheet.ts'
import { newSheetNames } from '../workbook/new-sheet-name.ts'
import { tableMarks } from './workings/row-formulas.ts'
import { tableFileSheet } from './workings/table-file-sheet.ts'
import { tableSheets } from './workings/table-sheets.ts'
import { workingsValues } from './workings/workings-values.ts'

export interface ExportOptions {
  readonly date: Date
  /** Told from time to time what share of the work is done; undefined while it cannot be said. */
  readonly report?: (share: number | undefined) => void
  /** The verdicts of the checks, for the cover to say their margins. */
  readonly checks?: ChecksOfSheets
  /** What comes out in the base and in every case, where there are cases. */
  readonly cases?: readonly CaseOutcome[]
}

/** A workbook as the sheets of a spreadsheet file, whatever the format that they are written in. */
export interface ComputingFile {
  /** Cover, the workbook's sheets, its cases, a sheet of workings a function, tables, the document; the rows of each are made as they are asked for, once. */
  readonly sheets: readonly FileSheet[]
  /** What a defined name stands for, in the file's dialect without "=", by name. */
  readonly names: ReadonlyMap<string, string>
}

/** The same without the document, each sheet with what it is for. */
export interface ComputingSheets {
  readonly sheets: readonly { readonly part: SheetPart; readonly sheet: FileSheet }[]
  readonly names: ComputingFile['names']
  /** The calls that stand on sheets of workings. */
  readonly functions: readonly FunctionRows[]
}

export type SheetPart = 'cover' | 'own' | 'cases' | 'workings' | 'table'

type Values = ReadonlyMap<string, readonly (readonly CellValue[])[]>

/**
 * The workbook as sheets that recalculate in any spreadsheet program: each call of a function of Lowside stands as a reference to its row
 * on a sheet of workings, in standard formulas. A cover comes first, and the document itself last, on a hidden sheet.
 * @param values every value by sheet name, rows and columns from A1, as the calculation graph gives them
 */
export async function computingFile(workbook: Workbook, values: Values, options: ExportOptions): Promise<ComputingFile> {
  const { sheets, names } = computingSheets(workbook, values, options)
  const name = newSheetNames(sheets.map(({ sheet }) => sheet.name))(DOCUMENT_SHEET)
  const marks = Object.fromEntries(sheets.flatMap(({ part, sheet }) => (part === 'cover' || part === 'cases' ? [[part, readingMark(sheet.rows)]] : [])))
  return { sheets: [...sheets.map(({ sheet }) => sheet), await documentSheet(workbook, name, options.date, marks)], names }
}

/** {@link computingFile} without the document. */
export function computingSheets(workbook: Workbook, values: Values, { date, report = () => undefined, checks = new Map(), cases }: ExportOptions): ComputingSheets {
  const sheetName = newSheetNames(workbook.sheets.map(({ name }) => name))
  const cover = sheetName('Cover')
  const casesName = casesOf(workbook).list.length > 0 ? sheetName('Cases') : undefined
  const book = new CallBook(workbook, sheetName)
  const replacedNames = namesWithoutCalls(workbook, book)
  const allRows = workbook.sheets.reduce((sum, { rows }) => sum + rows.length, 0)
  let rowsRead = 0
  const replaced = new Map(workbook.sheets.map((sheet) => {
    const from = rowsRead
    rowsRead += sheet.rows.length
    return [sheet.name, replacedFormulas(sheet, book, (row) => report((REPLACING * (from + row)) / allRows))]
  }))
  const { functions } = book
  const tables = tableSheets(new Set(functions.flatMap(({ definition }) => tableMarks(definition))), sheetName)
  const names = fileNames(replacedNames)
  const foldedNames: FileNames = new Map([...names].map(([name, formula]) => [foldCase(name), formula]))
  const computed = workingsValues(book, values, replacedNames, (calls) => report(REPLACING + ((COMPUTING - REPLACING) * calls) / book.inOrder.length))

  const all = workbook.sheets.reduce((sum, { rows }) => sum + rows.length, 0) + functions.reduce((sum, { rows }) => sum + rows.length, 0)
  let before = 0
  const counted = (rows: number): ((done: number) => void) => {
    const from = before
    before += rows
    return (done) => report(COMPUTING + ((1 - COMPUTING) * (from + done)) / all)
  }
  const own = workbook.sheets.map((sheet) => userSheet(sheet, values.get(sheet.name) ?? [], replaced.get(sheet.name) ?? [], foldedNames, counted(sheet.rows.length)))
  const workings = functions.map((rows) => functionSheet(rows, computed.get(rows.sheet) ?? [], tables.addresses, foldedNames, counted(rows.rows.length)))
  const sheets: ComputingSheets['sheets'] = [
    inPart('cover')(coverSheet({
      name: cover, workbook, values, checks, date, methods: functionsCalled(workbook),
      added: [
        ...(casesName === undefined ? [] : [{ name: casesName, holds: CASES_HOLD }]),
        ...functions.map(({ sheet, definition, rows }) => ({ name: sheet, holds: `workings of ${rows.length} ${rows.length === 1 ? 'call' : 'calls'}: ${definition.gives}` })),
        ...tables.sheets.map(({ name }) => ({ name, holds: 'tables that the workings look things up in' })),
      ],
    })),
    ...own.map(inPart('own')),
    ...(casesName === undefined ? [] : [inPart('cases')(casesSheet(workbook, casesName, cases))]),
    ...workings.map(inPart('workings')),
    ...tables.sheets.map(tableFileSheet).map(inPart('table')),
  ]
  return { sheets, names: new Map([...names].map(([name, { text }]) => [name, text])), functions }
}

const inPart = (part: SheetPart) => (sheet: FileSheet) => ({ part, sheet })

/** About the part of the time that goes by before anything is written, and of it that until every call has its row. */
const COMPUTING = 0.5
const REPLACING = 0.2
const TELL_ROWS = 500

/** The formulas with own calls replaced; nothing where a cell has no formula. */
function replacedFormulas(sheet: Sheet, book: CallBook, tell: (row: number) => void): ReplacedFormulas {
  const rows: (string | undefined)[][] = []
  for (const [key, cells] of Object.entries(sheet.rows)) {
    const row = Number(key)
    if (row % TELL_ROWS === 0) tell(row)
    rows[row] = Array.from(cells ?? [], (cell, column) =>
      cell && isFormula(cell.content) ? book.replaceCalls(cell.content, { sheet: sheet.name, cell: { row, column }, words: `${sheet.name}!${printAddress(row, column)}` }) : undefined)
  }
  return rows
}
