import { batch } from 'solid-js'
import { removeSheet, renameSheet } from '../../workbook/commands.ts'
import { sheetIndex } from '../../workbook/document.ts'
import { addSheet, duplicateSheet } from '../../workbook/sheet-commands.ts'
import type { Session } from '../state/session.ts'

/** Gives false where the name is not accepted; the notice says why. */
export function rename(session: Session, from: string, to: string): boolean {
  if (to === from) return true
  return batch(() => {
    const wasShown = session.sheetName() === from
    const before = session.document.workbook()
    session.act('Rename sheet', (workbook) => renameSheet(workbook, from, to))
    const isDone = session.document.workbook() !== before
    if (isDone && wasShown) session.show(to)
    return isDone
  })
}

export function move(session: Session, name: string, by: 1 | -1): void {
  session.act('Move sheet', (workbook) => [{ kind: 'moveSheet', sheet: name, to: sheetIndex(workbook, name) + by }])
}

export function duplicate(session: Session, name: string): void {
  const copy = duplicateSheet(session.document.workbook(), name)
  addAndShow(session, 'Duplicate sheet', copy)
}

export function add(session: Session): string {
  const sheet = addSheet(session.document.workbook())
  addAndShow(session, 'Add sheet', sheet)
  return sheet.name
}

/** The sheet that was beside it is shown then. */
export function remove(session: Session, name: string): void {
  const { sheets } = session.document.workbook()
  const at = sheets.findIndex((sheet) => sheet.name === name)
  const next = sheets[at + 1] ?? sheets[at - 1]
  const wasShown = session.sheetName() === name
  batch(() => {
    session.act('Remove sheet', (workbook) => removeSheet(workbook, name))
    if (session.document.workbook().sheets.length === sheets.length) return
    if (wasShown && next) session.show(next.name)
    session.setNotice({ tone: 'done', text: `Sheet "${name}" is removed; Undo brings it back` })
  })
}

function addAndShow(session: Session, label: string, { name, edits }: ReturnType<typeof addSheet>): void {
  if (!session.settle()) return
  batch(() => {
    session.act(label, () => edits)
    session.show(name)
  })
}
