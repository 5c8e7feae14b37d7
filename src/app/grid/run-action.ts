import type { CellRange } from '../../workbook/commands.ts'
import { usedRange } from '../../workbook/document.ts'
import { fill, type FillWay } from '../../workbook/fill.ts'
import { changePlaces } from '../../workbook/format.ts'
import { unitPlace } from '../../workbook/unit-change.ts'
import type { Session } from '../state/session.ts'
import { areaEdits } from './clipboard.ts'
import { doWithLines, linesSelected, selectLines } from './line-actions.ts'
import type { GridAction, GridActions } from './keys.ts'
import type { Viewport } from './viewport.ts'

/** What of the grid the actions need. */
interface Around extends Pick<Viewport, 'pageRows'> {
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
  rowStart: ({ selection }, { extend }) => selection.moveTo({ row: selection.corner().row, column: 0 }, extend),
  rowEnd: ({ selection, sheet }, { extend }) => {
    const { row } = selection.corner()
    selection.moveTo({ row, column: Math.max(0, (sheet().rows[row]?.length ?? 0) - 1) }, extend)
  },
  sheetStart: ({ selection }, { extend }) => selection.moveTo({ row: 0, column: 0 }, extend),
  sheetEnd: ({ selection, sheet }, { extend }) => {
    const { rows, columns } = usedRange(sheet())
    selection.moveTo({ row: Math.max(0, rows - 1), column: Math.max(0, columns - 1) }, extend)
  },
  selectAll: ({ selection, sheet }) => {
    const { rows, columns } = usedRange(sheet())
    selection.select({ top: 0, left: 0, bottom: Math.max(0, rows - 1), right: Math.max(0, columns - 1) })
  },
  edit: ({ entry }) => entry.begin('cell'),
  type: ({ entry }, { text }) => entry.begin('cell', text),
  clear: (session) => session.act('Clear', (workbook) => areaEdits(workbook, session.sheet().name, session.usedSelection())),
  undo: (session) => session.undo(),
  redo: (session) => session.redo(),
  fill: fillSelection,
  places: (session, { by }) => session.act('Number format', (workbook) => changePlaces(workbook, session.sheet().name, cellsSelected(session), by)),
  pickUnit: (session) => {
    if (unitPlace(session.sheet(), session.selection.active())) session.setPopover('unitAtCell')
    else session.setNotice({ tone: 'problem', text: 'No unit belongs here; accepted: a unit cell, or an input or a result with a number' })
  },
  format: (session) => session.setPopover('format'),
  selectLines: (session, { axis }) => {
    const { at, count } = linesSelected(session, axis)
    selectLines(session, axis, at, at + count - 1)
  },
  lines: (session, { axis, deed }) => doWithLines(session, axis, deed),
  menu: (_session, _action, { openMenu }) => openMenu(),
}

export function fillSelection(session: Session, { way }: GridActions['fill']): void {
  const area = session.usedSelection()
  const hasRest = way === 'down' ? area.bottom > area.top : area.right > area.left
  if (!hasRest) return session.setNotice({ tone: 'problem', text: FILL_NEEDS[way] })
  session.act('Fill', (workbook) => fill(workbook, session.sheet().name, area, way))
}

const FILL_NEEDS: Readonly<Record<FillWay, string>> = {
  down: 'To fill down, select the cells to repeat and, below them, those to fill: the first row is repeated over the others',
  across: 'To fill across, select the cells to repeat and, on their right, those to fill: the first column is repeated over the others',
}

function cellsSelected(session: Session): CellRange {
  const { top, left, bottom, right } = session.usedSelection()
  return { from: { row: top, column: left }, to: { row: bottom, column: right } }
}
