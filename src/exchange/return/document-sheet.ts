import { workbookText } from '../../workbook/file-writing.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { FileRow, FileSheet } from '../package/file-sheet.ts'
import { packed } from './packed-text.ts'
import { workingsMark } from './workings-mark.ts'

/** The name of the sheet that holds the document, where no other has it. It is known again by what stands in it, not by its name. */
export const DOCUMENT_SHEET = 'Lowside workbook'

/** What stands in the first cell of the second row: by this the sheet is known, whatever it is called by then. */
export const DOCUMENT_MARK = 'Lowside workbook in this file, version'
export const DOCUMENT_VERSION = 1

/** The labels of the rows below the mark, in their order. */
export const DOCUMENT_LABELS = { exported: 'Exported', workings: 'Workings', characters: 'Characters', hash: 'SHA-256', pieces: 'Pieces', cover: 'Cover', cases: 'Cases' } as const

/** By {@link readingMark} what stood on the sheets that are for reading only; absent where there was none. */
export interface ReadingMarks {
  readonly cover?: string
  readonly cases?: string
}

/** Rows above the first piece. */
export const DOCUMENT_HEAD_ROWS = 2 + Object.keys(DOCUMENT_LABELS).length

/** What a piece begins with: its number keeps it from being taken for a number or a formula, and tells of one that is missing. */
export const pieceHead = (index: number): string => `piece ${index + 1}: `

const WORDS =
  'This sheet holds the Lowside workbook that the file was exported from, packed. Lowside opens it from here, with what was changed in the input cells since. ' +
  'Nothing else in the file refers to it; without it the file computes as before, and can be brought back as plain sheets only.'

/**
 * The document on a sheet of its own, in cells, which every program keeps when it saves the file. The sheet is hidden, so that it is in nobody's way; not
 * hidden any deeper: whoever looks for what a file holds finds it, and only this way is known to OpenDocument as well.
 */
export async function documentSheet(workbook: Workbook, name: string, date: Date, marks: ReadingMarks): Promise<FileSheet> {
  const { pieces, characters, hash } = await packed(workbookText(workbook))
  const facts: readonly (readonly [string, string | number])[] = [
    [DOCUMENT_MARK, DOCUMENT_VERSION],
    [DOCUMENT_LABELS.exported, date.toISOString()],
    [DOCUMENT_LABELS.workings, await workingsMark()],
    [DOCUMENT_LABELS.characters, characters],
    [DOCUMENT_LABELS.hash, hash],
    [DOCUMENT_LABELS.pieces, pieces.length],
    [DOCUMENT_LABELS.cover, marks.cover ?? ''],
    [DOCUMENT_LABELS.cases, marks.cases ?? ''],
  ]
  const rows: FileRow[] = [
    { row: 0, cells: [{ value: WORDS, style: { look: 'text' } }] },
    ...facts.map(([label, value], index): FileRow => ({ row: 1 + index, cells: [{ value: label, style: { look: 'label' } }, { value, style: { look: 'text' } }] })),
    ...pieces.map((piece, index): FileRow => ({ row: DOCUMENT_HEAD_ROWS + index, cells: [{ value: pieceHead(index) + piece, style: { look: 'text' } }] })),
  ]
  return { name, widthsPx: [260, 460], frozen: [0, 0], rows, hidden: true }
}
