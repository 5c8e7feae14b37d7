import type { CellAddress, Reference } from './address.ts'
import { followPlaces } from './place-following.ts'
import { eachCell } from './cells.ts'
import { sheetOf } from './commands.ts'
import { isFormula, type Sheet, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import { deleting, inserting, mayReach, moving, shiftedReference, type LineShift } from './formula/line-references.ts'
import type { LineAxis, Lines } from './line-edits.ts'
import { rewriteOutsideCells, rewrittenCell } from './rewrite.ts'

/** Some of the edits of an action, to be applied one part after another; how much of it is done with them, from 0 to 1. */
export interface LinesPart {
  readonly edits: readonly Edit[]
  readonly share: number
}

/** Opens empty lines; the one at `at` and those after it move on. What refers to the sheet follows. */
export function* insertLinesInParts(workbook: Workbook, sheetName: string, lines: Lines): Generator<LinesPart> {
  const { name: sheet } = sheetOf(workbook, sheetName)
  yield { edits: [{ kind: 'insertLines', sheet, ...lines, follow: true }], share: 0 }
  yield* following(workbook, sheet, lines.axis, lines.at, inserting(lines.axis, lines.at, lines.count), true)
}

/** Takes lines away. A reference whose cells are all gone becomes #REF!; ranges lose what they held of them. */
export function* deleteLinesInParts(workbook: Workbook, sheetName: string, lines: Lines): Generator<LinesPart> {
  const { name: sheet } = sheetOf(workbook, sheetName)
  yield { edits: [{ kind: 'deleteLines', sheet, ...lines, follow: true }], share: 0 }
  yield* following(workbook, sheet, lines.axis, lines.at, deleting(lines.at, lines.count))
}

/** Puts lines elsewhere; `to` is where the first of them is then. What refers to them follows. */
export function* moveLinesInParts(workbook: Workbook, sheetName: string, lines: Lines, to: number): Generator<LinesPart> {
  const { name: sheet } = sheetOf(workbook, sheetName)
  yield { edits: [{ kind: 'moveLines', sheet, ...lines, to }], share: 0 }
  yield* following(workbook, sheet, lines.axis, Math.min(lines.at, to), moving(lines.at, lines.count, to))
}

/** {@link insertLinesInParts} at once. */
export const insertLines = (workbook: Workbook, sheetName: string, lines: Lines): Edit[] => whole(insertLinesInParts(workbook, sheetName, lines))
/** {@link deleteLinesInParts} at once. */
export const deleteLines = (workbook: Workbook, sheetName: string, lines: Lines): Edit[] => whole(deleteLinesInParts(workbook, sheetName, lines))
/** {@link moveLinesInParts} at once. */
export const moveLines = (workbook: Workbook, sheetName: string, lines: Lines, to: number): Edit[] => whole(moveLinesInParts(workbook, sheetName, lines, to))

/** Opens empty lines at several places, each `at` as it is once those before it in the list are open, as `insertLines` one after the other would; what refers to the sheet is rewritten once. */
export const insertLinesAtOnce = (workbook: Workbook, sheetName: string, axis: LineAxis, stretches: readonly Stretch[]): Edit[] =>
  atOnce(workbook, sheetName, 'insertLines', axis, stretches, (at, count) => inserting(axis, at, count))
/** Takes lines away at several places, likewise. */
export const deleteLinesAtOnce = (workbook: Workbook, sheetName: string, axis: LineAxis, stretches: readonly Stretch[]): Edit[] =>
  atOnce(workbook, sheetName, 'deleteLines', axis, stretches, deleting)

type Stretch = Pick<Lines, 'at' | 'count'>

function atOnce(workbook: Workbook, sheetName: string, kind: 'insertLines' | 'deleteLines', axis: LineAxis, stretches: readonly Stretch[], shiftOf: (at: number, count: number) => LineShift): Edit[] {
  if (stretches.length === 0) return []
  const { name: sheet } = sheetOf(workbook, sheetName)
  const shifts = stretches.map(({ at, count }) => shiftOf(at, count))
  const shift: LineShift = (first, last) => shifts.reduce<ReturnType<LineShift>>((lines, one) => lines && one(...lines), [first, last])
  const first = Math.min(...stretches.map(({ at }) => at))
  return [...stretches.map(({ at, count }): Edit => ({ kind, sheet, axis, at, count, follow: true })), ...whole(following(workbook, sheet, axis, first, shift, kind === 'insertLines'))]
}

const whole = (parts: Iterable<LinesPart>): Edit[] => [...parts].flatMap(({ edits }) => edits)

/** What rewrites the references after the lines have moved, from the `first` one on, the cells being where they are by then. */
function* following(workbook: Workbook, sheet: string, axis: LineAxis, first: number, shift: LineShift, keepsTogether = false): Generator<LinesPart> {
  const rows = workbook.sheets.reduce((sum, host) => sum + host.rows.length, 0)
  let passed = 0
  // From another sheet a reference names this one.
  const concerns = (formula: string, home: string): boolean => (home === sheet || formula.includes('!')) && mayReach(formula, axis, first)
  for (const host of workbook.sheets) {
    const here = host.name === sheet
    const rewriting: Rewriting = {
      concerns: (formula) => concerns(formula, host.name),
      change: (reference) => shiftedReference(reference, host.name, sheet, axis, shift),
      place: (row, column) => (here ? placed(axis, shift, row, column) : { row, column }),
    }
    for (let top = 0; top < host.rows.length; top += ROWS_IN_PART) {
      const { shifted, reshaped } = rewriteRows(host, top, axis, rewriting)
      passed += Math.min(ROWS_IN_PART, host.rows.length - top)
      yield {
        share: passed / rows,
        edits: [
          ...(shifted.length > 0 ? [{ kind: 'cells' as const, sheet: host.name, cells: shifted, follow: true as const }] : []),
          ...(reshaped.length > 0 ? [{ kind: 'cells' as const, sheet: host.name, cells: reshaped }] : []),
        ],
      }
    }
  }
  const shifted = (reference: Reference, host: string | null) => shiftedReference(reference, host, sheet, axis, shift)
  yield { edits: [...rewriteOutsideCells(workbook, (reference) => shifted(reference, null)), ...followPlaces(workbook, shifted, { concerns, keepsTogether })], share: 1 }
}

/** Rows that are rewritten at a time: some milliseconds. */
const ROWS_IN_PART = 500

interface Rewriting {
  /** False for a formula in which nothing changes. */
  concerns(formula: string): boolean
  change(reference: Reference): Reference | null
  /** Where a cell is by then. */
  place(row: number, column: number): CellAddress | undefined
}

/**
 * `shifted`: formulas whose references all mean what they meant, only elsewhere, so that moving back gives them as they were.
 * `reshaped`: those with a reference that has lost or won cells.
 */
function rewriteRows(host: Sheet, top: number, axis: LineAxis, { concerns, change, place }: Rewriting): { readonly shifted: CellChange[]; readonly reshaped: CellChange[] } {
  const shifted: CellChange[] = []
  const reshaped: CellChange[] = []
  eachCell({ ...host, rows: host.rows.slice(top, top + ROWS_IN_PART) }, (cell, offset, column) => {
    if (!isFormula(cell.content) || !concerns(cell.content)) return
    let hasNewShape = false
    const changed = rewrittenCell(cell, (reference) => {
      const after = change(reference)
      hasNewShape ||= after === null || extent(after, axis) !== extent(reference, axis)
      return after
    })
    const at = changed === cell ? undefined : place(top + offset, column)
    if (at) (hasNewShape ? reshaped : shifted).push({ ...at, cell: changed })
  })
  return { shifted, reshaped }
}

function extent({ from, to }: Reference, axis: LineAxis): number {
  const end = to ?? from
  return axis === 'rows' ? (end.row ?? 0) - (from.row ?? 0) : (end.column ?? 0) - (from.column ?? 0)
}

/** Undefined for a cell that is gone. */
function placed(axis: LineAxis, shift: LineShift, row: number, column: number): CellAddress | undefined {
  const after = axis === 'rows' ? shift(row, row) : shift(column, column)
  if (after === null) return undefined
  return axis === 'rows' ? { row: after[0], column } : { row, column: after[0] }
}
