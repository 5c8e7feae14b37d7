import type { Dialect, FileContents, Unreadable } from '../../exchange/reading/contents.ts'
import { ContentsAssembly, type ReadingRequest, type ReadingResponse } from '../../exchange/reading/messages.ts'
import type { ThreadWork } from '../state/in-sight.ts'
import { onFileThread } from './file-thread.ts'

export interface ReadingSettings {
  /** How a text file is to be understood, where what is found in it is not to be believed. */
  readonly dialect?: Partial<Dialect>
  readonly secondsAtMost?: number
  /** For tests. */
  readonly thread?: () => Worker
}

/**
 * Reads a file of anyone's on a thread of its own: what it holds, or why it cannot be read.
 * @example
 * const reading = startReading(file, (share) => work.report(share))
 */
export function startReading(file: File, report: (share: number | undefined) => void, { dialect, secondsAtMost, thread = readingThread }: ReadingSettings = {}): ThreadWork<FileContents | Unreadable> {
  const assembly = new ContentsAssembly()
  return onFileThread<ReadingRequest, ReadingResponse, FileContents>(file, {
    thread: thread(),
    request: { file, dialect },
    ...(secondsAtMost === undefined ? {} : { secondsAtMost }),
    advice: 'Leave out sheets that are not needed, save it again, and try that. ',
    hear(response, { resolve }) {
      if ('share' in response) report(response.share)
      else if ('unreadable' in response) resolve(response.unreadable)
      else {
        const contents = assembly.take(response)
        if (contents) resolve(contents)
      }
    },
  })
}

const readingThread = (): Worker => new Worker(new URL('../../exchange/reading/worker.ts', import.meta.url), { type: 'module' })
