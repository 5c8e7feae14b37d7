import { MAX_FILE_CHARACTERS } from '../../workbook/limits.ts'
import { readWorkbook, writeWorkbook } from '../../workbook/file.ts'
import type { Session } from '../state/session.ts'
import { saveFile, SPREADSHEET_FILE, WORKBOOK_FILE } from './file-access.ts'

/** What a file could not be read for; nothing of it has been taken. */
export interface ReadingFailure {
  readonly fileName: string
  readonly messages: readonly string[]
}

/** Takes the workbook of a file in place of the open one, which stays as it is if the file cannot be read. */
export async function openFile(session: Session, file: File): Promise<ReadingFailure | undefined> {
  if (file.size > MAX_FILE_BYTES) return { fileName: file.name, messages: [`the file has ${file.size} bytes; accepted: up to ${MAX_FILE_BYTES}`] }
  const read = readWorkbook(await file.text())
  if ('problems' in read) return { fileName: file.name, messages: read.problems.map(({ message }) => message) }
  session.open(read.workbook, true)
  return undefined
}

export const saveWorkbook = (session: Session): Promise<void> =>
  telling(session, async () => {
    const workbook = session.document.workbook()
    const point = session.document.point()
    const saved = await saveFile(workbook.title, WORKBOOK_FILE, async () => writeWorkbook(workbook))
    if (saved) session.document.markSaved(point, new Date())
  })

export const exportSpreadsheet = (session: Session): Promise<void> =>
  telling(session, async () => {
    const workbook = session.document.workbook()
    const saved = await saveFile(workbook.title, SPREADSHEET_FILE, async () => {
      const [{ exportXlsx }, values] = await Promise.all([import('../../exchange/xlsx.ts'), session.service.allValues()])
      return new Uint8Array(exportXlsx(workbook, values, { date: new Date() }))
    })
    if (saved) session.setNotice({ tone: 'done', text: 'Exported to a spreadsheet file' })
  })

/** No character takes more than four bytes. */
const MAX_FILE_BYTES = 4 * MAX_FILE_CHARACTERS

async function telling(session: Session, work: () => Promise<void>): Promise<void> {
  if (!session.settle()) return
  try {
    await work()
  } catch (problem) {
    session.setNotice({ tone: 'problem', text: problem instanceof Error ? problem.message : String(problem) })
  }
}
