import type { Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { rowKind } from '../workbook/row-kind.ts'

/** Rows that belong together, down to the next headings or the next empty row: a block of rows of label, value and source, or a table. Most have headings over them. */
export interface Band {
  /** The first row, under the headings, and the last. */
  readonly top: number
  readonly bottom: number
  /** By column: the heading nearest over the rows. */
  readonly headings: ReadonlyMap<number, string>
}

const known = new WeakMap<Sheet, readonly (Band | undefined)[]>()

/** The band that a row of a sheet belongs to; none of empty rows, and of those of titles and headings. */
export function bandOf(sheet: Sheet, row: number): Band | undefined {
  const bands = known.get(sheet) ?? bandsOf(sheet)
  known.set(sheet, bands)
  return bands[row]
}

/** The columns of a band whose heading says so, from the left. */
export const columnsHeaded = ({ headings }: Band, words: RegExp): number[] =>
  [...headings].flatMap(([column, heading]) => (words.test(heading) ? [column] : [])).toSorted((one, other) => one - other)

function bandsOf(sheet: Sheet): readonly (Band | undefined)[] {
  const bands: (Band | undefined)[] = Array.from(sheet.rows, () => undefined)
  let headings: ReadonlyMap<number, string> = NONE
  let top = 0
  const close = (end: number): void => void bands.fill({ top, bottom: end - 1, headings }, top, end)
  for (const [index, row] of sheet.rows.entries()) {
    const kind = row === undefined ? 'empty' : rowKind(row)
    if (kind === 'plain') continue
    close(index)
    const goesOn = top === index
    headings = kind !== 'heading' ? NONE : new Map([...(goesOn ? headings : []), ...headingsIn(sheet, index)])
    top = index + 1
  }
  close(sheet.rows.length)
  return bands
}

const NONE: ReadonlyMap<number, string> = new Map()

function headingsIn(sheet: Sheet, row: number): [number, string][] {
  return (sheet.rows[row] ?? []).flatMap((cell, column): [number, string][] => {
    const text = cell?.role === 'heading' ? meantText(cell.content) : undefined
    return text === undefined ? [] : [[column, text]]
  })
}

/** Whether a band begins with units that stand over columns, perhaps under a row of their names, as a table does. */
export const isTable = ({ rows }: Sheet, { top }: Band): boolean =>
  rows.slice(top, top + 2).some((row) => row?.some((cell) => cell?.role === 'unit') === true && !row.some((cell) => cell?.role === 'input' || cell?.role === 'result'))
