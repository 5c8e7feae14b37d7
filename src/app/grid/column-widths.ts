import { columnLetters } from '../../workbook/address.ts'
import { columnWidth, type Sheet } from '../../workbook/document.ts'
import { MAX_COLUMN_WIDTH } from '../../workbook/limits.ts'
import type { Session } from '../state/session.ts'
import { fittedWidth } from './fit-column.ts'
import type { GridContext } from './grid-context.ts'
import { LEAST_WIDTH } from './layout.ts'
import { linesSelected } from './line-actions.ts'

/** How much a key widens or narrows a column. */
const STEP_PX = 8

/** Makes the selected columns a step wider, or narrower. */
export function widenColumns(session: Session, way: 1 | -1): void {
  const sheet = session.sheet()
  setWidths(session, columnsSelected(session), (column) => Math.min(MAX_COLUMN_WIDTH, Math.max(LEAST_WIDTH, columnWidth(sheet, column) + way * STEP_PX)))
}

/** Makes columns as wide as what they show, the selected ones or those given; empty ones stay as they are. */
export function fitColumns(session: Session, context: Pick<GridContext, 'textWidth'>, columns = columnsSelected(session)): void {
  setWidths(session, columns, (column) => fittedWidth(session, context, column) ?? columnWidth(session.sheet(), column))
}

const columnsSelected = (session: Session): readonly number[] =>
  linesSelected(session, 'columns').flatMap(({ at, count }) => Array.from({ length: count }, (_, index) => at + index))

/** As one action, and says how wide they are then: one who does not see it hears it. */
function setWidths(session: Session, columns: readonly number[], widthOf: (column: number) => number): void {
  if (!session.settle()) return
  const sheet = session.sheet()
  const widths = new Map(columns.map((column) => [column, widthOf(column)]))
  const count = Math.max(sheet.columns.length, ...columns.map((column) => column + 1))
  const all = Array.from({ length: count }, (_, column) => widths.get(column) ?? columnWidth(sheet, column))
  if (all.some((width, column) => width !== columnWidth(sheet, column))) session.act('Column width', () => [{ kind: 'columnWidths', sheet: sheet.name, columns: all }])
  if (session.notice()?.tone !== 'problem') session.setNotice({ tone: 'done', text: widthWords(session.sheet(), columns) })
}

function widthWords(sheet: Sheet, columns: readonly number[]): string {
  const widths = columns.map((column) => columnWidth(sheet, column))
  const [least, most] = [Math.min(...widths), Math.max(...widths)]
  const which = columns.length === 1 ? `Column ${columns.map(columnLetters).join('')}` : `${columns.length} columns`
  return `${which}: ${least === most ? least : `${least} to ${most}`} px wide`
}
