import { usedRange } from '../../workbook/document.ts'
import type { Session } from '../state/session.ts'
import { areaEdits } from './clipboard.ts'
import type { GridAction, GridActions } from './keys.ts'
import type { Viewport } from './viewport.ts'

/** Does what a key asks for. */
export function runGridAction(session: Session, viewport: Pick<Viewport, 'pageRows'>, action: GridAction): void {
  // The record pairs each action with its own handler; a union cannot follow that through an index.
  const run = RUN[action.does] as (session: Session, action: GridAction, viewport: Pick<Viewport, 'pageRows'>) => void
  run(session, action, viewport)
}

const RUN: { readonly [Does in keyof GridActions]: (session: Session, action: GridActions[Does], viewport: Pick<Viewport, 'pageRows'>) => void } = {
  step: ({ selection }, { rows, columns, extend }) => selection.step(rows, columns, extend),
  leap: ({ selection }, { rows, columns, extend }) => selection.leap(rows, columns, extend),
  page: ({ selection }, { pages, extend }, viewport) => selection.step(pages * viewport.pageRows(), 0, extend),
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
}
