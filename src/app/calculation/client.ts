import type { LoadNews, LoadSource } from '../../calc/loading.ts'
import type { CalculationMethod, CalculationRequest, CalculationResponse, CalculationResult, LoadRequest } from '../../calc/messages.ts'
import type { CalculationService } from '../../calc/service.ts'
import { nextTask } from '../../storage/next-task.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Edit } from '../../workbook/edits.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { ReadProblem } from '../../workbook/file-reading.ts'
import { packRows, withoutRows, type PackedRows } from '../../workbook/packed-rows.ts'

/** The part of a Worker that the client needs, so that a test can stand in for one. */
export interface CalculationThread {
  postMessage(message: CalculationRequest | LoadRequest, transfer?: Transferable[]): void
  addEventListener(type: 'message', listener: (event: { readonly data: CalculationResponse }) => void): void
  addEventListener(type: 'error', listener: (event: { readonly message?: string }) => void): void
  terminate(): void
}

export interface CalculationClient extends CalculationService {
  /** Reads a workbook and builds its graph; gives what is wrong with it, nothing if all is well. */
  load(source: LoadSource, hear: (news: LoadNews) => void): Promise<readonly ReadProblem[]>
  /** How many calls have no answer yet. */
  waiting(): number
}

/** What a call is rejected with whose thread was ended on purpose. */
export class CalculationEnded extends WorkStopped {
  override readonly name = 'CalculationEnded'
}

export const startThread = (): CalculationThread => new Worker(new URL('../../calc/worker.ts', import.meta.url), { type: 'module' })

/** The calculation graph on another thread, as if it were here: each call is one message there and one back. */
export function createCalculationClient(thread: CalculationThread): CalculationClient {
  const waiting = new Map<number, Waiting>()
  let lastId = 0
  /** What is to be sent once its turn comes; empty while everything has been sent. */
  const queue: Queued[] = []

  /** At once, unless something is still to go before: then one in each task, since copying a message takes time. */
  function send(queued: Queued): void {
    queue.push(queued)
    if (queue.length === 1) void sendAll()
  }
  async function sendAll(): Promise<void> {
    for (let next = queue[0]; next !== undefined; next = queue[0]) {
      for (const args of next.rowsBefore) {
        thread.postMessage({ id: ++lastId, method: 'prepareRows', args })
        await nextTask()
      }
      const { request } = next
      try {
        // A port is no copy: it goes over to the other thread.
        thread.postMessage(request, request.method === 'handOver' || request.method === 'handWorkbook' ? [request.args[0]] : [])
      } catch (fault) {
        // What cannot be sent holds up nothing that comes after it.
        waiting.get(request.id)?.reject(fault instanceof Error ? fault : new Error(String(fault)))
        waiting.delete(request.id)
      }
      if (request.method === 'prepare') await nextTask()
      queue.shift()
    }
  }

  thread.addEventListener('message', ({ data }) => {
    const call = waiting.get(data.id)
    if ('news' in data) return call?.hear?.(data.news)
    waiting.delete(data.id)
    if ('fault' in data) call?.reject(new Error(data.fault))
    else call?.resolve('loaded' in data ? data.loaded : data.result)
  })
  // A script that cannot be fetched gives an event without any message.
  thread.addEventListener('error', ({ message }) => rejectAll(new Error(message ? `The calculation stopped: ${message}` : 'The calculation could not start: a part of Lowside could not be loaded. Is Lowside still running?')))

  function rejectAll(reason: Error): void {
    for (const call of waiting.values()) call.reject(reason)
    waiting.clear()
  }

  function ask<M extends CalculationMethod>(method: M, ...args: Parameters<CalculationService[M]>): Promise<CalculationResult<M>> {
    return askAfter([], method, ...args)
  }
  function askAfter<M extends CalculationMethod>(rowsBefore: Queued['rowsBefore'], method: M, ...args: Parameters<CalculationService[M]>): Promise<CalculationResult<M>> {
    const id = ++lastId
    return new Promise<CalculationResult<M>>((resolve, reject) => {
      // The answer of this number is the result of this method.
      waiting.set(id, { resolve: resolve as Waiting['resolve'], reject })
      send({ rowsBefore, request: { id, method, args } as unknown as CalculationRequest })
    })
  }

  return {
    prepareRows: (sheet, rows) => ask('prepareRows', sheet, rows),
    open: (workbook) => (isLarge(workbook) ? askAfter(rowsOf(workbook), 'open', withoutRows(workbook)) : ask('open', workbook)),
    prepare: (edits) => ask('prepare', edits),
    apply(edits) {
      const parts = inParts(edits)
      for (const part of parts.slice(0, -1)) ask('prepare', part).catch(() => undefined)
      return ask('apply', parts.at(-1) ?? [])
    },
    read: (sheet, area) => ask('read', sheet, area),
    states: () => ask('states'),
    evaluate: (formula, sheet) => ask('evaluate', formula, sheet),
    feeds: (sheet, row, column) => ask('feeds', sheet, row, column),
    users: (sheet, row, column) => ask('users', sheet, row, column),
    total: (sheet, areas) => ask('total', sheet, areas),
    allValues: () => ask('allValues'),
    cases: () => ask('cases'),
    handOver: (port, withCases) => ask('handOver', port, withCases),
    handWorkbook: (port) => ask('handWorkbook', port),
    load(source, hear) {
      const id = ++lastId
      return new Promise((resolve, reject) => {
        waiting.set(id, { resolve: resolve as Waiting['resolve'], reject, hear })
        thread.postMessage({ id, method: 'load', source })
      })
    },
    waiting: () => waiting.size,
    close() {
      thread.terminate()
      rejectAll(new CalculationEnded('The calculation was closed.'))
    },
  }
}

/** Copying so many cells to the other thread takes some milliseconds. */
const CELLS_IN_MESSAGE = 5000

function inParts(edits: readonly Edit[]): readonly (readonly Edit[])[] {
  const parts: Edit[][] = []
  let cells = Infinity
  for (const edit of edits) {
    if (cells >= CELLS_IN_MESSAGE) {
      parts.push([])
      cells = 0
    }
    parts.at(-1)?.push(edit)
    cells += edit.kind === 'cells' ? edit.cells.length : 1
  }
  return parts
}

/** A request, and the rows that go before it, packed only when their turn comes. */
interface Queued {
  readonly rowsBefore: Iterable<[sheet: number, rows: PackedRows]>
  readonly request: CalculationRequest
}

/** Copying more rows at once takes longer than a frame. */
const LARGE_ROWS = 1000

const isLarge = ({ sheets }: Workbook): boolean => sheets.reduce((sum, { rows }) => sum + rows.length, 0) > LARGE_ROWS

function* rowsOf({ sheets }: Workbook): Generator<[sheet: number, rows: PackedRows]> {
  for (const [index, { rows }] of sheets.entries()) for (const part of packRows(rows)) yield [index, part]
}

interface Waiting {
  readonly resolve: (result: CalculationResult<CalculationMethod> | readonly ReadProblem[]) => void
  readonly reject: (error: Error) => void
  readonly hear?: (news: LoadNews) => void
}
