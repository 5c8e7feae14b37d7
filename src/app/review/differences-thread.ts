import type { CellPlace } from '../../workbook/cell-place.ts'
import { atBase } from '../../workbook/case-switching.ts'
import { currentName } from '../../workbook/cases.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import { resultsCase, toCase, isSameCase } from '../../review/differences/results-case.ts'
import type { DifferencesNews, DifferencesRequest } from '../../review/differences/messages.ts'
import { createCalculationClient, startThread, type CalculationClient } from '../calculation/client.ts'
import type { ThreadWork } from '../state/in-sight.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'
import type { BeforeSource } from './before-source.ts'

/** A thread that compares the open workbook with one before; it keeps the last one that it compared with. */
export interface DifferencesThread {
  /** Reads and calculates the workbook before, unless it was the last one already and in the same case, and compares. Stopping it ends the thread; what comes next begins another one. */
  compare(source: BeforeSource, chosen: readonly CellPlace[], hear: (news: DifferencesNews) => void): ThreadWork<void>
  /** What takes differences of the last comparison back, by their numbers. */
  edits(ids: readonly number[]): Promise<readonly Edit[]>
  report(words: { readonly date: Date; readonly beforeWords: string; readonly nowWords: string }): ThreadWork<string>
  end(): void
}

export function createDifferencesThread(session: Pick<Session, 'document' | 'service' | 'work'>): DifferencesThread {
  let thread: Worker | undefined
  let known: Known | undefined
  let lastId = 0
  const waiting = new Map<number, Waiting>()

  function end(reason: Error = new WorkStopped('It was stopped.')): void {
    thread?.terminate()
    thread = undefined
    known = undefined
    for (const one of waiting.values()) one.reject(reason)
    waiting.clear()
  }

  function running(): Worker {
    if (thread) return thread
    const mine = new Worker(new URL('../../review/differences/worker.ts', import.meta.url), { type: 'module' })
    mine.addEventListener('message', ({ data }: MessageEvent<DifferencesNews>) => {
      const asked = waiting.get(data.id)
      if (data.kind === 'share' || data.kind === 'differences part') return asked?.hear(data)
      waiting.delete(data.id)
      if (data.kind === 'fault') asked?.reject(new Error(data.words))
      else asked?.resolve(data)
    })
    mine.addEventListener('error', ({ message }) => {
      if (mine === thread) end(new Error(message ? `It ended before its end: ${message}` : NOT_SERVED))
    })
    thread = mine
    return mine
  }

  function ask(request: Asked, transfer: Transferable[] = [], hear: Waiting['hear'] = () => undefined): Promise<DifferencesNews> {
    const id = ++lastId
    const mine = running()
    return new Promise((resolve, reject) => {
      waiting.set(id, { hear, resolve, reject })
      mine.postMessage({ ...request, id } satisfies DifferencesRequest, transfer)
    })
  }

  /** Hands over what a calculation holds, to be answered by the thread. */
  async function askWith(calculation: Pick<CalculationClient, 'handOver'>, request: (port: MessagePort) => Asked, hear?: Waiting['hear']): Promise<DifferencesNews> {
    const { port1, port2 } = new MessageChannel()
    const answer = ask(request(port2), [port2], hear)
    // A failed handing over leaves the thread waiting for ever.
    return Promise.race([answer, calculation.handOver(port1, false).then(() => answer)])
  }

  return {
    compare(source, chosen, hear) {
      let client: CalculationClient | undefined
      let stop = (): void => undefined
      const shown = session.work.begin('Comparing', () => stop())
      // Whatever it waits for at the time: a file may still be read.
      const stopped = new Promise<never>((_, reject) => {
        stop = () => {
          client?.close()
          end()
          reject(new WorkStopped('It was stopped.'))
        }
      })
      return { result: Promise.race([run(), stopped]).finally(() => shown.end()), stop: () => stop() }

      async function run(): Promise<void> {
        running()
        const open = session.document.workbook()
        const current = currentName(open)
        let before = known
        if (source !== before?.source || before.results !== resultsCase(before.workbook, open)) {
          before = known = await aside(async (mine): Promise<Known> => {
            const workbook = await source.open(mine, (share, words) => shown.report(share, words))
            const results = resultsCase(workbook, open)
            const edits = toCase(workbook, results)
            if (edits.length > 0) await mine.apply(edits)
            await askWith(mine, (port) => ({ kind: 'before', port, isTemplate: source.isTemplate, current: currentName(workbook) }))
            return { source, workbook, results }
          })
        }
        shown.report(undefined, 'Comparing')
        const compareWith = (calculation: Pick<CalculationClient, 'handOver'>): Promise<DifferencesNews> => askWith(calculation, (port) => ({ kind: 'compare', port, current, chosen }), (news) => {
          if (news.kind === 'share') shown.report(news.share)
          hear(news)
        })
        // A case that the other workbook does not have can be held against nothing: then both are compared in their base.
        hear(isSameCase(before.results, current) ? await compareWith(session.service) : await aside(async (mine) => {
          await mine.open(atBase(open))
          return compareWith(mine)
        }))
      }

      /** With a calculation of its own, which is ended after it. */
      async function aside<Made>(work: (mine: CalculationClient) => Promise<Made>): Promise<Made> {
        const mine = createCalculationClient(startThread())
        client = mine
        try {
          return await work(mine)
        } finally {
          mine.close()
          client = undefined
        }
      }
    },
    async edits(ids) {
      const news = await ask({ kind: 'accept', ids })
      return news.kind === 'edits' ? news.edits : []
    },
    report(words) {
      const asked = ask({ kind: 'report', ...words })
      return { result: asked.then((news) => (news.kind === 'report' ? news.html : '')), stop: () => end() }
    },
    end,
  }
}

type Asked = DifferencesRequest extends infer One ? (One extends DifferencesRequest ? Omit<One, 'id'> : never) : never

/** The workbook before that the thread keeps. */
interface Known {
  readonly source: BeforeSource
  /** As it was opened. */
  readonly workbook: Workbook
  /** The case that its values are of. */
  readonly results: string
}

interface Waiting {
  readonly hear: (news: DifferencesNews) => void
  readonly resolve: (news: DifferencesNews) => void
  readonly reject: (reason: Error) => void
}

const NOT_SERVED = 'What compares workbooks cannot be loaded: Lowside is served no more. Start it again where it was started, then try again; nothing of the workbook is lost.'
