import { batch, createSignal, onCleanup, type Accessor } from 'solid-js'
import type { Workbook } from '../../workbook/document.ts'
import type { WhatIfNews, WhatIfQuestion } from '../../whatif/messages.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'
import type { ThreadWork } from '../state/in-sight.ts'
import { askWhatIf } from './client.ts'

export interface Running {
  readonly running: Accessor<boolean>
  /** Why there is no outcome, or not all of it. */
  readonly problem: Accessor<string | undefined>
  setProblem(words: string | undefined): void
  /** The workbook that was asked about last. */
  readonly of: Accessor<Workbook | undefined>
  /** Whether the workbook has changed since. */
  readonly isOld: Accessor<boolean>
  /** Asks, in place of what is still being computed. */
  ask(words: string, question: WhatIfQuestion, hear: (news: WhatIfNews) => number | void): void
  stop(): void
}

/** One question at a time of one panel. Ends with its owner. */
export function createRunning(session: Session): Running {
  const [running, setRunning] = createSignal(false)
  const [problem, setProblem] = createSignal<string | undefined>(undefined)
  const [of, setOf] = createSignal<Workbook | undefined>(undefined)
  let current: ThreadWork<void> | undefined
  onCleanup(() => current?.stop())
  return {
    running, problem, setProblem, of,
    isOld: () => of() !== undefined && of() !== session.document.workbook(),
    ask(words, question, hear) {
      current?.stop()
      const mine = askWhatIf(session, words, question, hear)
      current = mine
      batch(() => {
        setRunning(true)
        setProblem(undefined)
        setOf(session.document.workbook())
      })
      mine.result.then(() => undefined, (fault: unknown) => {
        if (mine === current) setProblem(fault instanceof WorkStopped ? 'Stopped.' : fault instanceof Error ? fault.message : String(fault))
      }).finally(() => mine === current && setRunning(false))
    },
    stop: () => current?.stop(),
  }
}
