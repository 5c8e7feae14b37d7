import type { Area, CellAddress } from './address.ts'
import { clear, sheetOf, suggestedRole, withContent } from './commands.ts'
import { isFormula, type Cell, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import { contentOf } from './entry.ts'
import { shifter } from './formula/references.ts'

/** Which cells of a selection the others are filled from. */
export type FillWay = 'down' | 'across'

/** The first row, or the first column, of a selection is repeated over the rest of it. */
export function fill(workbook: Workbook, sheetName: string, selection: Area, way: FillWay): Edit[] {
  return fillFrom(workbook, sheetName, firstOf(selection, way), selection)
}

/**
 * Repeats the cells of `source` over all of `target`, outwards from where they stand, whole: with role, format and note, and with the
 * relative parts of references moved along. One edit in reading order, which the calculation takes as a block.
 */
export function fillFrom(workbook: Workbook, sheetName: string, source: Area, target: Area): Edit[] {
  const sheet = sheetOf(workbook, sheetName)
  const [height, width] = [source.bottom - source.top + 1, source.right - source.left + 1]
  const makers = Array.from({ length: height }, (_, row) =>
    Array.from({ length: width }, (__, column) => cellMaker(sheet.rows[source.top + row]?.[source.left + column])))
  const cells: CellChange[] = []
  for (let row = target.top; row <= target.bottom; row++) {
    for (let column = target.left; column <= target.right; column++) {
      const [rowInSource, columnInSource] = [modulo(row - source.top, height), modulo(column - source.left, width)]
      const make = makers[rowInSource]?.[columnInSource]
      cells.push({ row, column, cell: make?.(row - source.top - rowInSource, column - source.left - columnInSource) ?? null })
    }
  }
  return [{ kind: 'cells', sheet: sheet.name, cells }]
}

/** What was typed at one cell goes into all cells of areas, as if it had been typed there; the relative parts of references move along. */
export function enterInAll(workbook: Workbook, sheetName: string, at: CellAddress, areas: readonly Area[], typed: string): Edit[] {
  const content = contentOf(typed)
  if (content === null) return areas.flatMap(({ top, left, bottom, right }) => clear(workbook, sheetName, { from: { row: top, column: left }, to: { row: bottom, column: right } }))
  const sheet = sheetOf(workbook, sheetName)
  const shifted = isFormula(content) ? shifter(content) : () => content
  const cells: CellChange[] = []
  for (const { top, left, bottom, right } of areas) {
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        const before = sheet.rows[row]?.[column]
        const here = shifted(row - at.row, column - at.column)
        cells.push({ row, column, cell: before ? withContent(before, here) : { content: here, role: suggestedRole(sheet, { row, column }, here) } })
      }
    }
  }
  return [{ kind: 'cells', sheet: sheet.name, cells }]
}

/** The rectangle stretched to a cell, in the one direction in which the cell lies furthest outside. */
export function stretchedTo(source: Area, { row, column }: CellAddress): Area {
  const ways = [
    { by: row - source.bottom, area: { ...source, bottom: row } },
    { by: source.top - row, area: { ...source, top: row } },
    { by: column - source.right, area: { ...source, right: column } },
    { by: source.left - column, area: { ...source, left: column } },
  ]
  return ways.reduce((best, way) => (way.by > best.by ? way : best), { by: 0, area: source }).area
}

/** What a cell becomes so many rows and columns further on. */
export function cellMaker(cell: Cell | undefined): (rows: number, columns: number) => Cell | null {
  if (!cell) return () => null
  if (!isFormula(cell.content)) return () => cell
  const shifted = shifter(cell.content)
  return (rows, columns) => (rows === 0 && columns === 0 ? cell : { ...cell, content: shifted(rows, columns) })
}

const firstOf = (selection: Area, way: FillWay): Area =>
  way === 'down' ? { ...selection, bottom: selection.top } : { ...selection, right: selection.left }

const modulo = (number: number, by: number): number => ((number % by) + by) % by
