import { readWorkbook } from '../../workbook/file.ts'
import type { Workbook } from '../../workbook/document.ts'
import { MAX_FILE_CHARACTERS } from '../../workbook/limits.ts'
import type { FileContents, ReadSheet } from '../reading/contents.ts'
import { DOCUMENT_HEAD_ROWS, DOCUMENT_LABELS, DOCUMENT_MARK, DOCUMENT_VERSION, pieceHead, type ReadingMarks } from './document-sheet.ts'
import { unpacked, type PackedText } from './packed-text.ts'
import { workingsMark } from './workings-mark.ts'

/** A file that Lowside exported. */
export interface OwnWorkbook {
  readonly workbook: Workbook
  /** The workbook as the text of its own file. */
  readonly text: string
  readonly exported: Date
  /** The workings are written out as this Lowside writes them out. */
  readonly sameWorkings: boolean
  readonly marks: ReadingMarks
  /** The sheet of the file that holds the document. */
  readonly sheet: ReadSheet
}

/** A file that says of itself that Lowside exported it, and whose workbook cannot be had. */
export interface DamagedWorkbook {
  readonly problem: string
}

/** The workbook that the file was exported from; undefined of a file of anyone else's. */
export async function ownWorkbook({ sheets }: FileContents): Promise<OwnWorkbook | DamagedWorkbook | undefined> {
  const [sheet, ...others] = sheets.filter(isDocumentSheet)
  if (sheet === undefined) return undefined
  const damaged = (words: string): DamagedWorkbook => ({ problem: `the Lowside workbook on the sheet "${sheet.name}" cannot be had: ${words}. ${STILL}` })
  if (others.length > 0) return damaged(`there is another one on "${others[0]?.name}"`)
  const head = headOf(sheet)
  if ('problem' in head) return damaged(head.problem)
  const found = await unpacked(head.packed)
  if ('problem' in found) return damaged(found.problem)
  const read = readWorkbook(found.text)
  if ('problems' in read) return damaged(read.problems[0]?.message ?? 'it cannot be read')
  return { workbook: read.workbook, text: found.text, exported: head.exported, marks: head.marks, sameWorkings: head.workings === (await workingsMark()), sheet }
}

const STILL = 'Its sheets can still be brought in as those of any other file.'

export const isDocumentSheet = ({ rows }: ReadSheet): boolean => rows[1]?.[0]?.value === DOCUMENT_MARK

interface Head {
  readonly packed: PackedText
  readonly exported: Date
  readonly workings: string
  readonly marks: ReadingMarks
}

function headOf({ rows }: ReadSheet): Head | { readonly problem: string } {
  const at = (row: number, column: number) => rows[row]?.[column]?.value ?? null
  const version = at(1, 1)
  if (version !== DOCUMENT_VERSION) return { problem: `it is of version ${String(version)}, made by a newer Lowside or damaged; accepted: ${DOCUMENT_VERSION}` }
  const facts = new Map(Array.from({ length: DOCUMENT_HEAD_ROWS - 2 }, (_, index) => [at(2 + index, 0), at(2 + index, 1)] as const))
  const number = (label: string, most: number): number | undefined => {
    const value = Number(facts.get(label) ?? NaN)
    return Number.isInteger(value) && value >= 0 && value <= most ? value : undefined
  }
  const [characters, count] = [number(DOCUMENT_LABELS.characters, MAX_FILE_CHARACTERS), number(DOCUMENT_LABELS.pieces, MOST_PIECES)]
  const hash = facts.get(DOCUMENT_LABELS.hash)
  if (characters === undefined || count === undefined || typeof hash !== 'string') return { problem: 'what it says of its length is damaged' }
  const pieces: string[] = []
  for (let index = 0; index < count; index++) {
    const text = at(DOCUMENT_HEAD_ROWS + index, 0)
    if (typeof text !== 'string' || !text.startsWith(pieceHead(index))) return { problem: `piece ${index + 1} of ${count} is missing` }
    pieces.push(text.slice(pieceHead(index).length))
  }
  const mark = (label: string): string | undefined => { const text = facts.get(label); return typeof text === 'string' && text !== '' ? text : undefined }
  const [cover, cases] = [mark(DOCUMENT_LABELS.cover), mark(DOCUMENT_LABELS.cases)]
  const exported = new Date(String(facts.get(DOCUMENT_LABELS.exported)))
  return { packed: { pieces, characters, hash }, exported: Number.isNaN(exported.getTime()) ? new Date(0) : exported, workings: String(facts.get(DOCUMENT_LABELS.workings)), marks: { ...(cover === undefined ? {} : { cover }), ...(cases === undefined ? {} : { cases }) } }
}

/** Nothing that Lowside packs comes to more. */
const MOST_PIECES = Math.ceil(MAX_FILE_CHARACTERS / 20_000)
