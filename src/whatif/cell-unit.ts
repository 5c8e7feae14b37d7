import { convert } from '../../functions/units/convert.ts'
import { findUnit, unitCodes, type Unit } from '../../functions/units/units.ts'
import { Graph } from '../calc/graph.ts'
import { isFormula, type Workbook } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import { numberIn } from '../workbook/restate.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { placeWords, sheetAt } from './place.ts'
import { onlyUpstream, upstreamOf } from '../workbook/upstream.ts'

/** The unit that stands beside a cell or over it. */
export interface CellUnit {
  /** As it stands there; undefined where there is none. */
  readonly unitText: string | undefined
  /** Undefined where the text is no unit that is known, too. */
  readonly unit: Unit | undefined
}

/** The unit of one cell. Where its unit is a formula, so much of the workbook is computed as it takes. */
export function cellUnit(workbook: Workbook, place: CellPlace): CellUnit {
  const sheet = sheetAt(workbook, place)
  const at = unitOfValue(sheet, place)
  if (at === undefined) return { unitText: undefined, unit: undefined }
  const content = sheet.rows[at.row]?.[at.column]?.content
  if (!isFormula(content)) return unitNamed(meantText(content))
  const unitPlace = { sheet: sheet.name, ...at }
  return unitNamed(new Graph(onlyUpstream(workbook, upstreamOf(workbook, [unitPlace]))).value(sheet.name, at.row, at.column))
}

export function unitNamed(text: unknown): CellUnit {
  const unitText = typeof text === 'string' && text !== '' ? text : undefined
  return { unitText, unit: unitText === undefined ? undefined : findUnit(unitText) }
}

/**
 * A number in the unit of a cell, for one in another unit of the same dimension. Gauge and absolute pressures differ by the atmospheric pressure
 * of the site, asked for only then.
 * @throws WorkbookProblem where there is no way from one to the other
 */
export function numberInCellUnit(workbook: Workbook, cell: CellPlace & CellUnit, number: number, given: Unit | undefined, sitePa: () => number): number {
  if (given === undefined || given === cell.unit) return number
  if (cell.unit?.dimension !== given.dimension) {
    const has = cell.unitText === undefined ? 'which has no unit' : `which is in ${cell.unitText}`
    const accepted = cell.unit === undefined ? 'a number alone' : `units of the same dimension: ${unitCodes(cell.unit.dimension).join(', ')}`
    throw new WorkbookProblem(`${given.code} does not fit ${placeWords(workbook, cell)}, ${has}; accepted: ${accepted}`)
  }
  if (given.gauge === cell.unit.gauge) return numberIn(number, given, cell.unit)
  return Number(convert(number, given, cell.unit, sitePa()).toPrecision(15))
}
