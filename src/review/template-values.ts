import { convert } from '../../functions/units/convert.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'
import type { CellAddress } from '../workbook/address.ts'
import type { CellContent, Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { unitFinder } from '../workbook/unit-scope.ts'
import type { InputCell } from './input-cells.ts'
import type { TemplateMatch } from './template-match.ts'

/** Whether the template has the same number there, be it in another unit. */
export function isAsInTemplate(template: TemplateMatch, input: InputCell): boolean {
  const { content } = input.cell
  const given = templateValue(template, input)
  return given === content || (given !== undefined && typeof content === 'number' && Math.abs(given - content) <= CLOSE * Math.max(Math.abs(given), Math.abs(content)))
}

/** Restated numbers may have been rounded to what a person would type. */
const CLOSE = 1e-6

/** The number that the template has where an input stands, in the unit that stands there now; undefined where it has none, or of another dimension. */
export function templateValue(template: TemplateMatch, { sheet, row, column }: InputCell): number | undefined {
  const given = template.cell({ sheet: sheet.name, row, column })?.content
  if (typeof given !== 'number') return undefined
  const at = unitPlace(sheet, { row, column })
  const own = at && sheet.rows[at.row]?.[at.column]?.content
  const theirs = at && template.cell({ sheet: sheet.name, ...at })?.content
  if (own === theirs) return given
  const [to, from] = [unitIn(own), unitIn(theirs)]
  return to === undefined || from === undefined || to.dimension !== from.dimension ? undefined : convert(given, from, to)
}

const finders = new WeakMap<Sheet, ReturnType<typeof unitFinder>>()

function unitPlace(sheet: Sheet, place: CellAddress): CellAddress | undefined {
  const find = finders.get(sheet) ?? unitFinder(sheet)
  finders.set(sheet, find)
  return find(place)
}

const unitIn = (content: CellContent | undefined): Unit | undefined => findUnit(meantText(content ?? null) ?? '')
