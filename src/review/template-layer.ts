import { areaOf, type Corner, type Reference } from '../workbook/address.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { foldCase, isFormula, usedRange, type Cell, type Sheet, type Workbook } from '../workbook/document.ts'
import { rewriteReferences, shifter } from '../workbook/formula/references.ts'
import { MAX_COLUMNS, MAX_ROWS } from '../workbook/limits.ts'
import { alignRows } from '../workbook/row-alignment.ts'
import { lineMap, type LineMap } from './line-map.ts'
import { columnsToAlign, rowsToAlign } from './sheet-outline.ts'
import { sameFormula } from './plain-formula.ts'
import type { TemplateMatch } from './template-match.ts'

/** A sheet of a workbook, and the one of the template that it is. */
export interface SheetPair {
  readonly sheet: Sheet
  readonly template: Sheet
}

/** A template laid over a workbook, its formulas in the layout of the workbook. */
export function templateLayer(template: Workbook, pairs: readonly SheetPair[]): TemplateMatch {
  const layers = pairs.map((pair) => new SheetLayer(pair))
  const bySheet = new Map(layers.map((layer) => [layer.pair.sheet.name, layer] as const))
  const byTemplate = new Map(layers.map((layer) => [foldCase(layer.pair.template.name), layer] as const))
  for (const layer of layers) layer.rewrite = (formula) => rewriteReferences(formula, (reference) => inLayout(reference, layer, byTemplate))
  return {
    title: template.title,
    cell: ({ sheet, row, column }: CellPlace) => bySheet.get(sheet)?.cell(row, column),
  }
}

function inLayout(reference: Reference, home: SheetLayer, layers: ReadonlyMap<string, SheetLayer>): Reference | null {
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

class SheetLayer {
  readonly pair: SheetPair
  readonly rows: LineMap
  readonly columns: LineMap
  /** A formula of the template with its references as they are in the workbook; set once all sheets are aligned. */
  rewrite: (formula: string) => string = (formula) => formula
  /** Of the rows that both have, by row and column. */
  readonly #cells = new Map<number, Cell | undefined>()
  readonly #filled = new Map<number, ReadonlyMap<number, Cell>>()
  readonly #models = new Map<string, ReadonlyMap<number, Model>>()

  constructor(pair: SheetPair) {
    this.pair = pair
    const { sheet, template } = pair
    const used = usedRange(template)
    this.columns = lineMap(alignRows(columnsToAlign(template), columnsToAlign(sheet)), used.columns)
    this.rows = lineMap(alignRows(rowsToAlign(template, (column) => column), rowsToAlign(sheet, (column) => this.columns.toTemplate(column))), used.rows)
  }

  cell(row: number, column: number): Cell | undefined {
    return this.rows.toTemplate(row) === undefined ? this.#filledRow(row).get(column) : this.#known(row, column)
  }

  #known(row: number, column: number): Cell | undefined {
    const key = row * MAX_COLUMNS + column
    if (this.#cells.has(key)) return this.#cells.get(key)
    const [templateRow, templateColumn] = [this.rows.toTemplate(row), this.columns.toTemplate(column)]
    const cell = templateRow === undefined || templateColumn === undefined ? undefined : this.pair.template.rows[templateRow]?.[templateColumn]
    const rewritten = cell && isFormula(cell.content) ? { ...cell, content: this.rewrite(cell.content) } : cell
    this.#cells.set(key, rewritten)
    return rewritten
  }

  /** What a row that the template does not have would hold if it were filled from its neighbours: where most of its formulas are there, it was. */
  #filledRow(row: number): ReadonlyMap<number, Cell> {
    const known = this.#filled.get(row)
    if (known !== undefined) return known
    const cells = new Map<number, Cell>()
    let there = 0
    for (const [column, { at, cell, moved }] of this.#modelsFor(row)) {
      cells.set(column, { ...cell, content: moved(row - at, 0) })
      if (isFormula(this.pair.sheet.rows[row]?.[column]?.content)) there++
    }
    const filled = there * 2 >= cells.size ? cells : new Map<number, Cell>()
    this.#filled.set(row, filled)
    return filled
  }

  /** The formulas that the rows around a row agree in: those that both have and that lie nearest, two of them. */
  #modelsFor(row: number): ReadonlyMap<number, Model> {
    const above = this.rows.nearest(row, -1)
    const below = this.rows.nearest(row, 1)
    const key = `${above}:${below}`
    const known = this.#models.get(key)
    if (known !== undefined) return known
    const further = [above === undefined ? undefined : this.rows.nearest(above - 1, -1), below === undefined ? undefined : this.rows.nearest(below + 1, 1)]
    const models = new Map<number, Model>()
    const width = Math.max(0, ...[above, below].map((at) => (at === undefined ? 0 : (this.pair.sheet.rows[at]?.length ?? 0))))
    for (let column = 0; column < width; column++) {
      const model = this.#agreeing(above, below, column) ?? this.#agreeing(above, further[0], column) ?? this.#agreeing(below, further[1], column)
      if (model) models.set(column, model)
    }
    this.#models.set(key, models)
    return models
  }

  #agreeing(one: number | undefined, other: number | undefined, column: number): Model | undefined {
    const [first, second] = [one, other].map((row) => (row === undefined ? undefined : this.#known(row, column)))
    if (one === undefined || other === undefined || !first || !second || !isFormula(first.content) || !isFormula(second.content)) return undefined
    const moved = shifter(first.content)
    return sameFormula(moved(other - one, 0), second.content, this.pair.sheet.name) ? { at: one, cell: first, moved } : undefined
  }
}

/** A formula of a row that new rows were filled from. */
interface Model {
  readonly at: number
  readonly cell: Cell
  readonly moved: (rows: number, columns: number) => string
}
