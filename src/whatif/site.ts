import { STANDARD_ATMOSPHERE_PA } from '../../functions/units/constants.ts'
import { toSi } from '../../functions/units/convert.ts'
import { findUnit } from '../../functions/units/units.ts'
import { Graph } from '../calc/graph.ts'
import { areaOf } from '../workbook/address.ts'
import { sheetByName, type Workbook } from '../workbook/document.ts'
import { namedReference } from '../workbook/formula/references.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { onlyUpstream, upstreamOf } from '../workbook/upstream.ts'

/** The name by which the templates' sheets know it. */
const NAME = 'site_pressure'

/** Atmospheric pressure of the site by the workbook's own name for it, Pa; the standard atmosphere (ISO 2533) where it has none. */
export function sitePressurePa(workbook: Workbook): number {
  const reference = namedReference(workbook.names, NAME)
  const sheet = reference?.sheet == null ? undefined : sheetByName(workbook, reference.sheet)
  if (reference === undefined || sheet === undefined) return STANDARD_ATMOSPHERE_PA
  const { top: row, left: column } = areaOf(reference)
  const unitCell = unitOfValue(sheet, { row, column })
  if (unitCell === undefined) return STANDARD_ATMOSPHERE_PA
  const place = { sheet: sheet.name, row, column }
  const graph = new Graph(onlyUpstream(workbook, upstreamOf(workbook, [place])))
  const value = graph.value(sheet.name, row, column)
  const unit = findUnit(String(graph.value(sheet.name, unitCell.row, unitCell.column)))
  const pa = typeof value === 'number' && unit?.dimension === 'pressure' && !unit.gauge ? toSi(value, unit) : Number.NaN
  return pa > 0 ? pa : STANDARD_ATMOSPHERE_PA
}
