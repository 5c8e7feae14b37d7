import type { Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { rowKind } from '../workbook/row-kind.ts'

/** Rows under headings of their own, down to the next headings or the next empty row: a block of rows of label, value and source, or a table. */
export interface Band {
  /** The first row under the headings, and the last. */
  readonly top: number
  readonly bottom: number
  /** By column: the heading nearest over the rows. */
  readonly headings: ReadonlyMap<number, string>
}

const known = new WeakMap<Sheet, readonly (Band | undefined)[]>()

/** The band that a row of a sheet belongs to; none of a heading's own row, and of rows that have no heading over them. */
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
  let headings: Map<number, string> | undefined
  let top = 0
  const close = (end: number): void => {
    if (headings === undefined || end <= top) return
    const band = { top, bottom: end - 1, headings }
    bands.fill(band, top, end)
  }
  for (const [index, row] of sheet.rows.entries()) {
    const kind = row === undefined ? 'empty' : rowKind(row)
    if (kind === 'plain') continue
    close(index)
    const goesOn = kind === 'heading' && headings !== undefined && top === index
    if (kind !== 'heading') headings = undefined
    else headings = new Map([...(goesOn ? headings ?? [] : []), ...headingsIn(sheet, index)])
    top = index + 1
  }
  close(sheet.rows.length)
  return bands
}

function headingsIn(sheet: Sheet, row: number): [number, string][] {
  return (sheet.rows[row] ?? []).flatMap((cell, column): [number, string][] => {
    const text = cell?.role === 'heading' ? meantText(cell.content) : undefined
    return text === undefined ? [] : [[column, text]]
  })
}
