import type { CellValue } from '../../calc/values.ts'
import type { FileCell, FileFormulaText } from '../package/file-sheet.ts'
import type { Look } from '../package/looks.ts'

/** A row of a cover, or nothing for one that is left empty. */
export interface Line {
  readonly cells: readonly (FileCell | undefined)[]
  readonly heightPt?: number
}

/** Columns of a cover, px: about what a page across takes at three quarters of its size. */
export const COVER_WIDTHS_PX: readonly number[] = [180, 270, 210, 270, 270]
const COLUMNS = COVER_WIDTHS_PX.length

export const EMPTY: Line = { cells: [] }

export const line = (...cells: readonly (FileCell | undefined)[]): Line => ({ cells })

/** A text in one column, on as many lines as it needs. */
export const words = (look: Look, value: string): FileCell => ({ value, style: { look, wrap: true } })

/** A text that goes across this column and the others up to one before `end`. */
export function across(look: Look, value: string, from = 0, end = COLUMNS): readonly (FileCell | undefined)[] {
  const cells: (FileCell | undefined)[] = [{ value, style: { look, wrap: true }, across: end - from }]
  while (cells.length < end - from) cells.push({ value: null, style: { look, wrap: true } })
  return cells
}

/** What a formula gives, with what it gave at export. */
export const live = (text: string, value: CellValue, style: FileCell['style'] = { look: 'text' }): FileCell => ({ value, formula: { text } satisfies FileFormulaText, style })

/** A heading of columns; the line under it goes on to the last. */
export const headings = (...texts: readonly string[]): Line => ({ cells: Array.from({ length: COLUMNS }, (_, column) => words('heading', texts[column] ?? '')) })

/** What is said of the calculation, after its name. */
export const fact = (name: string, said: string): Line => line(words('label', name), ...across('text', said, 1))
