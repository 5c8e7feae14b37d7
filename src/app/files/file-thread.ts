import { MAX_READING_SECONDS } from '../../exchange/reading/limits.ts'
import type { Unreadable } from '../../exchange/reading/contents.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { ThreadWork } from '../state/in-sight.ts'

/** What whoever hears of a thread can say back. */
export interface FileThreadEnds<Result> {
  readonly resolve: (result: Result | Unreadable) => void
  /** From here on it may take as long as it takes. */
  readonly unwatched: () => void
}

/** How a file is read on a thread of its own. */
export interface FileThread<Request, Response, Result> {
  readonly thread: Worker
  readonly request: Request
  readonly secondsAtMost?: number
  /** What the user can do about a file that is too much to be read. */
  readonly advice: string
  readonly hear: (response: Response, ends: FileThreadEnds<Result>) => void
}

/**
 * Reads a file of anyone's on a thread, which ends with it. Whatever becomes of the thread, memory running out included, comes back as a file
 * that cannot be read; nothing else of the app takes part in it.
 */
export function onFileThread<Request, Response, Result>(
  { name }: File, { thread, request, secondsAtMost = MAX_READING_SECONDS, advice, hear }: FileThread<Request, Response, Result>,
): ThreadWork<Result | Unreadable> {
  const asBefore = `${advice}The open workbook is as it was.`
  const ended = `Reading “${name}” ended before its end, most likely because memory ran out. ${asBefore}`
  let stop = (): void => undefined
  let watch: ReturnType<typeof setTimeout> | undefined
  const result = new Promise<Result | Unreadable>((resolve, reject) => {
    const giveUp = (problem: string): void => resolve({ problem })
    const ends: FileThreadEnds<Result> = { resolve, unwatched: () => clearTimeout(watch) }
    let answered = false
    stop = () => reject(new WorkStopped('Reading was stopped.'))
    watch = setTimeout(() => giveUp(`“${name}” took longer than ${secondsAtMost} seconds to read and was given up. ${asBefore}`), secondsAtMost * 1000)
    thread.addEventListener('message', ({ data }: MessageEvent<Response>) => {
      answered = true
      hear(data, ends)
    })
    thread.addEventListener('messageerror', () => giveUp(ended))
    thread.addEventListener('error', (event) => {
      event.preventDefault()
      giveUp(answered || event.message ? ended : NOT_SERVED)
    })
    thread.postMessage(request)
  }).finally(() => {
    clearTimeout(watch)
    thread.terminate()
  })
  return { result, stop: () => stop() }
}

/** A thread whose script cannot be had ends with an event that says nothing. */
const NOT_SERVED = 'The file cannot be read: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.'
