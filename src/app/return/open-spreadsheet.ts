import type { ReturnStep } from '../../exchange/return/messages.ts'
import { takeOver, TAKEN_OVER, type Decisions } from '../../exchange/return/take-over.ts'
import type { ReturnedFile } from '../../exchange/return/messages.ts'
import { readFile, tellProblem, type ReadingFailure } from '../files/file-actions.ts'
import { openImport } from '../import/importing.ts'
import { inSight } from '../state/in-sight.ts'
import type { Session } from '../state/session.ts'
import { startTaking, type FileTaken } from './return-client.ts'
import { returningOf } from './returning.ts'

/**
 * Opens a spreadsheet file: one that Lowside exported as the workbook it was, after asking about what was changed in it; another program's is brought in as sheets.
 * The open workbook stays as it is until then.
 */
export async function openSpreadsheet(session: Session, file: File): Promise<ReadingFailure | undefined> {
  const taken = await takeInSight(session, file)
  if (taken === undefined) return undefined
  if ('problem' in taken) return { fileName: file.name, messages: [taken.problem] }
  if ('contents' in taken) {
    const { contents, damaged } = taken
    if (damaged === undefined) await openImport(session, { fileName: file.name, contents, file })
    else returningOf(session).setStage({ stage: 'damaged', file, problem: damaged, contents })
    return undefined
  }
  if (taken.changes.length > 0) {
    returningOf(session).setStage({ stage: 'changes', file, returned: taken })
    return undefined
  }
  return openReturned(session, file, taken, undefined)
}

/** @param decisions what of the changes is taken over; undefined for none, the workbook being as it was exported */
export async function openReturned(session: Session, file: File, { text, changes }: ReturnedFile, decisions: Decisions | undefined): Promise<ReadingFailure | undefined> {
  const read = await readFile(session, new File([text], file.name))
  if (read === undefined) return undefined
  if ('problems' in read) return { fileName: file.name, messages: read.problems.map(({ message }) => message) }
  session.open(read.workbook, true)
  if (decisions) session.act(TAKEN_OVER, (workbook) => takeOver(workbook, changes, decisions))
  return undefined
}

const STEP_WORDS: Readonly<Record<ReturnStep, string>> = { reading: 'Reading', comparing: 'Looking for changes in' }

async function takeInSight(session: Session, file: File): Promise<FileTaken | undefined> {
  try {
    return await inSight(session.work, `Reading ${file.name}`, (report) => startTaking(file, (step, share) => report(share, `${STEP_WORDS[step]} ${file.name}`)))
  } catch (problem) {
    tellProblem(session, problem, `${file.name} was not opened: stopped`)
    return undefined
  }
}
