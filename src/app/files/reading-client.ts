import type { Dialect, FileContents, Unreadable } from '../../exchange/reading/contents.ts'
import { MAX_READING_SECONDS } from '../../exchange/reading/limits.ts'
import { ContentsAssembly, type ReadingRequest, type ReadingResponse } from '../../exchange/reading/messages.ts'
import { WorkStopped } from '../state/long-work.ts'

export interface Reading {
  /** What the file holds, or why it cannot be read; rejected with `WorkStopped` if it was stopped. */
  readonly result: Promise<FileContents | Unreadable>
  stop(): void
}

export interface ReadingSettings {
  /** How a text file is to be understood, where what is found in it is not to be believed. */
  readonly dialect?: Partial<Dialect>
  readonly secondsAtMost?: number
  /** For tests. */
  readonly thread?: () => Worker
}

/**
 * Reads a file of anyone's on a thread of its own, which ends with it. Whatever becomes of the thread, memory running out included, comes
 * back as a file that cannot be read; nothing else of the app takes part in it.
 * @example
 * const reading = startReading(file, (share) => work.report(share))
 */
export function startReading(file: File, report: (share: number | undefined) => void, { dialect, secondsAtMost = MAX_READING_SECONDS, thread: begin = readingThread }: ReadingSettings = {}): Reading {
  const thread = begin()
  const assembly = new ContentsAssembly()
  let stop = (): void => undefined
  let watch: ReturnType<typeof setTimeout> | undefined
  const result = new Promise<FileContents | Unreadable>((resolve, reject) => {
    const giveUp = (problem: string): void => resolve({ problem })
    stop = () => reject(new WorkStopped('Reading was stopped.'))
    watch = setTimeout(() => giveUp(`“${file.name}” took longer than ${secondsAtMost} seconds to read and was given up. Leave out sheets that are not needed, save it again, and try that. The open workbook is as it was.`), secondsAtMost * 1000)
    let answered = false
    thread.addEventListener('message', ({ data }: MessageEvent<ReadingResponse>) => {
      answered = true
      if ('share' in data) report(data.share)
      else if ('unreadable' in data) resolve(data.unreadable)
      else {
        const contents = assembly.take(data)
        if (contents) resolve(contents)
      }
    })
    thread.addEventListener('messageerror', () => giveUp(endedWords(file.name)))
    thread.addEventListener('error', (event) => {
      event.preventDefault()
      giveUp(answered || event.message ? endedWords(file.name) : NOT_SERVED)
    })
    thread.postMessage({ file, dialect } satisfies ReadingRequest)
  }).finally(() => {
    clearTimeout(watch)
    thread.terminate()
  })
  return { result, stop: () => stop() }
}

const readingThread = (): Worker => new Worker(new URL('../../exchange/reading/worker.ts', import.meta.url), { type: 'module' })

const endedWords = (name: string): string => `Reading “${name}” ended before its end, most likely because memory ran out. Leave out sheets that are not needed, save it again, and try that. The open workbook is as it was.`

/** A thread whose script cannot be had ends with an event that says nothing. */
const NOT_SERVED = 'The file cannot be read: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.'
