import { clear } from '../../workbook/commands.ts'
import { usedRange } from '../../workbook/document.ts'
import { fill, type FillWay } from '../../workbook/fill.ts'
import { changePlaces } from '../../workbook/format.ts'
import { unitPlace } from '../../workbook/unit-change.ts'
import { checkMarksOf } from '../review/check-marks.ts'
import { actOnSelection } from '../state/on-selection.ts'
import type { Session } from '../state/session.ts'
import { doWithLines, linesSelected, selectAllLines } from './line-actions.ts'
import { fitColumns, widenColumns } from './column-widths.ts'
import type { GridContext } from './grid-context.ts'
import type { GridAction, GridActions } from './keys.ts'
import type { Viewport } from './viewport.ts'

/** What of the grid the actions need. */
interface Around extends Pick<Viewport, 'pageRows'>, Pick<GridContext, 'textWidth'> {
  openMenu(): void
}

/** Does what a key asks for. */
export function runGridAction(session: Session, around: Around, action: GridAction): void {
  // The record pairs each action with its own handler; a union cannot follow that through an index.
  const run = RUN[action.does] as (session: Session, action: GridAction, around: Around) => void
  run(session, action, around)
}

const RUN: { readonly [Does in keyof GridActions]: (session: Session, action: GridActions[Does], around: Around) => void } = {
  step: ({ selection }, { rows, columns, extend }) => selection.step(rows, columns, extend),
  leap: ({ selection }, { rows, columns, extend }) => selection.leap(rows, columns, extend),
  page: ({ selection }, { pages, extend }, { pageRows }) => selection.step(pages * pageRows(), 0, extend),
  rowStart: ({ selection }, { extend }) => selection.travel({ row: selection.corner().row, column: 0 }, extend),
  rowEnd: ({ selection, sheet }, { extend }) => {
    const { row } = selection.corner()
    selection.travel({ row, column: Math.max(0, (sheet().rows[row]?.length ?? 0) - 1) }, extend)
  },
  sheetStart: ({ selection }, { extend }) => selection.travel({ row: 0, column: 0 }, extend),
  sheetEnd: ({ selection, sheet }, { extend }) => {
    const { rows, columns } = usedRange(sheet())
    selection.travel({ row: Math.max(0, rows - 1), column: Math.max(0, columns - 1) }, extend)
  },
  selectAll: ({ selection, sheet }) => {
    const { rows, columns } = usedRange(sheet())
    selection.select({ top: 0, left: 0, bottom: Math.max(0, rows - 1), right: Math.max(0, columns - 1) })
  },
  edit: ({ entry }) => entry.begin('cell'),
  type: ({ entry }, { text }) => entry.begin('cell', text),
  clear: clearSelection,
  undo: (session) => session.undo(),
  redo: (session) => session.redo(),
  fill: fillSelection,
  places: (session, { by }) => actOnSelection(session, 'Number format', (workbook, sheet, range) => changePlaces(workbook, sheet, range, by)),
  pickUnit: (session) => {
    if (unitPlace(session.sheet(), session.selection.active())) session.setPopover('unitAtCell')
    else session.setNotice({ tone: 'problem', text: 'No unit belongs here; accepted: a unit cell, or an input or a result with a number' })
  },
  format: (session) => session.setPopover('format'),
  selectLines: (session, { axis }) => selectAllLines(session, linesSelected(session, axis)),
  lines: (session, { axis, deed }) => doWithLines(session, axis, deed),
  widen: (session, { way }) => widenColumns(session, way),
  fitColumns: (session, _action, around) => fitColumns(session, around),
  check: (session) => checkMarksOf(session).ask(),
  menu: (_session, _action, { openMenu }) => openMenu(),
  keep: ({ selection }) => selection.keep(),
  leave: (session) => {
    if (session.stop()) return
    if (session.cutting.end()) session.setNotice(undefined)
    else session.selection.leaveOne()
  },
}

export function fillSelection(session: Session, { way }: GridActions['fill']): void {
  if (!canFill(session, way)) return session.setNotice({ tone: 'problem', text: FILL_NEEDS[way] })
  const areas = session.usedAreas()
  session.act('Fill', (workbook) => areas.flatMap((area) => fill(workbook, session.sheet().name, area, way)))
}

/** Each selected rectangle has cells to fill beside those to repeat. */
export const canFill = (session: Session, way: FillWay): boolean =>
  session.usedAreas().every(({ top, left, bottom, right }) => (way === 'down' ? bottom > top : right > left))

const FILL_NEEDS: Readonly<Record<FillWay, string>> = {
  down: 'To fill down, select the cells to repeat and, below them, those to fill: the first row is repeated over the others',
  across: 'To fill across, select the cells to repeat and, on their right, those to fill: the first column is repeated over the others',
}

export function clearSelection(session: Session): void {
  actOnSelection(session, 'Clear', clear)
}
