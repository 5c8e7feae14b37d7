import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { toSi } from '../../functions/units/convert.ts'
import { findUnit } from '../../functions/units/units.ts'
import { Graph } from '../../src/calc/graph.ts'
import type { CellValue, Check } from '../../src/calc/values.ts'
import type { CellAddress } from '../../src/workbook/address.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { sheetByName, type Workbook } from '../../src/workbook/document.ts'
import { readWorkbook } from '../../src/workbook/file.ts'
import { unitOfValue } from '../../src/workbook/unit-scope.ts'

export function readTemplate(path: string): Workbook {
  const read = readWorkbook(readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8'))
  if (!('workbook' in read)) throw new Error(`${path}: ${read.problems[0]?.message}`)
  return read.workbook
}

/**
 * A workbook by the words of its rows, as its user reads it: label in column B, value in C, unit in D; and of its tables, a row by what stands in
 * column B, a column by its heading.
 */
export class OpenWorkbook {
  readonly graph: Graph

  constructor(workbook: Workbook) {
    this.graph = new Graph(workbook)
  }

  /** Types into the value's cell, and the unit's where one is given. */
  set(sheet: string, label: string, value: string, unit?: string): void {
    const row = this.#row(sheet, label)
    this.graph.apply(setEntry(this.graph.workbook, sheet, { row, column: 2 }, value))
    if (unit !== undefined) this.graph.apply(setEntry(this.graph.workbook, sheet, { row, column: 3 }, unit))
  }

  value(sheet: string, label: string): CellValue {
    return this.graph.value(sheet, this.#row(sheet, label), 2)
  }

  /** The value in SI, by the unit that stands beside it. */
  si(sheet: string, label: string): number {
    return this.#si(sheet, { row: this.#row(sheet, label), column: 2 })
  }

  check(sheet: string, label: string): Check | undefined {
    return this.graph.check(sheet, this.#row(sheet, label), 2)
  }

  setIn(sheet: string, rowName: string, heading: string, value: string): void {
    this.graph.apply(setEntry(this.graph.workbook, sheet, this.#place(sheet, rowName, heading), value))
  }

  /** Types the unit over a column of a table. */
  setUnitOver(sheet: string, rowName: string, heading: string, unit: string): void {
    this.graph.apply(setEntry(this.graph.workbook, sheet, this.#unitPlace(sheet, this.#place(sheet, rowName, heading)), unit))
  }

  valueIn(sheet: string, rowName: string, heading: string): CellValue {
    const { row, column } = this.#place(sheet, rowName, heading)
    return this.graph.value(sheet, row, column)
  }

  /** The value in SI, by the unit over its column. */
  siIn(sheet: string, rowName: string, heading: string): number {
    return this.#si(sheet, this.#place(sheet, rowName, heading))
  }

  checkIn(sheet: string, rowName: string, heading: string): Check | undefined {
    const { row, column } = this.#place(sheet, rowName, heading)
    return this.graph.check(sheet, row, column)
  }

  #si(sheet: string, place: CellAddress): number {
    const value = this.graph.value(sheet, place.row, place.column)
    const at = this.#unitPlace(sheet, place)
    const unitText = this.graph.value(sheet, at.row, at.column)
    const unit = typeof unitText === 'string' ? findUnit(unitText) : undefined
    if (typeof value !== 'number' || unit === undefined) throw new Error(`${sheet}, ${JSON.stringify(place)}: ${JSON.stringify(value)} ${JSON.stringify(unitText)} is no quantity`)
    return toSi(value, unit)
  }

  #unitPlace(sheetName: string, place: CellAddress): CellAddress {
    const sheet = sheetByName(this.graph.workbook, sheetName)
    const found = sheet && unitOfValue(sheet, place)
    if (found === undefined) throw new Error(`${sheetName}, ${JSON.stringify(place)} has no unit`)
    return found
  }

  #row(sheet: string, label: string): number {
    const found = this.#rows(sheet).findIndex((row) => row?.[1]?.content === label && row[1].role === 'label')
    if (found < 0) throw new Error(`sheet ${sheet} has no row "${label}"`)
    return found
  }

  #place(sheet: string, rowName: string, heading: string): CellAddress {
    const rows = this.#rows(sheet)
    const head = rows.findIndex((row) => row?.some((cell) => cell?.role === 'heading' && cell.content === heading))
    const column = rows[head]?.findIndex((cell) => cell?.role === 'heading' && cell.content === heading) ?? -1
    const row = rows.findIndex((held, index) => index > head && held?.[1]?.content === rowName)
    if (column < 0 || row < 0) throw new Error(`sheet ${sheet} has no table with a row "${rowName}" and a heading "${heading}"`)
    return { row, column }
  }

  #rows(sheet: string): Workbook['sheets'][number]['rows'] {
    return sheetByName(this.graph.workbook, sheet)?.rows ?? []
  }
}
