import type { Reference } from './address.ts'
import { eachCell } from './cells.ts'
import { isFormula, type Cell, type Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'
import { figureWith, sameFigures } from './figure.ts'
import { rewriteReferences } from './formula/references.ts'

/** What becomes of a reference that is written on the sheet `host`; on no sheet where a defined name stands for it. */
export type ChangeReference = (reference: Reference, host: string | null) => Reference | null

/** The edits that rewrite references in all formulas, defined names and figures; `at` says which cells, and where they are to be found by then. */
export function rewriteEverywhere(
  workbook: Workbook, change: ChangeReference,
  at: (sheet: string, row: number, column: number) => { readonly row: number; readonly column: number } | undefined = (_, row, column) => ({ row, column }),
): Edit[] {
  const inCells = workbook.sheets.flatMap(({ name, ...sheet }): Edit[] => {
    const cells: CellChange[] = []
    eachCell({ name, ...sheet }, (cell, row, column) => {
      const changed = rewrittenCell(cell, (reference) => change(reference, name))
      const place = changed === cell ? undefined : at(name, row, column)
      if (place) cells.push({ ...place, cell: changed })
    })
    return cells.length > 0 ? [{ kind: 'cells', sheet: name, cells }] : []
  })
  return [...inCells, ...rewriteOutsideCells(workbook, (reference) => change(reference, null))]
}

/** In defined names and in figures. */
export function rewriteOutsideCells({ names, figures }: Workbook, change: (reference: Reference) => Reference | null): Edit[] {
  const inNames = [...names].flatMap(([name, before]): Edit[] => {
    const refersTo = rewriteReferences(before, change)
    return refersTo === before ? [] : [{ kind: 'name', name, refersTo }]
  })
  const rewritten = figures.map((figure) => figureWith(figure, (text) => rewriteReferences(text, change)))
  return sameFigures(figures, rewritten) ? inNames : [...inNames, { kind: 'figures', figures: rewritten }]
}

/** The same cell if nothing becomes of its references. */
export function rewrittenCell(cell: Cell, change: (reference: Reference) => Reference | null): Cell {
  if (!isFormula(cell.content)) return cell
  const content = rewriteReferences(cell.content, change)
  return content === cell.content ? cell : { ...cell, content }
}
