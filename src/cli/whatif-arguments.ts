import type { Workbook } from '../workbook/document.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { locate } from './locate.ts'
import { Refusal } from './refusal.ts'

/** Everything before the first "=" that stands in no quoted sheet name, and everything after it. */
const ASSIGNMENT = /^((?:'(?:[^']|'')*'!)?[^=]*)=([\s\S]*)$/

/** `Sheet!C5=…` as its two sides; undefined where there is no "=". */
export function assignment(text: string): { readonly address: string; readonly rest: string } | undefined {
  const [, address, rest] = ASSIGNMENT.exec(text) ?? []
  return address === undefined || rest === undefined ? undefined : { address: address.trim(), rest }
}

/** The one cell that an address or a name stands for; of a name for a value and its unit, the value. @throws Refusal */
export function locateOne(workbook: Workbook, option: string, address: string): CellPlace {
  const places = locate(workbook, address)
  const [first, second] = places
  const isQuantity = places.length === 2 && first?.row === second?.row && second?.sheet.rows[second.row]?.[second.column]?.role === 'unit'
  if (first === undefined || (places.length > 1 && !isQuantity)) throw new Refusal(`${option} "${address}" stands for ${places.length} cells; accepted: one cell, such as "${exampleOf(workbook)}"`)
  return { sheet: first.sheet.name, row: first.row, column: first.column }
}

/** All cells of several addresses, each once. @throws Refusal */
export function locateAll(workbook: Workbook, addresses: readonly string[]): CellPlace[] {
  const seen = new Set<string>()
  return addresses.flatMap((address) => locate(workbook, address)).flatMap(({ sheet, row, column }) => {
    const key = `${sheet.name}!${row}:${column}`
    if (seen.has(key) || sheet.rows[row]?.[column]?.content == null || sheet.rows[row][column].role === 'unit') return []
    seen.add(key)
    return [{ sheet: sheet.name, row, column }]
  })
}

const exampleOf = ({ sheets }: Workbook): string => `${sheets[0]?.name ?? 'Sheet'}!C5`
