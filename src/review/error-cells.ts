import { isCellError, type CellError } from '../calc/values.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { eachCell } from '../workbook/cells.ts'
import { isFormula, type Cell, type Sheet } from '../workbook/document.ts'
import { grouped } from './grouped.ts'
import type { Referred, Survey } from './survey.ts'

/** A cell that shows an error. */
export interface ErrorCell extends CellPlace {
  readonly cell: Cell
  readonly home: Sheet
  readonly value: CellError
}

/** The engine's sign for a formula that depends on its own result, and for all that use it. */
export const LOOP_ERROR = '#CYCLE!'

/** All cells that show an error, found by what formulas refer to. */
export class ErrorCells {
  readonly all: readonly ErrorCell[]
  readonly #bySheet: ReadonlyMap<Sheet, ReadonlyMap<number, readonly ErrorCell[]>>

  constructor(survey: Survey, wanted: (error: string) => boolean) {
    const all: ErrorCell[] = []
    for (const home of survey.workbook.sheets) {
      eachCell(home, (cell, row, column) => {
        const value = survey.value(home.name, row, column)
        if (isCellError(value) && wanted(value.error)) all.push({ sheet: home.name, row, column, cell, home, value })
      })
    }
    this.all = all
    this.#bySheet = new Map([...grouped(all, ({ home }) => home)].map(([home, cells]) => [home, grouped(cells, ({ row }) => row)]))
  }

  /** Those in an area, in the order of reading. */
  *in({ sheet, area: { top, left, bottom, right } }: Referred): Generator<ErrorCell> {
    const rows = this.#bySheet.get(sheet)
    if (rows === undefined) return
    const part = function* (row: number): Generator<ErrorCell> {
      for (const one of rows.get(row) ?? []) if (one.column >= left && one.column <= right) yield one
    }
    // A range of few cells among many errors, or one of a whole sheet with few.
    if (bottom - top < rows.size) for (let row = top; row <= bottom; row++) yield* part(row)
    else for (const row of rows.keys()) if (row >= top && row <= bottom) yield* part(row)
  }

  /** Those that the formula of a cell refers to. */
  *usedBy(survey: Survey, { cell, home }: ErrorCell): Generator<ErrorCell> {
    if (!isFormula(cell.content)) return
    for (const referred of survey.referred(cell.content, home)) yield* this.in(referred)
  }
}
