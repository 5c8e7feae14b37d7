import { appendRowsInParts, rowsAppended } from '../../../exchange/lists/append-rows.ts'
import type { WorkbookList } from '../../../exchange/lists/list.ts'
import type { MappedRow } from '../../../exchange/lists/map-rows.ts'
import { formatNumber } from '../../../../functions/units/format.ts'
import type { Area } from '../../../workbook/address.ts'
import { isFormula, sheetByName, type Workbook } from '../../../workbook/document.ts'
import { meantText } from '../../../workbook/entry.ts'
import { unitOfValue } from '../../../workbook/unit-scope.ts'
import { frameDrawn } from '../../state/frame-drawn.ts'
import type { Session } from '../../state/session.ts'

/** Appends rows as one action that undo takes back, selects them, and says what was done and what the list's totals have become. */
export async function appendToList(session: Session, list: WorkbookList, rows: readonly MappedRow[]): Promise<void> {
  const totals = totalsOf(session.document.workbook(), list)
  const before = await valuesOf(session, list, totals)
  const places = rowsAppended(list, rows.length)
  session.actInParts({
    label: `${rows.length} rows into ${list.name}`,
    make: (workbook) => appendRowsInParts(workbook, list, rows.map(({ values }) => values)),
    done() {
      const columns = list.models.map(({ column }) => column)
      const area = { top: places[0] ?? list.firstRow, bottom: places.at(-1) ?? list.firstRow, left: Math.min(...columns), right: Math.max(...columns) }
      session.goTo(list.sheet, { row: area.top, column: area.left })
      // A sheet that has just grown can be moved that far once it is drawn.
      void frameDrawn().then(() => session.sheetName() === list.sheet && selectFromStart(session, area))
      const words = `${rows.length} ${rows.length === 1 ? 'row' : 'rows'} appended to ${list.name}; undo takes ${rows.length === 1 ? 'it' : 'them'} back.`
      const notice = { tone: 'done', text: words } as const
      session.setNotice(notice)
      void tellTotals(session, list, totals, before, notice)
    },
  })
}

/** Of the new rows, as many as any screen shows below the headings. */
const ROWS_IN_SIGHT = 8

/** Selects an area and leaves its start in view, where a selection made by hand would have its end there. */
function selectFromStart({ selection }: Session, area: Area): void {
  // Another cell than the active one, so that the grid moves there.
  selection.moveTo({ row: Math.min(area.bottom, area.top + ROWS_IN_SIGHT), column: area.left + 1 })
  const grid = document.querySelector<HTMLElement>('[role=grid]')
  const [left, top] = [grid?.scrollLeft ?? 0, grid?.scrollTop ?? 0]
  selection.select(area)
  grid?.scrollTo(left, top)
  grid?.focus({ preventScroll: true })
}

interface Total {
  readonly row: number
  readonly column: number
  readonly heading: string
  readonly unit: string
}

/** Sums over a list that stand between its headings and its rows. */
function totalsOf(workbook: Workbook, list: WorkbookList): Total[] {
  const sheet = sheetByName(workbook, list.sheet)
  if (!sheet) return []
  return list.models.flatMap(({ column }) => {
    for (let row = list.headingRow + 1; row < list.firstRow; row++) {
      const content = sheet.rows[row]?.[column]?.content
      if (!isFormula(content) || !/^=SUM\(/i.test(content)) continue
      const at = unitOfValue(sheet, { row, column })
      return [{ row, column, heading: meantText(sheet.rows[list.headingRow]?.[column]?.content) ?? '', unit: (at && meantText(sheet.rows[at.row]?.[at.column]?.content)) ?? '' }]
    }
    return []
  })
}

async function valuesOf({ recalculation }: Session, list: WorkbookList, totals: readonly Total[]): Promise<readonly (number | undefined)[]> {
  return Promise.all(totals.map(async ({ row, column }) => {
    const read = await recalculation.ask((service) => service.read(list.sheet, { top: row, bottom: row, left: column, right: column }))
    const value = read?.values[0]?.[0]
    return typeof value === 'number' ? value : undefined
  }))
}

/** What has changed is told once it is calculated, unless something else has been said meanwhile. */
async function tellTotals(session: Session, list: WorkbookList, totals: readonly Total[], before: readonly (number | undefined)[], notice: { readonly tone: 'done'; readonly text: string }): Promise<void> {
  const after = await valuesOf(session, list, totals)
  const changed = totals.flatMap(({ heading, unit }, index) => {
    const [old, now] = [before[index], after[index]]
    return old === undefined || now === undefined || old === now ? [] : [`${heading} ${formatNumber(old)} → ${formatNumber(now)} ${unit}`.trim()]
  })
  if (changed.length > 0 && session.notice() === notice) session.setNotice({ tone: 'done', text: `${notice.text} Totals: ${changed.join(', ')}.` })
}
