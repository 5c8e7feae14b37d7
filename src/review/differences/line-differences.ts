import { columnLetters } from '../../workbook/address.ts'
import { isFormula, type Sheet } from '../../workbook/document.ts'
import type { LineAxis } from '../../workbook/line-edits.ts'
import { labelOf } from '../../workbook/words-beside.ts'
import type { Found } from './found.ts'
import { loneLines, type LineRuns, type LoneLines } from './line-map.ts'
import type { PairedSheets, Side, Sides } from './sides.ts'
import { contentWords, counted, GONE, listed, NO_SUCH } from './words.ts'

/** A stretch of lines that only one side has, told as one difference. */
export type ToldLines = LoneLines & { readonly axis: LineAxis }

/**
 * The rows and columns that only one side has and that are told as a whole. Beyond the last line of the other side nothing moves for what was filled in:
 * lines next to each other with more than one cell are a whole, single cells are told of as cells.
 */
export function toldLines({ sheetBefore, sheetNow, rows, columns }: PairedSheets): ToldLines[] {
  const moved = { before: movedColumns(columns, 'before'), now: movedColumns(columns, 'now') }
  const inRows = told('rows', rows, { before: filledRows(sheetBefore, moved.before), now: filledRows(sheetNow, moved.now) })
  const taken = { before: inLines(inRows, 'before'), now: inLines(inRows, 'now') }
  const inColumns = told('columns', columns, { before: filledColumns(sheetBefore, taken.before), now: filledColumns(sheetNow, taken.now) })
  return [...inRows, ...inColumns]
}

/** Whether a line is among those told as a whole. */
export function inLines(lines: readonly ToldLines[], side: 'before' | 'now', axis: LineAxis = 'rows'): (line: number) => boolean {
  const own = lines.filter((one) => one.axis === axis && one.side === side)
  return (line) => own.some(({ at, count }) => line >= at && line < at + count)
}

type Filled = ReadonlyMap<number, number>

function told(axis: LineAxis, runs: LineRuns, filled: { readonly before: Filled; readonly now: Filled }): ToldLines[] {
  return loneLines(runs).flatMap((lines): ToldLines[] => (lines.beyond ? blocksOf(lines, filled[lines.side]).map((block) => ({ ...block, axis })) : [{ ...lines, axis }]))
}

/** Filled lines next to each other, where they hold more than one cell. */
function blocksOf(lines: LoneLines, filled: Filled): LoneLines[] {
  const blocks: { at: number; count: number; cells: number }[] = []
  for (const [line, cells] of [...filled].filter(([line]) => line >= lines.at).toSorted(([one], [other]) => one - other)) {
    const last = blocks.at(-1)
    if (last && last.at + last.count === line) [last.count, last.cells] = [last.count + 1, last.cells + cells]
    else blocks.push({ at: line, count: 1, cells })
  }
  return blocks.filter(({ cells }) => cells > 1).map(({ at, count }) => ({ ...lines, at, count, other: lines.other + at - lines.at }))
}

/** Columns that came or went with all that stands in them. */
function movedColumns(columns: LineRuns, side: 'before' | 'now'): (column: number) => boolean {
  const own = loneLines(columns).filter((one) => one.side === side && !one.beyond)
  return (column) => own.some(({ at, count }) => column >= at && column < at + count)
}

/** How many cells a row holds in other columns than those, by its number. */
function filledRows({ rows }: Sheet, isTaken: (column: number) => boolean): Filled {
  const found = new Map<number, number>()
  for (const key in rows) {
    const count = rows[key]?.reduce((sum, cell, column) => sum + (cell === undefined || isTaken(column) ? 0 : 1), 0) ?? 0
    if (count > 0) found.set(Number(key), count)
  }
  return found
}

/** How many cells a column holds in other rows than those. */
function filledColumns({ rows }: Sheet, isTaken: (row: number) => boolean): Filled {
  const found = new Map<number, number>()
  for (const key in rows) {
    if (isTaken(Number(key))) continue
    rows[key]?.forEach((cell, column) => { if (cell !== undefined) found.set(column, (found.get(column) ?? 0) + 1) })
  }
  return found
}

/** One difference for lines that came or went, with what stands in them. */
export function lineDifference(sides: Sides, pair: PairedSheets, lines: ToldLines, isTaken: (row: number) => boolean): Found {
  const { axis, side, at, count, beyond } = lines
  const sheet = side === 'before' ? pair.sheetBefore : pair.sheetNow
  const held = heldWords(sides[side], sheet, lines, isTaken)
  const what = axis === 'rows' ? counted(count, 'row') : counted(count, 'column')
  const words = held === '' ? `${what}, nothing in ${count === 1 ? 'it' : 'them'}` : `${what}: ${held}`
  const place = { sheet: sheet.name, ...(axis === 'rows' ? { row: at, column: 0 } : { row: 0, column: at }) }
  const label = linesLabel(axis, at, count)
  const subject = { of: 'lines', axis, side, at, count, beyond } as const
  return side === 'before'
    ? { kind: axis === 'rows' ? 'rows gone' : 'columns gone', sheet: pair.sheetNow.name, before: place, label, was: words, is: GONE, accept: { words: `Puts ${what} back${held === '' ? '' : ' with what stood there'}; formulas follow.` }, subject }
    : { kind: axis === 'rows' ? 'rows inserted' : 'columns inserted', sheet: pair.sheetNow.name, now: place, label, was: NO_SUCH, is: words, accept: { words: beyond ? 'Takes away what stands there.' : `Takes ${what} away; formulas follow.` }, subject }
}

/** `row 7`, `rows 7 to 9`, `columns C to D` */
export function linesLabel(axis: LineAxis, at: number, count: number): string {
  const name = (line: number): string => (axis === 'rows' ? String(line + 1) : columnLetters(line))
  const one = axis === 'rows' ? 'row' : 'column'
  return count === 1 ? `${one} ${name(at)}` : `${one}s ${name(at)} to ${name(at + count - 1)}`
}

const MOST_LISTED = 8
/** A text that says which line it is need not be read to its end. */
const LONGEST = 60

/** Inputs first, each with what it is called; where there is none, what else stands there. */
function heldWords(side: Side, sheet: Sheet, { axis, at, count }: ToldLines, isTaken: (row: number) => boolean): string {
  const [inputs, others]: [string[], string[]] = [[], []]
  let formulas = 0
  for (const key in axis === 'rows' ? sheet.rows.slice(at, at + count) : sheet.rows) {
    const row = axis === 'rows' ? at + Number(key) : Number(key)
    if (axis === 'columns' && isTaken(row)) continue
    for (const column in sheet.rows[row]) {
      const cell = sheet.rows[row]?.[Number(column)]
      if (!cell || (axis === 'columns' && (Number(column) < at || Number(column) >= at + count)) || cell.content === null) continue
      if (isFormula(cell.content)) formulas++
      else if (cell.role === 'input') {
        const place = { row, column: Number(column) }
        // Further ones are counted only.
        inputs.push(inputs.length > MOST_LISTED ? '' : shortened([labelOf(sheet, place), contentWords(cell.content, side.unit(sheet, row, place.column))].filter((one) => one !== undefined).join(' ')))
      } else if (cell.role !== 'unit') others.push(shortened(contentWords(cell.content)))
    }
  }
  // What an input is called need not be said before it.
  const firstInputs = inputs.slice(0, MOST_LISTED)
  const named = inputs.length === 0 ? others : others.slice(0, MOST_LISTED).filter((text) => !firstInputs.some((input) => input.startsWith(text))).slice(0, count)
  const told = [...named, ...inputs]
  return [...(told.length > 0 ? [listed(told, MOST_LISTED)] : []), ...(formulas > 0 ? [counted(formulas, 'formula')] : [])].join('; ')
}

const shortened = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text)
