import type { Area } from '../../workbook/address.ts'
import { sheetByName, type Workbook } from '../../workbook/document.ts'
import { applyEdits, type Edit } from '../../workbook/edits.ts'
import type { CheckMethod } from '../../workbook/review-record.ts'
import { filledCells } from '../../workbook/review/covers.ts'
import { checkAgain, markChecked, withdrawMark, type ValueAt } from '../../workbook/review/review-commands.ts'
import { timestamp } from '../../workbook/review/timestamp.ts'
import type { Session } from '../state/session.ts'
import { placeKey, valuesAt } from './check-marks.ts'

/** What a reviewer does with marks. Each is one action that Undo takes back; they give false where it was not accepted, and the notice says why. */

export interface Said {
  readonly by: string
  readonly method: CheckMethod
  readonly note: string
}

/** @param areas of the sheet; `null` for all of it */
export const check = (session: Session, sheet: string, areas: readonly (Area | null)[], said: Said): Promise<boolean> =>
  withValues(session, 'Mark as checked', areas.map((area) => ({ sheet, area })), (workbook, value) => {
    const at = timestamp()
    // Each mark is made of the workbook with those before: they are numbered one after another.
    return areas.reduce<{ readonly workbook: Workbook; readonly edits: readonly Edit[] }>((made, area) => {
      const edits = markChecked(made.workbook, { sheet, area, ...said, at }, value)
      return { workbook: applyEdits(made.workbook, edits).workbook, edits: [...made.edits, ...edits] }
    }, { workbook, edits: [] }).edits
  })

export function again(session: Session, id: string, said: Said): Promise<boolean> {
  const mark = session.document.workbook().review?.marks.find((one) => one.id === id)
  return withValues(session, 'Check again', mark && !mark.gone ? [mark] : [], (workbook, value) => checkAgain(workbook, id, { ...said, at: timestamp() }, value))
}

/** @param why may be empty */
export const withdraw = (session: Session, id: string, by: string, why: string): boolean => session.settle() && acted(session, 'Withdraw a check mark', (workbook) => withdrawMark(workbook, id, { by, at: timestamp(), why }))

/** Made once the values of the cells are known, for the workbook as it is by then. */
async function withValues(session: Session, label: string, where: readonly { readonly sheet: string; readonly area: Area | null }[], make: (workbook: Workbook, value: ValueAt) => readonly Edit[]): Promise<boolean> {
  if (!session.settle()) return false
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const workbook = session.document.workbook()
    const places = where.flatMap(({ sheet, area }) => (sheetByName(workbook, sheet) ? filledCells(workbook, sheet, area) : []))
    const values = await valuesAt(session, workbook, places)
    if (values) return acted(session, label, (now) => make(now, (place) => values.get(placeKey(place)) ?? null))
    if (session.recalculation.stopped()) break
  }
  session.setNotice({ tone: 'problem', text: 'The values are not up to date, so that nothing can be checked; accepted: once they are recalculated' })
  return false
}

/** The workbook may change while its values come. */
const MOST_TURNS = 3

function acted(session: Session, label: string, makeEdits: (workbook: Workbook) => readonly Edit[]): boolean {
  session.act(label, makeEdits)
  return session.notice()?.tone !== 'problem'
}
