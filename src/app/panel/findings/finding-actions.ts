import type { Finding, Mend } from '../../../review/finding.ts'
import { findingPlace } from '../../../review/finding-words.ts'
import { acceptFinding, withdrawAcceptance } from '../../../workbook/review/review-commands.ts'
import { timestamp } from '../../../workbook/review/timestamp.ts'
import type { Session } from '../../state/session.ts'

/** Each of these is one action that Undo takes back. They give false where it was not accepted; the notice says why. */

type Acting = Pick<Session, 'act' | 'notice' | 'settle' | 'setNotice'>

export function mend(session: Acting, finding: Finding, { words, edits }: Mend): boolean {
  if (!done(session, words, () => edits)) return false
  session.setNotice({ tone: 'done', text: `${findingPlace(finding)} is mended; Undo brings it back as it was` })
  return true
}

export const accept = (session: Acting, finding: Finding, by: string, note: string): boolean =>
  done(session, 'Accept a finding', (workbook) => acceptFinding(workbook, finding, note, by, timestamp()))

/** @param why may be empty */
export const openAgain = (session: Acting, { accepted }: Finding, by: string, why: string): boolean =>
  accepted !== undefined && done(session, 'Open a finding again', (workbook) => withdrawAcceptance(workbook, accepted, by, timestamp(), why))

function done(session: Acting, label: string, makeEdits: Parameters<Session['act']>[1]): boolean {
  if (!session.settle()) return false
  session.act(label, makeEdits)
  return session.notice()?.tone !== 'problem'
}
