import { createMemo, type JSX } from 'solid-js'
import { ContextMenu, type ContextItem } from '../parts/ContextMenu.tsx'
import { checkMarksOf } from '../review/check-marks.ts'
import { useSession, type Session } from '../state/session.ts'
import type { LineAxis } from '../../workbook/line-edits.ts'
import { fitColumns } from './column-widths.ts'
import { useGrid, type GridContext } from './grid-context.ts'
import { canFill, clearSelection, fillSelection } from './run-action.ts'
import { canDoWithLines, deedWords, doWithLines, linesSelected, selectedKind, type LineDeed } from './line-actions.ts'

/** What can be done with the selected rows, columns or cells. */
export function GridMenu(props: { readonly at: { readonly x: number; readonly y: number }; readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const context = useGrid()
  // As it was asked for: the words stay while the menu is open.
  const kind = selectedKind(session)
  const items = createMemo(() => [...ITEMS[kind](session), ...(kind === 'columns' ? [fitItem(session, context)] : []), ...fillItems(session), emptyItem(session), checkItem(session)])
  return <ContextMenu label={LABELS[kind]} items={items()} at={props.at} onClose={props.onClose} />
}

const LABELS: Readonly<Record<LineAxis | 'cells', string>> = { rows: 'Selected rows', columns: 'Selected columns', cells: 'Selected cells' }

const ALL: readonly LineDeed[] = ['insertBefore', 'insertAfter', 'moveBack', 'moveOn', 'delete']

const ITEMS: Readonly<Record<LineAxis | 'cells', (session: Session) => readonly ContextItem[]>> = {
  rows: (session) => lineItems(session, 'rows', ALL),
  columns: (session) => lineItems(session, 'columns', ALL),
  cells: (session) => [...lineItems(session, 'rows', ALL), ...lineItems(session, 'columns', ALL).map((item, index) => ({ ...item, apart: index === 0 }))],
}

const lineItems = (session: Session, axis: LineAxis, deeds: readonly LineDeed[]): ContextItem[] =>
  deeds.map((deed) => ({
    words: deedWords(deed, axis, linesSelected(session, axis)),
    ...(KEYS[axis][deed] === undefined ? {} : { keys: KEYS[axis][deed] }),
    cannot: !canDoWithLines(session, axis, deed),
    choose: () => doWithLines(session, axis, deed),
  }))

const fillItems = (session: Session): ContextItem[] => [
  { words: 'Fill down from the first row', keys: 'Alt + Shift + Down', apart: true, cannot: !canFill(session, 'down'), choose: () => fillSelection(session, { way: 'down' }) },
  { words: 'Fill across from the first column', keys: 'Alt + Shift + Right', cannot: !canFill(session, 'across'), choose: () => fillSelection(session, { way: 'across' }) },
]

const fitItem = (session: Session, context: GridContext): ContextItem => ({ words: 'Fit to what they show', keys: 'Alt + Up', apart: true, choose: () => fitColumns(session, context) })

const emptyItem = (session: Session): ContextItem => ({ words: 'Empty the selected cells', keys: 'Delete', apart: true, choose: () => clearSelection(session) })

const checkItem = (session: Session): ContextItem => ({ words: 'Mark as checked…', keys: 'Alt + End', apart: true, choose: () => checkMarksOf(session).ask() })

const KEYS: Readonly<Record<LineAxis, { readonly [Deed in LineDeed]?: string }>> = {
  rows: { insertBefore: 'Alt + Insert', moveBack: 'Alt + Page Up', moveOn: 'Alt + Page Down', delete: 'Alt + Delete' },
  columns: { insertBefore: 'Alt + Shift + Insert', moveBack: 'Alt + Shift + Page Up', moveOn: 'Alt + Shift + Page Down', delete: 'Alt + Shift + Delete' },
}
