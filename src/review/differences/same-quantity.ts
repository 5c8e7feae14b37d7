import { isFault } from '../../../functions/fault.ts'
import { toSi } from '../../../functions/units/convert.ts'
import { parseQuantity } from '../../../functions/units/quantity.ts'
import { findUnit, type Unit } from '../../../functions/units/units.ts'
import type { CellContent } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { numberIn } from '../../workbook/restate.ts'

/** Relative: what the arithmetic of a conversion and a rounding to 15 digits may leave. */
const AS_GOOD_AS_SAME = 1e-12

/** Whether numbers in two units of one dimension, both gauge or both absolute, are the same quantity. */
export function sameNumbers(one: number, from: Unit, other: number, to: Unit): boolean {
  if (!isComparable(from, to)) return false
  const [there, back] = [numberIn(one, from, to), numberIn(other, to, from)]
  // A temperature near the zero of its scale has lost digits to the zero point.
  const scale = (number: number, unit: Unit): number => Math.max(Math.abs(number), unit.offset === 0 ? 0 : Math.abs(toSi(number, unit, 0)) / Math.abs(unit.factor))
  return Math.abs(there - other) <= AS_GOOD_AS_SAME * scale(other, to) || Math.abs(back - one) <= AS_GOOD_AS_SAME * scale(one, from)
}

/** Whether a number in one unit may be held against a number in the other: a gauge pressure is none but against another. */
export const isComparable = (from: Unit, to: Unit): boolean => from.dimension === to.dimension && from.gauge === to.gauge

/** Whether two typed contents are one quantity in different units: numbers with a unit cell each, or texts such as "31 °F". */
export function sameQuantity(before: CellContent, unitBefore: string | undefined, now: CellContent, unitNow: string | undefined): boolean {
  const [one, other] = [quantityOf(before, unitBefore), quantityOf(now, unitNow)]
  return one !== undefined && other !== undefined && one.unit.code !== other.unit.code && sameNumbers(one.value, one.unit, other.value, other.unit)
}

function quantityOf(content: CellContent, unitText: string | undefined): { readonly value: number; readonly unit: Unit } | undefined {
  if (typeof content === 'number') {
    const unit = unitText === undefined ? undefined : findUnit(unitText)
    return unit && { value: content, unit }
  }
  const text = meantText(content)
  const quantity = text === undefined ? undefined : parseQuantity(text)
  return quantity === undefined || isFault(quantity) ? undefined : quantity
}
