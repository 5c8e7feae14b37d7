import { isCellError, type CellValue } from '../calc/values.ts'
import { columnLetters } from '../workbook/address.ts'
import { checkCells } from '../calc/check-cells.ts'
import { columnWidth, isFormula, usedRange, type Cell, type CellContent, type Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { fileFormula, type FileNames } from './file-formula.ts'
import { numberCode } from './number-code.ts'
import type { FileCell, FileRow, FileSheet } from './package/file-sheet.ts'
import type { CellStyle } from './package/looks.ts'

/** A formula of the workbook with its own calls replaced, by row and column; undefined where a cell has none. */
export type ReplacedFormulas = readonly (readonly (string | undefined)[])[]

/** A sheet of the workbook as a file has it. */
export function userSheet(sheet: Sheet, values: readonly (readonly CellValue[])[], replaced: ReplacedFormulas, names: FileNames, tell: (row: number) => void): FileSheet {
  const columns = Math.max(usedRange(sheet).columns, sheet.columns.length)
  return {
    name: sheet.name, frozen: sheet.frozen, widthsPx: Array.from({ length: columns }, (_, column) => columnWidth(sheet, column)), checks: checkAreas(sheet),
    styles: () => stylesOf(sheet, values),
    rows: (function* (): Generator<FileRow> {
      for (const [key, cells] of Object.entries(sheet.rows)) {
        const row = Number(key)
        if (row % TELL_ROWS === 0) tell(row)
        if (cells === undefined) continue
        yield { row, cells: Array.from(cells, (cell, column) => cell && fileCell(cell, values[row]?.[column] ?? null, replaced[row]?.[column], names)) }
      }
    })(),
  }
}

const TELL_ROWS = 500

function fileCell(cell: Cell, value: CellValue, replaced: string | undefined, names: FileNames): FileCell {
  const { content, note } = cell
  const style = cellStyle(cell, value)
  if (!isFormula(content)) return { value: plainValue(content), style, ...noted(note) }
  const formula = fileFormula(replaced ?? content, names)
  if (formula === undefined || isUnknownToFiles(value)) {
    const reason = isCellError(value) ? `${value.error}: ${value.message}` : undefined
    return { value, style, ...noted(note, `Lowside computes this: ${content}`, reason) }
  }
  // A formula that refers to an empty cell comes to 0 in other programs, and needs some value here.
  return { value: value ?? 0, formula, style, ...noted(note) }
}

const plainValue = (content: CellContent): CellValue => meantText(content) ?? content

function cellStyle(cell: Cell, value: CellValue): CellStyle {
  const shown = isFormula(cell.content) ? value : plainValue(cell.content)
  return { look: cell.role, ...(cell.wrap ? { wrap: true } : {}), ...(typeof shown === 'number' ? { format: numberCode(shown, cell) } : {}) }
}

function* stylesOf(sheet: Sheet, values: readonly (readonly CellValue[])[]): Generator<CellStyle> {
  for (const [key, cells] of Object.entries(sheet.rows)) {
    for (const [column, cell] of (cells ?? []).entries()) if (cell) yield cellStyle(cell, values[Number(key)]?.[column] ?? null)
  }
}

const FILE_ERRORS: ReadonlySet<string> = new Set(['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NUM!', '#N/A'])

/** Errors of the engine that no file has, and names or functions that no other program would find either. */
const isUnknownToFiles = (value: CellValue): boolean => isCellError(value) && !FILE_ERRORS.has(value.error)

/** What a comment holds at most in a file. */
const MAX_COMMENT = 32_767

function noted(...parts: readonly (string | undefined)[]): { readonly note?: string } {
  const text = parts.filter((part) => part !== undefined && part !== '').join('\n\n').slice(0, MAX_COMMENT)
  return text === '' ? {} : { note: text }
}

/** The check cells, those below one another together. */
function checkAreas(sheet: Sheet): string[] {
  const runs = new Map<string, { readonly letters: string; readonly from: number; to: number }>()
  const done: { readonly letters: string; readonly from: number; readonly to: number }[] = []
  for (const { row, column } of checkCells(sheet)) {
    const letters = columnLetters(column)
    const run = runs.get(letters)
    if (run?.to === row) run.to = row + 1
    else {
      const begun = { letters, from: row + 1, to: row + 1 }
      runs.set(letters, begun)
      done.push(begun)
    }
  }
  return done.map(({ letters, from, to }) => (from === to ? `${letters}${from}` : `${letters}${from}:${letters}${to}`))
}
