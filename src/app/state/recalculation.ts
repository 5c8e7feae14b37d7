import { createSignal, type Accessor } from 'solid-js'
import type { CalculationService } from '../../calc/service.ts'
import type { Workbook } from '../../workbook/document.ts'
import { CalculationEnded } from '../calculation/client.ts'
import type { LongWork, Work } from './long-work.ts'
import type { Follower } from './workbook-state.ts'

export interface Recalculation extends Follower {
  /** Grows with each change that the graph has been told of; 0 until it has a workbook. */
  readonly version: Accessor<number>
  /** True from the first moment on in which the graph is at work. */
  readonly underWay: Accessor<boolean>
  /** True once it has been at work for longer than a moment: what the screen shows of it. */
  readonly busy: Accessor<boolean>
  /** Why the last call failed, if it did. */
  readonly fault: Accessor<string | undefined>
  /** True after a stop: the document goes on, its values stay as they were until `again`. */
  readonly stopped: Accessor<boolean>
  /** Calculates everything afresh. */
  again(workbook: Workbook): void
  /** A call whose time counts as work and whose failure is shown; undefined if it failed. */
  ask<T>(call: (service: CalculationService) => Promise<T>): Promise<T | undefined>
}

/** A graph whose work can be ended. */
export interface StoppableService extends CalculationService {
  /** Until the next `open`, calls are rejected with `CalculationEnded`. */
  stop(): void
}

/** Shorter work is not worth a word or a changed look. */
const MOMENT_MS = 150

/** Keeps the calculation graph in step with the document, and says how it fares. */
export function createRecalculation(service: StoppableService, work: LongWork): Recalculation {
  const [version, setVersion] = createSignal(0)
  const [underWay, setUnderWay] = createSignal(false)
  const [busy, setBusy] = createSignal(false)
  const [fault, setFault] = createSignal<string | undefined>(undefined)
  const [stopped, setStopped] = createSignal(false)
  let atWork = 0
  let timer: ReturnType<typeof setTimeout> | undefined
  let shown: Work | undefined

  async function ask<T>(call: (service: CalculationService) => Promise<T>): Promise<T | undefined> {
    if (stopped()) return undefined
    atWork++
    setUnderWay(true)
    timer ??= setTimeout(() => setBusy(true), MOMENT_MS)
    shown ??= work.begin('Recalculating', stop)
    try {
      return await call(service)
    } catch (problem) {
      if (!(problem instanceof CalculationEnded)) setFault(problem instanceof Error ? problem.message : String(problem))
      return undefined
    } finally {
      if (--atWork === 0) {
        clearTimeout(timer)
        timer = undefined
        shown?.end()
        shown = undefined
        setBusy(false)
        setUnderWay(false)
      }
    }
  }

  function stop(): void {
    setStopped(true)
    service.stop()
  }
  function tell(call: (service: CalculationService) => Promise<void>): void {
    setFault(undefined)
    void ask(call)
    setVersion((before) => before + 1)
  }
  function opened(workbook: Workbook): void {
    setStopped(false)
    tell((graph) => graph.open(workbook))
  }

  return {
    version,
    underWay,
    busy,
    fault,
    stopped,
    ask,
    opened,
    again: opened,
    edited: (edits) => tell((graph) => graph.apply(edits)),
  }
}
