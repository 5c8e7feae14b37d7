import { STANDARD_ATMOSPHERE_PA } from '../../../functions/units/constants.ts'
import { printReference, type Reference } from '../../workbook/address.ts'
import type { Sheet } from '../../workbook/document.ts'
import { namedReference } from '../../workbook/formula/references.ts'
import type { Survey } from '../survey.ts'
import { unitQuantity } from './known-unit.ts'
import { sameFactor } from './meaning.ts'

/** The pressure of the atmosphere where the plant stands, as a workbook has it. */
export interface Site {
  /** What a formula says for it: `site_pressure`, `Basis!$C$8:$D$8`. */
  readonly text: string
  /** Within half a per cent. */
  readonly isStandard: boolean
}

const NAME = 'site_pressure'

/** By the name that templates have for it, else the cell with SITE.PRESSURE that has its unit beside it. */
export function siteOf(survey: Survey): Site | undefined {
  const named = namedReference(survey.workbook.names, NAME)
  const [home] = survey.workbook.sheets
  const resolved = named && home && survey.resolve(named, home)
  if (resolved) return { text: NAME, isStandard: isStandard(survey, resolved.sheet, resolved.area.top, resolved.area.left) }
  const found = survey.formulas.find(({ formula, sheet, row, column }) => /^=\s*SITE\.PRESSURE\(/i.test(formula) && sheet.rows[row]?.[column + 1]?.role === 'unit')
  if (found === undefined) return undefined
  const { sheet, row, column } = found
  const corner = (at: number): Reference['from'] => ({ row, column: at, rowAbsolute: true, columnAbsolute: true })
  return { text: printReference({ sheet: sheet.name, from: corner(column), to: corner(column + 1) }), isStandard: isStandard(survey, sheet, row, column) }
}

function isStandard(survey: Survey, sheet: Sheet, row: number, column: number): boolean {
  const value = survey.value(sheet.name, row, column)
  const unit = unitQuantity(survey.unit(sheet, row, column) ?? '')
  return typeof value !== 'number' || unit === undefined || sameFactor(value * unit.factor, STANDARD_ATMOSPHERE_PA, 5e-3)
}
