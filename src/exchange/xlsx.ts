import { write, type CellObject, type WorkSheet } from 'xlsx'
import type { CellValue } from '../calc/values.ts'
import { printAddress } from '../workbook/address.ts'
import { eachCell } from '../workbook/cells.ts'
import { columnWidth, foldCase, usedRange, type Sheet, type Workbook } from '../workbook/document.ts'
import { ABOUT_COLUMNS, aboutSheet, aboutSheetName } from './about-sheet.ts'
import { fileNames, type FileNames } from './file-formula.ts'
import { xlsxCell } from './xlsx-cell.ts'

/**
 * The workbook as a spreadsheet file (ECMA-376, `.xlsx`). Formulas that other programs can compute are kept; those that call functions
 * of Lowside are written as their values, with the formula in a comment. The last sheet says what the file is, its cautions and sources.
 * @param values every value by sheet name, rows and columns from A1, as the calculation graph gives them
 * @param report told from time to time what share of the cells is made; undefined at last, for the packing, which is one step
 */
export function exportXlsx(workbook: Workbook, values: ReadonlyMap<string, readonly (readonly CellValue[])[]>, { date, report = () => undefined }: ExportOptions): Uint8Array {
  const names = fileNames(workbook.names)
  const foldedNames: FileNames = new Map([...names].map(([name, formula]) => [foldCase(name), formula]))
  const sheets = new Map<string, WorkSheet>()
  const rows = workbook.sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0)
  let before = 0
  for (const sheet of workbook.sheets) {
    sheets.set(sheet.name, xlsxSheet(sheet, values.get(sheet.name) ?? [], foldedNames, (row) => report((before + row) / rows)))
    before += sheet.rows.length
  }
  sheets.set(aboutSheetName(workbook), textSheet(aboutSheet(workbook, date), ABOUT_COLUMNS))
  const file = {
    SheetNames: [...sheets.keys()],
    Sheets: Object.fromEntries(sheets),
    Props: { Title: workbook.title, Subject: workbook.purpose, Author: '', CreatedDate: date },
    Workbook: { Names: [...names].map(([name, { text }]) => ({ Name: name, Ref: text })) },
  }
  report(undefined)
  // The library's type for this output says `any`; it is an ArrayBuffer.
  const written: ArrayBuffer = write(file, { type: 'array', bookType: 'xlsx', compression: true })
  return new Uint8Array(written)
}

interface ExportOptions {
  readonly date: Date
  readonly report?: (share: number | undefined) => void
}

const REPORT_ROWS = 1000

function xlsxSheet(sheet: Sheet, values: readonly (readonly CellValue[])[], names: FileNames, tell: (row: number) => void): WorkSheet {
  const { rows, columns } = usedRange(sheet)
  const grid: CellObject[][] = Array.from({ length: rows }, () => [])
  eachCell(sheet, (cell, row, column) => {
    if (column === 0 && row % REPORT_ROWS === 0) tell(row)
    const written = xlsxCell(cell, values[row]?.[column] ?? null, printAddress(row, column), names)
    const line = grid[row]
    if (written && line) line[column] = written
  })
  return workSheet(grid, columns, Array.from({ length: Math.max(columns, sheet.columns.length) }, (_, column) => columnWidth(sheet, column)))
}

function textSheet(rows: readonly (readonly string[])[], widths: readonly number[]): WorkSheet {
  const grid = rows.map((row) => row.map((text): CellObject => ({ t: 's', v: text })))
  return workSheet(grid, Math.max(...rows.map(({ length }) => length)), widths)
}

/** The library takes rows of cells, but needs every row of the sheet's extent to be there. */
function workSheet(grid: CellObject[][], columns: number, widths: readonly number[]): WorkSheet {
  return {
    '!data': grid,
    '!cols': widths.map((width) => ({ wpx: width })),
    ...(grid.length === 0 ? {} : { '!ref': `A1:${printAddress(grid.length - 1, columns - 1)}` }),
  }
}
