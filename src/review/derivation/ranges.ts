import { findUnit } from '../../../functions/units/units.ts'
import { isProportional } from '../../calc/check.ts'
import { isCellError, type CellValue } from '../../calc/values.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import type { Survey } from '../survey.ts'
import { withUnit } from './with-unit.ts'
import type { ReferredCells } from './formula-source.ts'

/** A range in a line: how much of it holds something, from where to where it goes, and what it adds up to where that means something. */
export function rangeSummary(survey: Survey, { sheet, area: { top, left, bottom, right } }: ReferredCells): string {
  const values: CellValue[] = []
  for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) values.push(survey.value(sheet.name, row, column))
  const filled = values.filter((value) => value !== null && value !== '')
  const numbers = filled.filter((value) => typeof value === 'number')
  const errors = filled.filter(isCellError).length
  const held = filled.length === values.length ? 'all filled' : `of which ${filled.length} hold something`
  return [
    `${values.length} cells, ${held}`,
    ...(numbers.length === 0 ? [] : [numberWords(numbers, unitOf(survey, { sheet, area: { top, left, bottom, right } }), numbers.length < filled.length)]),
    ...(numbers.length === 0 ? textWords(filled) : []),
    ...(errors > 0 ? [`${errors} ${errors === 1 ? 'error' : 'errors'}`] : []),
  ].join(', ')
}

/** The unit that all its numbers have, `null` where they have several. */
function unitOf(survey: Survey, { sheet, area: { top, left, bottom, right } }: ReferredCells): string | undefined | null {
  const found = new Set<string | undefined>()
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) if (typeof survey.value(sheet.name, row, column) === 'number') found.add(survey.unit(sheet, row, column))
  }
  return found.size > 1 ? null : [...found][0]
}

function numberWords(numbers: readonly number[], unit: string | undefined | null, isSome: boolean): string {
  if (unit === null) return `${numbers.length} numbers of different units`
  const [least, most] = [numbers.reduce((one, other) => Math.min(one, other)), numbers.reduce((one, other) => Math.max(one, other))]
  const known = unit === undefined ? undefined : findUnit(unit)
  const sum = unit === undefined || known === undefined || (isProportional(known) && known.dimension !== 'share') ? `, sum ${withUnit(formatNumber(numbers.reduce((one, other) => one + other, 0)), unit)}` : ''
  const count = isSome ? `${numbers.length} numbers ` : ''
  return `${count}${least === most ? 'each ' : `${formatNumber(least)} to `}${withUnit(formatNumber(most), unit)}${sum}`
}

function textWords(filled: readonly CellValue[]): string[] {
  const texts = filled.filter((value) => typeof value === 'string')
  const [first, last] = [texts[0], texts.at(-1)]
  if (first === undefined || last === undefined) return []
  return [texts.length === 1 || first === last ? `“${first}”` : `“${first}” … “${last}”`]
}
