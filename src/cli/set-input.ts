import { printAddress } from '../workbook/address.ts'
import { setEntry } from '../workbook/commands.ts'
import type { Cell, Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { contentOf } from '../workbook/entry.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { locate, printPlace, type Place } from './locate.ts'
import { Refusal } from './refusal.ts'

/** Everything before the first "=" that stands in no quoted sheet name, and everything after it. */
const ASSIGNMENT = /^((?:'(?:[^']|'')*'!)?[^=]*)=([\s\S]*)$/

/**
 * The workbook with one input changed as `Sheet!C5=120` says; what follows the "=" is read as the entry line would.
 * @throws Refusal if the cell is no input, or if a number should stand there and none does
 */
export function setInput(workbook: Workbook, assignment: string): Workbook {
  const [, address, typed] = ASSIGNMENT.exec(assignment) ?? []
  if (address === undefined || typed === undefined) throw new Refusal(`--set "${assignment}": write an address, "=" and a value, such as "Sheet!C5=120"`)
  const [place, ...others] = locate(workbook, address)
  if (place === undefined || others.length > 0) throw new Refusal(`--set "${assignment}": one cell at a time is set`)
  const cell = place.sheet.rows[place.row]?.[place.column]
  if (cell?.role !== 'input') throw new Refusal(`--set: ${printPlace(place)} is ${roleWords(cell)}; only inputs can be set`)
  refuseOtherThanNumber(place, cell, typed)
  return applyEdits(workbook, setEntry(workbook, place.sheet.name, place, typed)).workbook
}

const roleWords = (cell: Cell | undefined): string => (cell === undefined ? 'an empty cell' : `of the role ${cell.role}`)

/** Where a number stands, or an empty cell with a unit, text would only become an error further on. */
function refuseOtherThanNumber(place: Place, { content }: Cell, typed: string): void {
  const entered = contentOf(typed)
  const isNumberOrFormula = typeof entered === 'number' || (typeof entered === 'string' && entered.startsWith('='))
  const unit = unitOfValue(place.sheet, place)
  const wantsNumber = typeof content === 'number' || (content === null && unit !== undefined)
  if (isNumberOrFormula || !wantsNumber) return
  const unitWords = unit === undefined ? '' : `; the unit stands in ${printAddress(unit.row, unit.column)} (${place.sheet.rows[unit.row]?.[unit.column]?.content ?? 'empty'})`
  throw new Refusal(`--set: ${printPlace(place)} holds a number, and "${typed}" is not one${unitWords}: write for example "${printPlace(place)}=120"`)
}
