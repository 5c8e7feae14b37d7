import { cellsIn, withCells } from './cells.ts'
import { DEFAULT_COLUMN_WIDTH, usedRange, type Row, type Sheet } from './document.ts'
import type { CellChange } from './edits.ts'
import { MAX_COLUMNS, MAX_ROWS } from './limits.ts'
import { WorkbookProblem } from './problem.ts'

/** A line is a row or a column; lines run along the axis that they are counted on. */
export type LineAxis = 'rows' | 'columns'

/** Lines next to each other. */
export interface Lines {
  readonly axis: LineAxis
  /** The first of them, from 0. */
  readonly at: number
  readonly count: number
}

/** What belongs to a sheet's lines beside their cells. Left out of an edit, it moves along; an inverse gives it back as it was. */
export interface Alongside {
  /** How many of the lines stay in view. */
  readonly frozen?: number
  /** All column widths. */
  readonly columns?: readonly number[]
}

/** The sheet with so many empty lines more, filled with the cells given. */
export function withLines(sheet: Sheet, { axis, at, count }: Lines, cells: readonly CellChange[], alongside: Alongside): Sheet {
  refuseBadLines(sheet, axis, at, count)
  const used = usedLines(sheet, axis)
  const most = MOST[axis]
  if (at < used && used + count > most) {
    throw new WorkbookProblem(`sheet "${sheet.name}": ${count} more ${axis} would push what is on the last ones off the sheet; accepted: up to ${most - used} more`)
  }
  const frozen = frozenLines(sheet, axis)
  const opened = changed(sheet, axis, (list, empty) => spliced(list, at, 0, count, empty), alongside, at < frozen ? Math.min(most - 1, frozen + count) : frozen)
  return cells.length === 0 ? opened : withCells(opened, cells)
}

/** The sheet without those lines, and the cells that went with them, at their addresses. */
export function withoutLines(sheet: Sheet, { axis, at, count }: Lines, alongside: Alongside): { readonly sheet: Sheet; readonly cells: readonly CellChange[] } {
  refuseBadLines(sheet, axis, at, count)
  const frozen = frozenLines(sheet, axis)
  const lost = Math.max(0, Math.min(frozen, at + count) - at)
  const cells = cellsIn(sheet, axis === 'rows' ? { top: at, bottom: at + count - 1, left: 0, right: MAX_COLUMNS - 1 } : { top: 0, bottom: MAX_ROWS - 1, left: at, right: at + count - 1 })
  return { sheet: changed(sheet, axis, (list) => spliced(list, at, count, 0), alongside, frozen - lost), cells }
}

/** The sheet with those lines in another place; `to` is where the first of them is then. How many stay in view does not change. */
export function withMovedLines(sheet: Sheet, { axis, at, count }: Lines, to: number, alongside: Alongside): Sheet {
  refuseBadLines(sheet, axis, at, count)
  refuseBadLines(sheet, axis, to, count)
  const move = <Item>(list: readonly Item[], empty?: Item): Item[] => {
    const block = sized(list.slice(at, at + count), count, empty)
    const rest = spliced(list, at, count, 0)
    return [sized(rest.slice(0, to), to, empty), block, rest.slice(to)].reduce((all, part) => all.concat(part))
  }
  return changed(sheet, axis, move, alongside, frozenLines(sheet, axis))
}

const MOST: Readonly<Record<LineAxis, number>> = { rows: MAX_ROWS, columns: MAX_COLUMNS }
const WORDS: Readonly<Record<LineAxis, string>> = { rows: 'row', columns: 'column' }

export const frozenLines = ({ frozen }: Sheet, axis: LineAxis): number => (axis === 'rows' ? frozen[0] : frozen[1])

function usedLines(sheet: Sheet, axis: LineAxis): number {
  const used = usedRange(sheet)
  return axis === 'rows' ? used.rows : Math.max(used.columns, sheet.columns.length)
}

type Rearrange = <Item>(list: readonly Item[], empty?: Item) => Item[]

function changed(sheet: Sheet, axis: LineAxis, rearrange: Rearrange, { frozen: givenFrozen, columns: givenColumns }: Alongside, movedFrozen: number): Sheet {
  const frozen = givenFrozen ?? movedFrozen
  if (axis === 'rows') return { ...sheet, rows: trimmed(rearrange(sheet.rows)), frozen: [frozen, sheet.frozen[1]] }
  return {
    ...sheet,
    rows: trimmed(mapRows(sheet.rows, (row) => orNothing(trimmed(rearrange(row))))),
    columns: givenColumns ?? trimmed(rearrange(sheet.columns, DEFAULT_COLUMN_WIDTH)),
    frozen: [sheet.frozen[0], frozen],
  }
}

/** Gaps stay gaps. */
function mapRows(rows: readonly Row[], change: (row: NonNullable<Row>) => Row): Row[] {
  return rows.map((row) => (row === undefined ? undefined : change(row)))
}

const orNothing = <Item>(list: Item[]): Item[] | undefined => (list.length === 0 ? undefined : list)

/** A list that ends before `at` gains nothing; one that reaches further gets gaps, or `empty` items where gaps will not do. */
function spliced<Item>(list: readonly Item[], at: number, removed: number, added: number, empty?: Item): Item[] {
  if (list.length <= at) return list.slice()
  return sized(list.slice(0, at), at + added, empty).concat(list.slice(at + removed))
}

/** Gaps are made by the length alone, so that a lone far line costs no million of items. */
function sized<Item>(list: Item[], length: number, empty: Item | undefined): Item[] {
  if (empty !== undefined) while (list.length < length) list.push(empty)
  list.length = length
  return list
}

function trimmed<Item>(list: Item[]): Item[] {
  let length = list.length
  while (length > 0 && list[length - 1] === undefined) length--
  list.length = length
  return list
}

function refuseBadLines({ name }: Sheet, axis: LineAxis, at: number, count: number): void {
  const most = MOST[axis]
  if (!Number.isInteger(at) || !Number.isInteger(count) || at < 0 || count < 1 || at + count > most) {
    throw new WorkbookProblem(`sheet "${name}": ${count} ${axis} from ${WORDS[axis]} ${at + 1} on are not on the sheet; accepted: whole numbers, up to ${WORDS[axis]} ${most}`)
  }
}
