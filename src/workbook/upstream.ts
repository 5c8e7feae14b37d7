import { areaOf, type Area, type Reference } from './address.ts'
import { isFormula, sheetByName, usedRange, type Row, type Sheet, type Workbook } from './document.ts'
import { namedReference, referencesIn } from './formula/references.ts'
import { tokenise } from './formula/tokenise.ts'
import { unitFinder, unitOfValue } from './unit-scope.ts'
import type { CellPlace } from './cell-place.ts'

/** All cells that the values of some cells hang on, these cells among them. */
export interface Upstream {
  readonly has: (place: CellPlace) => boolean
  /** In the order of the sheets, then of reading. */
  readonly places: () => CellPlace[]
  /** The defined names that formulas use on the way, as they were typed. */
  readonly names: ReadonlySet<string>
  /** False where a formula refers to whole columns or rows, which hang on how far a sheet reaches, or to what cannot be followed. */
  readonly isClosed: boolean
}

/**
 * Every formula's references and names are followed, however far. A cell that is read off brings the unit beside it.
 * @param units `all`: every number on the way brings the unit that applies to it, though no formula refers to that
 */
export function upstreamOf(workbook: Workbook, from: readonly CellPlace[], units: 'read off' | 'all' = 'read off'): Upstream {
  const walk = new Walk(workbook, units === 'all')
  for (const place of from) {
    if (units === 'all') walk.addPlace(place)
    else walk.addWithUnits(place)
  }
  walk.follow()
  return walk
}

/**
 * The workbook with only those formulas that these cells hang on. Any other becomes the number 0, which no formula that is left reads; roles,
 * units and texts stay where they are. So a change of an input computes nothing that nobody looks at.
 */
export function onlyUpstream(workbook: Workbook, upstream: Upstream): Workbook {
  if (!upstream.isClosed) return workbook
  return {
    ...workbook,
    sheets: workbook.sheets.map((sheet) => ({ ...sheet, rows: sheet.rows.map((row, at) => keptRow(row, (column) => upstream.has({ sheet: sheet.name, row: at, column }))) })),
  }
}

function keptRow(row: Row, isNeeded: (column: number) => boolean): Row {
  if (row === undefined) return undefined
  const kept = row.map((cell, column) => (cell !== undefined && isFormula(cell.content) && !isNeeded(column) ? { ...cell, content: 0 } : cell))
  return kept.some((cell, column) => cell !== row[column]) ? kept : row
}

class Walk implements Upstream {
  readonly #workbook: Workbook
  readonly #bringsUnits: boolean
  readonly #unitFinders = new Map<Sheet, ReturnType<typeof unitFinder>>()
  readonly names = new Set<string>()
  /** By sheet, the cells as one number each. */
  readonly #found = new Map<string, Set<number>>()
  /** Areas that were gone through: many formulas refer to the same. */
  readonly #areas = new Set<string>()
  readonly #used = new Map<Sheet, { readonly rows: number; readonly columns: number }>()
  #toFollow: { readonly sheet: Sheet; readonly formula: string }[] = []
  isClosed = true

  constructor(workbook: Workbook, bringsUnits: boolean) {
    this.#workbook = workbook
    this.#bringsUnits = bringsUnits
  }

  has({ sheet, row, column }: CellPlace): boolean {
    return this.#found.get(sheet)?.has(row * COLUMNS + column) ?? false
  }

  places(): CellPlace[] {
    return this.#workbook.sheets.flatMap(({ name }) =>
      [...(this.#found.get(name) ?? [])].toSorted((one, other) => one - other).map((key) => ({ sheet: name, row: Math.floor(key / COLUMNS), column: key % COLUMNS })),
    )
  }

  addPlace({ sheet: name, row, column }: CellPlace): void {
    const sheet = sheetByName(this.#workbook, name)
    if (sheet !== undefined) this.#add(sheet, row, column)
  }

  /** The cell, its unit, and the units of the cells that its formula names: a check shows its margin in one of them. */
  addWithUnits(place: CellPlace): void {
    const sheet = sheetByName(this.#workbook, place.sheet)
    if (sheet === undefined) return
    this.#add(sheet, place.row, place.column)
    this.#addUnit(sheet, place.row, place.column)
    const content = sheet.rows[place.row]?.[place.column]?.content
    if (!isFormula(content)) return
    for (const { reference } of referencesIn(tokenise(content))) {
      const { top, left, bottom, right } = areaOf(reference)
      const referred = sheetByName(this.#workbook, reference.sheet ?? sheet.name)
      if (referred !== undefined && top === bottom && left === right) this.#addUnit(referred, top, left)
    }
  }

  follow(): void {
    for (let next = this.#toFollow.pop(); next !== undefined; next = this.#toFollow.pop()) {
      const tokens = tokenise(next.formula)
      for (const { reference } of referencesIn(tokens)) this.#addReference(reference, next.sheet.name)
      for (const { kind, text } of tokens) {
        if (kind !== 'name') continue
        this.names.add(text)
        const reference = namedReference(this.#workbook.names, text)
        if (reference !== undefined) this.#addReference(reference, next.sheet.name)
        // A name may stand for more than a reference, or for nothing: then nothing is left out.
        else this.isClosed = false
      }
    }
  }

  #addReference(reference: Reference, home: string): void {
    const sheet = sheetByName(this.#workbook, reference.sheet ?? home)
    if (sheet === undefined) return
    if ([reference.from, reference.to].some((corner) => corner?.row === null || corner?.column === null)) this.isClosed = false
    this.#addArea(sheet, areaOf(reference))
  }

  #addArea(sheet: Sheet, { top, left, bottom, right }: Area): void {
    const key = `${sheet.name}:${top}:${left}:${bottom}:${right}`
    if (this.#areas.has(key)) return
    this.#areas.add(key)
    const used = this.#used.get(sheet) ?? usedRange(sheet)
    this.#used.set(sheet, used)
    for (let row = top; row <= Math.min(bottom, used.rows - 1); row++) {
      for (let column = left; column <= Math.min(right, used.columns - 1); column++) this.#add(sheet, row, column)
    }
  }

  #add(sheet: Sheet, row: number, column: number): void {
    const found = this.#found.get(sheet.name) ?? new Set<number>()
    this.#found.set(sheet.name, found)
    const key = row * COLUMNS + column
    if (found.has(key)) return
    found.add(key)
    const content = sheet.rows[row]?.[column]?.content
    if (isFormula(content)) this.#toFollow.push({ sheet, formula: content })
    if (this.#bringsUnits && (isFormula(content) || typeof content === 'number')) this.#bringUnit(sheet, row, column)
  }

  #bringUnit(sheet: Sheet, row: number, column: number): void {
    const find = this.#unitFinders.get(sheet) ?? unitFinder(sheet)
    this.#unitFinders.set(sheet, find)
    const unit = find({ row, column })
    if (unit !== undefined) this.#add(sheet, unit.row, unit.column)
  }

  #addUnit(sheet: Sheet, row: number, column: number): void {
    const unit = unitOfValue(sheet, { row, column })
    if (unit !== undefined) this.#add(sheet, unit.row, unit.column)
  }
}

const COLUMNS = 2 ** 15
