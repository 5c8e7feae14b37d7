import { contentsInParts, type ReadingRequest, type ReadingResponse } from './messages.ts'
import { readFileContents, sizeProblem } from './read-file.ts'

const answer = (response: ReadingResponse): void => postMessage(response)

addEventListener('message', ({ data }: MessageEvent<ReadingRequest>) => {
  // What fails outside of reading, such as memory for the answer, ends the thread in a way that its starter hears of.
  read(data).catch((fault: unknown) => setTimeout(() => {
    throw fault
  }))
})

async function read({ file, dialect }: ReadingRequest): Promise<void> {
  const problem = sizeProblem(file.size)
  if (problem !== undefined) return answer({ unreadable: { problem } })
  let told = 0
  const report = (share: number | undefined): void => {
    if (share !== undefined && share - told < 0.005) return
    told = share ?? 0
    answer({ share })
  }
  const bytes = await file.arrayBuffer().catch(() => undefined)
  if (bytes === undefined) return answer({ unreadable: { problem: `“${file.name}” cannot be read from where it lies: it was moved, changed or locked after it was chosen. Choose it again.` } })
  const contents = await readFileContents(new Uint8Array(bytes), file.name, { report, ...(dialect ? { dialect } : {}) })
  if ('problem' in contents) return answer({ unreadable: contents })
  for (const part of contentsInParts(contents)) answer(part)
}
