import type { Dialect, FileContents, Unreadable } from './contents.ts'
import { readCsv } from './csv.ts'
import { fileKind } from './file-kind.ts'
import { MAX_FILE_BYTES } from './limits.ts'
import { isOds, readOds } from './ods.ts'
import { ACCEPTED, megabytes, Refusal, tooLarge } from './refusal.ts'
import { readXlsx } from './xlsx.ts'
import { zipDirectory } from './zip-directory.ts'

export interface ReadingOptions {
  /** Told from time to time what share of the work is done; undefined while it cannot be said. */
  readonly report?: (share: number | undefined) => void
  /** How a text file is to be understood, where what is found in it is not to be believed. */
  readonly dialect?: Partial<Dialect>
}

/**
 * What stands in a file of anyone's, by its content and not by its name: a spreadsheet (ECMA-376, OpenDocument) or a text file. Limits are
 * checked before and while it is read (`limits.ts`). Never throws: what cannot be read says why, and what is accepted.
 */
export async function readFileContents(bytes: Uint8Array, fileName: string, { report = () => undefined, dialect }: ReadingOptions = {}): Promise<FileContents | Unreadable> {
  try {
    const problem = sizeProblem(bytes.length)
    if (problem !== undefined) return { problem }
    if (fileKind(bytes) === 'text') return readCsv(bytes, sheetNameOf(fileName), dialect, report)
    const parts = zipDirectory(bytes)
    return (await isOds(parts)) ? await readOds(parts, report) : await readXlsx(parts, report)
  } catch (fault) {
    if (fault instanceof Refusal) return { problem: fault.message }
    return { problem: `The file could not be read (${fault instanceof Error ? fault.message.slice(0, 200) : 'for an unknown reason'}). ${ACCEPTED}` }
  }
}

/** Why a file of so many bytes is not read, so that it need not come into memory. */
export const sizeProblem = (bytes: number): string | undefined =>
  bytes > MAX_FILE_BYTES ? tooLarge(`it has ${megabytes(bytes)}`, `up to ${megabytes(MAX_FILE_BYTES)}`).message : undefined

/** A text file has no name for its sheet but its own. */
const sheetNameOf = (fileName: string): string => fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '').slice(0, 100) || 'Sheet1'
