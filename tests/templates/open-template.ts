import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { toSi } from '../../functions/units/convert.ts'
import { findUnit } from '../../functions/units/units.ts'
import { Graph } from '../../src/calc/graph.ts'
import type { CellValue } from '../../src/calc/values.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { readWorkbook } from '../../src/workbook/file.ts'

export function readTemplate(path: string): Workbook {
  const read = readWorkbook(readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8'))
  if (!('workbook' in read)) throw new Error(`${path}: ${read.problems[0]?.message}`)
  return read.workbook
}

/** A workbook by the words of its rows, as its user reads it: label in column B, value in C, unit in D. */
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
    const row = this.#row(sheet, label)
    const value = this.graph.value(sheet, row, 2)
    const unitText = this.graph.value(sheet, row, 3)
    const unit = typeof unitText === 'string' ? findUnit(unitText) : undefined
    if (typeof value !== 'number' || unit === undefined) throw new Error(`${sheet}, ${label}: ${JSON.stringify(value)} ${JSON.stringify(unitText)} is no quantity`)
    return toSi(value, unit)
  }

  #row(sheet: string, label: string): number {
    const rows = this.graph.workbook.sheets.find(({ name }) => name === sheet)?.rows ?? []
    const found = rows.flatMap((row, index) => (row?.[1]?.content === label && row[1].role === 'label' ? [index] : []))
    if (found[0] === undefined) throw new Error(`sheet ${sheet} has no row "${label}"`)
    return found[0]
  }
}
