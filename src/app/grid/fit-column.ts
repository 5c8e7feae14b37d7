import type { Cell, Sheet } from '../../workbook/document.ts'
import { plainValue } from '../../calc/cell-value.ts'
import type { Session } from '../state/session.ts'
import { cellView } from './cell-view.ts'
import type { GridContext } from './grid-context.ts'
import { CELL_PADDING, widthInRole } from './row-heights.ts'

/** A sentence that runs on is not to make a column of its own length. */
const MOST_PX = 480
const LEAST_PX = 32
/** The mark before a check or an error, and some air. */
const MARKS_PX = 20
/** Texts that are measured, the longest ones: more would take a moment and change nothing. */
const MOST_MEASURED = 400

/** How wide a column is with what it shows: what stands in it, and the values of formulas as far as they have been in view. Undefined if it is empty. */
export function fittedWidth(session: Session, { textWidth }: Pick<GridContext, 'textWidth'>, column: number): number | undefined {
  const sheet = session.sheet()
  const texts = textsOf(session, sheet, column).toSorted((one, other) => other.text.length - one.text.length).slice(0, MOST_MEASURED)
  if (texts.length === 0) return undefined
  const needed = texts.reduce((most, { text, cell }) => Math.max(most, Math.max(...text.split('\n').map((line) => widthInRole(line, cell.role, textWidth))) + (cell.role === 'check' ? MARKS_PX : 0)), 0)
  return Math.min(MOST_PX, Math.max(LEAST_PX, Math.ceil(needed) + CELL_PADDING))
}

/** Titles run on over the sheet and texts told to wrap take what they get. */
function textsOf(session: Session, sheet: Sheet, column: number): { readonly text: string; readonly cell: Cell }[] {
  return sheet.rows.flatMap((cells, row) => {
    const cell = cells?.[column]
    if (!cell || cell.role === 'title' || cell.wrap) return []
    const plain = plainValue(cell)
    const { text } = cellView(cell, plain === undefined ? session.values.at(sheet.name, row, column) : plain, cell.role === 'check' ? session.values.checkAt(sheet.name, row, column) : undefined)
    return text === '' ? [] : [{ text, cell }]
  })
}
