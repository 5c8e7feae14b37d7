import { checkCells } from '../calc/check-cells.ts'
import type { AreaValues, CellValue, Check } from '../calc/values.ts'
import type { Area } from '../workbook/address.ts'
import { spans, type Span } from '../workbook/areas.ts'
import type { Sheet, Workbook } from '../workbook/document.ts'
import { figureAreas } from '../figures/binding-place.ts'
import { figuresOfSheets } from './figures-of-sheets.ts'
import { outlineOf } from './outline.ts'

/** So many rows without anything are read rather than the reading be parted. */
const MOST_READ_FOR_NOTHING = 50
/** So many rows at a time, so that whoever calculates can do something else in between. */
const MOST_ROWS_AT_ONCE = 2000

/** What a report of some of the sheets needs the values of, by sheet: of a printed one all that is printed, of any other its checks and what figures show of it. */
export function valuesNeeded(workbook: Workbook, sheets: ReadonlySet<string>): ReadonlyMap<string, readonly Area[]> {
  const { ofSheets, others } = figuresOfSheets(workbook, sheets)
  const shown = [...ofSheets.values(), others].flat().flatMap(({ figure }) => figureAreas(figure, workbook))
  return new Map(workbook.sheets.map((sheet) => {
    const areas = shown.flatMap(({ sheet: name, area }) => (name === sheet.name ? [area] : []))
    return [sheet.name, areasNeeded(sheet, sheets.has(sheet.name), areas)]
  }))
}

/** Not the empty rows before a lone far cell. */
function areasNeeded(sheet: Sheet, isPrinted: boolean, shown: readonly Area[]): readonly Area[] {
  const { head, blocks, columns } = outlineOf(sheet)
  const checks = checkCells(sheet)
  const rows = isPrinted ? [...head, ...blocks.flat()] : checks.map(({ row }) => row)
  const right = [...(isPrinted ? columns : checks.map(({ column }) => column)), ...shown.map((area) => area.right)].reduce((most, column) => Math.max(most, column), 0)
  return closeSpans([...rows.map((row) => ({ first: row, last: row })), ...shown.map(({ top, bottom }) => ({ first: top, last: bottom }))])
    .flatMap(inPieces)
    .map(({ first, last }) => ({ top: first, left: 0, bottom: last, right }))
}

/** The values of several areas, each beginning in column A, as one from A1. */
export function joined(parts: readonly (readonly [Area, AreaValues])[]): AreaValues {
  const values: (readonly CellValue[])[] = []
  const checks = new Map<string, Check>()
  for (const [{ top }, part] of parts) {
    for (const [offset, row] of part.values.entries()) values[top + offset] = row
    for (const [address, check] of part.checks) checks.set(address, check)
  }
  return { values, checks }
}

const closeSpans = (some: readonly Span[]): Span[] =>
  spans(some.map(({ first, last }) => ({ first, last: last + MOST_READ_FOR_NOTHING }))).map(({ first, last }) => ({ first, last: last - MOST_READ_FOR_NOTHING }))

const inPieces = ({ first, last }: Span): Span[] =>
  Array.from({ length: Math.ceil((last - first + 1) / MOST_ROWS_AT_ONCE) }, (_, index) => ({ first: first + index * MOST_ROWS_AT_ONCE, last: Math.min(last, first + (index + 1) * MOST_ROWS_AT_ONCE - 1) }))
