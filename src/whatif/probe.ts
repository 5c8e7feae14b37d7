import type { Unit } from '../../functions/units/units.ts'
import { Graph } from '../calc/graph.ts'
import { isCellError, type CellValue, type Check } from '../calc/values.ts'
import { isFormula, type Workbook } from '../workbook/document.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import { numberInCellUnit, unitNamed, type CellUnit } from './cell-unit.ts'
import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'
import { cellAtPlace, nameOf, placeWords, sheetAt } from './place.ts'
import { sitePressurePa } from './site.ts'
import { onlyUpstream, upstreamOf } from '../workbook/upstream.ts'

/** A cell that is asked about or changed, with what stands round it. */
export interface Watched extends CellPlace, CellUnit {
  /** What it is called; in a table by the name of its row as well. */
  readonly label: string | undefined
  readonly isCheck: boolean
}

export interface ProbedInput extends Omit<Watched, 'isCheck'> {
  /** What the workbook holds, in the unit beside it. */
  readonly value: number
}

/** What a watched cell comes to at a point; for a check also the verdict, with its margin. */
export interface Reading {
  readonly value: CellValue
  readonly check?: Check
}

/** Inputs of one probe: far more than one looks at, and all that a large workbook has. */
export const MOST_INPUTS = 20_000
export const MOST_WATCHED = 200

/**
 * A copy of a workbook on a graph of its own, where inputs are given other numbers and cells read. Only what the watched cells hang on is
 * computed. The workbook that it is made of is never touched.
 */
export class Probe {
  readonly inputs: readonly ProbedInput[]
  readonly watched: readonly Watched[]
  readonly #workbook: Workbook
  readonly #graph: Graph
  #sitePa: number | undefined
  #tried = new Set<number>()

  /** @throws WorkbookProblem if an input is none, a watched cell is empty, or there are too many */
  constructor(workbook: Workbook, inputs: readonly CellPlace[], watched: readonly CellPlace[]) {
    refuseMany(inputs, watched)
    const values = inputs.map((place) => inputNumber(workbook, place))
    const seen = new Set<string>()
    const repeated = inputs.find((place) => seen.size === seen.add(printCellPlace(place).toLowerCase()).size)
    if (repeated !== undefined) throw new WorkbookProblem(`${placeWords(workbook, repeated)} is given twice; accepted: each input once`)
    for (const place of watched) refuseEmpty(workbook, place)
    this.#workbook = workbook
    // Units of inputs are read too, and may be formulas.
    this.#graph = new Graph(onlyUpstream(workbook, upstreamOf(workbook, [...inputs, ...watched])))
    this.inputs = inputs.map((place, at) => ({ ...this.#described(workbook, place), value: values[at] ?? Number.NaN }))
    this.watched = watched.map((place) => ({ ...this.#described(workbook, place), isCheck: cellAtPlace(workbook, place)?.role === 'check' }))
  }

  /**
   * A number in the unit of one of its cells, for one in another unit of the same dimension.
   * @throws WorkbookProblem where there is no way from one to the other
   */
  inUnitOf(cell: Omit<Watched, 'isCheck'>, number: number, unit: Unit | undefined): number {
    return numberInCellUnit(this.#workbook, cell, number, unit, () => this.sitePa())
  }

  /** Atmospheric pressure of the site as the workbook has it, or else the standard atmosphere. */
  sitePa(): number {
    this.#sitePa ??= sitePressurePa(this.#workbook)
    return this.#sitePa
  }

  /** Gives inputs numbers, each in the unit beside it, by their position; those not named keep what they have. */
  set(numbers: ReadonlyMap<number, number>): void {
    const trials = [...numbers].flatMap(([at, number]) => {
      const input = this.inputs[at]
      if (input === undefined) return []
      this.#tried.add(at)
      return [{ sheet: input.sheet, row: input.row, column: input.column, number }]
    })
    this.#graph.tryNumbers(trials)
  }

  /** All inputs back to what the workbook holds. */
  restore(): void {
    const cells = [...this.#tried].flatMap((at) => this.inputs[at] ?? [])
    this.#tried = new Set()
    if (cells.length > 0) this.#graph.putBack(cells)
  }

  /** The watched cells as they are now, in their order. */
  read(): Reading[] {
    return this.watched.map((_, at) => this.readOne(at))
  }

  readOne(at: number): Reading {
    const place = this.watched[at]
    if (place === undefined) throw new RangeError(`there is no watched cell ${at}`)
    const value = this.#graph.value(place.sheet, place.row, place.column)
    if (!place.isCheck || typeof value !== 'boolean') return { value }
    const check = this.#graph.check(place.sheet, place.row, place.column)
    return check === undefined ? { value } : { value, check }
  }

  /** Without the margin, which takes longer. */
  valueOf(at: number): CellValue {
    const place = this.watched[at]
    return place === undefined ? null : this.#graph.value(place.sheet, place.row, place.column)
  }

  #described(workbook: Workbook, place: CellPlace): Omit<Watched, 'isCheck'> {
    const sheet = sheetAt(workbook, place)
    const unitCell = unitOfValue(sheet, place)
    const text = unitCell && this.#graph.value(sheet.name, unitCell.row, unitCell.column)
    return { ...place, sheet: sheet.name, label: nameOf(sheet, place), ...unitNamed(text) }
  }
}

/** What an input holds. @throws WorkbookProblem if the cell is no input, or holds no number */
export function inputNumber(workbook: Workbook, place: CellPlace): number {
  sheetAt(workbook, place)
  const cell = cellAtPlace(workbook, place)
  const words = `${placeWords(workbook, place)} cannot be varied: it`
  const accepted = 'accepted is an input that holds a number'
  if (cell === undefined) throw new WorkbookProblem(`${words} is an empty cell; ${accepted}`)
  if (isFormula(cell.content)) throw new WorkbookProblem(`${words} is a formula, whose value follows from others; ${accepted}`)
  if (cell.role !== 'input') throw new WorkbookProblem(`${words} is of the role ${cell.role}; ${accepted}`)
  if (cell.content === null) throw new WorkbookProblem(`${words} is empty; ${accepted}: type one first`)
  if (typeof cell.content !== 'number') throw new WorkbookProblem(`${words} holds ${typeof cell.content === 'boolean' ? 'TRUE or FALSE' : 'text'}; ${accepted}`)
  return cell.content
}

/** What keeps a value from being a number, in words. */
export function noNumberWords(value: CellValue): string {
  if (isCellError(value)) return `${value.error}: ${value.message}`
  if (value === null || value === '') return 'it is empty there'
  if (typeof value === 'boolean') return `it is ${value ? 'TRUE' : 'FALSE'} there, which is no number`
  return `it is a text there: "${String(value).slice(0, 60)}"`
}

function refuseMany(inputs: readonly CellPlace[], watched: readonly CellPlace[]): void {
  if (inputs.length > MOST_INPUTS) throw new WorkbookProblem(`${inputs.length} inputs at once; accepted: up to ${MOST_INPUTS}`)
  if (watched.length > MOST_WATCHED) throw new WorkbookProblem(`${watched.length} cells to watch; accepted: up to ${MOST_WATCHED}`)
}

function refuseEmpty(workbook: Workbook, place: CellPlace): void {
  sheetAt(workbook, place)
  const content = cellAtPlace(workbook, place)?.content
  if (content === undefined || content === null) throw new WorkbookProblem(`${printCellPlace(place)} is empty: there is nothing to watch; accepted is a cell with a result or a check`)
}
