import type { Workbook } from '../workbook/document.ts'
import type { Edit } from '../workbook/edits.ts'
import type { Book, FileState, Shelf, Stored } from './shelf.ts'
import { storedEdits, storedEditsInSlices, storedWorkbook } from './stored.ts'

/** How it stands with what has been appended: all on disk, on its way, or not to be written at present. */
export type KeepingState = { readonly is: 'kept' } | { readonly is: 'keeping' } | { readonly is: 'failed'; readonly error: unknown }

export interface Journal {
  /** One action of the user, with the workbook as it is after it. */
  append(edits: readonly Edit[], workbook: Workbook, file: FileState): void
  /** The workbook was saved to a file. */
  noteFile(file: FileState): void
  /** True once all is on disk; false if that failed. */
  flush(): Promise<boolean>
  /** The last entry appended. */
  number(): number
  /** Writes nothing any more. */
  close(): void
}

export interface JournalStart {
  readonly shelf: Shelf
  readonly id: string
  readonly workbook: Workbook
  readonly file: FileState
  /** The last entry that the workbook contains, and the snapshots there are; a workbook that is new here has none. */
  readonly number: number
  readonly snapshots: readonly number[]
  /** Entries after `number` could not be read and go. */
  readonly cut: boolean
}

export interface JournalListener {
  state(state: KeepingState): void
  /** What has come to be on disk. */
  written(book: Book, entries: readonly Stored[]): void
}

export const SNAPSHOT_AFTER_ENTRIES = 200
export const SNAPSHOTS_KEPT = 3
const MANY_EDITS = 10
/** Milliseconds without a change before a snapshot is taken; and before a failed write is tried again. */
export const IDLE_MS = 5000

/** The log of one workbook: each action an entry, several in one write if they come faster than the disk. */
export function createJournal(start: JournalStart, listener: JournalListener, now: () => number = Date.now): Journal {
  const { shelf, id } = start
  let { workbook, file, number } = start
  let snapshots = start.snapshots
  let pending: readonly (Stored | Promise<Stored>)[] = []
  let cutAfter = start.cut ? start.number : undefined
  let at = now()
  /** The line in the list of workbooks is to be written. */
  let hasNews = false
  let wantsSnapshot = false
  let running: Promise<boolean> | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  let closed = false

  function changed(): void {
    hasNews = true
    at = now()
    if (number - (snapshots.at(-1) ?? 0) >= SNAPSHOT_AFTER_ENTRIES) wantsSnapshot = true
    listener.state({ is: 'keeping' })
    void flush()
  }

  function waitForIdle(): void {
    clearTimeout(timer)
    timer = setTimeout(() => {
      wantsSnapshot ||= number !== snapshots.at(-1)
      void flush()
    }, IDLE_MS)
  }

  function flush(): Promise<boolean> {
    if (!hasNews && !wantsSnapshot) return running ?? Promise.resolve(true)
    running ??= writeAll()
    return running
  }

  async function writeAll(): Promise<boolean> {
    try {
      while (!closed && (hasNews || wantsSnapshot)) await writeOnce()
      if (!closed) {
        listener.state({ is: 'kept' })
        if (number !== snapshots.at(-1)) waitForIdle()
      }
      return true
    } catch (error) {
      hasNews = true
      if (!closed) {
        listener.state({ is: 'failed', error })
        waitForIdle()
      }
      return false
    } finally {
      running = undefined
    }
  }

  async function writeOnce(): Promise<void> {
    const waiting = pending
    const takesSnapshot = wantsSnapshot
    hasNews = wantsSnapshot = false
    // Of now: more may be appended while these are made.
    const [entries, snapshot] = await Promise.all([Promise.all(waiting), takesSnapshot ? storedWorkbook(id, number, workbook) : undefined])
    const kept = snapshot ? [...snapshots.filter((one) => one !== snapshot.number), snapshot.number].slice(-SNAPSHOTS_KEPT) : snapshots
    const book: Book = { id, title: workbook.title, sheets: workbook.sheets.length, at, ...file }
    try {
      await shelf.write({ book, entries, snapshot, keepFrom: snapshot && kept[0], cutAfter })
    } catch (error) {
      // Where there is no room for a snapshot, there may be for the log.
      const canDoWithout = snapshot !== undefined && cutAfter === undefined && snapshots.length > 0
      wantsSnapshot = snapshot !== undefined && !canDoWithout
      if (!canDoWithout) throw error
      hasNews = true
      return
    }
    cutAfter = undefined
    snapshots = kept
    pending = pending.slice(waiting.length)
    listener.written(book, entries)
  }

  wantsSnapshot = snapshots.length === 0 || start.cut
  changed()

  return {
    append(edits, after, fileNow) {
      number++
      workbook = after
      file = fileNow
      // One that was made in parts is stored in parts: it would hold up a frame.
      pending = [...pending, edits.length < MANY_EDITS ? storedEdits(id, number, edits) : storedEditsInSlices(id, number, edits)]
      changed()
    },
    noteFile(fileNow) {
      file = fileNow
      changed()
    },
    flush,
    number: () => number,
    close() {
      closed = true
      clearTimeout(timer)
    },
  }
}
