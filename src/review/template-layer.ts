import { areaOf, type Corner, type Reference } from '../workbook/address.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { foldCase, type Sheet, type Workbook } from '../workbook/document.ts'
import { rewriteReferences } from '../workbook/formula/references.ts'
import { MAX_COLUMNS, MAX_ROWS } from '../workbook/limits.ts'
import { settleRows } from './settle-rows.ts'
import { SheetLayer, type SheetPair } from './sheet-layer.ts'
import type { TemplateMatch } from './template-match.ts'

export interface TemplateLayer extends TemplateMatch {
  /** Sheets that have as many rows as the template’s, where yet some of them seem to be others. */
  readonly shifted: readonly Sheet[]
}

/**
 * A template laid over a workbook, its formulas in the layout of the workbook.
 * @param inPlace sheets of which each row is taken for the one of its number, whatever it is like
 */
export function templateLayer(template: Workbook, pairs: readonly SheetPair[], inPlace: ReadonlySet<Sheet> = new Set()): TemplateLayer {
  const layers = pairs.map((pair) => new SheetLayer(pair, inPlace.has(pair.sheet)))
  const bySheet = new Map(layers.map((layer) => [layer.pair.sheet.name, layer] as const))
  const byTemplate = new Map(layers.map((layer) => [foldCase(layer.pair.template.name), layer] as const))
  for (const layer of layers) layer.rewrite = (formula) => rewriteReferences(formula, (reference) => inLayout(reference, layer, byTemplate))
  settleRows(layers)
  return {
    title: template.title,
    names: new Map([...template.names].map(([name, refersTo]) => [name, rewriteReferences(refersTo, (reference) => (reference.sheet === null ? reference : inLayout(reference, undefined, byTemplate)))])),
    cell: ({ sheet, row, column }: CellPlace) => bySheet.get(sheet)?.cell(row, column),
    shifted: layers.filter(({ isShifted }) => isShifted).map(({ pair }) => pair.sheet),
  }
}

function inLayout(reference: Reference, home: SheetLayer | undefined, layers: ReadonlyMap<string, SheetLayer>): Reference | null {
  const layer = reference.sheet === null ? home : layers.get(foldCase(reference.sheet))
  if (layer === undefined) return reference
  const { top, bottom, left, right } = areaOf(reference)
  const isWholeRows = bottom === MAX_ROWS - 1
  const isWholeColumns = right === MAX_COLUMNS - 1
  const rows = isWholeRows ? ([top, bottom] as const) : layer.rows.toWorkbook(top, bottom)
  const columns = isWholeColumns ? ([left, right] as const) : layer.columns.toWorkbook(left, right)
  if (rows === null || columns === null) return null
  const corner = (before: Corner, row: number, column: number): Corner => ({ ...before, row: before.row === null ? null : row, column: before.column === null ? null : column })
  return {
    sheet: reference.sheet === null ? null : layer.pair.sheet.name,
    from: corner(reference.from, rows[0], columns[0]), to: reference.to && corner(reference.to, rows[1], columns[1]),
  }
}
