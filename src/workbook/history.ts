import { keepBase } from './case-keeping.ts'
import type { Workbook } from './document.ts'
import { applyEdits, type Edit } from './edits.ts'
import { timestamp } from './review/timestamp.ts'

/** One action of the user, as done and as undone. */
export interface Step {
  /** What the action was, in the user's words. */
  readonly label: string
  readonly edits: readonly Edit[]
  readonly inverse: readonly Edit[]
}

/** A workbook with all that was done to it in this session; the latest step is last in `past`, and in `future`. */
export interface History {
  readonly workbook: Workbook
  readonly past: readonly Step[]
  readonly future: readonly Step[]
}

export interface Moved {
  readonly history: History
  /** What was applied to the workbook, in order; empty if nothing changed. The calculation graph follows these. */
  readonly edits: readonly Edit[]
}

export function startHistory(workbook: Workbook): History {
  return { workbook, past: [], future: [] }
}

/**
 * Does one action. One that changes nothing makes no step and keeps what could be redone.
 * @throws WorkbookProblem, the history given being as it was.
 */
export function perform(history: History, edits: readonly Edit[], label: string): Moved {
  return take(history, { ...applyEdits(history.workbook, edits), edits, label })
}

/**
 * Takes an action that was made of the workbook as it is, beside the history. While a case is current, the base keeps what inputs had in it.
 * @throws WorkbookProblem if the cases cannot hold as much
 */
export function take(history: History, { workbook, ...made }: Step & { readonly workbook: Workbook }): Moved {
  if (workbook === history.workbook) return { history, edits: [] }
  const keeping = keepBase(history.workbook, workbook, made.edits)
  const kept = applyEdits(workbook, keeping)
  const step: Step = keeping.length === 0 ? made : { label: made.label, edits: [...made.edits, ...keeping], inverse: [...kept.inverse, ...made.inverse] }
  return { history: { workbook: kept.workbook, past: [...history.past, step], future: [] }, edits: step.edits }
}

/** All is as it was before the last step, but for the record of reviews: it gains a line. @param at when, as in `timestamp` */
export function undo(history: History, at: string = timestamp()): Moved {
  const step = history.past.at(-1)
  if (!step) return { history, edits: [] }
  const edits = recordedAs(step.inverse, 'by Undo', at)
  const { workbook } = applyEdits(history.workbook, edits)
  return { history: { workbook, past: history.past.slice(0, -1), future: [...history.future, step] }, edits }
}

export function redo(history: History, at: string = timestamp()): Moved {
  const step = history.future.at(-1)
  if (!step) return { history, edits: [] }
  const edits = recordedAs(step.edits, 'by Redo', at)
  const { workbook } = applyEdits(history.workbook, edits)
  return { history: { workbook, past: [...history.past, step], future: history.future.slice(0, -1) }, edits }
}

/** What is done again, or undone, is done now: lines of the record say so. */
const recordedAs = (edits: readonly Edit[], words: string, at: string): readonly Edit[] =>
  edits.some(({ kind }) => kind === 'review') ? edits.map((edit) => (edit.kind === 'review' ? { ...edit, words, at } : edit)) : edits
