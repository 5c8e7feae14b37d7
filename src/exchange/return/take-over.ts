import { emptied, renameSheet, withContent } from '../../workbook/commands.ts'
import { foldCase, isFormula, sheetByName, type Cell, type CellContent, type Sheet, type Workbook } from '../../workbook/document.ts'
import { applyEdits, type CellChange as CellEdit, type Edit } from '../../workbook/edits.ts'
import { deleteLines, insertLines } from '../../workbook/line-commands.ts'
import { MAX_COLUMNS } from '../../workbook/limits.ts'
import { canBeTaken, isAsked, type Change, type NewCell, type NoteChange } from './changes.ts'
import { rowMaps, withoutShifts } from './layout.ts'
import { newCell } from './new-cell.ts'
import type { RowShift } from './row-shifts.ts'
import { setAsideSheet } from './set-aside.ts'

/** What the user says to the changes of a file. */
export interface Decisions {
  /** Inputs with other values are taken over, all or none. */
  readonly inputs: boolean
  /** Those of the asked changes that are taken over, by their numbers. */
  readonly taken: ReadonlySet<number>
  /** What is not taken over is kept on a sheet of its own. */
  readonly setAside: boolean
}

/** What the step is called that undoes it. */
export const TAKEN_OVER = 'Changes from the file'

/** Whether a change is taken over. */
export const isTaken = (change: Change, { inputs, taken }: Decisions): boolean =>
  change.kind === 'input' ? inputs : isAsked(change) && canBeTaken(change) && taken.has(change.id)

/**
 * The edits that bring what is taken over into the workbook that the file was exported from.
 * @throws WorkbookProblem where what is taken would leave no workbook, such as one without sheets
 */
export function takeOver(workbook: Workbook, changes: readonly Change[], decisions: Decisions): Edit[] {
  const edits: Edit[] = []
  let current = workbook
  const act = (more: readonly Edit[]): void => {
    current = applyEdits(current, more).workbook
    edits.push(...more)
  }
  const taken = changes.filter((change) => isTaken(change, decisions))
  const allShifts = changes.flatMap((change) => (change.kind === 'rowsInserted' || change.kind === 'rowsDeleted' ? [change.shift] : []))
  const shifts = taken.flatMap((change) => (change.kind === 'rowsInserted' || change.kind === 'rowsDeleted' ? [change.shift] : []))
  const left = new Set(allShifts.filter((shift) => !shifts.includes(shift)))
  const here = (content: CellContent, host: string): CellContent => (isFormula(content) ? withoutShifts(content, host, allShifts, left) : content)

  for (const { kind, sheet, at, count } of shifts.toReversed()) {
    act((kind === 'inserted' ? insertLines : deleteLines)(current, sheet, { axis: 'rows', at, count }))
  }
  const maps = rowMaps(shifts)
  const rowNow = (sheet: string, row: number): number | undefined => { const map = maps.get(foldCase(sheet)); return map === undefined ? row : map.after(row) }
  act(workbook.sheets.flatMap(({ name }) => cellEdits(current, name, taken, { here, rowNow, tops: topsOf(shifts) })))

  for (const change of taken) if (change.kind === 'nameChanged' || change.kind === 'nameAdded' || change.kind === 'nameRemoved') act([{ kind: 'name', name: change.name, refersTo: nameHere(change.refersTo, (text) => withoutShifts(text, null, allShifts, left)) }])
  for (const change of taken) if (change.kind === 'sheetsMoved') act(change.order.map((sheet, to) => ({ kind: 'moveSheet', sheet, to })))
  for (const change of taken) if (change.kind === 'sheetAdded') act([{ kind: 'addSheet', at: current.sheets.length, sheet: sheetHere(change.sheet, (content) => here(content, change.sheet.name)) }])
  for (const change of taken) if (change.kind === 'sheetRenamed') act(renameSheet(current, change.sheet, change.name))
  for (const change of taken) if (change.kind === 'sheetRemoved') act([{ kind: 'removeSheet', sheet: change.sheet }])
  const aside = decisions.setAside ? changes.filter((change) => !taken.includes(change)) : []
  if (aside.length > 0) act([{ kind: 'addSheet', at: current.sheets.length, sheet: setAsideSheet(current, aside) }])
  return edits
}

const nameHere = (refersTo: string | null, shift: (text: string) => string): string | null => (refersTo === null ? null : shift(refersTo))

const sheetHere = (sheet: Sheet, here: (content: CellContent) => CellContent): Sheet => ({ ...sheet, rows: sheet.rows.map((row) => row?.map((cell) => cell && { ...cell, content: here(cell.content) })) })

/** The first row of each insertion that is taken, where it is then. */
function topsOf(shifts: readonly RowShift[]): ReadonlyMap<RowShift, number> {
  const moves = new Map<string, number>()
  return new Map(shifts.map((shift) => {
    const { kind, sheet, at, count } = shift
    const before = moves.get(sheet) ?? 0
    moves.set(sheet, before + (kind === 'inserted' ? count : -count))
    return [shift, at + before]
  }))
}

interface Placing {
  readonly here: (content: CellContent, host: string) => CellContent
  readonly rowNow: (sheet: string, row: number) => number | undefined
  readonly tops: ReadonlyMap<RowShift, number>
}

/** All that changes in the cells of a sheet as one edit, the rows being in their places. */
function cellEdits(workbook: Workbook, name: string, taken: readonly Change[], { here, rowNow, tops }: Placing): Edit[] {
  const sheet = sheetByName(workbook, name)
  if (sheet === undefined) return []
  const changed = new Map<number, CellEdit>()
  const cellAt = (row: number, column: number): Cell | undefined => {
    const edit = changed.get(row * MAX_COLUMNS + column)
    return edit === undefined ? sheet.rows[row]?.[column] : (edit.cell ?? undefined)
  }
  const put = (row: number, column: number, cell: Cell | null): void => void changed.set(row * MAX_COLUMNS + column, { row, column, cell })
  const putNew = (cells: readonly NewCell[], top: number): void => {
    for (const cell of cells) {
      const at = { row: top + cell.row, column: cell.column }
      put(at.row, at.column, newCell(sheet, at, { ...cell, content: here(cell.content, name) }, cellAt(top - 1, cell.column)))
    }
  }
  for (const change of taken) {
    if ('shift' in change) {
      if (change.kind === 'rowsInserted' && change.shift.sheet === name) putNew(change.cells, tops.get(change.shift) ?? 0)
      continue
    }
    if (!('row' in change) || change.sheet !== name) continue
    const row = rowNow(name, change.row)
    if (row === undefined) continue
    if (change.kind === 'rowsAdded') putNew(change.cells, row)
    else if (change.kind === 'noteChanged') put(row, change.column, noted(cellAt(row, change.column), change))
    else {
      const before = cellAt(row, change.column)
      const content = here(change.content, name)
      if (content === null) put(row, change.column, before ? emptied(before) : null)
      else put(row, change.column, before ? withContent(before, content) : newCell(sheet, { row, column: change.column }, { row, column: change.column, content }, cellAt(row - 1, change.column)))
    }
  }
  return changed.size === 0 ? [] : [{ kind: 'cells', sheet: name, cells: [...changed.values()].toSorted((one, other) => one.row - other.row || one.column - other.column) }]
}

function noted(cell: Cell | undefined, { note }: NoteChange): Cell | null {
  const { note: _, ...rest } = cell ?? { content: null, role: 'text' as const }
  if (note !== '') return { ...rest, note }
  return rest.content === null && rest.role === 'text' ? null : rest
}
