import { createSignal, type Accessor } from 'solid-js'
import { nextTask, SLICE_MS } from '../../storage/next-task.ts'
import type { Workbook } from '../../workbook/document.ts'
import { applyEdits, type AppliedAll, type Edit } from '../../workbook/edits.ts'
import { WorkbookProblem } from '../../workbook/problem.ts'

/** Some of the edits of an action; how much of it is done with them, from 0 to 1. */
export interface Part {
  readonly edits: readonly Edit[]
  readonly share: number
}

export interface Parts {
  readonly label: string
  readonly make: (workbook: Workbook) => Iterable<Part>
  /** Hears of the end, with what is wrong if the action was not taken; not of a stop. */
  readonly done: (problem: string | undefined) => void
}

/** An action as its parts made it, beside the document. */
export interface Made extends AppliedAll {
  readonly label: string
  readonly edits: readonly Edit[]
}

/** An action that may take longer than a frame: made part by part while the screen goes on, and seen by nobody before it is whole. */
export interface LongChange {
  /** What takes longer than a moment, and how far it has come. */
  readonly progress: Accessor<{ readonly label: string; readonly share: number } | undefined>
  isUnderWay(): boolean
  /** A short one is done on return. */
  begin(workbook: Workbook, parts: Parts): void
  /** Does the rest at once: another action is to come after it. */
  finish(): void
  /** Forgets it; false if there is none. */
  stop(): boolean
}

/** Shorter work is not worth a word. */
const MOMENT_MS = 150

interface Making extends Omit<Parts, 'make'> {
  readonly parts: Iterator<Part>
  readonly begun: number
  readonly edits: Edit[]
  /** What undoes the edits, each after those before it. */
  readonly inverse: (readonly Edit[])[]
  workbook: Workbook
}

/** @param take puts an action into the document; gives what is wrong. */
export function createLongChange(take: (made: Made) => string | undefined): LongChange {
  const [progress, setProgress] = createSignal<{ readonly label: string; readonly share: number } | undefined>(undefined)
  let now: Making | undefined

  async function run(making: Making): Promise<void> {
    while (now === making && !advance(making, performance.now() + SLICE_MS)) await nextTask()
  }

  /** True once there is nothing left to do. */
  function advance(making: Making, until: number): boolean {
    try {
      let share = 0
      do {
        const next = making.parts.next()
        if (next.done) {
          leave()
          const { label, workbook, edits, inverse } = making
          making.done(take({ label, workbook, edits, inverse: inverse.toReversed().flat() }))
          return true
        }
        share = next.value.share
        add(making, next.value.edits)
      } while (performance.now() < until)
      if (performance.now() - making.begun > MOMENT_MS) setProgress({ label: making.label, share })
      return false
    } catch (problem) {
      leave()
      if (!(problem instanceof WorkbookProblem)) throw problem
      making.done(problem.message)
      return true
    }
  }

  function leave(): void {
    now = undefined
    setProgress(undefined)
  }
  function finish(): void {
    if (now) advance(now, Infinity)
  }

  return {
    progress,
    isUnderWay: () => now !== undefined,
    begin(workbook, { make, ...parts }) {
      finish()
      now = { ...parts, parts: make(workbook)[Symbol.iterator](), begun: performance.now(), edits: [], inverse: [], workbook }
      void run(now)
    },
    finish,
    stop() {
      const isStopped = now !== undefined
      leave()
      return isStopped
    },
  }
}

function add(making: Making, edits: readonly Edit[]): void {
  const { workbook, inverse } = applyEdits(making.workbook, edits)
  making.workbook = workbook
  making.edits.push(...edits)
  making.inverse.push(inverse)
}
