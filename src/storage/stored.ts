import type { Edit } from '../workbook/edits.ts'
import { writeWorkbook } from '../workbook/file.ts'
import type { Sheet, Workbook } from '../workbook/document.ts'
import { STORED_VERSION, type Stored } from './shelf.ts'

/** An entry of the log: what one action of the user changed. */
export const storedEdits = (book: string, number: number, edits: readonly Edit[]): Stored => stored(book, number, JSON.stringify(edits))

export const storedWorkbook = (book: string, number: number, workbook: Workbook): Stored => stored(book, number, writeWorkbook(workbook))

/** Whether it is what was written. */
export const isIntact = (one: Stored): boolean => typeof one.text === 'string' && one.checksum === checksum(one.book, one.number, one.text)

/** The edits of an entry that is intact. */
export function editsOf({ text }: Stored): readonly Edit[] {
  // Written by `storedEdits`, as its checksum says.
  const edits = JSON.parse(text) as readonly Edit[]
  return edits.map((edit) => (edit.kind === 'addSheet' ? { ...edit, sheet: withGaps(edit.sheet) } : edit))
}

const stored = (book: string, number: number, text: string): Stored => ({ book, number, version: STORED_VERSION, text, checksum: checksum(book, number, text) })

/** JSON has no gap in a list: what was one has become null. */
const withGaps = (sheet: Sheet): Sheet => ({ ...sheet, rows: sheet.rows.map((row) => row?.map((cell) => cell ?? undefined) ?? undefined) })

/** FNV-1a, 32 bits, over the code units: against damage, not against malice. */
function checksum(book: string, number: number, text: string): number {
  let hash = 0x811c9dc5
  for (const part of [`${book} ${number} `, text]) {
    for (let index = 0; index < part.length; index++) hash = Math.imul(hash ^ part.charCodeAt(index), 0x01000193)
  }
  return hash >>> 0
}
