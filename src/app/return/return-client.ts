import type { FileContents, Unreadable } from '../../exchange/reading/contents.ts'
import { MAX_READING_SECONDS } from '../../exchange/reading/limits.ts'
import { ContentsAssembly } from '../../exchange/reading/messages.ts'
import type { ReturnedFile, ReturnRequest, ReturnResponse, ReturnStep } from '../../exchange/return/messages.ts'
import { WorkStopped } from '../state/long-work.ts'

/** What a spreadsheet file is: one that Lowside exported, or another program's; or why it cannot be read. */
export type FileTaken = ReturnedFile | { readonly contents: FileContents; readonly damaged: string | undefined } | Unreadable

export interface Taking {
  /** Rejected with `WorkStopped` if it was stopped. */
  readonly result: Promise<FileTaken>
  stop(): void
}

/** Reads a spreadsheet file, and compares one of Lowside's with what its workbook was exported as, on a thread of its own. */
export function startTaking(file: File, report: (step: ReturnStep, share: number | undefined) => void): Taking {
  const thread = new Worker(new URL('../../exchange/return/worker.ts', import.meta.url), { type: 'module' })
  const assembly = new ContentsAssembly()
  let stop = (): void => undefined
  let watch: ReturnType<typeof setTimeout> | undefined
  const result = new Promise<FileTaken>((resolve, reject) => {
    const giveUp = (problem: string): void => resolve({ problem })
    let answered = false
    let damaged: string | undefined
    stop = () => reject(new WorkStopped('Reading was stopped.'))
    watch = setTimeout(() => giveUp(`“${file.name}” took longer than ${MAX_READING_SECONDS} seconds to read and was given up. The open workbook is as it was.`), MAX_READING_SECONDS * 1000)
    thread.addEventListener('message', ({ data }: MessageEvent<ReturnResponse>) => {
      answered = true
      if ('step' in data) {
        // Comparing takes as long as calculating the workbook, and can be stopped; only reading of what anyone may have made is watched.
        if (data.step === 'comparing') clearTimeout(watch)
        report(data.step, data.share)
      } else if ('unreadable' in data) resolve(data.unreadable)
      else if ('returned' in data) resolve(data.returned)
      else if ('foreign' in data) damaged = data.foreign.damaged
      else {
        const contents = assembly.take(data.part)
        if (contents) resolve({ contents, damaged })
      }
    })
    const ended = `Reading “${file.name}” ended before its end, most likely because memory ran out. The open workbook is as it was.`
    thread.addEventListener('messageerror', () => giveUp(ended))
    thread.addEventListener('error', (event) => {
      event.preventDefault()
      giveUp(answered || event.message ? ended : 'The file cannot be read: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.')
    })
    thread.postMessage({ file } satisfies ReturnRequest)
  }).finally(() => {
    clearTimeout(watch)
    thread.terminate()
  })
  return { result, stop: () => stop() }
}
