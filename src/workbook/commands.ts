import { findUnit } from '../../functions/units/units.ts'
import { printAddress, type CellAddress } from './address.ts'
import { removeSheetFromPlaces, renameSheetInPlaces } from './place-following.ts'
import { eachCell } from './cells.ts'
import { foldCase, isFormula, sheetByName, type Cell, type CellContent, type Role, type Sheet, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import { contentOf } from './entry.ts'
import { figureWith, sameFigures, type Figure } from './figure.ts'
import { renameSheetInFormula } from './formula/references.ts'
import { WorkbookProblem } from './problem.ts'

/** A cell and those it stands for: `to` is the opposite corner, left out for one cell. */
export interface CellRange {
  readonly from: CellAddress
  readonly to?: CellAddress
}

/** Gives a sheet another name, in every formula, defined name and figure that refers to it too. */
export function renameSheet(workbook: Workbook, from: string, to: string): Edit[] {
  const named = sheetOf(workbook, from)
  const inCells = workbook.sheets.flatMap((sheet): Edit[] => {
    const cells: CellChange[] = []
    eachCell(sheet, (cell, row, column) => {
      if (!isFormula(cell.content)) return
      const content = renameSheetInFormula(cell.content, named.name, to)
      if (content !== cell.content) cells.push({ row, column, cell: { ...cell, content } })
    })
    return cells.length > 0 ? [{ kind: 'cells', sheet: sheet.name, cells }] : []
  })
  const inNames = [...workbook.names].flatMap(([name, before]): Edit[] => {
    const refersTo = renameSheetInFormula(before, named.name, to)
    return refersTo === before ? [] : [{ kind: 'name', name, refersTo }]
  })
  const figures = workbook.figures.map((figure) => inRenamedSheet(figure, named.name, to))
  const inFigures: Edit[] = sameFigures(workbook.figures, figures) ? [] : [{ kind: 'figures', figures }]
  return [...inCells, ...inNames, ...inFigures, ...renameSheetInPlaces(workbook, named.name, to), { kind: 'renameSheet', sheet: named.name, name: to }]
}

function inRenamedSheet(figure: Figure, from: string, to: string): Figure {
  const renamed = figureWith(figure, (reference) => renameSheetInFormula(reference, from, to))
  return figure.sheet !== undefined && foldCase(figure.sheet) === foldCase(from) ? { ...renamed, sheet: to } : renamed
}

/**
 * Takes a sheet away. Formulas, names and figures that refer to it stay as written: they show that their sheet is missing,
 * and find it again when a sheet of that name comes back. What cases have in its cells goes with it, and so do tolerances.
 */
export function removeSheet(workbook: Workbook, name: string): Edit[] {
  const { name: named } = sheetOf(workbook, name)
  return [{ kind: 'removeSheet', sheet: named }, ...removeSheetFromPlaces(workbook, named)]
}

/** What was typed into a cell. Role, format and note stay; a cell that is new gets the role that its content suggests. */
export function setEntry(workbook: Workbook, sheetName: string, at: CellAddress, typed: string): Edit[] {
  const content = contentOf(typed)
  if (content === null) return clear(workbook, sheetName, { from: at })
  const sheet = sheetOf(workbook, sheetName)
  const before = sheet.rows[at.row]?.[at.column]
  const cell = before ? withContent(before, content) : { content, role: suggestedRole(sheet, at, content) }
  return [cellsEdit(sheet, [{ ...at, cell }])]
}

/** Empties cells. An input or a check stays as an empty place to fill in, and so does a cell with a note; others go. */
export function clear(workbook: Workbook, sheetName: string, range: CellRange): Edit[] {
  return changeCells(workbook, sheetName, range, emptied)
}

/** What is left of a cell without its content. */
export function emptied(cell: Cell): Cell | null {
  const kept = cell.role === 'input' || cell.role === 'check' || cell.note !== undefined
  return kept ? withContent(cell, null) : null
}

/** Gives cells a role; an empty cell becomes a place to fill in. */
export function setRole(workbook: Workbook, sheetName: string, range: CellRange, role: Role): Edit[] {
  return changeCells(workbook, sheetName, range, (cell) => ({ ...cell, role }), { content: null, role })
}

/** Puts a unit beside a value, in the cell on its right. The value stays as it is; nothing is converted. */
export function setUnit(workbook: Workbook, sheetName: string, valueAt: CellAddress, unit: string): Edit[] {
  const sheet = sheetOf(workbook, sheetName)
  const at = { row: valueAt.row, column: valueAt.column + 1 }
  const before = sheet.rows[at.row]?.[at.column]
  if (before && before.content !== null && before.role !== 'unit') {
    throw new WorkbookProblem(
      `sheet "${sheet.name}", cell ${printAddress(at.row, at.column)}: the unit of ${printAddress(valueAt.row, valueAt.column)} would stand here, but the cell holds a ${before.role}; accepted: an empty cell or a unit`,
    )
  }
  return [cellsEdit(sheet, [{ ...at, cell: { ...withContent(before ?? { content: null, role: 'unit' }, unit), role: 'unit' } }])]
}

/** What a unit was restated from is forgotten once its content is another. */
export function withContent(cell: Cell, content: CellContent): Cell {
  const { restatedFrom, ...rest } = cell
  return restatedFrom !== undefined && content === cell.content ? cell : { ...rest, content }
}

/** The role of a new cell. `left` is what is to stand on its left, where that is not what stands there now. */
export function suggestedRole(sheet: Sheet, at: CellAddress, content: CellContent, left = sheet.rows[at.row]?.[at.column - 1]?.content): Role {
  if (isFormula(content)) return 'result'
  if (typeof content !== 'string') return 'input'
  const besideValue = typeof left === 'number' || isFormula(left)
  return besideValue && findUnit(content) ? 'unit' : 'label'
}

/** `change` makes the new cell of each one there is; `empty` is what the others become, if anything. */
export function changeCells(workbook: Workbook, sheetName: string, { from, to = from }: CellRange, change: (cell: Cell) => Cell | null, empty?: Cell): Edit[] {
  const sheet = sheetOf(workbook, sheetName)
  const cells: CellChange[] = []
  const bottom = empty ? Math.max(from.row, to.row) : Math.min(Math.max(from.row, to.row), sheet.rows.length - 1)
  const right = Math.max(from.column, to.column)
  for (let row = Math.min(from.row, to.row); row <= bottom; row++) {
    for (let column = Math.min(from.column, to.column); column <= right; column++) {
      const before = sheet.rows[row]?.[column]
      if (before) cells.push({ row, column, cell: change(before) })
      else if (empty) cells.push({ row, column, cell: empty })
    }
  }
  return [cellsEdit(sheet, cells)]
}

function cellsEdit(sheet: Sheet, cells: readonly CellChange[]): Edit {
  return { kind: 'cells', sheet: sheet.name, cells }
}

export function sheetOf(workbook: Workbook, name: string): Sheet {
  const sheet = sheetByName(workbook, name)
  if (!sheet) throw new WorkbookProblem(`there is no sheet "${name}"; there are ${workbook.sheets.map((one) => `"${one.name}"`).join(', ')}`)
  return sheet
}
