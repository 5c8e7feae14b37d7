import { convert } from '../../../functions/units/convert.ts'
import { findUnit } from '../../../functions/units/units.ts'
import { bandOf, columnsHeaded, type Band } from '../bands.ts'
import { meantText } from '../../workbook/entry.ts'
import { unitOfValue } from '../../workbook/unit-scope.ts'
import type { FindingKind, Found } from '../finding.ts'
import { listed } from '../finding-words.ts'
import { grouped } from '../grouped.ts'
import { inputsOf, namingText, wordsOf, type InputCell } from '../input-cells.ts'
import type { Survey } from '../survey.ts'
import type { TemplateMatch } from '../template-match.ts'

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
    if (numbers.every((input) => isAsIn(template, input))) return
    const unsure = numbers.filter((input) => isUnsure(input) && isAsIn(template, input))
    for (const inputs of grouped(unsure, ({ sheet, row }) => bandOf(sheet, row) ?? sheet).values()) yield found(survey, template, inputs)
  },
}

function found(survey: Survey, { title }: TemplateMatch, inputs: readonly InputCell[]): Found {
  const [first] = inputs
  if (first === undefined) throw new RangeError('a block of no inputs')
  const [rows, columns] = [inputs.map(({ row }) => row), inputs.map(({ column }) => column)]
  const names = new Set(inputs.map((input) => {
    const { beside, over } = wordsOf(input, namingText(survey, input))
    return `“${beside ?? over ?? ''}”`
  }))
  const are = inputs.length === 1 ? '1 number is' : `${inputs.length} numbers are`
  return {
    severity: 'remark', sheet: first.sheet.name, area: { top: Math.min(...rows), bottom: Math.max(...rows), left: Math.min(...columns), right: Math.max(...columns) }, key: 'as in the template',
    reason: `${are} still as in the template “${title}”, with a source that is memory or common practice: ${listed([...names], 6)}. Confirm ${inputs.length === 1 ? 'it, and write where from' : 'them, and write where from'} beside it.`,
    causes: inputs.slice(0, MOST_CAUSES).map(({ sheet, row, column }) => ({ sheet: sheet.name, row, column })),
  }
}

const MOST_CAUSES = 20

/** Whether the template has the same there, be it in other units. */
function isAsIn(template: TemplateMatch, { sheet, row, column, cell: { content } }: InputCell): boolean {
  const given = template.cell({ sheet: sheet.name, row, column })?.content
  if (given === content) return true
  const at = unitOfValue(sheet, { row, column })
  const [own, theirs] = [at && unitIn(sheet.rows[at.row]?.[at.column]?.content), at && unitIn(template.cell({ sheet: sheet.name, ...at })?.content)]
  if (typeof given !== 'number' || typeof content !== 'number' || own === undefined || theirs === undefined || own.dimension !== theirs.dimension) return false
  const same = convert(given, theirs, own)
  return Math.abs(same - content) <= CLOSE * Math.max(Math.abs(same), Math.abs(content))
}

/** Restated numbers may have been rounded to what a person would type. */
const CLOSE = 1e-6

const unitIn = (content: InputCell['cell']['content'] | undefined) => findUnit(meantText(content ?? null) ?? '')

/** Whether its own row, its note or, in a table, the table's column of sources says that nobody has looked it up. */
function isUnsure({ sheet, row, column, cell: { note } }: InputCell): boolean {
  const band = bandOf(sheet, row)
  const texts = [note, ...textsRight(sheet, row, column)]
  return texts.some((text) => text !== undefined && UNSURE.test(text)) || (band !== undefined && isTable(sheet, band) && sourcesIn(sheet, band).some((text) => UNSURE.test(text)))
}

const UNSURE = /\bfrom memory\b|\bcommon practice\b|\bnot confirmed\b|\bconfirm\b|\bweak source\b|\bno published source\b|\brule of thumb\b|\bassumed\b/i

const textsRight = (sheet: InputCell['sheet'], row: number, column: number): string[] =>
  (sheet.rows[row] ?? []).slice(column + 1).flatMap((cell) => (cell?.role === 'text' || cell?.role === 'note' ? (meantText(cell.content) ?? []) : []))

const isTable = (sheet: InputCell['sheet'], { top }: Band): boolean => {
  const [units, inputs] = (['unit', 'input'] as const).map((role) => sheet.rows[top]?.some((cell) => cell?.role === role) === true)
  return units === true && inputs !== true
}

function sourcesIn(sheet: InputCell['sheet'], band: Band): string[] {
  const columns = columnsHeaded(band, /\b(?:source|origin|basis|reference)s?\b/i)
  return sheet.rows.slice(band.top, band.bottom + 1).flatMap((row) => columns.flatMap((column) => meantText(row?.[column]?.content) ?? []))
}
