/** What is kept of workbooks in a browser, and the little that is asked of the place where it is kept. */

/** Of the records below; one of a later version is left as it is. */
export const STORED_VERSION = 1

/** How a workbook stands to the file on the user's disk. */
export interface FileState {
  readonly inFile: boolean
  /** Whether it has changes that no file holds. */
  readonly changed: boolean
  /** Milliseconds since 1970; null if it was not saved by this browser. */
  readonly savedAt: number | null
}

/** A line of the list of workbooks. */
export interface Book extends FileState {
  readonly id: string
  readonly title: string
  readonly sheets: number
  /** When it was last worked on, in milliseconds since 1970. */
  readonly at: number
}

/** An entry of the log or a snapshot. */
export interface Stored {
  readonly book: string
  /** Of an entry: its place in the log, from 1 on without a gap. Of a snapshot: the last entry that it contains. */
  readonly number: number
  readonly version: number
  readonly text: string
  readonly checksum: number
}

/** A snapshot on its way to the shelf; a long text is given as a blob, which a browser takes over without copying it. */
export interface Snapshot extends Omit<Stored, 'text'> {
  readonly text: string | Blob
}

/** In the order of their numbers, both. */
export interface BookContents {
  readonly entries: readonly Stored[]
  readonly snapshots: readonly Stored[]
}

/** The same as it lies on the shelf: the text of a long snapshot is still to be read. */
export interface KeptContents {
  readonly entries: readonly Stored[]
  readonly snapshots: readonly Snapshot[]
}

/** What is written together or not at all. */
export interface Writing {
  readonly book: Book
  readonly entries: readonly Stored[]
  readonly snapshot?: Snapshot | undefined
  /** Snapshots before this number, and the entries that none later needs, go. */
  readonly keepFrom?: number | undefined
  /** Whatever has a greater number goes first: it could not be read. */
  readonly cutAfter?: number | undefined
}

export interface Shelf {
  /** The one worked on last comes first. */
  books(): Promise<readonly Book[]>
  read(book: string): Promise<KeptContents>
  /** On disk when the promise is fulfilled. Rejected with a `ConstraintError` if an entry of that number is there already. */
  write(writing: Writing): Promise<void>
  forget(book: string): Promise<void>
}
