import { findUnit, type Unit } from '../../../functions/units/units.ts'
import { isFormula, sheetByName, type Cell, type Workbook } from '../../workbook/document.ts'
import { areaOf, parseReference } from '../../workbook/address.ts'
import { namedReference } from '../../workbook/formula/references.ts'
import { withUnit } from '../../whatif/quantity-words.ts'
import { unitTextOf } from '../../whatif/held-inputs.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { cellAtPlace, nameOf } from '../../whatif/place.ts'
import { upstreamOf } from '../../workbook/upstream.ts'

/** A cell as a panel speaks of it. */
export interface CellWords {
  readonly place: CellPlace
  readonly cell: Cell | undefined
  readonly label: string | undefined
  readonly unitText: string | undefined
  readonly unit: Unit | undefined
}

/** The cell that a typed address or name stands for; or, in words, why there is none. @param home the sheet meant where none is named */
export function placeTyped(workbook: Workbook, text: string, home: string): CellPlace | string {
  const typed = text.trim()
  if (typed === '') return 'no cell yet'
  const reference = parseReference(typed) ?? namedReference(workbook.names, typed)
  if (reference === undefined) return `"${typed}" is neither an address nor a name of the workbook; accepted: ${EXAMPLE}`
  const sheet = sheetByName(workbook, reference.sheet ?? home)
  if (sheet === undefined) return `there is no sheet "${reference.sheet ?? home}"; there are ${workbook.sheets.map(({ name }) => `"${name}"`).join(', ')}`
  const { top, left, bottom, right } = areaOf(reference)
  const isQuantity = top === bottom && right === left + 1 && sheet.rows[top]?.[right]?.role === 'unit'
  if ((top !== bottom || left !== right) && !isQuantity) return `"${typed}" stands for several cells; accepted: one, ${EXAMPLE}`
  return { sheet: sheet.name, row: top, column: left }
}
const EXAMPLE = 'such as Zones!D8'

export function cellWords(workbook: Workbook, place: CellPlace): CellWords {
  const sheet = sheetByName(workbook, place.sheet)
  const unitText = unitTextOf(workbook, place)
  return { place, cell: cellAtPlace(workbook, place), label: sheet && nameOf(sheet, place), unitText, unit: unitText === undefined ? undefined : findUnit(unitText) }
}

/** `House suction: High · 22 °F`; of a formula only what it is called. */
export function described({ cell, label, unitText }: CellWords): string {
  const value = typeof cell?.content === 'number' ? withUnit(cell.content, unitText) : undefined
  return [label ?? 'without a label', value].filter(Boolean).join(' · ')
}

export const isNumberInput = (cell: Cell | undefined): boolean => cell?.role === 'input' && typeof cell.content === 'number'

export const isResult = (cell: Cell | undefined): boolean => isFormula(cell?.content)

/** A list to choose from is of use up to so many. */
const MOST_OFFERED = 400

/** Typed numbers that a result hangs on, those of its own sheet first. */
export function offeredInputs(workbook: Workbook, targets: readonly CellPlace[]): CellWords[] {
  if (targets.length === 0) return []
  const inputs = upstreamOf(workbook, targets).places().filter((place) => isNumberInput(cellAtPlace(workbook, place)))
  const home = targets[0]?.sheet
  return [...inputs.filter(({ sheet }) => sheet === home), ...inputs.filter(({ sheet }) => sheet !== home)].slice(0, MOST_OFFERED).map((place) => cellWords(workbook, place))
}
