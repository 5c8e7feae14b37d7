import { batch, createEffect, createSignal, onCleanup, type Accessor } from 'solid-js'
import type { Workbook } from '../../workbook/document.ts'
import { CalculationEnded } from '../calculation/client.ts'
import type { ThreadWork } from '../state/in-sight.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'

/** Work on the whole workbook that is done anew after each change, for as long as someone looks at what comes of it. */
export interface Following {
  /** Whether someone looks. */
  setLookedAt(isLookedAt: boolean): void
  readonly working: Accessor<boolean>
  /** The same, once it takes longer than a moment. */
  readonly busy: Accessor<boolean>
  /** How much is done, from 0 to 1; undefined where that is not known. */
  readonly share: Accessor<number | undefined>
  setShare(share: number | undefined): void
  /** True after a stop, until it is asked for again. */
  readonly stopped: Accessor<boolean>
  /** Why nothing came of it, if something went wrong. */
  readonly problem: Accessor<string | undefined>
  /** Does it once more, in place of what is under way, and after each change as before. */
  again(): void
  stop(): void
}

/** Edits in quick succession are one reason to do it anew; work that takes long is not begun anew at each pause. */
const LEAST_PAUSE_MS = 400
const MOST_PAUSE_MS = 4000

/** What is over sooner is not worth a word. */
const MOMENT_MS = 300

/**
 * Begins once the values have settled after a change. What is under way is not ended by another change: what comes of it is shown, and then it is done anew.
 * Ends with its owner.
 */
export function createFollowing(session: Pick<Session, 'document' | 'recalculation'>, begin: (workbook: Workbook) => ThreadWork<void>): Following {
  const [lookedAt, setLookedAt] = createSignal(false)
  const [working, setWorking] = createSignal(false)
  const [busy, setBusy] = createSignal(false)
  const [share, setShare] = createSignal<number | undefined>(undefined)
  const [stopped, setStopped] = createSignal(false)
  const [problem, setProblem] = createSignal<string | undefined>(undefined)
  /** What it was last done for, whatever came of it. */
  const [of, setOf] = createSignal<Workbook | undefined>(undefined)
  let current: ThreadWork<void> | undefined
  let tookMs = 0

  createEffect(() => {
    const workbook = session.document.workbook()
    if (!lookedAt() || stopped() || working() || workbook === of() || session.recalculation.underWay() || session.recalculation.stopped()) return
    const pause = of() === undefined ? 0 : Math.min(MOST_PAUSE_MS, Math.max(LEAST_PAUSE_MS, 2 * tookMs))
    const timer = setTimeout(() => void run(workbook), pause)
    onCleanup(() => clearTimeout(timer))
  })
  onCleanup(() => current?.stop())

  async function run(workbook: Workbook): Promise<void> {
    const begun = performance.now()
    batch(() => {
      setWorking(true)
      setShare(undefined)
      setProblem(undefined)
    })
    const mine = begin(workbook)
    current = mine
    const moment = setTimeout(() => mine === current && setBusy(true), MOMENT_MS)
    const fault = await mine.result.then(() => undefined, (reason: unknown) => reason)
    clearTimeout(moment)
    // Another one has taken its place.
    if (mine !== current) return
    current = undefined
    tookMs = performance.now() - begun
    batch(() => {
      // The calculation was stopped, or another one is to come: it is done once there are values again.
      const isWithoutValues = fault instanceof CalculationEnded
      setOf(isWithoutValues ? undefined : workbook)
      setWorking(false)
      setBusy(false)
      if (isWithoutValues) return
      if (fault instanceof WorkStopped) setStopped(true)
      else if (fault !== undefined) setProblem(fault instanceof Error ? fault.message : String(fault))
    })
  }

  return {
    setLookedAt, working, busy, share, setShare, stopped, problem,
    again() {
      const before = current
      current = undefined
      before?.stop()
      batch(() => {
        setOf(undefined)
        setWorking(false)
        setBusy(false)
        setStopped(false)
        setProblem(undefined)
      })
    },
    stop: () => current?.stop(),
  }
}
