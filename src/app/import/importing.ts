import { createSignal, type Accessor } from 'solid-js'
import type { FileContents } from '../../exchange/reading/contents.ts'
import type { ImportRemark } from '../../exchange/import/import-remark.ts'
import { tellProblem } from '../files/file-actions.ts'
import { startReading } from '../files/reading-client.ts'
import { inSight } from '../state/in-sight.ts'
import type { Session } from '../state/session.ts'

/** A file of anyone's that has been read. */
export interface ImportSource {
  readonly fileName: string
  readonly contents: FileContents
  /** To read it once more, with another dialect. */
  readonly file?: File
}

/** What the screen shows of an import: the file with its choices, what could not be read, or what became of it. */
export type ImportStage =
  | { readonly stage: 'choices'; readonly source: ImportSource; readonly sheet: number }
  | { readonly stage: 'list'; readonly source: ImportSource; readonly sheet: number }
  | { readonly stage: 'refused'; readonly fileName: string; readonly problem: string }
  | { readonly stage: 'report'; readonly fileName: string; readonly sheets: readonly string[]; readonly remarks: readonly ImportRemark[] }

export interface Importing {
  readonly stage: Accessor<ImportStage | undefined>
  setStage(stage: ImportStage | undefined): void
}

/** One import at a time for a session; whichever part of the screen begins it, the dialogs stand in one place. */
export function importingOf(session: Session): Importing {
  const known = all.get(session)
  if (known) return known
  const [stage, setStage] = createSignal<ImportStage | undefined>(undefined)
  const importing: Importing = { stage, setStage: (next) => void setStage(() => next) }
  all.set(session, importing)
  return importing
}

const all = new WeakMap<Session, Importing>()

/** Endings that the dialogs of operating systems offer; what a file is, its content says. */
export const IMPORT_ENDINGS = '.csv,.tsv,.txt,.xlsx,.ods'

/**
 * Begins an import of a file, or of what has been read from one, and shows its choices. The open workbook stays as it is until something of
 * them is chosen. Reading goes on beside the screen, and can be stopped.
 */
export async function openImport(session: Session, from: File | ImportSource): Promise<void> {
  if (!session.settle()) return
  const { setStage } = importingOf(session)
  const source = from instanceof File ? await readInSight(session, from) : from
  if (source === undefined) return
  if ('problem' in source) setStage({ stage: 'refused', fileName: source.fileName, problem: source.problem })
  else setStage({ stage: 'choices', source, sheet: Math.max(0, source.contents.sheets.findIndex(({ hidden }) => !hidden)) })
}

async function readInSight(session: Session, file: File): Promise<ImportSource | { readonly fileName: string; readonly problem: string } | undefined> {
  try {
    const contents = await inSight(session.work, `Reading ${file.name}`, (report) => startReading(file, report))
    return 'problem' in contents ? { fileName: file.name, problem: contents.problem } : { fileName: file.name, contents, file }
  } catch (problem) {
    tellProblem(session, problem, `${file.name} was not read: stopped`)
    return undefined
  }
}
