import type { WhatIfNews, WhatIfQuestion, WhatIfRequest } from '../../whatif/messages.ts'
import type { ThreadWork } from '../state/in-sight.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'

/**
 * Asks a question of a copy of the open workbook on a thread of its own; the bottom line shows it, Stop or Escape end it.
 * @param hear gets all news but the last; may tell what share is done
 */
export function askWhatIf(session: Pick<Session, 'service' | 'work'>, words: string, question: WhatIfQuestion, hear: (news: WhatIfNews) => number | void): ThreadWork<void> {
  const thread = new Worker(new URL('../../whatif/worker.ts', import.meta.url), { type: 'module' })
  const { port1, port2 } = new MessageChannel()
  let stop = (): void => undefined
  const work = session.work.begin(words, () => stop())
  const result = new Promise<void>((resolve, reject) => {
    stop = () => reject(new WorkStopped('It was stopped.'))
    thread.addEventListener('message', ({ data }: MessageEvent<WhatIfNews>) => {
      if (data.kind === 'fault') return reject(new Error(data.words))
      if (data.kind === 'done') return resolve()
      const share = hear(data)
      if (typeof share === 'number') work.report(share)
    })
    thread.addEventListener('error', ({ message }) => reject(new Error(message ? `It ended before its end: ${message}` : NOT_SERVED)))
    thread.postMessage({ question, port: port2 } satisfies WhatIfRequest, [port2])
    session.service.handWorkbook(port1).catch(reject)
  }).finally(() => {
    work.end()
    thread.terminate()
  })
  return { result, stop: () => stop() }
}

const NOT_SERVED = 'What computes this cannot be loaded: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.'
