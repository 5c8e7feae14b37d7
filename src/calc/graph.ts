import { ExportedCellChange, type ExportedChange, type HyperFormula } from 'hyperformula'
import { parseReference, printAddress, type Area } from '../workbook/address.ts'
import { disjoint } from '../workbook/areas.ts'
import { eachCell } from '../workbook/cells.ts'
import { cellAt, isFormula, sheetByName, type Row, type Sheet, type Workbook } from '../workbook/document.ts'
import { applyEdits, type CellChange, type Edit } from '../workbook/edits.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { checkCells, followChecks } from './check-cells.ts'
import { describeCheck, plainCheck, sidesOf } from './check.ts'
import { cellValue, createEngine } from './engine.ts'
import { canFollowLines, followLines, type ErrorCells } from './line-following.ts'
import { rowBlocks } from './row-blocks.ts'
import { engineContent, engineFormula, engineName, type EngineContent } from './translate.ts'
import { totalOf, type Total } from './total.ts'
import { isCellError, type AreaValues, type CellValue, type Check, type SheetState } from './values.ts'
import { describeUsers, feedsOf, usedPart, usersOf, type Feed, type Users } from './walk.ts'

const NO_VALUES: readonly CellValue[] = []

/** Edits that change no value. */
const SILENT: ReadonlySet<Edit['kind']> = new Set<Edit['kind']>(['columnWidths', 'frozen', 'title', 'purpose', 'moveSheet', 'figures', 'report', 'mappings', 'cases', 'tolerances', 'review'])

/** A number that a cell is given for a while. */
export interface Trial {
  readonly sheet: string
  readonly row: number
  readonly column: number
  readonly number: number
}

/**
 * The values of a workbook, kept up as edits are made. The document is the truth: after any edits the graph has the values that a
 * fresh one built from the document would have, and whatever goes wrong in the engine ends in building it afresh.
 */
export class Graph {
  #workbook: Workbook
  #engine: HyperFormula
  /** Formula cells that show an error, by the engine's sheet number. */
  #errors: ErrorCells = new Map()

  /** @param report told from time to time what share of the cells is in the engine; the computing that follows is one step */
  constructor(workbook: Workbook, report?: (share: number) => void) {
    this.#workbook = workbook
    this.#engine = createEngine()
    this.#fill(report)
  }

  get workbook(): Workbook {
    return this.#workbook
  }

  /** Takes edits in the document and in the values. */
  apply(edits: readonly Edit[]): void {
    const before = this.#workbook
    this.#workbook = applyEdits(before, edits).workbook
    const loud = edits.filter(({ kind }) => !SILENT.has(kind))
    if (canFollowLines(loud)) {
      this.#followLines(loud)
      return
    }
    const cellEdits = loud.filter((edit) => edit.kind === 'cells')
    if (cellEdits.length < loud.length) {
      this.#rebuild()
      return
    }
    followChecks(before, this.#workbook, cellEdits)
    try {
      this.#note(this.#engine.batch(() => cellEdits.forEach(({ sheet, cells }) => this.#setCells(sheet, cells))))
    } catch {
      // Whatever the engine stumbled over, the document has the edit; a fresh graph has its values.
      this.#rebuild()
    }
  }

  /**
   * Gives cells other numbers for a while, in the values alone: the document stays, and so do errors and states as they were before.
   * Whoever tries numbers puts the document's own back with {@link putBack}, and makes no edits between.
   */
  tryNumbers(trials: readonly Trial[]): void {
    try {
      this.#try(trials)
    } catch {
      this.#rebuild()
      this.#try(trials)
    }
  }

  /** Ends a trial: the cells come to what the document says. */
  putBack(cells: readonly Omit<Trial, 'number'>[]): void {
    try {
      this.#engine.batch(() => {
        for (const { sheet, row, column } of cells) {
          const content = cellAt(this.#workbook, sheet, row, column)?.content ?? null
          this.#engine.setCellContents({ sheet: this.#sheetId(sheet), row, col: column }, engineContent(content))
        }
      })
    } catch {
      this.#rebuild()
    }
  }

  value(sheet: string, row: number, column: number): CellValue {
    return cellValue(this.#engine.getCellValue({ sheet: this.#sheetId(sheet), row, col: column }))
  }

  read(sheet: string, { top, left, bottom, right }: Area): AreaValues {
    const id = this.#sheetId(sheet)
    const range = { start: { sheet: id, row: top, col: left }, end: { sheet: id, row: bottom, col: right } }
    const values = this.#engine.getRangeValues(range).map((row) => row.map(cellValue))
    const checks = new Map<string, Check>()
    const rows = this.#sheet(sheet)?.rows ?? []
    for (let row = top; row <= Math.min(bottom, rows.length - 1); row++) {
      for (let column = left; column <= right; column++) {
        const check = rows[row]?.[column]?.role === 'check' ? this.check(sheet, row, column) : undefined
        if (check !== undefined) checks.set(printAddress(row, column), check)
      }
    }
    return { values, checks }
  }

  /** A check cell's verdict; undefined where the cell has no TRUE or FALSE to give. */
  check(sheet: string, row: number, column: number): Check | undefined {
    const met = this.value(sheet, row, column)
    if (typeof met !== 'boolean') return undefined
    const content = cellAt(this.#workbook, sheet, row, column)?.content
    const sides = isFormula(content) ? sidesOf(content) : undefined
    if (sides === undefined) return plainCheck(met)
    const [left, right] = [this.#sideOf(sides.left, sheet), this.#sideOf(sides.right, sheet)]
    if (typeof left !== 'number' || typeof right !== 'number') return plainCheck(met)
    return describeCheck(met, left, sides.comparison, right, this.#unitOf(sides.left, sheet) ?? this.#unitOf(sides.right, sheet))
  }

  /** What a cell's formula refers to, in the order of writing; nothing where there is no formula. */
  feeds(sheet: string, row: number, column: number): readonly Feed[] {
    const content = cellAt(this.#workbook, sheet, row, column)?.content
    return isFormula(content) ? feedsOf(content, sheet, this.#workbook, this.#read, this.#unitAt) : []
  }

  /** The cells whose formulas use a cell. */
  users(sheet: string, row: number, column: number): Users {
    const users = usersOf(this.#engine, this.#workbook.sheets, { sheet: this.#sheetId(sheet), row, col: column })
    return describeUsers(users, this.#workbook, this.#read, this.#unitAt)
  }

  /** What the numbers of areas come to together, each counted once; undefined where there is none. */
  total(sheet: string, areas: readonly Area[]): Total | undefined {
    const parts = disjoint(areas).flatMap((area) => usedPart(this.#workbook, sheet, area) ?? [])
    const held = this.#sheet(sheet)
    return held && totalOf(held, parts.map((area) => ({ area, values: this.read(sheet, area).values })))
  }

  states(): readonly SheetState[] {
    return this.#workbook.sheets.map((sheet) => {
      const checks = checkCells(sheet).map(({ row, column }) => this.value(sheet.name, row, column))
      return {
        sheet: sheet.name,
        checks: checks.length,
        notMet: checks.filter((value) => value === false).length,
        errors: this.#errors.get(this.#sheetId(sheet.name))?.size ?? 0,
      }
    })
  }

  /** The value a formula would have in a sheet; an error value where it cannot be read. */
  evaluate(formula: string, sheet: string): CellValue {
    const id = this.#sheetId(sheet)
    try {
      const value = this.#engine.calculateFormula(engineFormula(formula), id)
      return Array.isArray(value) ? { error: '#VALUE!', message: 'the formula gives a block of values, not one' } : cellValue(value)
    } catch {
      return { error: '#ERROR!', message: 'the formula cannot be read: look at its brackets, commas and references' }
    }
  }

  /** Every value and check, sheet by sheet, rows at least up to their last cell in use. */
  allAreas(): ReadonlyMap<string, AreaValues> {
    return new Map(this.#workbook.sheets.map((sheet) => [sheet.name, this.#usedArea(sheet)] as const))
  }

  #usedArea({ name, rows }: Sheet): AreaValues {
    const values: (readonly CellValue[])[] = Array.from(rows, () => NO_VALUES)
    const checks = new Map<string, Check>()
    for (const { top, end, width } of rowBlocks(rows, Infinity)) {
      const block = this.read(name, { top, left: 0, bottom: end - 1, right: width - 1 })
      for (const [index, row] of block.values.entries()) values[top + index] = row
      for (const [address, check] of block.checks) checks.set(address, check)
    }
    return { values, checks }
  }

  /** Every value, sheet by sheet. */
  allValues(): ReadonlyMap<string, readonly (readonly CellValue[])[]> {
    return new Map([...this.allAreas()].map(([sheet, { values }]) => [sheet, values]))
  }

  /** Every cell that shows an error, in the order of the sheets. */
  errors(): readonly { readonly sheet: string; readonly row: number; readonly column: number; readonly value: CellValue }[] {
    return this.#workbook.sheets.flatMap((sheet) => {
      const found: { sheet: string; row: number; column: number; value: CellValue }[] = []
      eachCell(sheet, ({ content }, row, column) => {
        const value = isFormula(content) ? this.value(sheet.name, row, column) : null
        if (isCellError(value)) found.push({ sheet: sheet.name, row, column, value })
      })
      return found
    })
  }

  readonly #read = (sheet: string, row: number, column: number): CellValue => this.value(sheet, row, column)

  /** The unit that applies to a cell, as it stands there. */
  unitAt(sheet: string, row: number, column: number): string | undefined {
    return this.#unitAt(sheet, row, column)
  }

  readonly #unitAt = (sheet: string, row: number, column: number): string | undefined => {
    const held = this.#sheet(sheet)
    const at = held && unitOfValue(held, { row, column })
    const unit = at && this.value(sheet, at.row, at.column)
    return typeof unit === 'string' && unit !== '' ? unit : undefined
  }

  #sheet(name: string): Sheet | undefined {
    return this.#workbook.sheets.find((sheet) => sheet.name === name)
  }

  #sheetId(name: string): number {
    const id = this.#engine.getSheetId(name)
    if (id === undefined) throw new RangeError(`there is no sheet called ${name}`)
    return id
  }

  #followLines(edits: readonly Edit[]): void {
    try {
      const changes = followLines(this.#engine, this.#errors, this.#workbook, edits)
      this.#note(changes ?? [])
      if (changes === undefined) this.#rebuild()
    } catch {
      // As with cells: the document has the edit.
      this.#rebuild()
    }
  }

  #rebuild(): void {
    this.#engine.destroy()
    this.#engine = createEngine()
    this.#errors = new Map()
    this.#fill()
  }

  /** One batch, so that references between sheets are computed once, all cells being there. */
  #fill(report: (share: number) => void = () => undefined): void {
    const { sheets, names } = this.#workbook
    for (const { name } of sheets) this.#engine.addSheet(name)
    const all = sheets.reduce((sum, { rows }) => sum + rows.length, 0)
    let done = 0
    const changes = this.#engine.batch(() => {
      for (const [name, reference] of names) this.#engine.addNamedExpression(name, engineName(name, reference))
      for (const { name, rows } of sheets) {
        for (const { top, end } of rowBlocks(rows, FILLED_AT_ONCE)) {
          this.#engine.setCellContents({ sheet: this.#sheetId(name), row: top, col: 0 }, rowContents(rows.slice(top, end)))
          report((done + end) / all)
        }
        done += rows.length
      }
    })
    this.#note(changes)
  }

  #setCells(sheet: string, cells: readonly CellChange[]): void {
    const id = this.#sheetId(sheet)
    const content = ({ cell }: CellChange) => engineContent(cell?.content ?? null)
    const block = asBlock(cells)
    if (block !== undefined) {
      this.#engine.setCellContents({ sheet: id, row: block.top, col: block.left }, block.rows.map((row) => row.map(content)))
      return
    }
    for (const change of cells) this.#engine.setCellContents({ sheet: id, row: change.row, col: change.column }, content(change))
  }

  #note(changes: readonly ExportedChange[]): void {
    for (const change of changes) {
      if (!(change instanceof ExportedCellChange)) continue
      const { sheet, row, col } = change.address
      const errors = this.#errors.get(sheet) ?? new Set()
      this.#errors.set(sheet, errors)
      const key = printAddress(row, col)
      if (isCellError(cellValue(change.newValue))) errors.add(key)
      else errors.delete(key)
    }
  }

  #try(trials: readonly Trial[]): void {
    this.#engine.batch(() => {
      for (const { sheet, row, column, number } of trials) this.#engine.setCellContents({ sheet: this.#sheetId(sheet), row, col: column }, number)
    })
  }

  /** The unit that applies to the cell that a side of a check consists of. */
  #unitOf(side: string, sheet: string): string | undefined {
    const at = this.#cellOf(side, sheet)
    return at && this.#unitAt(at.sheet, at.row, at.column)
  }

  /** A number that stands in a cell is read there, some fifty times faster than the engine reads and computes the side. */
  #sideOf(side: string, sheet: string): CellValue {
    const at = this.#cellOf(side, sheet)
    const value = at && this.value(at.sheet, at.row, at.column)
    return typeof value === 'number' ? value : this.evaluate(side, sheet)
  }

  /** The cell that a side of a check consists of. */
  #cellOf(side: string, sheet: string): { readonly sheet: string; readonly row: number; readonly column: number } | undefined {
    const reference = parseReference(side.slice(1).trim())
    if (reference === undefined || reference.to !== null) return undefined
    const { row, column } = reference.from
    const held = sheetByName(this.#workbook, reference.sheet ?? sheet)
    return held === undefined || row === null || column === null ? undefined : { sheet: held.name, row, column }
  }
}

/** Rows given to the engine in one call. */
const FILLED_AT_ONCE = 1000

/** Nothing where all rows are empty. */
function rowContents(rows: readonly Row[]): EngineContent[][] {
  return Array.from(rows, (row) => Array.from(row ?? [], (cell) => engineContent(cell?.content ?? null)))
}

/** The changes as one rectangle in reading order, if that is what they are: the engine takes a block some twenty times faster than its cells. */
function asBlock(cells: readonly CellChange[]): { top: number; left: number; rows: CellChange[][] } | undefined {
  const [first] = cells
  const last = cells[cells.length - 1]
  if (first === undefined || last === undefined) return undefined
  const width = last.column - first.column + 1
  const height = last.row - first.row + 1
  if (width < 1 || height < 1 || width * height !== cells.length) return undefined
  const rows: CellChange[][] = []
  for (let i = 0; i < cells.length; i++) {
    const change = cells[i]
    if (change === undefined || change.row !== first.row + Math.floor(i / width) || change.column !== first.column + (i % width)) return undefined
    const row = rows[change.row - first.row]
    if (row === undefined) rows.push([change])
    else row.push(change)
  }
  return { top: first.row, left: first.column, rows }
}
