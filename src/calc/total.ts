import type { Area } from '../workbook/address.ts'
import { isFormula, type Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { unitOfValue, valuesOfUnit } from '../workbook/unit-scope.ts'
import type { CellValue } from './values.ts'

/** What the numbers of areas come to together. */
export interface Total {
  /** How many numbers there are. */
  readonly count: number
  readonly sum: number
  readonly least: number
  readonly greatest: number
  /** The unit that all of them have; null where they have different ones or only some have one; undefined where none has. */
  readonly unit: string | null | undefined
}

/** Adds up the numbers of areas that do not overlap; `values` are an area's values, row by row. Undefined where there is no number. */
export function totalOf(sheet: Sheet, parts: readonly { readonly area: Area; readonly values: readonly (readonly CellValue[])[] }[]): Total | undefined {
  let [count, sum, least, greatest] = [0, 0, Infinity, -Infinity]
  let unit: string | null | undefined
  const unitAt = unitReader(sheet)
  const add = (value: number, row: number, column: number): void => {
    // Once units differ, no further one is looked for.
    const own = unit === null ? null : unitAt(row, column)
    if (count === 0) unit = own
    else if (own !== unit) unit = null
    count++
    sum += value
    least = Math.min(least, value)
    greatest = Math.max(greatest, value)
  }
  for (const { area, values } of parts) {
    for (const [down, row] of values.entries()) {
      for (const [across, value] of row.entries()) if (typeof value === 'number') add(value, area.top + down, area.left + across)
    }
  }
  return count === 0 ? undefined : { count, sum, least, greatest, unit }
}

/** The unit as written that a cell's number has. What heads a table is looked up once, not for each of its rows. */
function unitReader(sheet: Sheet): (row: number, column: number) => string | undefined {
  const known = new Map<number, Map<number, string | undefined>>()
  return (row, column) => {
    const inColumn = known.get(column) ?? new Map<number, string | undefined>()
    known.set(column, inColumn)
    if (inColumn.has(row)) return inColumn.get(row)
    const at = unitOfValue(sheet, { row, column })
    const content = at && sheet.rows[at.row]?.[at.column]?.content
    const unit = isFormula(content) ? undefined : meantText(content)
    if (at && at.row !== row) for (const value of valuesOfUnit(sheet, at)) inColumn.set(value.row, unit)
    else inColumn.set(row, unit)
    return unit
  }
}
