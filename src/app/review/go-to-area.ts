import type { Area } from '../../workbook/address.ts'
import { sheetByName } from '../../workbook/document.ts'
import type { Session } from '../state/session.ts'

/** Of more, only the first cell is selected: the grid would show the end of them. */
const MOST_ROWS = 12
const MOST_COLUMNS = 6

/** Shows cells in the grid and selects them; the focus stays where it is. */
export function goToArea(session: Session, sheet: string, area: Area): void {
  if (sheetByName(session.document.workbook(), sheet) === undefined) return session.setNotice({ tone: 'problem', text: `There is no sheet "${sheet}" any more` })
  session.goTo(sheet, { row: area.top, column: area.left })
  // What was being typed and is not accepted keeps the grid where it is.
  const isThere = session.entry.editing() === undefined
  if (isThere && area.bottom - area.top < MOST_ROWS && area.right - area.left < MOST_COLUMNS) session.selection.select(area)
}
