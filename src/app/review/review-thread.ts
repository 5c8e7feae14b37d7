import type { ReviewNews, ReviewQuestion, ReviewRequest } from '../../review/messages.ts'
import { templates } from '../files/library.ts'
import type { ThreadWork } from '../state/in-sight.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'

/** A thread that reviews the open workbook; it keeps the templates that it has read, and begins with the first question. */
export interface ReviewThread {
  /**
   * Asks one question at a time. Stopping it ends the thread; the next question begins another one.
   * @param hear gets all news but the last of a fault; may tell what share is done
   */
  ask(words: string, question: ReviewQuestion, hear: (news: ReviewNews) => number | void): ThreadWork<void>
  end(): void
}

export function createReviewThread(session: Pick<Session, 'service' | 'work'>): ReviewThread {
  let thread: Worker | undefined
  let knowsTemplates = false
  let lastId = 0

  function end(): void {
    thread?.terminate()
    thread = undefined
    knowsTemplates = false
  }

  return {
    ask(words, question, hear) {
      const mine = (thread ??= new Worker(new URL('../../review/worker.ts', import.meta.url), { type: 'module' }))
      const id = ++lastId
      const heard = new AbortController()
      let stop = (): void => undefined
      const shown = session.work.begin(words, () => stop())
      const result = new Promise<void>((resolve, reject) => {
        stop = () => {
          end()
          reject(new WorkStopped('It was stopped.'))
        }
        mine.addEventListener('message', ({ data }: MessageEvent<ReviewNews>) => {
          if (data.id !== id) return
          if (data.kind === 'fault') return reject(new Error(data.words))
          const share = hear(data)
          if (typeof share === 'number') shown.report(share)
          if (data.kind === 'found' || data.kind === 'template') resolve()
        }, { signal: heard.signal })
        mine.addEventListener('error', ({ message }) => {
          end()
          reject(new Error(message ? `It ended before its end: ${message}` : NOT_SERVED))
        }, { signal: heard.signal })
        void begin().catch(reject)
      }).finally(() => {
        heard.abort()
        shown.end()
      })
      return { result, stop: () => stop() }

      async function begin(): Promise<void> {
        const files = knowsTemplates ? undefined : await Promise.all(templates.map((template) => template.file()))
        if (mine !== thread) return
        knowsTemplates = true
        const { port1, port2 } = new MessageChannel()
        mine.postMessage({ id, question, port: port2, ...(files && { templates: files }) } satisfies ReviewRequest, [port2])
        await session.service.handOver(port1, false)
      }
    },
    end,
  }
}

const NOT_SERVED = 'What reviews a workbook cannot be loaded: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.'
