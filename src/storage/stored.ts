import type { Edit } from '../workbook/edits.ts'
import { workbookText } from '../workbook/file-writing.ts'
import type { Sheet, Workbook } from '../workbook/document.ts'
import { createSlices } from './next-task.ts'
import { STORED_VERSION, type BookContents, type KeptContents, type Snapshot, type Stored } from './shelf.ts'

/** An entry of the log: what one action of the user changed. */
export function storedEdits(book: string, number: number, edits: readonly Edit[]): Stored {
  const making = storing(book, number, editsText(edits))
  let step = making.next()
  while (!step.done) step = making.next()
  return step.value
}

/** The same without keeping anything else waiting: edit by edit, as time allows. */
export const storedEditsInSlices = (book: string, number: number, edits: readonly Edit[]): Promise<Stored> => inSlices(storing(book, number, editsText(edits)))

async function inSlices(making: Generator<void, Stored>): Promise<Stored> {
  const slice = createSlices()
  let step = making.next()
  while (!step.done) {
    await slice()
    step = making.next()
  }
  return step.value
}

/** A step for each piece of the text. */
function* storing(book: string, number: number, pieces: Iterable<string>): Generator<void, Stored> {
  let text = ''
  let hash = hashed(NO_HASH, `${book} ${number} `)
  for (const piece of pieces) {
    text += piece
    hash = hashed(hash, piece)
    yield
  }
  return { book, number, version: STORED_VERSION, text, checksum: hash >>> 0 }
}

/** An edit a piece; together what JSON makes of the list of them. */
function* editsText(edits: readonly Edit[]): Generator<string> {
  yield '['
  for (const [index, edit] of edits.entries()) yield `${index === 0 ? '' : ','}${JSON.stringify(edit)}`
  yield ']'
}

/** A snapshot, made without keeping anything else waiting: putting a long text on the shelf as such would take a second. */
export async function storedWorkbook(book: string, number: number, workbook: Workbook): Promise<Snapshot> {
  const slice = createSlices()
  let hash = hashed(NO_HASH, `${book} ${number} `)
  let text = ''
  const blobs: Blob[] = []
  for (const piece of workbookText(workbook)) {
    text += piece
    hash = hashed(hash, piece)
    if (text.length > LONG_TEXT) {
      blobs.push(new Blob([text]))
      text = ''
    }
    await slice()
  }
  return { book, number, version: STORED_VERSION, text: blobs.length === 0 ? text : new Blob([...blobs, text]), checksum: hash >>> 0 }
}

/** Characters that are put on the shelf as they are: a few milliseconds' work. */
const LONG_TEXT = 500_000

/** Whether reading it back takes longer than a frame. */
export const isLong = ({ entries, snapshots }: KeptContents): boolean =>
  snapshots.some(({ text }) => typeof text !== 'string') || entries.reduce((sum, { text }) => sum + text.length, 0) > LONG_TEXT

export const withTexts = async ({ entries, snapshots }: KeptContents): Promise<BookContents> => ({ entries, snapshots: await Promise.all(snapshots.map(withText)) })

/** As it was put on the shelf. A blob that the browser has lost is a damaged text, as its checksum says. */
export const withText = async (snapshot: Snapshot): Promise<Stored> => ({
  ...snapshot, text: typeof snapshot.text === 'string' ? snapshot.text : await snapshot.text.text().catch(() => ''),
})

/** Whether it is what was written. */
export const isIntact = (one: Stored): boolean => typeof one.text === 'string' && one.checksum === checksum(one.book, one.number, one.text)

/** The edits of an entry that is intact. */
export function editsOf({ text }: Stored): readonly Edit[] {
  // Written by `storedEdits`, as its checksum says.
  const edits = JSON.parse(text) as readonly Edit[]
  return edits.map((edit) => (edit.kind === 'addSheet' ? { ...edit, sheet: withGaps(edit.sheet) } : edit))
}

/** JSON has no gap in a list: what was one has become null. */
const withGaps = (sheet: Sheet): Sheet => ({ ...sheet, rows: sheet.rows.map((row) => row?.map((cell) => cell ?? undefined) ?? undefined) })

/** FNV-1a, 32 bits, over the code units: against damage, not against malice. */
const checksum = (book: string, number: number, text: string): number => hashed(hashed(NO_HASH, `${book} ${number} `), text) >>> 0

const NO_HASH = 0x811c9dc5

function hashed(before: number, text: string): number {
  let hash = before
  for (let index = 0; index < text.length; index++) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193)
  return hash
}
