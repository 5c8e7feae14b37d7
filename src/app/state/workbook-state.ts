import { createMemo, createSignal, type Accessor } from 'solid-js'
import type { FileState } from '../../storage/shelf.ts'
import { emptyWorkbook, type Workbook } from '../../workbook/document.ts'
import { applyEdits, type Edit } from '../../workbook/edits.ts'
import { perform, redo, startHistory, take, undo, type History, type Moved, type Step } from '../../workbook/history.ts'
import { WorkbookProblem } from '../../workbook/problem.ts'
import { createLongChange, type LongChange, type Parts } from './long-change.ts'

/** What follows the document: the calculation graph, and the log that keeps it. */
export interface Follower {
  opened(workbook: Workbook): void
  edited(edits: readonly Edit[]): void
  /** A file holds it now. */
  savedToFile?(): void
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
  /** The same two, and when it was last saved to a file from here. */
  fileState(): FileState
  /** Why it takes no change, if it takes none: another tab writes it. */
  readonly refusal: Accessor<string | undefined>
  /** One action of the user. Gives the message of what is wrong, the workbook then being as it was. */
  change(label: string, makeEdits: (workbook: Workbook) => readonly Edit[]): string | undefined
  /** One action that may take longer than a frame. Whatever else changes the workbook meanwhile comes after it. */
  changeInParts(parts: Parts): void
  readonly longChange: Pick<LongChange, 'progress' | 'isUnderWay' | 'finish' | 'stop'>
  /** Gives what was changed by it. */
  undo(): readonly Edit[]
  redo(): readonly Edit[]
  /** Takes another workbook in place of this one. `inFile`: a file holds it, as it is unless `before` says otherwise. */
  replace(workbook: Workbook, inFile: boolean, before?: Pick<FileState, 'changed' | 'savedAt'>): void
  /** Takes what another tab has changed; it cannot be undone here. Gives what is wrong if it does not fit. */
  follow(edits: readonly Edit[], file: FileState): string | undefined
  /** The workbook as a file holds it that was saved from here, or else as it was opened. */
  readonly asSaved: Accessor<AsSaved>
  /** Where in its history the workbook stands. */
  readonly point: Accessor<HistoryPoint>
  /** Takes note that a file now holds the workbook as it was at a point of its history. */
  markSaved(point: HistoryPoint, at: Date, workbook: Workbook): void
}

export interface AsSaved {
  readonly workbook: Workbook
  /** When it was saved to a file; undefined where it was not since it was opened. */
  readonly at: Date | undefined
}

/** The last step done; undefined before the first one. */
export type HistoryPoint = Step | undefined

/** No point of this history: what the file holds lies before it. */
const BEFORE = Symbol('before this history')

/** The document with its history. Whoever follows it hears of every change, in order. */
export function createWorkbookState(followers: readonly Follower[], refusal: Accessor<string | undefined> = () => undefined): WorkbookState {
  const [history, setHistory] = createSignal<History>(startHistory(emptyWorkbook()))
  const [kept, setKept] = createSignal<HistoryPoint | typeof BEFORE>(undefined)
  const [inFile, setInFile] = createSignal(false)
  const [savedAt, setSavedAt] = createSignal<number | null>(null)
  const [asSaved, setAsSaved] = createSignal<AsSaved>({ workbook: history().workbook, at: undefined })

  const point = createMemo((): HistoryPoint => history().past.at(-1))

  function takeIn({ history: next, edits }: Moved): readonly Edit[] {
    if (edits.length > 0) {
      setHistory(next)
      for (const follower of followers) follower.edited(edits)
    }
    return edits
  }
  const longChange = createLongChange((made) => {
    const refused = refusal()
    if (refused === undefined) takeIn(take(history(), made))
    return refused
  })
  function takeFile(isInFile: boolean, { changed, savedAt: at }: Pick<FileState, 'changed' | 'savedAt'>): void {
    setInFile(isInFile)
    setKept(() => (changed ? BEFORE : undefined))
    setSavedAt(at)
  }
  const unsaved = createMemo(() => point() !== kept())

  return {
    workbook: createMemo(() => history().workbook),
    undoable: () => point()?.label,
    redoable: () => history().future.at(-1)?.label,
    unsaved,
    inFile,
    fileState: () => ({ inFile: inFile(), changed: unsaved(), savedAt: savedAt() }),
    refusal,
    longChange,
    changeInParts(parts) {
      longChange.finish()
      const refused = refusal()
      if (refused === undefined) longChange.begin(history().workbook, parts)
      else parts.done(refused)
    },
    change(label, makeEdits) {
      longChange.finish()
      const refused = refusal()
      if (refused !== undefined) return refused
      try {
        takeIn(perform(history(), makeEdits(history().workbook), label))
        return undefined
      } catch (problem) {
        if (problem instanceof WorkbookProblem) return problem.message
        throw problem
      }
    },
    undo() {
      longChange.finish()
      return refusal() === undefined ? takeIn(undo(history())) : []
    },
    redo() {
      longChange.finish()
      return refusal() === undefined ? takeIn(redo(history())) : []
    },
    replace(workbook, isInFile, before = { changed: false, savedAt: null }) {
      longChange.finish()
      takeFile(isInFile, before)
      setAsSaved({ workbook, at: undefined })
      setHistory(startHistory(workbook))
      for (const follower of followers) follower.opened(workbook)
    },
    follow(edits, file) {
      try {
        const { workbook } = applyEdits(history().workbook, edits)
        takeFile(file.inFile, file)
        if (file.inFile && !file.changed) setAsSaved({ workbook, at: file.savedAt === null ? undefined : new Date(file.savedAt) })
        takeIn({ history: startHistory(workbook), edits })
        return undefined
      } catch (problem) {
        if (problem instanceof WorkbookProblem) return problem.message
        throw problem
      }
    },
    asSaved,
    point,
    markSaved(savedPoint, at, workbook) {
      setInFile(true)
      setAsSaved({ workbook, at })
      setKept(() => savedPoint)
      setSavedAt(at.getTime())
      for (const follower of followers) follower.savedToFile?.()
    },
  }
}
