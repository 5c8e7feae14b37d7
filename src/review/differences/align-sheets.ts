import { usedRange, isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import { eachCell } from '../../workbook/cells.ts'
import { alignRows, type AlignedRow } from '../../workbook/row-alignment.ts'
import { alignColumns, type AlignedColumn } from './align-columns.ts'
import { forward, lineRuns, mirrored, type LineRuns } from './line-map.ts'

/** Which lines of a sheet are which lines of another state of it. */
export interface AlignedSheets {
  readonly rows: LineRuns
  readonly columns: LineRuns
}

/** Which row and column is which: columns by what stands in them in any row, then rows by what stands in the columns that both have. The same from either side. */
export function alignSheets(before: Sheet, now: Sheet): AlignedSheets {
  const order = compareContents(before, now)
  if (order <= 0) return aligned(before, now, order === 0)
  const { rows, columns } = aligned(now, before, false)
  return { rows: mirrored(rows), columns: mirrored(columns) }
}

function aligned(before: Sheet, now: Sheet, same: boolean): AlignedSheets {
  const [usedBefore, usedNow] = [usedRange(before), usedRange(now)]
  const columns = lineRuns(same ? NOTHING_MOVED : alignColumns(columnsOf(before, usedBefore.columns), columnsOf(now, usedNow.columns)), usedBefore.columns, usedNow.columns)
  return { rows: lineRuns(same ? NOTHING_MOVED : alignedRows(before, now, columns), usedBefore.rows, usedNow.rows), columns }
}

const NOTHING_MOVED: LineRuns['runs'] = [{ old: 0, now: 0, count: 1 }]

function alignedRows(before: Sheet, now: Sheet, columns: LineRuns): LineRuns['runs'] {
  const [rowsBefore, rowsNow] = bothRows(before, now, columns, textOf, textOf)
  return alignRows(rowsBefore, rowsNow).runs
}

/** What a cell says, in a form that is the same on either side. */
export type CellText = (cell: Cell) => string

/**
 * Rows aligned once more by texts that say more, and kept where fewer cells differ for it. Rows that are alike but for what they refer to find their counterparts so;
 * what was made to refer to something else stays where it is.
 */
export function rowsAlignedBy(before: Sheet, now: Sheet, { rows, columns }: AlignedSheets, textBefore: CellText, textNow: CellText): LineRuns {
  if (compareContents(before, now) > 0) return mirrored(rowsAlignedBy(now, before, { rows: mirrored(rows), columns: mirrored(columns) }, textNow, textBefore))
  const [rowsBefore, rowsNow] = bothRows(before, now, columns, textBefore, textNow)
  const other = lineRuns(alignRows(rowsBefore, rowsNow).runs, rows.before, rows.now)
  return differing(rowsBefore, rowsNow, other) < differing(rowsBefore, rowsNow, rows) ? other : rows
}

/** How many cells differ, those in rows of one side alone among them. */
function differing(before: readonly AlignedRow[], now: readonly AlignedRow[], rows: LineRuns): number {
  const there = forward(rows)
  const left = new Map(now.map((row) => [row.row, row]))
  let count = 0
  for (const row of before) {
    const at = there.line(row.row)
    const other = at === undefined ? undefined : left.get(at)
    if (other === undefined) {
      count += filled(row)
      continue
    }
    left.delete(other.row)
    if (row.whole === other.whole) continue
    for (let column = 0; column < Math.max(row.cells.length, other.cells.length); column++) if ((row.cells[column] ?? '') !== (other.cells[column] ?? '')) count++
  }
  for (const row of left.values()) count += filled(row)
  return count
}

const filled = ({ cells }: AlignedRow): number => cells.reduce((count, text) => (text === '' ? count : count + 1), 0)

function bothRows(before: Sheet, now: Sheet, columns: LineRuns, textBefore: CellText, textNow: CellText): [AlignedRow[], AlignedRow[]] {
  const [toNow, toBefore] = [forward(columns), forward(mirrored(columns))]
  return [rowsOf(before, (column) => toNow.line(column), textBefore), rowsOf(now, (column) => (toBefore.line(column) === undefined ? undefined : column), textNow)]
}

/** Rows that hold something in columns that both have; `place` says where a column is counted. */
function rowsOf({ rows }: Sheet, place: (column: number) => number | undefined, text: CellText): AlignedRow[] {
  const found: AlignedRow[] = []
  // Keys alone pass over the holes of a sheet that is far apart.
  for (const key in rows) {
    const cells = rows[key]
    if (cells === undefined) continue
    const [texts, outlines]: [string[], string[]] = [[], []]
    for (const column in cells) {
      const cell = cells[column]
      const at = cell === undefined ? undefined : place(Number(column))
      if (cell === undefined || at === undefined) continue
      texts[at] = text(cell)
      outlines[at] = outlineOf(cell)
    }
    if (texts.length > 0) found.push({ row: Number(key), whole: joined(texts), outline: joined(outlines), cells: texts.length > MOST_CELLS ? [] : Array.from(texts, (text) => text ?? '') })
  }
  return found
}

/** A row that reaches further has no likeness but by all that it holds. */
const MOST_CELLS = 1000

const joined = (texts: readonly string[]): string => {
  let all = ''
  for (const at in texts) all += `${at}\u0001${texts[at]}\u0002`
  return all
}

function columnsOf(sheet: Sheet, count: number): AlignedColumn[] {
  const found = new Map<number, { counts: Map<string, number>; size: number }>()
  eachCell(sheet, (cell, _, column) => {
    const one = found.get(column) ?? { counts: new Map<string, number>(), size: 0 }
    found.set(column, one)
    const text = textOf(cell)
    one.counts.set(text, (one.counts.get(text) ?? 0) + 1)
    one.size++
  })
  const blank: AlignedColumn = { counts: new Map(), size: 0 }
  return Array.from({ length: count }, (_, column) => found.get(column) ?? blank)
}

/** What stands in a cell, of formulas what stays when references move and sheets get other names. */
export const textOf = ({ content, role }: Cell): string => (content === null ? `·${role}` : isFormula(content) ? masked(content) : `${typeof content === 'number' ? 'n' : 't'}${String(content)}`)

/** The same without numbers and units: what stays when a table is restated or gets other values. */
const outlineOf = (cell: Cell): string => (isFormula(cell.content) ? masked(cell.content).replace(/[0-9]+(?:\.[0-9]+)?/g, '#') : cell.role === 'unit' ? 'u' : typeof cell.content === 'number' ? 'n' : textOf(cell))

function masked(formula: string): string {
  // A reference that was lost stood where the other side still has one.
  const here = formula.includes('!') ? formula.replace(/#REF!/gi, '@').replace(/(?:'(?:[^']|'')*'|[\p{L}0-9_]+)!/gu, '') : formula
  return here.replace(/\$?[A-Za-z]{1,3}\$?[0-9]+(?::\$?[A-Za-z]{1,3}\$?[0-9]+)?/g, '@').replace(/\s/g, '').toUpperCase()
}

/** Which sheet comes first by what stands on it: so that neither side is preferred where two ways of aligning are as good. 0 where all is the same. */
function compareContents(one: Sheet, other: Sheet): number {
  const [left, right] = [filledRows(one), filledRows(other)]
  for (let at = 0; at < Math.min(left.length, right.length); at++) {
    const [a, b] = [left[at], right[at]]
    if (a === undefined || b === undefined) continue
    if (a.row !== b.row) return a.row - b.row
    if (a.cells === b.cells) continue
    const [first, second] = [JSON.stringify(a.cells), JSON.stringify(b.cells)]
    if (first !== second) return first < second ? -1 : 1
  }
  return left.length - right.length
}

function filledRows({ rows }: Sheet): { readonly row: number; readonly cells: readonly (Cell | undefined)[] }[] {
  const found = []
  for (const key in rows) {
    const cells = rows[key]
    if (cells !== undefined) found.push({ row: Number(key), cells })
  }
  return found
}
