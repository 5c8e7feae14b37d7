import type { CellAddress } from '../../workbook/address.ts'
import { foldCase, type Sheet, type Workbook } from '../../workbook/document.ts'
import { eachCell } from '../../workbook/cells.ts'
import { rowDifferences } from './cell-differences.ts'
import type { Found } from './found.ts'
import { inLines, lineDifference, toldLines } from './line-differences.ts'
import { forward, mirrored } from './line-map.ts'
import type { PairedSheets, Sides } from './sides.ts'
import { contentWords, counted, GONE, listed, NO_SUCH } from './words.ts'

/** All that differs on a sheet that both have, in the order of reading. */
export function sheetDifferences(sides: Sides, pair: PairedSheets, report: (share: number) => void = () => undefined): Found[] {
  const found: Placed[] = []
  const told = toldLines(pair)
  const [goneBefore, newNow] = [inLines(told, 'before'), inLines(told, 'now')]
  for (const lines of told) {
    const difference = lineDifference(sides, pair, lines, lines.side === 'before' ? goneBefore : newNow)
    const at = lines.side === 'now' ? lines.at : lines.other
    found.push({ difference, at: lines.axis === 'rows' ? { row: at, column: -1 } : { row: -1, column: at } })
  }
  const columns = columnPairs(pair, inLines(told, 'before', 'columns'), inLines(told, 'now', 'columns'))
  const [there, back] = [forward(pair.rows), forward(mirrored(pair.rows))]
  const total = Math.max(1, pair.sheetNow.rows.length + pair.sheetBefore.rows.length)
  let done = 0
  const compare = (before: number, now: number): void => {
    for (const difference of rowDifferences(sides, pair, { before, now }, columns)) {
      const gone = difference.now === undefined && difference.before !== undefined
      const column = gone ? columns.find((one) => one.before === difference.before?.column)?.now : difference.now?.column
      found.push({ difference, at: { row: now, column: column ?? 0 } })
    }
  }
  for (const key in pair.sheetBefore.rows) {
    const row = Number(key)
    const now = pair.sheetBefore.rows[row] === undefined || goneBefore(row) ? undefined : there.line(row)
    if (now !== undefined) compare(row, now)
    if (++done % ROWS_BETWEEN_REPORTS === 0) report(done / total)
  }
  for (const key in pair.sheetNow.rows) {
    const row = Number(key)
    const before = pair.sheetNow.rows[row] === undefined || newNow(row) ? undefined : back.line(row)
    if (before !== undefined && pair.sheetBefore.rows[before] === undefined) compare(before, row)
    if (++done % ROWS_BETWEEN_REPORTS === 0) report(done / total)
  }
  return found.toSorted((one, other) => one.at.row - other.at.row || one.at.column - other.at.column).map(({ difference }) => difference)
}

const ROWS_BETWEEN_REPORTS = 250

interface Placed {
  readonly difference: Found
  /** By where it is now, or would be. */
  readonly at: CellAddress
}

/** The columns in which anything stands on either side and that are the same column. */
function columnPairs(pair: PairedSheets, isGone: (column: number) => boolean, isNew: (column: number) => boolean): { readonly before: number; readonly now: number }[] {
  const [there, back] = [forward(pair.columns), forward(mirrored(pair.columns))]
  const found = new Map<number, number>()
  for (const column of columnsIn(pair.sheetBefore)) {
    const now = isGone(column) ? undefined : there.line(column)
    if (now !== undefined) found.set(now, column)
  }
  for (const column of columnsIn(pair.sheetNow)) {
    const before = isNew(column) ? undefined : back.line(column)
    if (before !== undefined) found.set(column, before)
  }
  return [...found].map(([now, before]) => ({ before, now })).toSorted((one, other) => one.now - other.now)
}

function columnsIn(sheet: Sheet): ReadonlySet<number> {
  const columns = new Set<number>()
  eachCell(sheet, (_, __, column) => void columns.add(column))
  return columns
}

/** A sheet under another name. */
export const sheetRenamed = ({ before, now }: PairedSheets): Found[] =>
  before === now ? [] : [{ kind: 'sheet renamed', sheet: now, label: undefined, was: before, is: now, accept: { words: `Calls the sheet ${before} again, in every formula as well.` }, subject: { of: 'sheet', name: now } }]

export const sheetAdded = (sheet: Sheet, isOnly: boolean): Found => ({
  kind: 'sheet added', sheet: sheet.name, label: undefined, was: NO_SUCH, is: sheetWords(sheet),
  accept: isOnly ? { refused: 'A workbook keeps at least one sheet: put another one back first.' } : { words: 'Takes the sheet away; formulas that refer to it show that it is missing.' }, subject: { of: 'sheet', name: sheet.name },
})

export const sheetGone = (sheet: Sheet): Found => ({
  kind: 'sheet gone', sheet: sheet.name, label: undefined, was: sheetWords(sheet), is: GONE, accept: { words: 'Puts the sheet back with all that stood on it.' }, subject: { of: 'sheet', name: sheet.name },
})

/** The sheets that both have in another order. */
export function sheetsMoved(before: Workbook, pairs: readonly PairedSheets[]): Found[] {
  const order = new Map(before.sheets.map(({ name }, index) => [foldCase(name), index]))
  const rank = (pair: PairedSheets): number => order.get(foldCase(pair.before)) ?? 0
  const sorted = pairs.toSorted((one, other) => rank(one) - rank(other))
  if (sorted.every((pair, index) => pair === pairs[index])) return []
  return [{
    kind: 'sheets moved', sheet: undefined, label: 'order of the sheets', was: sorted.map(({ now }) => now).join(', '), is: pairs.map(({ now }) => now).join(', '),
    accept: { words: 'Puts the sheets in the order of the other workbook.' }, subject: { of: 'order of sheets' },
  }]
}

function sheetWords(sheet: Sheet): string {
  const inputs: string[] = []
  let cells = 0
  eachCell(sheet, (cell) => {
    if (cell.content === null) return
    cells++
    if (cell.role === 'title' || cell.role === 'heading') inputs.push(contentWords(cell.content))
  })
  return `${counted(cells, 'cell')}${inputs.length === 0 ? '' : `: ${listed(inputs, 4)}`}`
}
