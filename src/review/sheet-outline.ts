import { eachCell } from '../workbook/cells.ts'
import { isFormula, type Cell, type Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import type { AlignedRow } from '../workbook/row-alignment.ts'

/** What of a cell stays the same when a template is filled in: its words, and what its formula does whatever it refers to. Empty for inputs and units. */
export function lastingText({ content, role }: Cell): string {
  if (isFormula(content)) return `=${formulaSkeleton(content)}`
  return role === 'input' || role === 'unit' ? '' : (meantText(content) ?? '')
}

/** A formula without its references and numbers: a rough likeness, made fast. */
export const formulaSkeleton = (formula: string): string =>
  formula.replace(SHEETS, '').replace(CELLS, '#').replace(BLANKS, '').toUpperCase()

const SHEETS = /(?:'(?:[^']|'')*'|[A-Za-z_][\w]*)!/g
const CELLS = /\$?[A-Za-z]{0,3}\$?[0-9]+(?:\.[0-9]+)?/g
const BLANKS = /[\s$]+/g

/** All lasting texts of a sheet, each once. */
export function lastingTexts(sheet: Sheet): ReadonlySet<string> {
  const texts = new Set<string>()
  eachCell(sheet, (cell) => {
    const text = lastingText(cell)
    if (text !== '') texts.add(text)
  })
  return texts
}

/** Columns as alignment looks at lines: by the headings over them, then by their labels. */
export function columnsToAlign(sheet: Sheet): AlignedRow[] {
  const headings: string[][] = []
  const labels: string[][] = []
  eachCell(sheet, (cell, _row, column) => {
    const list = cell.role === 'heading' ? headings : cell.role === 'label' ? labels : undefined
    const texts = (headings[column] ??= [])
    if (list !== undefined) (list === headings ? texts : (labels[column] ??= [])).push(lastingText(cell))
  })
  return headings.flatMap((texts, column) => ({
    row: column, whole: [...texts, ...(labels[column] ?? [])].join('\u0001'), outline: texts[0] ?? '', cells: texts,
  }))
}

/** Rows as alignment looks at them, their cells where `place` puts them: in the columns of another sheet. */
export function rowsToAlign(sheet: Sheet, place: (column: number) => number | undefined): AlignedRow[] {
  const rows: { row: number; whole: string[]; outline: string[]; cells: string[]; isNamed: boolean }[] = []
  eachCell(sheet, (cell, row, column) => {
    let last = rows.at(-1)
    if (last?.row !== row) rows.push(last = { row, whole: [], outline: [], cells: [], isNamed: false })
    const text = lastingText(cell)
    if (text !== '') {
      last.outline.push(text)
      last.whole.push(text)
    } else if (cell.role === 'input' && !last.isNamed) {
      // What is typed first names the row of a list; what else is typed may be the same in any other row.
      const name = meantText(cell.content)
      if (name !== undefined) last.whole.push(`\u0002${name}`)
      last.isNamed = true
    }
    const at = place(column)
    if (at === undefined) return
    while (last.cells.length < at) last.cells.push('')
    last.cells[at] = text
  })
  return rows.map(({ row, whole, outline, cells }) => ({ row, whole: whole.join('\u0001'), outline: outline.join('\u0001'), cells }))
}
