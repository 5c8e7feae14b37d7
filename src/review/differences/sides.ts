import type { AreaValues, CellValue } from '../../calc/values.ts'
import type { CellAddress } from '../../workbook/address.ts'
import { atBase } from '../../workbook/case-switching.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { isFormula, sheetByName, type Cell, type Sheet, type Workbook } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { unitFinder } from '../../workbook/unit-scope.ts'
import { labelFinder } from '../../workbook/words-beside.ts'
import { mirroredLayout, Way, type Layout, type SheetPair } from './layout.ts'
import { FormulaPairs } from './same-formula.ts'

/** Values by sheet name, from A1. */
export type Areas = ReadonlyMap<string, AreaValues>

/** Where only what is typed counts. */
export const NO_AREAS: Areas = new Map()

/** One of the two workbooks, its base in the cells. */
export class Side {
  readonly workbook: Workbook
  readonly #areas: Areas
  readonly #units = new Map<Sheet, ReturnType<typeof unitFinder>>()
  readonly #labels = new Map<Sheet, ReturnType<typeof labelFinder>>()

  constructor(workbook: Workbook, areas: Areas) {
    this.workbook = workbook.cases === undefined ? workbook : atBase(workbook)
    this.#areas = areas
  }

  sheet(name: string): Sheet | undefined {
    return sheetByName(this.workbook, name)
  }

  cell({ sheet, row, column }: CellPlace): Cell | undefined {
    return this.sheet(sheet)?.rows[row]?.[column]
  }

  /** The text of the unit cell that applies to a cell; of one that is a formula what it comes to. */
  unit(sheet: Sheet, row: number, column: number): string | undefined {
    const find = this.#units.get(sheet) ?? unitFinder(sheet)
    this.#units.set(sheet, find)
    const at = find({ row, column })
    if (at === undefined) return undefined
    const typed = meantText(sheet.rows[at.row]?.[at.column]?.content)
    if (typed !== undefined) return typed
    const value = this.value({ sheet: sheet.name, ...at })
    return typeof value === 'string' && value !== '' ? value : undefined
  }

  /** What a cell is called: the words beside and above it. What names others is called nothing: the label above it is another one's. */
  label(place: CellPlace): string | undefined {
    const sheet = this.sheet(place.sheet)
    const role = sheet?.rows[place.row]?.[place.column]?.role
    if (sheet === undefined || role === 'label' || role === 'heading' || role === 'title') return undefined
    const find = this.#labels.get(sheet) ?? labelFinder(sheet, (at) => this.#shown(sheet, at))
    this.#labels.set(sheet, find)
    return find(place)
  }

  unitAt({ sheet, row, column }: CellPlace): string | undefined {
    const held = this.sheet(sheet)
    return held && this.unit(held, row, column)
  }

  /** The text that a cell shows; of a formula what it comes to. */
  #shown(sheet: Sheet, at: CellAddress): string | undefined {
    const content = sheet.rows[at.row]?.[at.column]?.content
    if (!isFormula(content)) return meantText(content)
    const value = this.value({ sheet: sheet.name, ...at })
    return typeof value === 'string' ? value : undefined
  }

  value({ sheet, row, column }: CellPlace): CellValue {
    return this.#areas.get(sheet)?.values[row]?.[column] ?? null
  }
}

/** Both workbooks, and the way between them. */
export interface Sides {
  readonly before: Side
  readonly now: Side
  readonly layout: Layout
  /** From places before to those now. */
  readonly way: Way
  readonly back: Way
  readonly formulas: FormulaPairs
}

export const sidesOf = (before: Side, now: Side, layout: Layout): Sides => ({ before, now, layout, way: new Way(layout), back: new Way(mirroredLayout(layout)), formulas: new FormulaPairs(layout) })

/** A pair of sheets with what stands on them. */
export interface PairedSheets extends SheetPair {
  readonly sheetBefore: Sheet
  readonly sheetNow: Sheet
}

export function pairedSheets({ before, now, layout }: Pick<Sides, 'before' | 'now' | 'layout'>): PairedSheets[] {
  return layout.pairs.flatMap((pair) => {
    const [sheetBefore, sheetNow] = [before.sheet(pair.before), now.sheet(pair.now)]
    return sheetBefore && sheetNow ? [{ ...pair, sheetBefore, sheetNow }] : []
  })
}
