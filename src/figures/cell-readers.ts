import { isFault } from '../../functions/fault.ts'
import { toSi } from '../../functions/units/convert.ts'
import { parseQuantity } from '../../functions/units/quantity.ts'
import { findUnit, type Dimension, type Unit } from '../../functions/units/units.ts'
import { isCellError, type CellValue } from '../calc/values.ts'
import { printAddress } from '../workbook/address.ts'
import { formatNumber } from '../workbook/number-format.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import type { Place } from './binding-place.ts'
import type { Quantity } from './values.ts'

/** What a cell gives, or why it gives nothing. */
export type Read<Value> = { readonly value: Value | undefined } | { readonly fault: string }

/** Reads numbers with their units: beside them, at the head of their table, or in the same text. Gauge units count from the site's pressure. */
export function quantityReader({ sheet, area }: Place, at: (row: number, column: number) => CellValue, dimension: Dimension, sitePa: number | undefined) {
  const heads = new Map<number, Read<Unit>>()
  return (row: number, column: number): Read<Quantity> => reader((value): Read<Quantity> => {
    if (typeof value === 'boolean') return { fault: `the cell holds ${heldWords(value)}` }
    const written = typeof value === 'string' ? parseQuantity(value) : undefined
    if (written && isFault(written)) return { fault: `the cell holds ${heldWords(value)}` }
    const unit = written ? { value: written.unit } : unitOf(row, column)
    if ('fault' in unit) return unit
    if (!unit.value) return { fault: 'no unit stands beside the number or at the head of its table' }
    if (unit.value.dimension !== dimension) return { fault: `${unit.value.code} is a unit of ${unit.value.dimension}` }
    if (unit.value.gauge && sitePa === undefined) return { fault: `${unit.value.code} counts from the pressure of the site: bind the atmospheric pressure of the site too` }
    const number = written ? written.value : Number(value)
    const shown = `${formatNumber(number, sheet.rows[row]?.[column] ?? {})} ${unit.value.code}`
    return { value: { si: toSi(number, unit.value, sitePa), unit: unit.value, shown } }
  })(at(row, column))

  /** Beside the number, else at the head of the column, which is looked up once. */
  function unitOf(row: number, column: number): Read<Unit> {
    if (sheet.rows[row]?.[column + 1]?.role === 'unit' || (area.right > column && findUnit(String(at(row, column + 1))))) return unitAt(row, column + 1)
    const known = heads.get(column)
    if (known) return known
    const place = unitOfValue(sheet, { row, column })
    const unit: Read<Unit> = place ? unitAt(place.row, place.column) : { value: undefined }
    heads.set(column, unit)
    return unit
  }

  function unitAt(row: number, column: number): Read<Unit> {
    const text = at(row, column)
    if (text === null || text === '') return { value: undefined }
    const unit = typeof text === 'string' ? findUnit(text) : undefined
    return unit ? { value: unit } : { fault: `${printAddress(row, column)} holds no unit that Lowside knows` }
  }
}

/** A text; blanks alone are nothing. */
export const readText = reader((value) => {
  const text = String(value).trim()
  return { value: text === '' ? undefined : text }
})

export const readNumber = reader((value) => (typeof value === 'number' ? { value } : { fault: `the cell holds ${heldWords(value)}` }))

export const readTruth = reader((value) => (typeof value === 'boolean' ? { value } : { fault: `the cell holds ${heldWords(value)}` }))

/** What all cells have in common: nothing is nothing, and an error is a fault. */
function reader<Value>(read: (value: string | number | boolean) => Read<Value>): (value: CellValue) => Read<Value> {
  return (value) => {
    if (isCellError(value)) return { fault: `the cell shows ${value.error}: ${value.message}` }
    return value === null || value === '' ? { value: undefined } : read(value)
  }
}

const heldWords = (value: string | number | boolean): string => (typeof value === 'string' ? `the text "${value}"` : String(value).toUpperCase())
