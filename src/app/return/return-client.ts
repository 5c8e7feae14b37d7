import type { FileContents, Unreadable } from '../../exchange/reading/contents.ts'
import { ContentsAssembly } from '../../exchange/reading/messages.ts'
import type { ReturnedFile, ReturnRequest, ReturnResponse, ReturnStep } from '../../exchange/return/messages.ts'
import { onFileThread } from '../files/file-thread.ts'
import type { ThreadWork } from '../state/in-sight.ts'

/** What a spreadsheet file is: one that Lowside exported, or another program's; or why it cannot be read. */
export type FileTaken = ReturnedFile | { readonly contents: FileContents; readonly damaged: string | undefined } | Unreadable

/** Reads a spreadsheet file, and compares one of Lowside's with what its workbook was exported as, on a thread of its own. */
export function startTaking(file: File, report: (step: ReturnStep, share: number | undefined) => void): ThreadWork<FileTaken> {
  const assembly = new ContentsAssembly()
  let damaged: string | undefined
  return onFileThread<ReturnRequest, ReturnResponse, FileTaken>(file, {
    thread: new Worker(new URL('../../exchange/return/worker.ts', import.meta.url), { type: 'module' }),
    request: { file },
    advice: '',
    hear(response, { resolve, unwatched }) {
      if ('step' in response) {
        // Comparing takes as long as calculating the workbook, and can be stopped; only reading of what anyone may have made is watched.
        if (response.step === 'comparing') unwatched()
        report(response.step, response.share)
      } else if ('unreadable' in response) resolve(response.unreadable)
      else if ('returned' in response) resolve(response.returned)
      else if ('foreign' in response) damaged = response.foreign.damaged
      else {
        const contents = assembly.take(response.part)
        if (contents) resolve({ contents, damaged })
      }
    },
  })
}
