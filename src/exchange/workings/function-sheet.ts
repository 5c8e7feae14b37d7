import type { CellValue } from '../../calc/values.ts'
import { columnLetters } from '../../workbook/address.ts'
import { fileFormula, type FileNames } from '../file-formula.ts'
import type { FileCell, FileRow, FileSheet } from '../package/file-sheet.ts'
import type { Content } from './argument-parts.ts'
import { COLUMNS_BEFORE, HEADER_ROWS, type FunctionRows } from './call-book.ts'
import { rowFormulas } from './row-formulas.ts'

/** The sheet of a function's workings: its equation and sources, then a row a call and a column a step. */
export function functionSheet(
  { definition, sheet, rows }: FunctionRows, values: readonly (readonly CellValue[])[], addresses: ReadonlyMap<string, string>, names: FileNames, tell: (rows: number) => void,
): FileSheet {
  const { columns } = definition.workings
  return {
    name: sheet, widthsPx: [PLACE_WIDTH, ...columns.map(() => COLUMN_WIDTH)], frozen: [HEADER_ROWS, COLUMNS_BEFORE],
    rows: (function* (): Generator<FileRow> {
      yield* header({ definition, sheet, rows })
      const formulas = rowFormulas(definition, addresses)
      const last = HEADER_ROWS + rows.length
      for (const [index, { place, given }] of rows.entries()) {
        let next = 0
        const row = HEADER_ROWS + index
        const cells = formulas.map((formula, column): FileCell => {
          const value = values[index]?.[column] ?? null
          if (formula === undefined) return givenCell(given[next++] ?? '', value, names)
          const letters = columnLetters(COLUMNS_BEFORE + column)
          // Below the first call the same formula stands in every row: the file holds it once.
          const shared = { number: column, ...(index === 0 ? { range: `${letters}${row + 1}:${letters}${last}` } : {}) }
          const text = index === 0 || rows.length === 1 ? formula(row) : ''
          return { value, formula: rows.length === 1 ? { text } : { text, shared }, style: { look: column === columns.length - 1 ? 'outcome' : 'step' } }
        })
        yield { row, cells: [{ value: place, style: { look: 'note' } }, ...cells] }
        if (index % TELL_ROWS === 0) tell(index)
      }
    })(),
  }
}

const PLACE_WIDTH = 180
const COLUMN_WIDTH = 104
const TELL_ROWS = 500

function header({ definition, rows }: FunctionRows): readonly FileRow[] {
  const { name, gives, equation, sources, cautions = [], workings } = definition
  const given = workings.columns.map((column) => column.given !== undefined)
  return [
    [text('title', `${name}: ${gives}`)],
    [text('text', equation)],
    [text('note', [`${rows.length} ${rows.length === 1 ? 'call' : 'calls'}.`, `Sources: ${sources.map(({ cite, confidence }) => `${cite} [${confidence}]`).join('; ')}.`, ...cautions].join(' '))],
    [text('header', 'first called in'), ...workings.columns.map(({ label }) => text('header', label))],
    [text('header unit', ''), ...workings.columns.map(({ unit }, index) => text('header unit', given[index] && unit === '' ? 'as given' : unit))],
  ].map((cells, row) => ({ row, cells, ...(row === HEADER_ROWS - 2 ? { heightPt: LABEL_HEIGHT } : {}) }))
}

const LABEL_HEIGHT = 54

const text = (look: FileCell['style']['look'], value: string): FileCell => ({ value, style: { look } })

function givenCell(content: Content, value: CellValue, names: FileNames): FileCell {
  const style = { look: 'given' } as const
  if (typeof content !== 'object') return { value: content === '' ? null : content, style }
  const formula = fileFormula(`=${content.formula}`, names)
  return formula === undefined ? { value, style, note: `Lowside computes this: ${content.formula}` } : { value: value ?? 0, formula, style }
}
