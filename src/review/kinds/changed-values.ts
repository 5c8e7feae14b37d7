import { formatNumber } from '../../../functions/units/format.ts'
import { bandOf } from '../bands.ts'
import type { FindingKind, Found } from '../finding.ts'
import { inputsOf, type InputCell } from '../input-cells.ts'
import { merge, type CellFound } from '../merge.ts'
import { textsRight, UNSURE } from '../source-words.ts'
import type { Survey } from '../survey.ts'
import type { TemplateMatch } from '../template-match.ts'
import { isAsInTemplate, templateValue } from '../template-values.ts'

/** Numbers that are no more the template’s, beside the source that the template gives for its own. */
export const changedValues: FindingKind = {
  kind: 'changed-values',
  heading: 'Values changed, their source not',
  about:
    'Where a number is another than in the template, the template’s source beside it may not speak of it any more. Looked at are sources that name a publication or say from memory, common practice or their like; a source such as “Site” or “Vessel maker” holds for any number.',
  find(survey) {
    const { template } = survey
    return template === undefined ? [] : merge(inputsOf(survey).flatMap((input) => changed(survey, template, input)))
  },
}

function changed(survey: Survey, template: TemplateMatch, input: InputCell): CellFound[] {
  const { sheet, row, column, cell: { content } } = input
  const given = typeof content === 'number' ? templateValue(template, input) : undefined
  // A row of a table is another thing with each name; its source is that of the method.
  if (given === undefined || isAsInTemplate(template, input) || isListed(input)) return []
  const source = textsRight(sheet, row, column).at(-1)
  const theirs = Array.from({ length: sheet.rows[row]?.length ?? 0 }, (_, at) => template.cell({ sheet: sheet.name, row, column: at })?.content)
  if (source === undefined || !(UNSURE.test(source) || PUBLISHED.test(source)) || !theirs.includes(source)) return []
  const unit = survey.unit(sheet, row, column)
  const inUnit = (number: number): string => `${formatNumber(number)}${unit === undefined || unit === '-' ? '' : ` ${unit}`}`
  const found: Found = {
    severity: 'remark', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, key: `changed to ${inUnit(Number(content))}`,
    reason: `The template “${template.title}” has ${inUnit(given)} here, and its source still stands beside ${inUnit(Number(content))}: “${shortened(source)}”. Write where the number comes from now.`,
  }
  return [{ found, alike: found.reason }]
}

/** "Stoecker (1998), ch. 10", "ISO 2533", "RETA Breeze, Jan/Feb 2026". */
const PUBLISHED = /\b(?:1[89]|20)\d\d\b|\b(?:ISO|EN|IEC|ASME|ASHRAE|IIAR|CFR)\b/

/** Whether it stands in a table of things, each with its name: not beside a label. */
const isListed = ({ sheet, row, column }: InputCell): boolean =>
  bandOf(sheet, row) !== undefined && sheet.rows[row]?.[column + 1]?.role !== 'unit' && sheet.rows[row]?.slice(0, column).some((cell) => cell?.role === 'label') !== true

const shortened = (text: string): string => (text.length > 80 ? `${text.slice(0, 80)}…` : text)
