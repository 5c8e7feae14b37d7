import type { FunctionDefinition } from '../../../functions/define.ts'
import type { CellValue } from '../../calc/values.ts'
import { columnLetters } from '../../workbook/address.ts'
import { fileFormula, type FileNames } from '../file-formula.ts'
import type { FileCell, FileRow, FileSheet } from '../package/file-sheet.ts'
import type { Look } from '../package/looks.ts'
import type { Content } from './argument-parts.ts'
import { COLUMNS_BEFORE, HEADER_ROWS, type FunctionRows } from './call-book.ts'
import { rowFormulas } from './row-formulas.ts'

/** The sheet of a function's workings: its equation and sources, then a row a call and a column a step. */
export function functionSheet(
  { definition, sheet, rows }: FunctionRows, values: readonly (readonly CellValue[])[], addresses: ReadonlyMap<string, string>, names: FileNames, tell: (rows: number) => void,
): FileSheet {
  const { columns } = definition.workings
  return {
    name: sheet, widthsPx: [PLACE_WIDTH, ...columns.map(() => COLUMN_WIDTH)], frozen: [HEADER_ROWS, COLUMNS_BEFORE], styles: () => LOOKS_USED.map((look) => ({ look })),
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

const LOOKS_USED: readonly Look[] = ['title', 'text', 'note', 'header', 'header unit', 'given', 'step', 'outcome']

const PLACE_WIDTH = 180
const COLUMN_WIDTH = 104
const TELL_ROWS = 500

/** What stands in the first cell of it. */
export const workingsTitle = ({ name, gives }: FunctionDefinition): string => `${name}: ${gives}`

function header({ definition, rows }: FunctionRows): readonly FileRow[] {
  const { equation, sources, cautions = [], workings } = definition
  const given = workings.columns.map((column) => column.given !== undefined)
  return [
    [text('title', workingsTitle(definition))],
    [text('text', equation)],
    [text('note', [`${rows.length} ${rows.length === 1 ? 'call' : 'calls'}.`, `Sources: ${sources.map(({ cite, confidence }) => `${cite} [${confidence}]`).join('; ')}.`, ...cautions].join(' '))],
    [text('header', 'first called in'), ...workings.columns.map(({ label }) => text('header', label))],
    [text('header unit', ''), ...workings.columns.map(({ unit }, index) => text('header unit', given[index] && unit === '' ? 'as given' : unit))],
  ].map((cells, row) => ({ row, cells }))
}

const text = (look: Look, value: string): FileCell => ({ value, style: { look } })

const PLACE = "(?:'(?:[^']|'')+'|[A-Za-z_][A-Za-z0-9_.]*)![A-Z]{1,3}[0-9]{1,7}"
/** Most of what is given is a cell, or a cell with a question before it, which a file has by the same letters: reading each takes a tenth of an export's time. */
const AS_IN_FILES = new RegExp(`^(?:${PLACE}|IF\\(ISNUMBER\\((${PLACE})\\),\\1,NA\\(\\)\\)|IF\\((${PLACE})="",(?:""|NA\\(\\)),\\2\\))$`)

function givenCell(content: Content, value: CellValue, names: FileNames): FileCell {
  const style = { look: 'given' } as const
  if (typeof content !== 'object') return { value: content === '' ? null : content, style }
  const formula = AS_IN_FILES.test(content.formula) ? { text: content.formula } : fileFormula(`=${content.formula}`, names)
  return formula === undefined ? { value, style, note: `Lowside computes this: ${content.formula}` } : { value: value ?? 0, formula, style }
}
