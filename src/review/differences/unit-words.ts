import { findUnit } from '../../../functions/units/units.ts'
import { isFormula, type Cell } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { valuesOfUnit } from '../../workbook/unit-scope.ts'
import { labelOf } from '../../workbook/words-beside.ts'
import type { CellPair } from './cell-differences.ts'
import type { Found } from './found.ts'
import { sameQuantity } from './same-quantity.ts'
import type { PairedSheets, Sides } from './sides.ts'
import { contentWords, counted, EMPTY, listed } from './words.ts'

/** A unit cell that holds another unit, in words that name the values it applies to: whether they were converted, or mean something else now. */
export function unitWords(sides: Sides, { sheetNow }: PairedSheets, at: CellPair, before: Cell, now: Cell): Pick<Found, 'label' | 'was' | 'is' | 'accept'> {
  const [unitBefore, unitNow] = [unitText(before), unitText(now)]
  const values = valuesOfUnit(sheetNow, at.now).flatMap(({ row, column }) => {
    const place = { sheet: sheetNow.name, row, column }
    const earlier = sides.back.place(place)
    const [cell, was] = [sheetNow.rows[row]?.[column], earlier && sides.before.cell(earlier)?.content]
    return cell ? [{ place, is: cell.content, was }] : []
  })
  const typed = values.filter(({ is }) => typeof is === 'number')
  const converted = typed.filter(({ was, is }) => was !== undefined && sameQuantity(was, unitBefore, is, unitNow))
  // Of a column's unit the heading says enough: what stands first in its row is another unit.
  const label = values.length === 1 && values[0] ? sides.now.label(values[0].place) : labelOf(sheetNow, at.now)
  const words = { words: converted.length === 0 ? `Writes ${unitBefore} again.` : `Writes ${unitBefore} again, and puts ${converted.length === 1 ? 'its number' : `${counted(converted.length, 'number')} under it`} back.` }
  const [only] = values.length === 1 ? values : []
  if (only && !isFormula(only.is)) {
    const told = converted.length === 1 ? 'the same quantity' : only.was === only.is ? meaningWords(unitBefore, unitNow) : 'another quantity'
    return { label, was: contentWords(only.was ?? null, unitBefore), is: `${contentWords(only.is, unitNow)}: ${told}`, accept: words }
  }
  const kept = typed.filter((one) => one.was === one.is && !converted.includes(one))
  const formulas = values.length - typed.length
  const parts = [
    ...(converted.length > 0 ? [`${counted(converted.length, 'number')} converted, the same ${converted.length === 1 ? 'quantity' : 'quantities'}`] : []),
    ...(kept.length > 0 ? [`${counted(kept.length, 'number')} left as typed, ${meaningWords(unitBefore, unitNow)}: ${listed(kept.map(({ is }) => contentWords(is)))}`] : []),
    ...(formulas > 0 ? [`asked of ${counted(formulas, 'formula')}`] : []),
  ]
  return { label, was: unitBefore, is: [unitNow, ...parts].join('; '), accept: words }
}

const unitText = ({ content }: Cell): string => (content === null ? EMPTY : (meantText(content) ?? contentWords(content)))

/** What a number that stays means by another unit. */
function meaningWords(before: string, now: string): string {
  const [one, other] = [findUnit(before), findUnit(now)]
  return one && other && one.code === other.code ? 'the same unit, written otherwise' : 'so another quantity'
}
