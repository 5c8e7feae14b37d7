import { createSignal, type Accessor } from 'solid-js'
import type { CalculationService } from '../../calc/service.ts'
import type { Follower } from './workbook-state.ts'

export interface Recalculation extends Follower {
  /** Grows with each change that the graph has been told of; 0 until it has a workbook. */
  readonly version: Accessor<number>
  /** True once the graph has been at work for longer than a moment. */
  readonly busy: Accessor<boolean>
  /** Why the last call failed, if it did. */
  readonly fault: Accessor<string | undefined>
  /** A call whose time counts as work and whose failure is shown; undefined if it failed. */
  ask<T>(call: (service: CalculationService) => Promise<T>): Promise<T | undefined>
}

/** Shorter work is not worth a word or a changed look. */
const MOMENT_MS = 150

/** Keeps the calculation graph in step with the document, and says how it fares. */
export function createRecalculation(service: CalculationService): Recalculation {
  const [version, setVersion] = createSignal(0)
  const [busy, setBusy] = createSignal(false)
  const [fault, setFault] = createSignal<string | undefined>(undefined)
  let atWork = 0
  let timer: ReturnType<typeof setTimeout> | undefined

  async function ask<T>(call: (service: CalculationService) => Promise<T>): Promise<T | undefined> {
    atWork++
    timer ??= setTimeout(() => setBusy(true), MOMENT_MS)
    try {
      return await call(service)
    } catch (problem) {
      setFault(problem instanceof Error ? problem.message : String(problem))
      return undefined
    } finally {
      if (--atWork === 0) {
        clearTimeout(timer)
        timer = undefined
        setBusy(false)
      }
    }
  }

  function tell(call: (service: CalculationService) => Promise<void>): void {
    setFault(undefined)
    void ask(call)
    setVersion((before) => before + 1)
  }

  return {
    version,
    busy,
    fault,
    ask,
    opened: (workbook) => tell((graph) => graph.open(workbook)),
    edited: (edits) => tell((graph) => graph.apply(edits)),
  }
}
