import type { CalculationMethod, CalculationRequest, CalculationResponse, CalculationResult } from '../../calc/messages.ts'
import type { CalculationService } from '../../calc/service.ts'

/** The part of a Worker that the client needs, so that a test can stand in for one. */
export interface CalculationThread {
  postMessage(message: CalculationRequest): void
  addEventListener(type: 'message', listener: (event: { readonly data: CalculationResponse }) => void): void
  addEventListener(type: 'error', listener: (event: { readonly message: string }) => void): void
  terminate(): void
}

/** Starts the calculation graph on a thread of its own. */
export const startCalculation = (): CalculationService =>
  createCalculationClient(new Worker(new URL('../../calc/worker.ts', import.meta.url), { type: 'module' }))

/** The calculation graph on another thread, as if it were here: each call is one message there and one back. */
export function createCalculationClient(thread: CalculationThread): CalculationService {
  const waiting = new Map<number, Waiting>()
  let lastId = 0

  thread.addEventListener('message', ({ data }) => {
    const call = waiting.get(data.id)
    waiting.delete(data.id)
    if ('fault' in data) call?.reject(new Error(data.fault))
    else call?.resolve(data.result)
  })
  thread.addEventListener('error', ({ message }) => rejectAll(`The calculation stopped: ${message}`))

  function rejectAll(message: string): void {
    for (const call of waiting.values()) call.reject(new Error(message))
    waiting.clear()
  }

  function ask<M extends CalculationMethod>(method: M, ...args: Parameters<CalculationService[M]>): Promise<CalculationResult<M>> {
    const id = ++lastId
    return new Promise<CalculationResult<M>>((resolve, reject) => {
      // The answer of this number is the result of this method.
      waiting.set(id, { resolve: resolve as Waiting['resolve'], reject })
      thread.postMessage({ id, method, args } as unknown as CalculationRequest)
    })
  }

  return {
    open: (workbook) => ask('open', workbook),
    apply: (edits) => ask('apply', edits),
    read: (sheet, area) => ask('read', sheet, area),
    states: () => ask('states'),
    evaluate: (formula, sheet) => ask('evaluate', formula, sheet),
    feeds: (sheet, row, column) => ask('feeds', sheet, row, column),
    users: (sheet, row, column) => ask('users', sheet, row, column),
    total: (sheet, area) => ask('total', sheet, area),
    allValues: () => ask('allValues'),
    close() {
      thread.terminate()
      rejectAll('The calculation was closed.')
    },
  }
}

interface Waiting {
  readonly resolve: (result: CalculationResult<CalculationMethod>) => void
  readonly reject: (error: Error) => void
}
