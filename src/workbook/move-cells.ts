import { areaOf, isOnSheet, printAddress, type Area, type CellAddress, type Corner, type Reference } from './address.ts'
import { isWithin } from './areas.ts'
import { followedPlaces } from './place-following.ts'
import { sheetOf } from './commands.ts'
import { foldCase, type Cell, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import type { CellPlace } from './cell-place.ts'
import { rewriteReferences } from './formula/references.ts'
import { WorkbookProblem } from './problem.ts'
import { rewriteEverywhere, rewrittenCell } from './rewrite.ts'

/** A block of cells as it was when it was taken up. */
export interface Block {
  readonly sheet: string
  readonly area: Area
  readonly cells: readonly (readonly (Cell | undefined)[])[]
}

export function blockOf(workbook: Workbook, sheetName: string, area: Area): Block {
  const { name, rows } = sheetOf(workbook, sheetName)
  const lines = Array.from({ length: area.bottom - area.top + 1 }, (_, row) => rows[area.top + row])
  return { sheet: name, area, cells: lines.map((line) => Array.from({ length: area.right - area.left + 1 }, (_, column) => line?.[area.left + column])) }
}

/**
 * Puts a block elsewhere, on any sheet. Formulas in it go on meaning the cells they meant, and what refers to cells of the block, or to a range
 * that lies in it, follows it. What refers to the place where it lands reads what has landed there.
 */
export function moveCells(workbook: Workbook, block: Block, toSheet: string, to: CellAddress): Edit[] {
  const source = sheetOf(workbook, block.sheet).name
  const target = sheetOf(workbook, toSheet).name
  const { top, left, bottom, right } = block.area
  const [rows, columns] = [to.row - top, to.column - left]
  if (!isOnSheet(bottom + rows, right + columns) || !isOnSheet(to.row, to.column)) {
    throw new WorkbookProblem(`sheet "${target}": a block of ${bottom - top + 1} rows and ${right - left + 1} columns does not fit at ${printAddress(to.row, to.column)}; accepted: a place that leaves room for it`)
  }
  if (source === target && rows === 0 && columns === 0) return [{ kind: 'cells', sheet: target, cells: blockChanges(block, 0, 0) }]

  const isSource = (name: string | null): boolean => name !== null && foldCase(name) === foldCase(source)
  const followed = (reference: Reference): Reference => ({
    ...reference,
    from: movedCorner(reference.from, rows, columns),
    to: reference.to && movedCorner(reference.to, rows, columns),
  })
  /** @param host where the reference is written, @param newHost where it is written by then */
  const change = (reference: Reference, host: string | null, newHost: string | null): Reference => {
    const meant = reference.sheet ?? host
    const moves = isSource(meant) && isWithin(areaOf(reference), block.area)
    const after = moves ? followed(reference) : reference
    const means = moves ? target : meant
    // A reference without a sheet keeps to its form where it can.
    if (reference.sheet === null && means === newHost) return after
    return means === reference.sheet ? after : { ...after, sheet: means }
  }

  const inBlock = (name: string, row: number, column: number): boolean => name === source && row >= top && row <= bottom && column >= left && column <= right
  const landsOn = (name: string, row: number, column: number): boolean => name === target && inBlock(source, row - rows, column - columns)
  const others = rewriteEverywhere(workbook, (reference, host) => change(reference, host, host), (name, row, column) => (inBlock(name, row, column) || landsOn(name, row, column) ? undefined : { row, column }))
  const moved = blockChanges(block, rows, columns).map(({ cell, ...at }) => ({ ...at, cell: cell && rewrittenCell(cell, (reference) => change(reference, source, target)) }))
  const vacated = blockChanges(block, 0, 0).map(({ row, column }) => ({ row, column, cell: null }))
  return [...others, { kind: 'cells', sheet: source, cells: vacated }, { kind: 'cells', sheet: target, cells: moved }, ...besideSheets()]

  /** What cases have in cells of the block goes with them, and so do tolerances and check marks; what there was of the cells that it lands on is gone with those. */
  function besideSheets(): Edit[] {
    const landed = ({ sheet, row, column }: CellPlace): CellPlace => (inBlock(sheet, row, column) ? { sheet: target, row: row + rows, column: column + columns } : { sheet, row, column })
    const rewritten = (formula: string, { sheet, row, column }: CellPlace): string =>
      rewriteReferences(formula, (reference) => change(reference, sheet, inBlock(sheet, row, column) ? target : sheet))
    const isOverwritten = ({ sheet, row, column }: CellPlace): boolean => landsOn(sheet, row, column) && !inBlock(sheet, row, column)
    return followedPlaces(workbook, { place: (place) => (isOverwritten(place) ? null : landed(place)), formula: rewritten, reference: (reference) => change(reference, null, null), compared: landed })
  }
}

const blockChanges = ({ area, cells }: Block, rows: number, columns: number): CellChange[] =>
  cells.flatMap((line, row) => line.map((cell, column) => ({ row: area.top + row + rows, column: area.left + column + columns, cell: cell ?? null })))

const movedCorner = (corner: Corner, rows: number, columns: number): Corner => ({
  ...corner,
  row: corner.row === null ? null : corner.row + rows,
  column: corner.column === null ? null : corner.column + columns,
})
