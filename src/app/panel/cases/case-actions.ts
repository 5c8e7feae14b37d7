import { makeBase, makeCase, removeCase, renameCase, setCaseNote, setInCase, takeBack } from '../../../workbook/case-commands.ts'
import { switchCase } from '../../../workbook/case-switching.ts'
import { caseName } from '../../../workbook/cases.ts'
import type { CellPlace } from '../../../workbook/cell-place.ts'
import { contentOf } from '../../../workbook/entry.ts'
import type { Edit } from '../../../workbook/edits.ts'
import type { Workbook } from '../../../workbook/document.ts'
import type { Session } from '../../state/session.ts'

/** Each of these is one action that Undo takes back. They give false where it was not accepted; the notice says why. */

type Acting = Pick<Session, 'act' | 'document' | 'notice' | 'settle' | 'setNotice'>

export const switchTo = (session: Acting, at: number | null): boolean => done(session, `Switch to ${nameOf(session, at)}`, (workbook) => switchCase(workbook, at))

/** @param from whose values it begins with, `null` for the base's */
export const make = (session: Acting, name: string, from: number | null): boolean => done(session, `New case ${name}`, (workbook) => makeCase(workbook, name, from))

export const rename = (session: Acting, at: number, name: string): boolean => done(session, 'Rename case', (workbook) => renameCase(workbook, at, name))

export const note = (session: Acting, at: number, text: string): boolean => done(session, `Note on ${nameOf(session, at)}`, (workbook) => setCaseNote(workbook, at, text))

export function remove(session: Acting, at: number): boolean {
  const name = nameOf(session, at)
  const isDone = done(session, `Delete case ${name}`, (workbook) => removeCase(workbook, at))
  if (isDone) session.setNotice({ tone: 'done', text: `Case "${name}" is deleted; Undo brings it back` })
  return isDone
}

export const becomeBase = (session: Acting, at: number): boolean => done(session, `Make ${nameOf(session, at)} the base`, (workbook) => makeBase(workbook, at))

/** What was typed for a case, as the entry line would take it. */
export const type = (session: Acting, at: number | null, place: CellPlace, typed: string): boolean =>
  done(session, `Entry in ${nameOf(session, at)}`, (workbook) => setInCase(workbook, at, place, contentOf(typed)))

export const backToBase = (session: Acting, at: number, place: CellPlace): boolean =>
  done(session, `Back to base in ${nameOf(session, at)}`, (workbook) => takeBack(workbook, at, place))

const nameOf = ({ document }: Acting, at: number | null): string => caseName(document.workbook(), at)

function done(session: Acting, label: string, makeEdits: (workbook: Workbook) => Edit[]): boolean {
  if (!session.settle()) return false
  session.act(label, makeEdits)
  return session.notice()?.tone !== 'problem'
}
