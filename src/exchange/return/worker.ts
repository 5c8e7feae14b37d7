import { contentsInParts } from '../reading/messages.ts'
import { readFileContents, sizeProblem } from '../reading/read-file.ts'
import { changesInFile } from './find-changes.ts'
import type { ReturnRequest, ReturnResponse, ReturnStep } from './messages.ts'
import { ownWorkbook } from './own-workbook.ts'

// Reading and comparing are on one thread, so that a large file is not copied from one to another by way of the screen's.

const answer = (response: ReturnResponse): void => postMessage(response)

addEventListener('message', ({ data }: MessageEvent<ReturnRequest>) => {
  // What fails otherwise, such as memory for the answer, ends the thread in a way that its starter hears of.
  take(data.file).catch((fault: unknown) => setTimeout(() => {
    throw fault
  }))
})

async function take(file: File): Promise<void> {
  const problem = sizeProblem(file.size)
  if (problem !== undefined) return answer({ unreadable: { problem } })
  const bytes = await file.arrayBuffer().catch(() => undefined)
  if (bytes === undefined) return answer({ unreadable: { problem: `“${file.name}” cannot be read from where it lies: it was moved, changed or locked after it was chosen. Choose it again.` } })
  const contents = await readFileContents(new Uint8Array(bytes), file.name, { report: teller('reading') })
  if ('problem' in contents) return answer({ unreadable: contents })
  const report = teller('comparing')
  report(undefined)
  const own = await ownWorkbook(contents)
  if (own === undefined || 'problem' in own) {
    answer({ foreign: own === undefined ? {} : { damaged: own.problem } })
    for (const part of contentsInParts(contents)) answer({ part })
    return
  }
  answer({ returned: { text: own.text, title: own.workbook.title, exported: own.exported, changes: changesInFile(own, contents, report) } })
}

/** The screen shows whole hundredths. */
function teller(step: ReturnStep): (share: number | undefined) => void {
  let told = -1
  return (share) => {
    const hundredths = share === undefined ? -2 : Math.floor(share * 100)
    if (hundredths === told) return
    told = hundredths
    answer({ step, share })
  }
}
