import type { Finding, Mend } from '../../../review/finding.ts'
import { findingPlace } from '../../../review/finding-words.ts'
import { applyEdits } from '../../../workbook/edits.ts'
import type { AcceptedFinding } from '../../../workbook/review-record.ts'
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

/** All of them with the same note, as one step. */
export const acceptAll = (session: Acting, findings: readonly Finding[], by: string, note: string): boolean =>
  done(session, `Accept ${findings.length} findings`, (before) => {
    const at = timestamp()
    let workbook = before
    // Each is accepted in the workbook with those before: the edit holds all that are.
    return findings.flatMap((finding) => {
      const edits = acceptFinding(workbook, finding, note, by, at)
      workbook = applyEdits(workbook, edits).workbook
      return edits
    })
  })

/** @param why may be empty */
export const openAgain = (session: Acting, accepted: AcceptedFinding, by: string, why: string): boolean =>
  done(session, 'Open a finding again', (workbook) => withdrawAcceptance(workbook, accepted, by, timestamp(), why))

function done(session: Acting, label: string, makeEdits: Parameters<Session['act']>[1]): boolean {
  if (!session.settle()) return false
  session.act(label, makeEdits)
  return session.notice()?.tone !== 'problem'
}
