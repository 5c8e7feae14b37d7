import { printAddress } from '../workbook/address.ts'
import { setEntry } from '../workbook/commands.ts'
import type { Cell, Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { contentOf } from '../workbook/entry.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { isFault } from '../../functions/fault.ts'
import { parseQuantity } from '../../functions/units/quantity.ts'
import { cellUnit, numberInCellUnit } from '../whatif/cell-unit.ts'
import { sitePressurePa } from '../whatif/site.ts'
import { locate, printPlace, type Place } from './locate.ts'
import { Refusal } from './refusal.ts'
import { assignment } from './whatif-arguments.ts'

/**
 * The workbook with one input changed as `Sheet!C5=120` says; what follows the "=" is read as the entry line would, but that a number
 * may have a unit, `Sheet!C5=120 kW`: it is converted into the unit beside the cell.
 * @throws Refusal if the cell is no input, or if a number should stand there and none does
 */
export function setInput(workbook: Workbook, text: string): Workbook {
  const parts = assignment(text)
  if (parts === undefined) throw new Refusal(`--set "${text}": write an address, "=" and a value, such as "Sheet!C5=120"`)
  const [place, ...others] = locate(workbook, parts.address)
  if (place === undefined || others.length > 0) throw new Refusal(`--set "${text}": one cell at a time is set`)
  const cell = place.sheet.rows[place.row]?.[place.column]
  if (cell?.role !== 'input') throw new Refusal(`--set: ${printPlace(place)} is ${roleWords(cell)}; only inputs can be set`)
  const typed = withoutUnit(workbook, place, cell, parts.rest)
  refuseOtherThanNumber(place, cell, typed)
  return applyEdits(workbook, setEntry(workbook, place.sheet.name, place, typed)).workbook
}

/** A number with a unit, where the cell holds a number and has a unit, is converted into that unit; anything else stays as typed. */
function withoutUnit(workbook: Workbook, place: Place, cell: Cell, typed: string): string {
  if (!wantsNumber(place, cell)) return typed
  const quantity = parseQuantity(typed)
  if (isFault(quantity)) return typed
  const at = { sheet: place.sheet.name, row: place.row, column: place.column }
  return String(numberInCellUnit(workbook, { ...at, ...cellUnit(workbook, at) }, quantity.value, quantity.unit, () => sitePressurePa(workbook)))
}

/** Where a number stands, or an empty cell with a unit. */
const wantsNumber = (place: Place, { content }: Cell): boolean => typeof content === 'number' || (content === null && unitOfValue(place.sheet, place) !== undefined)

const roleWords = (cell: Cell | undefined): string => (cell === undefined ? 'an empty cell' : `of the role ${cell.role}`)

/** Where a number is wanted, text would only become an error further on. */
function refuseOtherThanNumber(place: Place, cell: Cell, typed: string): void {
  const entered = contentOf(typed)
  const isNumberOrFormula = typeof entered === 'number' || (typeof entered === 'string' && entered.startsWith('='))
  const unit = unitOfValue(place.sheet, place)
  if (isNumberOrFormula || !wantsNumber(place, cell)) return
  const unitWords = unit === undefined ? '' : `; the unit stands in ${printAddress(unit.row, unit.column)} (${place.sheet.rows[unit.row]?.[unit.column]?.content ?? 'empty'})`
  throw new Refusal(`--set: ${printPlace(place)} holds a number, and "${typed}" is not one${unitWords}: write for example "${printPlace(place)}=120"`)
}
