import type { Corner, Reference } from '../../workbook/address.ts'
import { followPlaces } from '../../workbook/place-following.ts'
import { eachCell } from '../../workbook/cells.ts'
import { emptied, sheetOf } from '../../workbook/commands.ts'
import { foldCase, isFormula, type Cell, type CellContent, type Sheet, type Workbook } from '../../workbook/document.ts'
import { applyEdits, type CellChange, type Edit } from '../../workbook/edits.ts'
import { shifter } from '../../workbook/formula/references.ts'
import { MAX_ROWS } from '../../workbook/limits.ts'
import { insertLinesInParts, type LinesPart } from '../../workbook/line-commands.ts'
import { WorkbookProblem } from '../../workbook/problem.ts'
import { rewriteOutsideCells, rewrittenCell } from '../../workbook/rewrite.ts'
import type { ColumnModel, WorkbookList } from './list.ts'

/** For each of the list's columns what the cell is to hold. */
export type NewRow = readonly CellContent[]

/** Which rows of the list's sheet a number of new ones comes to, once they are appended. */
export function rowsAppended(list: WorkbookList, count: number): readonly number[] {
  const free = freeRowsToUse(list).slice(0, count)
  return [...free, ...Array.from({ length: count - free.length }, (_, index) => list.lastRow + 1 + index)]
}

/** {@link appendRowsInParts} at once. */
export const appendRows = (workbook: Workbook, list: WorkbookList, rows: readonly NewRow[]): Edit[] =>
  [...appendRowsInParts(workbook, list, rows)].flatMap(({ edits }) => [...edits])

/**
 * Fills the free rows at the end of a list, then opens new ones below it. Formulas, roles and formats are those of the rows there are. What
 * sums the list, looks something up in it or shows it in a figure takes the new rows in; all other references follow their cells.
 */
export function* appendRowsInParts(workbook: Workbook, list: WorkbookList, rows: readonly NewRow[]): Generator<LinesPart> {
  if (rows.length === 0) return
  const free = freeRowsToUse(list)
  const more = rows.length - free.length
  if (list.lastRow + 1 + more > MAX_ROWS) throw new WorkbookProblem(`sheet "${list.sheet}": ${rows.length} more rows do not fit; accepted: up to ${MAX_ROWS - list.lastRow - 1 + free.length}`)
  const steps: Edit[] = []
  if (more > 0) {
    for (const { edits, share } of insertLinesInParts(workbook, list.sheet, { axis: 'rows', at: list.lastRow + 1, count: more })) {
      steps.push(...edits)
      yield { edits, share: share * INSERTED }
    }
  }
  const opened = steps.length === 0 ? workbook : applyEdits(workbook, steps).workbook
  const places = rowsAppended(list, rows.length)
  const growing = growingRanges(opened, list, places.at(-1) ?? list.lastRow)
  yield { edits: growing, share: GROWN }

  const make = rowMaker(sheetOf(applyEdits(opened, growing).workbook, list.sheet), list)
  for (let first = 0; first < places.length; first += ROWS_IN_PART) {
    const cells = places.slice(first, first + ROWS_IN_PART).flatMap((row, index) => make(row, rows[first + index] ?? []))
    yield { edits: [{ kind: 'cells', sheet: list.sheet, cells }], share: GROWN + (1 - GROWN) * Math.min(1, (first + ROWS_IN_PART) / places.length) }
  }
}

/** Shares of the time, roughly. */
const [INSERTED, GROWN] = [0.4, 0.6]
/** Rows that are filled at a time: some milliseconds. */
const ROWS_IN_PART = 500

/** Free rows below everything that is filled in, so that new rows stay together and in their order. */
const freeRowsToUse = (list: WorkbookList): readonly number[] => list.freeRows.filter((row) => row > list.lastFilledRow)

/**
 * A range that takes in the whole list, from its first row or further up to its last filled one, reaches to the last new one. Formulas of the
 * list's own rows grow only where their end is fixed: a running sum stays one.
 */
function growingRanges(workbook: Workbook, list: WorkbookList, lastRow: number): Edit[] {
  const inCells = workbook.sheets.flatMap((host): Edit[] => {
    const cells: CellChange[] = []
    const isHere = foldCase(host.name) === foldCase(list.sheet)
    eachCell(host, (cell, row, column) => {
      if (!isFormula(cell.content) || !cell.content.includes(':') || !(isHere || cell.content.includes('!'))) return
      const isItem = isHere && row >= list.firstRow && row <= list.lastRow
      const changed = rewrittenCell(cell, (reference) => grown(list, lastRow, reference, host.name, isItem))
      if (changed !== cell) cells.push({ row, column, cell: changed })
    })
    return cells.length > 0 ? [{ kind: 'cells', sheet: host.name, cells }] : []
  })
  const outside = (reference: Reference, host: string | null) => grown(list, lastRow, reference, host, false)
  return [...inCells, ...rewriteOutsideCells(workbook, (reference) => outside(reference, null)), ...followPlaces(workbook, outside)]
}

function grown(list: WorkbookList, lastRow: number, reference: Reference, host: string | null, isItem: boolean): Reference {
  const sheet = reference.sheet ?? host
  const { from, to } = reference
  if (sheet === null || to === null || from.row === null || to.row === null || foldCase(sheet) !== foldCase(list.sheet)) return reference
  const [top, end, endRow] = from.row <= to.row ? [from.row, to, to.row] : [to.row, from, from.row]
  if (top > list.firstRow || endRow < Math.max(list.lastFilledRow, list.firstRow) || endRow >= lastRow) return reference
  if (isItem && !end.rowAbsolute) return reference
  // Cells side by side in the only row of a list are no column of it.
  if (top === endRow && from.column !== to.column) return reference
  const longer: Corner = { ...end, row: lastRow }
  return end === to ? { ...reference, to: longer } : { ...reference, from: longer }
}

/** Makes the cells of a new row. */
function rowMaker(sheet: Sheet, list: WorkbookList): (row: number, values: NewRow) => CellChange[] {
  const at = new Map(list.columns.map(({ column }, index) => [column, index]))
  const makers = list.models.map((model) => {
    const cell = model.row === undefined ? undefined : sheet.rows[model.row]?.[model.column]
    return { model, make: cellMaker(model, cell), index: at.get(model.column) }
  })
  return (row, values) => makers.flatMap(({ model, make, index }) => {
    const cell = make(row, index === undefined ? null : (values[index] ?? null))
    return cell || sheet.rows[row]?.[model.column] ? [{ row, column: model.column, cell }] : []
  })
}

function cellMaker({ kind, row: modelRow }: ColumnModel, model: Cell | undefined): (row: number, value: CellContent) => Cell | null {
  if (!model || modelRow === undefined) return (_, value) => (value === null ? null : { content: value, role: 'text' })
  const { note: _note, restatedFrom: _restated, ...look } = model
  if (kind === 'formula' && isFormula(model.content)) {
    const shifted = shifter(model.content)
    return (row) => ({ ...look, content: shifted(row - modelRow, 0) })
  }
  if (kind === 'unit') return () => look
  if (kind === 'remark') return (_, value) => (value === null ? null : { ...look, content: value })
  return (_, value) => (value === null ? emptied({ ...look, role: 'input' }) : { ...look, role: 'input', content: value })
}
