import { createEffect, createSignal, on, onCleanup, type Accessor } from 'solid-js'
import type { CaseOutcome } from '../../calc/case-outcomes.ts'
import { cellEditsBetween } from '../../workbook/cell-edits-between.ts'
import type { Workbook } from '../../workbook/document.ts'
import { CalculationEnded, createCalculationClient, startThread, type CalculationClient } from '../calculation/client.ts'
import type { Session } from './session.ts'

export interface CaseResults {
  /** Of the base and every case, as they were last worked out. */
  readonly outcomes: Accessor<readonly CaseOutcome[] | undefined>
  /** The workbook that they belong to. */
  readonly of: Accessor<Workbook | undefined>
  readonly working: Accessor<boolean>
  /** Why there are none of the present workbook, if something went wrong. */
  readonly problem: Accessor<string | undefined>
  /** After a stop: works them out after all. */
  again(): void
}

/** Edits in quick succession are one reason to work it out anew. */
const PAUSE_MS = 300

/**
 * What comes out in every case, worked out on a thread of its own with a copy of the workbook, and again after each change: the grid does not
 * wait for it. Ends with its owner.
 */
export function createCaseResults(session: Pick<Session, 'document' | 'work'>): CaseResults {
  const [found, setFound] = createSignal<{ readonly outcomes: readonly CaseOutcome[]; readonly of: Workbook } | undefined>(undefined)
  const [working, setWorking] = createSignal(false)
  const [problem, setProblem] = createSignal<string | undefined>(undefined)
  let client: CalculationClient | undefined
  /** What the graph of the thread was told of last. */
  let told: Workbook | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  let wanted: Workbook | undefined

  function want(workbook: Workbook): void {
    clearTimeout(timer)
    wanted = undefined
    if (!workbook.cases) return end()
    timer = setTimeout(() => {
      wanted = workbook
      if (!working()) void workOut()
    }, found() ? PAUSE_MS : 0)
  }

  async function workOut(): Promise<void> {
    setWorking(true)
    const work = session.work.begin('Working out the cases', () => stop())
    try {
      for (let workbook = wanted; workbook; workbook = wanted) {
        wanted = undefined
        setProblem(undefined)
        client ??= createCalculationClient(startThread())
        const edits = told && cellEditsBetween(told, workbook)
        told = workbook
        await (edits ? client.apply(edits) : client.open(workbook))
        const outcomes = await client.cases()
        setFound({ outcomes, of: workbook })
      }
    } catch (fault) {
      if (!(fault instanceof CalculationEnded)) setProblem(fault instanceof Error ? fault.message : String(fault))
      end()
    } finally {
      work.end()
      setWorking(false)
    }
  }
  function stop(): void {
    setProblem('Stopped before all cases were worked out.')
    wanted = undefined
    client?.close()
  }
  function end(): void {
    client?.close()
    client = undefined
    told = undefined
  }

  createEffect(on(session.document.workbook, want))
  onCleanup(() => {
    clearTimeout(timer)
    wanted = undefined
    end()
  })
  return {
    outcomes: () => found()?.outcomes, of: () => found()?.of, working, problem,
    again: () => want(session.document.workbook()),
  }
}
