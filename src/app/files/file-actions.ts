import { MAX_FILE_CHARACTERS } from '../../workbook/limits.ts'
import type { Loaded } from '../calculation/calculation.ts'
import { createSlices } from '../../storage/next-task.ts'
import type { Workbook } from '../../workbook/document.ts'
import { workbookText } from '../../workbook/file-writing.ts'
import { inSight, type ThreadWork } from '../state/in-sight.ts'
import { loadInSight } from '../state/loading-work.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'
import type { ExportFormat } from '../../calc/export-thread.ts'
import { startExport } from './export-client.ts'
import type { OwnWorkbook } from './library.ts'
import { OPEN_SPREADSHEET_FILE, REPORT_FILE, saveFile, SPREADSHEET_FILE, VALUES_FILE, WORKBOOK_FILE, type FileKind } from './file-access.ts'

/** What a file could not be read for; nothing of it has been taken. */
export interface ReadingFailure {
  readonly fileName: string
  readonly messages: readonly string[]
}

/**
 * Takes the workbook of a file in place of the open one, which stays as it is if the file cannot be read, or if that is stopped. A spreadsheet file that Lowside
 * exported is such a file too; one of another program is brought in as sheets.
 */
export async function openFile(session: Session, file: File): Promise<ReadingFailure | undefined> {
  if (await isSpreadsheet(file)) {
    // Most work begins without.
    const module = await import('../return/open-spreadsheet.ts').catch(() => undefined)
    return module === undefined ? { fileName: file.name, messages: [NOT_SERVED] } : module.openSpreadsheet(session, file)
  }
  if (file.size > MAX_FILE_BYTES) return { fileName: file.name, messages: [`the file has ${file.size} bytes; accepted: up to ${MAX_FILE_BYTES}`] }
  const read = await readFile(session, file)
  if (read === undefined) return undefined
  if ('problems' in read) return { fileName: file.name, messages: read.problems.map(({ message }) => message) }
  session.open(read.workbook, true)
  return undefined
}

/** The endings that a workbook is opened from. */
export const OPENED_ENDINGS = '.json,application/json,.xlsx,.ods'

const NOT_SERVED = 'What reads such files cannot be loaded, as Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.'

/** A zip file by what it begins with, or something else by its name. */
async function isSpreadsheet(file: File): Promise<boolean> {
  if (/\.(?:xlsx|ods|csv|tsv|txt)$/i.test(file.name)) return true
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer().catch(() => new ArrayBuffer(0)))
  return first === 0x50 && second === 0x4b
}

/**
 * Opens a workbook that comes with Lowside, as one that has no file of the user's yet; false if it was stopped or cannot be had.
 * @param isWanted asked when the file has come, which may take long enough for the user to have chosen something else
 */
export async function openOwn(session: Session, own: OwnWorkbook, isWanted: () => Promise<boolean> = () => Promise.resolve(true)): Promise<boolean> {
  try {
    const file = await own.file()
    if (!(await isWanted())) return false
    const read = await readFile(session, file)
    if (read === undefined) return false
    if ('problems' in read) throw new Error(`“${own.title}” came damaged: ${read.problems[0]?.message ?? ''}`)
    session.open(read.workbook, false)
    return true
  } catch (problem) {
    session.setNotice({ tone: 'problem', text: problem instanceof Error ? problem.message : String(problem) })
    return false
  }
}

/** Reading so much takes a frame or two: it is not worth a thread. */
const SMALL_BYTES = 200_000

/** Undefined if the reading was stopped. A large file is read while the screen goes on. */
export async function readFile(session: Session, file: File): Promise<Loaded | undefined> {
  try {
    if (file.size < SMALL_BYTES) {
      // What a file may hold takes longer to load than the screen that most work begins with.
      const module = await import('../../workbook/file-reading.ts').catch(() => undefined)
      return module === undefined ? { problems: [{ message: NOT_SERVED }] } : module.readWorkbook(await file.text())
    }
    const loaded = await loadInSight(session, file, file.name)
    // What was being typed meanwhile belongs to the workbook that goes.
    if ('workbook' in loaded && !session.settle()) session.entry.cancel()
    return loaded
  } catch (problem) {
    tellProblem(session, problem, `${file.name} was not opened: stopped`)
    return undefined
  }
}

export const saveWorkbook = (session: Session): Promise<void> =>
  telling(session, async () => {
    const workbook = session.document.workbook()
    const point = session.document.point()
    const saved = await saveFile(workbook.title, WORKBOOK_FILE, () => textInSlices(session, workbook))
    if (saved) session.document.markSaved(point, new Date(), workbook)
  })

export const exportSpreadsheet = (session: Session): Promise<void> => exportFile(session, 'xlsx', SPREADSHEET_FILE, 'to a spreadsheet file')

export const exportOpenSpreadsheet = (session: Session): Promise<void> => exportFile(session, 'ods', OPEN_SPREADSHEET_FILE, 'to an OpenDocument spreadsheet')

export const exportValues = (session: Session): Promise<void> => exportFile(session, 'csv', VALUES_FILE, 'the values, a file a sheet')

export const exportReport = (session: Session): Promise<void> => exportFile(session, 'html', REPORT_FILE, 'the calculation report')

const exportFile = (session: Session, format: ExportFormat, file: FileKind, words: string): Promise<void> =>
  telling(session, async () => {
    const workbook = session.document.workbook()
    const saved = await saveFile(workbook.title, file, () =>
      inSight(session.work, `Exporting ${words}`, (report) => startExport(session.service, format, new Date(), report)))
    if (saved) session.setNotice({ tone: 'done', text: `Exported ${words}` })
  })

/** Writes a file of what a thread makes, which the bottom line shows from its first words on and can stop. */
export const saveMade = (session: Session, file: FileKind, words: string, done: string, make: () => ThreadWork<BlobPart>): Promise<void> =>
  telling(session, async () => {
    const saved = await saveFile(session.document.workbook().title, file, () => inSight(session.work, words, make))
    if (saved) session.setNotice({ tone: 'done', text: done })
  })

/** No character takes more than four bytes. */
const MAX_FILE_BYTES = 4 * MAX_FILE_CHARACTERS

async function telling(session: Session, work: () => Promise<void>): Promise<void> {
  if (!session.settle()) return
  session.document.longChange.finish()
  try {
    await work()
  } catch (problem) {
    tellProblem(session, problem, 'Stopped: nothing was written')
  }
}

/** A stop is no problem. */
export function tellProblem(session: Session, problem: unknown, stopped: string): void {
  if (problem instanceof WorkStopped) session.setNotice({ tone: 'done', text: stopped })
  else session.setNotice({ tone: 'problem', text: problem instanceof Error ? problem.message : String(problem) })
}

/** A large workbook's text takes longer than a frame. */
async function textInSlices(session: Session, workbook: Workbook): Promise<BlobPart> {
  let isStopped = false
  const work = session.work.begin(`Writing ${workbook.title}`, () => (isStopped = true))
  const slice = createSlices()
  const pieces: string[] = []
  for (const piece of workbookText(workbook)) {
    pieces.push(piece)
    await slice()
    if (isStopped) break
  }
  work.end()
  if (isStopped) throw new WorkStopped('The writing was stopped.')
  return new Blob(pieces)
}
