import type { Area, CellAddress } from '../../workbook/address.ts'
import { isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import { unitFinder } from '../../workbook/unit-scope.ts'
import type { Survey } from '../survey.ts'
import { isWellKnown } from './constants.ts'
import { isDimensionless, isPressure } from './dimension.ts'
import { unitQuantity } from './known-unit.ts'
import { countOf, meaningText, UNKNOWN, type Meaning, type Quantity } from './meaning.ts'
import { isAboutAtmospheric } from './sums.ts'
import { isTradeConstant } from './trade-constants.ts'

/** A meaning with a number of its own: the same of all cells that mean the same. */
export interface Numbered {
  readonly id: number
  readonly meaning: Meaning
}

/** What a formula without declared unit comes to, worked out from the formula; undefined where it leads back to itself. */
export type Inferred = (sheet: Sheet, row: number, column: number) => Meaning | undefined

/** What the cells of a workbook mean by their units. Of a column it is found once, and kept as stretches that mean the same. */
export class CellMeanings {
  readonly #survey: Survey
  readonly #inferred: Inferred
  readonly #sheets = new Map<Sheet, SheetMeanings>()
  readonly #byText = new Map<string, Numbered>()

  constructor(survey: Survey, inferred: Inferred) {
    this.#survey = survey
    this.#inferred = inferred
  }

  /** The unit cell that applies to a cell. */
  unitCell(sheet: Sheet, place: CellAddress): CellAddress | undefined {
    return this.#sheet(sheet).unitOf(place)
  }

  cell(sheet: Sheet, row: number, column: number): Numbered {
    const { cells } = this.#sheet(sheet)
    const key = row * 2 ** 15 + column
    const known = cells.get(key)
    if (known !== undefined) return known
    const found = this.#cell(sheet, row, column)
    // What is unknown because it leads back to a formula that is being worked out may be known later.
    if (found.meaning.kind !== 'unknown') cells.set(key, found)
    return found
  }

  #cell(sheet: Sheet, row: number, column: number): Numbered {
    const cell = sheet.rows[row]?.[column]
    // What it comes to is worked out for single cells only: of a range it would be so for each, and from each to the next.
    return isBareFormula(cell) && this.#unit(sheet, row, column) === undefined && typeof this.#survey.value(sheet.name, row, column) === 'number'
      ? this.#numbered(this.#inferred(sheet, row, column) ?? UNKNOWN)
      : this.#plain(sheet, row, column, cell)
  }

  /** What stands in each column of an area, each thing once; cells without content are passed over. */
  area(sheet: Sheet, { top, bottom, left, right }: Area): Numbered {
    if (right - left >= MOST_COLUMNS) return this.#numbered(UNKNOWN)
    const columns = Array.from({ length: right - left + 1 }, (_, index) => {
      const held = new Map<number, Meaning>()
      for (const { id, meaning } of this.#runs(sheet, left + index, top, bottom)) held.set(id, meaning)
      return [...held.values()]
    })
    return this.#numbered({ kind: 'range', columns })
  }

  /** The first cell of an area that means this. */
  first(sheet: Sheet, { top, bottom, left, right }: Area, text: string): CellAddress | undefined {
    for (let column = left; column <= Math.min(right, left + MOST_COLUMNS); column++) {
      const run = this.#runs(sheet, column, top, bottom).find(({ meaning }) => meaningText(meaning) === text)
      if (run) return { row: Math.max(top, run.from), column }
    }
    return undefined
  }

  #runs(sheet: Sheet, column: number, top: number, bottom: number): readonly Run[] {
    const { columns } = this.#sheet(sheet)
    const runs = columns.get(column) ?? this.#column(sheet, column)
    columns.set(column, runs)
    let first = 0
    for (let end = runs.length; first < end;) {
      const middle = (first + end) >> 1
      if ((runs[middle]?.to ?? 0) < top) first = middle + 1
      else end = middle
    }
    const found: Run[] = []
    for (let run = runs[first]; run !== undefined && run.from <= bottom; run = runs[++first]) found.push(run)
    return found
  }

  #column(sheet: Sheet, column: number): readonly Run[] {
    const runs: { id: number; meaning: Meaning; from: number; to: number }[] = []
    for (const [row, cells] of sheet.rows.entries()) {
      const cell = cells?.[column]
      if (cell === undefined || cell.content === null) continue
      const { id, meaning } = this.#plain(sheet, row, column, cell)
      const last = runs.at(-1)
      if (last?.id === id) last.to = row
      else runs.push({ id, meaning, from: row, to: row })
    }
    return runs
  }

  #plain(sheet: Sheet, row: number, column: number, cell: Cell | undefined): Numbered {
    if (cell === undefined || cell.content === null) return this.#known('empty', countOf)
    const value = this.#survey.value(sheet.name, row, column)
    const unit = cell.role === 'unit' ? undefined : this.#unit(sheet, row, column)
    if (typeof value === 'boolean') return this.#known('truth', () => ({ kind: 'truth' }))
    if (unit !== undefined) return this.#inUnit(unit, typeof value === 'number' ? value : undefined, typeof cell.content === 'number')
    if (typeof value === 'string') return this.#known(`text ${unitQuantity(value) === undefined ? '' : value}`, () => ({ kind: 'text', text: undefined, unit: unitQuantity(value) }))
    if (typeof value !== 'number' || isBareFormula(cell)) return this.#known('unknown', () => UNKNOWN)
    // A number without unit may be a count, and it may be anything.
    const given = isWellKnown(value) || isTradeConstant(value) ? [value] : []
    const loose = given.length === 0 && !(Number.isInteger(value) && Math.abs(value) <= MOST_COUNTED)
    return this.#known(`number ${given.join('')}${loose ? ' loose' : ''}`, () => ({ kind: 'number', value: given[0], factors: [], given, loose }))
  }

  #inUnit(text: string, value: number | undefined, isTyped: boolean): Numbered {
    const unit = unitQuantity(text)
    if (unit === undefined) return this.#known('unknown', () => UNKNOWN)
    if (isTyped && value !== undefined && isShare(unit)) return this.#typedShare(text, unit, value)
    const atmospheric = isPressure(unit.dimension) && unit.zero.gauge === 0 && value !== undefined && isAboutAtmospheric(value * unit.factor)
    return this.#known(`in ${text}${atmospheric ? ', as the atmosphere' : ''}`, () => (atmospheric ? { ...unit, zero: { ...unit.zero, atmospheric } } : unit))
  }

  /** People write "-" beside an empirical factor as well, whose unit has no name: f of f·D·L. A share, a margin or a count is none. */
  #typedShare(text: string, unit: Quantity, value: number): Numbered {
    const given = isTradeConstant(value) ? [value] : []
    const loose = given.length === 0 && Math.abs(value) > MOST_OF_A_SHARE && !Number.isInteger(value)
    return this.#known(`in ${text} ${given.join('')}${loose ? ' loose' : ''}`, () => ({ ...unit, loose, ...(given.length > 0 && { given }) }))
  }

  #unit(sheet: Sheet, row: number, column: number): string | undefined {
    return this.#survey.unit(sheet, row, column)
  }

  #sheet(sheet: Sheet): SheetMeanings {
    const known = this.#sheets.get(sheet)
    if (known !== undefined) return known
    const made: SheetMeanings = { unitOf: unitFinder(sheet), columns: new Map(), cells: new Map() }
    this.#sheets.set(sheet, made)
    return made
  }

  #known(text: string, make: () => Meaning): Numbered {
    const known = this.#byText.get(text)
    if (known !== undefined) return known
    const made = this.#numbered(make())
    this.#byText.set(text, made)
    return made
  }

  #numbered(meaning: Meaning): Numbered {
    const text = `= ${meaningText(meaning)}`
    const known = this.#byText.get(text)
    if (known !== undefined) return known
    const made = { id: this.#byText.size, meaning }
    this.#byText.set(text, made)
    return made
  }
}

interface SheetMeanings {
  readonly unitOf: (place: CellAddress) => CellAddress | undefined
  readonly columns: Map<number, readonly Run[]>
  readonly cells: Map<number, Numbered>
}

interface Run {
  readonly id: number
  readonly meaning: Meaning
  readonly from: number
  readonly to: number
}

const MOST_COLUMNS = 64
/** A whole number up to this is a count, however bare. */
const MOST_COUNTED = 20

/** Above it a number in "-" is no share, nor what is left or added to one. */
const MOST_OF_A_SHARE = 1.5

const isShare = ({ dimension, symbol }: Quantity): boolean => isDimensionless(dimension) && symbol.length === 0

const isBareFormula = (cell: Cell | undefined): boolean => isFormula(cell?.content) && cell?.role !== 'unit'
