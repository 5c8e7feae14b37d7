import type { CellAddress } from '../workbook/address.ts'
import { isFormula, usedRange, type Cell, type Sheet } from '../workbook/document.ts'
import { shifter } from '../workbook/formula/references.ts'
import { MAX_COLUMNS } from '../workbook/limits.ts'
import { alignRows, type RowRun } from '../workbook/row-alignment.ts'
import { lineMap, type LineMap } from './line-map.ts'
import { sameFormula } from './plain-formula.ts'
import { slidesOf, type Slide } from './row-slides.ts'
import { columnsToAlign, formulaSkeleton, rowsToAlign } from './sheet-outline.ts'

/** A sheet of a workbook, and the one of the template that it is. */
export interface SheetPair {
  readonly sheet: Sheet
  readonly template: Sheet
}

/** A sheet of a template laid over the one of a workbook that it is. */
export class SheetLayer {
  readonly pair: SheetPair
  readonly columns: LineMap
  readonly isShifted: boolean
  runs: readonly RowRun[]
  rows: LineMap
  /** A formula of the template with its references as they are in the workbook; set once all sheets are aligned. */
  rewrite: (formula: string) => string = (formula) => formula
  readonly #lines: number
  readonly #isAlike: (old: number, now: number) => boolean
  /** Of the rows that both have, by row and column. */
  readonly #cells = new Map<number, Cell | undefined>()
  readonly #filled = new Map<number, ReadonlyMap<number, Cell>>()
  readonly #models = new Map<string, ReadonlyMap<number, Model>>()

  constructor(pair: SheetPair, inPlace: boolean) {
    this.pair = pair
    const { sheet, template } = pair
    const used = usedRange(template)
    this.#lines = used.rows
    this.columns = lineMap(alignRows(columnsToAlign(template), columnsToAlign(sheet)), used.columns)
    const [before, after] = [rowsToAlign(template, (column) => column), rowsToAlign(sheet, (column) => this.columns.toTemplate(column))]
    const [olds, nows] = [before, after].map((rows) => new Map(rows.map(({ row, whole }) => [row, whole] as const)))
    this.#isAlike = (old, now) => olds?.get(old) === nows?.get(now)
    this.runs = inPlace ? [] : alignRows(before, after).runs
    this.rows = lineMap({ runs: this.runs }, this.#lines)
    this.isShifted = sheet.rows.length === template.rows.length && this.runs.some(({ old, now }) => old !== now)
  }

  slides = (): readonly Slide[] => slidesOf(this.runs, this.#isAlike)

  setRuns(runs: readonly RowRun[]): void {
    this.runs = runs
    this.rows = lineMap({ runs }, this.#lines)
  }

  /** What was worked out with other rows of this sheet or another. */
  forget(): void {
    this.#cells.clear()
    this.#filled.clear()
    this.#models.clear()
  }

  /** The cells of some rows whose formulas are not those of the template. */
  otherFormulas(first = 0, last = this.pair.sheet.rows.length - 1): CellAddress[] {
    const { rows } = this.pair.sheet
    const found: CellAddress[] = []
    for (let row = first; row <= last; row++) {
      for (const column of rows[row]?.keys() ?? []) if (this.isOther({ row, column })) found.push({ row, column })
    }
    return found
  }

  isOther({ row, column }: CellAddress): boolean {
    const content = this.pair.sheet.rows[row]?.[column]?.content
    if (!isFormula(content)) return false
    const expected = this.cell(row, column)?.content
    return !isFormula(expected) || !sameFormula(expected, content, this.pair.sheet.name)
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

  /** What a row that the template does not have would hold if it were filled from the row above or below, whichever it is like: where most of its formulas are there, it was. */
  #filledRow(row: number): ReadonlyMap<number, Cell> {
    const known = this.#filled.get(row)
    if (known !== undefined) return known
    const [above, below] = [this.#filledFrom(row, -1), this.#filledFrom(row, 1)]
    const best = below.there > above.there ? below : above
    const filled = best.there * 2 >= best.cells.size ? best.cells : new Map<number, Cell>()
    this.#filled.set(row, filled)
    return filled
  }

  #filledFrom(row: number, way: -1 | 1): { readonly cells: ReadonlyMap<number, Cell>; readonly there: number } {
    const cells = new Map<number, Cell>()
    let there = 0
    for (const [column, { at, cell, skeleton, moved }] of this.#modelsFor(row, way)) {
      cells.set(column, { ...cell, content: moved(row - at, 0) })
      const content = this.pair.sheet.rows[row]?.[column]?.content
      if (isFormula(content) && formulaSkeleton(content) === skeleton) there++
    }
    return { cells, there }
  }

  /** The formulas of the nearest row that both have, as far as the next one on either side of it agrees: a row that stands alone is no list. */
  #modelsFor(row: number, way: -1 | 1): ReadonlyMap<number, Model> {
    const [near, other] = [this.rows.nearest(row, way), this.rows.nearest(row, way === 1 ? -1 : 1)]
    const key = `${near}:${other}:${way}`
    const known = this.#models.get(key)
    if (known !== undefined) return known
    const models = new Map<number, Model>()
    const further = near === undefined ? undefined : this.rows.nearest(near + way, way)
    const width = near === undefined ? 0 : (this.pair.sheet.rows[near]?.length ?? 0)
    for (let column = 0; column < width; column++) {
      const model = this.#agreeing(near, other, column) ?? this.#agreeing(near, further, column)
      if (model) models.set(column, model)
    }
    this.#models.set(key, models)
    return models
  }

  #agreeing(one: number | undefined, other: number | undefined, column: number): Model | undefined {
    const [first, second] = [one, other].map((row) => (row === undefined ? undefined : this.#known(row, column)))
    if (one === undefined || other === undefined || !first || !second || !isFormula(first.content) || !isFormula(second.content)) return undefined
    const moved = shifter(first.content)
    return sameFormula(moved(other - one, 0), second.content, this.pair.sheet.name) ? { at: one, cell: first, skeleton: formulaSkeleton(first.content), moved } : undefined
  }
}

/** A formula of a row that new rows were filled from. */
interface Model {
  readonly at: number
  readonly cell: Cell
  readonly skeleton: string
  readonly moved: (rows: number, columns: number) => string
}
