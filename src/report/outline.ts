import { eachCell } from '../workbook/cells.ts'
import type { Cell, Role, Sheet } from '../workbook/document.ts'
import { rowKind } from '../workbook/row-kind.ts'

/** What of a sheet is printed: rows and columns that hold something, or are places to fill in. */
export interface Outline {
  /** Rows that stay in view: they head every page. */
  readonly head: readonly number[]
  /** Rows that belong together: without an empty row between them, and each heading with what follows it. */
  readonly blocks: readonly (readonly number[])[]
  readonly columns: readonly number[]
}

const known = new WeakMap<Sheet, Outline>()

/** Sheets are immutable: each is looked through once. */
export function outlineOf(sheet: Sheet): Outline {
  const before = known.get(sheet)
  if (before) return before
  const rows = new Set<number>()
  const columns = new Set<number>()
  eachCell(sheet, (cell, row, column) => {
    if (!isPrinted(cell)) return
    rows.add(row)
    columns.add(column)
  })
  const outline = { ...headAndBlocks(sheet, [...rows]), columns: [...columns].toSorted((one, other) => one - other) }
  known.set(sheet, outline)
  return outline
}

export const printedRowCount = (sheet: Sheet): number => {
  const { head, blocks } = outlineOf(sheet)
  return blocks.reduce((sum, block) => sum + block.length, head.length)
}

const TO_FILL_IN: ReadonlySet<Role> = new Set(['input', 'check'])
export const isPrinted = (cell: Cell | undefined): cell is Cell => cell !== undefined && (cell.content !== null || TO_FILL_IN.has(cell.role))

function headAndBlocks(sheet: Sheet, rows: readonly number[]): Pick<Outline, 'head' | 'blocks'> {
  const head = rows.filter((row) => row < sheet.frozen[0])
  const blocks: number[][] = []
  for (const row of rows.slice(head.length)) {
    const block = blocks.at(-1)
    const isPlain = (one: number): boolean => rowKind(sheet.rows[one]) === 'plain'
    if (block?.at(-1) === row - 1 && (isPlain(row) || !block.some(isPlain))) block.push(row)
    else blocks.push([row])
  }
  return { head, blocks }
}
