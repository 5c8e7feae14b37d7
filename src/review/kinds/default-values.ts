import { printAddress } from '../../workbook/address.ts'
import { labelOf } from '../../workbook/words-beside.ts'
import { bandOf } from '../bands.ts'
import type { FindingKind, Found } from '../finding.ts'
import { listed } from '../finding-words.ts'
import { grouped } from '../grouped.ts'
import { inputsOf, namingText, wordsOf, type InputCell } from '../input-cells.ts'
import { isUnsure } from '../source-words.ts'
import type { Survey } from '../survey.ts'
import type { TemplateMatch } from '../template-match.ts'
import { isAsInTemplate } from '../template-values.ts'

/** Numbers that came with the template and that nobody has stood up for yet. */
export const defaultValues: FindingKind = {
  kind: 'default-values',
  heading: 'Values from memory or practice, still as the template has them',
  about:
    'A template’s practice values are a start: whoever uses them confirms them, and writes the source beside them. Named, once for each block, are numbers that are the template’s, with its words “from memory”, “common practice”, “confirm” or their like beside them. Not looked for while no input differs from the template at all.',
  *find(survey) {
    const { template } = survey
    if (template === undefined) return
    const numbers = inputsOf(survey).filter(({ cell: { content } }) => typeof content === 'number')
    if (numbers.every((input) => isAsInTemplate(template, input))) return
    const unsure = numbers.filter((input) => isUnsure(input) && isAsInTemplate(template, input))
    for (const inputs of grouped(unsure, ({ sheet, row }) => bandOf(sheet, row) ?? sheet).values()) yield found(survey, template, inputs)
  },
}

function found(survey: Survey, { title }: TemplateMatch, inputs: readonly InputCell[]): Found {
  const [first] = inputs
  if (first === undefined) throw new RangeError('a block of no inputs')
  const [rows, columns] = [inputs.map(({ row }) => row), inputs.map(({ column }) => column)]
  const names = new Set(inputs.map((input) => `“${nameOf(survey, input)}”`))
  const are = inputs.length === 1 ? '1 number is' : `${inputs.length} numbers are`
  return {
    severity: 'remark', sheet: first.sheet.name, area: { top: Math.min(...rows), bottom: Math.max(...rows), left: Math.min(...columns), right: Math.max(...columns) }, key: 'as in the template',
    reason: `${are} still as in the template “${title}”, with a source that is memory or common practice: ${listed([...names], 6)}. Confirm ${inputs.length === 1 ? 'it, and write where from' : 'them, and write where from'} beside it.`,
    causes: inputs.slice(0, MOST_CAUSES).map(({ sheet, row, column }) => ({ sheet: sheet.name, row, column })),
  }
}

const MOST_CAUSES = 20

/** Its label; in a table the heading of its column. */
function nameOf(survey: Survey, input: InputCell): string {
  const { sheet, row, column } = input
  const { beside, over } = wordsOf(input, namingText(survey, input))
  const isLabelled = sheet.rows[row]?.slice(0, column).some((cell) => cell?.role === 'label') === true
  return (isLabelled ? beside : (over ?? labelOver(survey, input))) ?? labelOf(sheet, { row, column }) ?? printAddress(row, column)
}

/** The label over its column, as it is shown, where the table has no headings. */
function labelOver(survey: Survey, { sheet, row, column }: InputCell): string | undefined {
  const top = bandOf(sheet, row)?.top ?? row
  for (let above = row - 1; above >= top; above--) {
    const value = sheet.rows[above]?.[column]?.role === 'label' ? survey.value(sheet.name, above, column) : null
    if (typeof value === 'string') return value
  }
  return undefined
}
