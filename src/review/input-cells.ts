import { eachCell } from '../workbook/cells.ts'
import { isFormula, type Cell, type Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { bandOf } from './bands.ts'
import type { Survey } from './survey.ts'

/** A cell of the role `input` that holds something typed. */
export interface InputCell {
  readonly sheet: Sheet
  readonly row: number
  readonly column: number
  readonly cell: Cell
}

/** Every input with something in it, sheet by sheet in the order of reading. */
export function inputsOf({ workbook }: Survey): InputCell[] {
  const found: InputCell[] = []
  for (const sheet of workbook.sheets) {
    eachCell(sheet, (cell, row, column) => {
      if (cell.role === 'input' && cell.content !== null && !isFormula(cell.content)) found.push({ sheet, row, column, cell })
    })
  }
  return found
}

/** The words beside an input and over it, as far as there are some: what its row is called, and its column. */
export function wordsOf({ sheet, row, column }: Pick<InputCell, 'sheet' | 'row' | 'column'>, textAt: (column: number) => string | undefined): { readonly beside?: string; readonly over?: string } {
  const beside = nearestText(column, textAt)
  const over = bandOf(sheet, row)?.headings.get(column)
  return { ...(beside === undefined ? {} : { beside }), ...(over === undefined ? {} : { over }) }
}

function nearestText(column: number, textAt: (column: number) => string | undefined): string | undefined {
  for (let at = column - 1; at >= 0; at--) {
    const text = textAt(at)
    if (text !== undefined) return text
  }
  return undefined
}

/** The texts of a row that name what stands in it: labels, headings, names typed into a table; as they are shown. */
export const namingText = (survey: Survey, { sheet, row }: Pick<InputCell, 'sheet' | 'row'>) => (column: number): string | undefined => {
  const cell = sheet.rows[row]?.[column]
  if (cell === undefined || cell.role === 'unit' || cell.role === 'result' || cell.role === 'check') return undefined
  const value = isFormula(cell.content) ? survey.value(sheet.name, row, column) : meantText(cell.content)
  return typeof value === 'string' && value.trim() !== '' ? value : undefined
}
