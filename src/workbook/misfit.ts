import { findUnit, similarUnit } from '../../functions/units/units.ts'
import { isFormula, type Row } from './document.ts'
import { meantText } from './entry.ts'

/** What of a cell's content does not fit where it stands in its row, in words; nothing is refused for it. */
export function misfit(cells: Row, column: number): string | undefined {
  const cell = cells?.[column]
  const text = meantText(cell?.content)
  if (text === undefined) return undefined
  if (cell?.role === 'unit') return findUnit(text) ? undefined : unknownUnit(text)
  const beside = cells?.[column + 1]
  if (cell?.role !== 'input' || beside?.role !== 'unit' || isFormula(beside.content)) return undefined
  const unit = meantText(beside.content)
  return unit === undefined ? undefined : `"${text}" is a text, and the unit ${unit} stands beside it; accepted: a number, or a text without a unit beside it`
}

function unknownUnit(text: string): string {
  const similar = similarUnit(text)
  return similar ? `"${text}" is no unit; did you mean ${similar.code}?` : `"${text}" is no unit that Lowside knows; accepted: one of the list, which Alt + Down opens`
}
