import type { Reference } from './address.ts'
import { eachCell } from './cells.ts'
import { sheetOf } from './commands.ts'
import { isFormula, type Sheet, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import { deleting, inserting, moving, shiftedReference, type LineShift } from './formula/line-references.ts'
import type { LineAxis, Lines } from './line-edits.ts'
import { rewriteNames, rewrittenCell } from './rewrite.ts'

/** Opens empty lines; the one at `at` and those after it move on. What refers to the sheet follows. */
export function insertLines(workbook: Workbook, sheetName: string, lines: Lines): Edit[] {
  const { name: sheet } = sheetOf(workbook, sheetName)
  return [{ kind: 'insertLines', sheet, ...lines, follow: true }, ...following(workbook, sheet, lines.axis, inserting(lines.axis, lines.at, lines.count))]
}

/** Takes lines away. A reference whose cells are all gone becomes #REF!; ranges lose what they held of them. */
export function deleteLines(workbook: Workbook, sheetName: string, lines: Lines): Edit[] {
  const { name: sheet } = sheetOf(workbook, sheetName)
  return [{ kind: 'deleteLines', sheet, ...lines, follow: true }, ...following(workbook, sheet, lines.axis, deleting(lines.at, lines.count))]
}

/** Puts lines elsewhere; `to` is where the first of them is then. What refers to them follows. */
export function moveLines(workbook: Workbook, sheetName: string, lines: Lines, to: number): Edit[] {
  const { name: sheet } = sheetOf(workbook, sheetName)
  return [{ kind: 'moveLines', sheet, ...lines, to }, ...following(workbook, sheet, lines.axis, moving(lines.at, lines.count, to))]
}

/** What rewrites the references after the lines have moved, the cells being where they are by then. */
function following(workbook: Workbook, sheet: string, axis: LineAxis, shift: LineShift): Edit[] {
  const inCells = workbook.sheets.flatMap((host): Edit[] => {
    const here = host.name === sheet
    const { shifted, reshaped } = rewriteSheet(host, (row, column) => (here ? placed(axis, shift, row, column) : { row, column }), (reference) => shiftedReference(reference, host.name, sheet, axis, shift), axis)
    return [
      ...(shifted.length > 0 ? [{ kind: 'cells' as const, sheet: host.name, cells: shifted, follow: true as const }] : []),
      ...(reshaped.length > 0 ? [{ kind: 'cells' as const, sheet: host.name, cells: reshaped }] : []),
    ]
  })
  return [...inCells, ...rewriteNames(workbook, (reference) => shiftedReference(reference, null, sheet, axis, shift))]
}

/**
 * `shifted`: formulas whose references all mean what they meant, only elsewhere, so that moving back gives them as they were.
 * `reshaped`: those with a reference that has lost or won cells.
 */
function rewriteSheet(
  host: Sheet, place: (row: number, column: number) => { readonly row: number; readonly column: number } | undefined,
  change: (reference: Reference) => Reference | null, axis: LineAxis,
): { readonly shifted: CellChange[]; readonly reshaped: CellChange[] } {
  const shifted: CellChange[] = []
  const reshaped: CellChange[] = []
  eachCell(host, (cell, row, column) => {
    if (!isFormula(cell.content)) return
    let hasNewShape = false
    const changed = rewrittenCell(cell, (reference) => {
      const after = change(reference)
      hasNewShape ||= after === null || extent(after, axis) !== extent(reference, axis)
      return after
    })
    const at = changed === cell ? undefined : place(row, column)
    if (at) (hasNewShape ? reshaped : shifted).push({ ...at, cell: changed })
  })
  return { shifted, reshaped }
}

function extent({ from, to }: Reference, axis: LineAxis): number {
  const end = to ?? from
  return axis === 'rows' ? (end.row ?? 0) - (from.row ?? 0) : (end.column ?? 0) - (from.column ?? 0)
}

/** Undefined for a cell that is gone. */
function placed(axis: LineAxis, shift: LineShift, row: number, column: number): { readonly row: number; readonly column: number } | undefined {
  const after = axis === 'rows' ? shift(row, row) : shift(column, column)
  if (after === null) return undefined
  return axis === 'rows' ? { row: after[0], column } : { row, column: after[0] }
}
