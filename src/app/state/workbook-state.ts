import { createMemo, createSignal, type Accessor } from 'solid-js'
import { emptyWorkbook, type Workbook } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import { perform, redo, startHistory, undo, type History, type Moved, type Step } from '../../workbook/history.ts'
import { WorkbookProblem } from '../../workbook/problem.ts'

/** What follows the document: the calculation graph, and later the log that keeps it. */
export interface Follower {
  opened(workbook: Workbook): void
  edited(edits: readonly Edit[]): void
}

export interface WorkbookState {
  readonly workbook: Accessor<Workbook>
  /** What Undo would undo and Redo would redo, in words; undefined if nothing. */
  readonly undoable: Accessor<string | undefined>
  readonly redoable: Accessor<string | undefined>
  /** True while the workbook has changes that no file holds. */
  readonly unsaved: Accessor<boolean>
  /** Whether a file holds it, as it is or as it was before its latest changes. */
  readonly inFile: Accessor<boolean>
  /** When it was last saved to a file in this session. */
  readonly savedAt: Accessor<Date | undefined>
  /** One action of the user. Gives the message of what is wrong, the workbook then being as it was. */
  change(label: string, makeEdits: (workbook: Workbook) => readonly Edit[]): string | undefined
  /** Gives what was changed by it. */
  undo(): readonly Edit[]
  redo(): readonly Edit[]
  /** Takes another workbook in place of this one. `inFile`: its file holds just this. */
  replace(workbook: Workbook, inFile: boolean): void
  /** Where in its history the workbook stands. */
  readonly point: Accessor<HistoryPoint>
  /** Takes note that a file now holds the workbook as it was at a point. */
  markSaved(point: HistoryPoint, at: Date): void
}

/** The last step done; undefined before the first one. */
export type HistoryPoint = Step | undefined

/** The document with its history. Whoever follows it hears of every change, in order. */
export function createWorkbookState(followers: readonly Follower[]): WorkbookState {
  const [history, setHistory] = createSignal<History>(startHistory(emptyWorkbook()))
  const [kept, setKept] = createSignal<HistoryPoint>(undefined)
  const [inFile, setInFile] = createSignal(false)
  const [savedAt, setSavedAt] = createSignal<Date | undefined>(undefined)

  const point = createMemo((): HistoryPoint => history().past.at(-1))

  function take({ history: next, edits }: Moved): readonly Edit[] {
    if (edits.length > 0) {
      setHistory(next)
      for (const follower of followers) follower.edited(edits)
    }
    return edits
  }

  return {
    workbook: createMemo(() => history().workbook),
    undoable: () => point()?.label,
    redoable: () => history().future.at(-1)?.label,
    unsaved: createMemo(() => point() !== kept()),
    inFile,
    savedAt,
    change(label, makeEdits) {
      try {
        take(perform(history(), makeEdits(history().workbook), label))
        return undefined
      } catch (problem) {
        if (problem instanceof WorkbookProblem) return problem.message
        throw problem
      }
    },
    undo: () => take(undo(history())),
    redo: () => take(redo(history())),
    replace(workbook, isInFile) {
      setInFile(isInFile)
      setKept(undefined)
      setSavedAt(undefined)
      setHistory(startHistory(workbook))
      for (const follower of followers) follower.opened(workbook)
    },
    point,
    markSaved(savedPoint, at) {
      setInFile(true)
      setKept(() => savedPoint)
      setSavedAt(at)
    },
  }
}
