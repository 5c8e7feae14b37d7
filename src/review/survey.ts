import { isCellError, type AreaValues, type CellValue, type Check } from '../calc/values.ts'
import { areaOf, parseReference, printAddress, type Area, type Reference } from '../workbook/address.ts'
import { eachCell } from '../workbook/cells.ts'
import { isFormula, sheetByName, usedRange, type Cell, type Sheet, type Workbook } from '../workbook/document.ts'
import { namedReference, shiftReferences } from '../workbook/formula/references.ts'
import { referenceExtents, tokenise } from '../workbook/formula/tokenise.ts'
import { formulaTree, type FormulaNode } from '../workbook/formula/tree.ts'
import { unitFinder } from '../workbook/unit-scope.ts'
import type { TemplateMatch } from './template-match.ts'

/** A cell with a formula. */
export interface FormulaCell {
  readonly sheet: Sheet
  readonly row: number
  readonly column: number
  readonly cell: Cell
  readonly formula: string
}

/** Cells of a sheet that a formula refers to, as far as the sheet is filled. */
export interface Referred {
  readonly sheet: Sheet
  readonly area: Area
}

/**
 * A workbook with its values, as findings look at it: what stands where, what feeds what. No engine: it is made of what the calculation hands over.
 * What takes a walk through all formulas is found once, when first asked for.
 */
export class Survey {
  readonly workbook: Workbook
  /** The template that the workbook came from, by its likeness; undefined where it is like none. */
  readonly template: TemplateMatch | undefined
  readonly #areas: ReadonlyMap<string, AreaValues>
  readonly #trees = new Map<string, FormulaNode | undefined>()
  readonly #units = new Map<Sheet, Map<number, string | undefined>>()
  readonly #unitFinders = new Map<Sheet, ReturnType<typeof unitFinder>>()
  readonly #ranges = new Map<Sheet, ReturnType<typeof usedRange>>()
  #anyName: RegExp | undefined
  #formulas: readonly FormulaCell[] | undefined
  #used: ReadonlyMap<Sheet, Uint8Array> | undefined

  /** @param areas by sheet name, every value from A1 */
  constructor(workbook: Workbook, areas: ReadonlyMap<string, AreaValues>, template?: TemplateMatch) {
    this.workbook = workbook
    this.template = template
    this.#areas = areas
  }

  value(sheet: string, row: number, column: number): CellValue {
    return this.#areas.get(sheet)?.values[row]?.[column] ?? null
  }

  check(sheet: string, row: number, column: number): Check | undefined {
    return this.#areas.get(sheet)?.checks.get(printAddress(row, column))
  }

  /** The text of the unit cell that applies to a cell, beside it or over it; undefined where there is none, or none to be read. */
  unit(sheet: Sheet, row: number, column: number): string | undefined {
    const known = this.#units.get(sheet) ?? new Map<number, string | undefined>()
    this.#units.set(sheet, known)
    const key = row * COLUMNS + column
    if (known.has(key)) return known.get(key)
    const find = this.#unitFinders.get(sheet) ?? unitFinder(sheet)
    this.#unitFinders.set(sheet, find)
    const at = find({ row, column })
    const text = at === undefined ? undefined : this.value(sheet.name, at.row, at.column)
    const unit = typeof text === 'string' && text !== '' ? text : undefined
    known.set(key, unit)
    return unit
  }

  /** Every cell with a formula, sheet by sheet in the order of reading. */
  get formulas(): readonly FormulaCell[] {
    if (this.#formulas !== undefined) return this.#formulas
    const found: FormulaCell[] = []
    for (const sheet of this.workbook.sheets) {
      eachCell(sheet, (cell, row, column) => {
        if (isFormula(cell.content)) found.push({ sheet, row, column, cell, formula: cell.content })
      })
    }
    this.#formulas = found
    return found
  }

  /** Undefined where the formula cannot be read. */
  tree(formula: string): FormulaNode | undefined {
    if (this.#trees.has(formula)) return this.#trees.get(formula)
    const tree = formulaTree(formula)
    this.#trees.set(formula, tree)
    return tree
  }

  /** The formula as it would stand in A1 if it were moved there with all it refers to: cells whose formulas were filled from one have the same. */
  shape({ formula, row, column }: Pick<FormulaCell, 'formula' | 'row' | 'column'>): string {
    // Counted from the far corner, no reference to cells above or to the left leaves the sheet.
    return shiftReferences(formula, FAR_ROW - row, FAR_COLUMN - column)
  }

  /** What a formula refers to, by references and by names. */
  referred(formula: string, home: Sheet): readonly Referred[] {
    const references = referenceExtents(formula).flatMap(({ start, end }) => parseReference(formula.slice(start, end)) ?? [])
    return [...references, ...this.#namedReferences(formula)].flatMap((reference) => this.resolve(reference, home) ?? [])
  }

  /** Most formulas of a large list use no name, which is seen without making their tokens. */
  #namedReferences(formula: string): readonly Reference[] {
    this.#anyName ??= new RegExp([...this.workbook.names.keys()].map((name) => name.replaceAll('.', '\\.')).join('|') || '(?!)', 'i')
    if (!this.#anyName.test(formula)) return []
    return tokenise(formula).flatMap(({ kind, text }) => (kind === 'name' ? (namedReference(this.workbook.names, text) ?? []) : []))
  }

  /** The cells that a reference stands for on a sheet; undefined where its sheet is not there, or nothing of it is filled. */
  resolve(reference: Reference, home: Sheet): Referred | undefined {
    const sheet = reference.sheet === null ? home : sheetByName(this.workbook, reference.sheet)
    if (sheet === undefined) return undefined
    const { rows, columns } = this.#usedRange(sheet)
    const area = areaOf(reference)
    const part = { ...area, bottom: Math.min(area.bottom, rows - 1), right: Math.min(area.right, columns - 1) }
    return part.bottom < part.top || part.right < part.left ? undefined : { sheet, area: part }
  }

  /** Whether a formula anywhere refers to the cell, by itself or in a range. */
  isUsed(sheet: Sheet, row: number, column: number): boolean {
    this.#used ??= this.#findUsed()
    const { columns } = this.#usedRange(sheet)
    return column < columns && this.#used.get(sheet)?.[row * columns + column] === 1
  }

  isError(sheet: string, row: number, column: number): boolean {
    return isCellError(this.value(sheet, row, column))
  }

  /** Found once a sheet: it takes a walk through all rows. */
  #usedRange(sheet: Sheet): ReturnType<typeof usedRange> {
    const known = this.#ranges.get(sheet)
    if (known !== undefined) return known
    const range = usedRange(sheet)
    this.#ranges.set(sheet, range)
    return range
  }

  #findUsed(): ReadonlyMap<Sheet, Uint8Array> {
    const found = new Map(this.workbook.sheets.map((sheet) => [sheet, new Uint8Array(this.#usedRange(sheet).rows * this.#usedRange(sheet).columns)] as const))
    const seen = new Set<string>()
    for (const { formula, sheet: home } of this.formulas) {
      for (const { sheet, area: { top, left, bottom, right } } of this.referred(formula, home)) {
        const key = `${sheet.name}!${top}:${left}:${bottom}:${right}`
        if (seen.has(key)) continue
        seen.add(key)
        const [cells, width] = [found.get(sheet), this.#usedRange(sheet).columns]
        for (let row = top; row <= bottom; row++) cells?.fill(1, row * width + left, row * width + right + 1)
      }
    }
    return found
  }
}

const COLUMNS = 2 ** 15
const FAR_ROW = 2 ** 19
const FAR_COLUMN = 2 ** 13
