import { expect } from 'vitest'
import { toSi } from '../../functions/units/convert.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'
import { Graph } from '../../src/calc/graph.ts'
import type { CellValue } from '../../src/calc/values.ts'
import { parseAddress, printAddress } from '../../src/workbook/address.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { restate } from '../../src/workbook/restate.ts'
import { unitOfValue } from '../../src/workbook/unit-scope.ts'
import { readTemplate } from './open-template.ts'

/** A template's sheet by addresses, for tables; typed into as its user does. */
export class Cells {
  readonly graph: Graph

  constructor(template: string, readonly sheet: string, workbook: Workbook = readTemplate(`templates/${template}.lowside.json`)) {
    this.graph = new Graph(workbook)
  }

  type(address: string, typed: string, sheet = this.sheet): this {
    this.graph.apply(setEntry(this.graph.workbook, sheet, at(address), typed))
    return this
  }

  value(address: string, sheet = this.sheet): CellValue {
    const { row, column } = at(address)
    return this.graph.value(sheet, row, column)
  }

  number(address: string, sheet = this.sheet): number {
    const value = this.value(address, sheet)
    if (typeof value !== 'number') throw new Error(`${sheet}!${address}: ${JSON.stringify(value)} is no number`)
    return value
  }

  /** In SI, by the unit in another cell. */
  si(address: string, unitAddress: string, sheet = this.sheet): number {
    const unit = findUnit(String(this.value(unitAddress, sheet)))
    if (unit === undefined) throw new Error(`${sheet}!${unitAddress} has no unit`)
    return toSi(this.number(address, sheet), unit)
  }

  /** The row of a label, as its address counts it. */
  row(label: string, sheet = this.sheet): number {
    const rows = this.graph.workbook.sheets.find(({ name }) => name === sheet)?.rows ?? []
    const found = rows.findIndex((row) => row?.[1]?.content === label)
    if (found < 0) throw new Error(`sheet ${sheet} has no row "${label}"`)
    return found + 1
  }
}

/** Every number of the workbook with a unit beside it or over it is the same quantity once it is restated in SI; and nothing else changes. */
export function expectRestated(template: string): void {
  const us = readTemplate(`templates/${template}.lowside.json`)
  const before = new Graph(us)
  const after = new Graph(applyEdits(us, restate(us, 'SI')).workbook)
  let compared = 0
  for (const { name, rows } of us.sheets) {
    rows.forEach((row, r) => row?.forEach((cell, c) => {
      if (cell?.role !== 'result' && cell?.role !== 'check') return
      const [one, other] = [before.value(name, r, c), after.value(name, r, c)]
      const [from, to] = [unitFor(before, name, r, c), unitFor(after, name, r, c)]
      const where = `${template}, ${name}!${printAddress(r, c)}`
      if (typeof one === 'number' && typeof other === 'number') {
        compared++
        const [left, right] = [from ? toSi(one, from) : one, to ? toSi(other, to) : other]
        expect(Math.abs(left - right), `${where}: ${one} against ${other}`).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(left), Math.abs(right), 1e-6))
      } else if (cell.role === 'check') expect(other, where).toEqual(one)
    }))
  }
  expect(compared, `${template}: no result has been compared`).toBeGreaterThan(0)
}

function unitFor(graph: Graph, sheetName: string, row: number, column: number): Unit | undefined {
  const sheet = graph.workbook.sheets.find(({ name }) => name === sheetName)
  const unitAt = sheet && unitOfValue(sheet, { row, column })
  return unitAt && findUnit(String(graph.value(sheetName, unitAt.row, unitAt.column)))
}

function at(address: string): { readonly row: number; readonly column: number } {
  const found = parseAddress(address)
  if (found === undefined) throw new Error(`${address} is no address`)
  return found
}
