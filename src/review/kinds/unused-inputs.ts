import { catalogue } from '../../../functions/catalogue.ts'
import { bandOf } from '../bands.ts'
import { cellUses } from '../cell-uses.ts'
import type { FindingKind, Found } from '../finding.ts'
import { inputsOf, namingText, wordsOf, type InputCell } from '../input-cells.ts'
import { merge } from '../merge.ts'
import type { Survey } from '../survey.ts'

/** Inputs that nothing uses: who changes one believes to have changed the calculation. */
export const unusedInputs: FindingKind = {
  kind: 'unused-inputs',
  heading: 'Inputs that feed nothing',
  about:
    'Numbers and choices that no formula, name, figure or comparison of cases uses: changing one changes nothing. Names, dates and remarks are left alone, and numbers without unit in a table of which the whole column is used by nothing.',
  find: (survey) => merge(inputsOf(survey).flatMap((input) => {
    const reason = fault(survey, input)
    if (reason === undefined) return []
    const { sheet, row, column } = input
    const found: Found = { severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, reason, key: 'feeds nothing' }
    return [{ found, alike: `${reason} ${survey.unit(sheet, row, column) ?? ''}` }]
  })),
}

const CHANGES_NOTHING = 'Nothing uses it: no formula, figure or case compared. Changing it changes nothing.'

function fault(survey: Survey, input: InputCell): string | undefined {
  const { sheet, row, column, cell: { content } } = input
  const { isUsed, isUsedInTemplate } = cellUses(survey)
  if (isUsed(sheet, row, column)) return undefined
  if (survey.template !== undefined && isUsedInTemplate(sheet, row, column)) return `Nothing uses it, though formulas of the template “${survey.template.title}” do. Changing it changes nothing.`
  if (isListed(input) && mostOfColumn(survey, input)) return 'Nothing uses it, though most of its column is used: a range may end before it.'
  if (typeof content === 'number') return isListed(input) && survey.unit(sheet, row, column) === undefined ? undefined : CHANGES_NOTHING
  return typeof content === 'boolean' || isChoice(survey, input) ? CHANGES_NOTHING : undefined
}

/** Whether it stands in a table: no unit beside it, and another input over or under it. */
function isListed({ sheet, row, column }: InputCell): boolean {
  const isInput = (at: number): boolean => sheet.rows[at]?.[column]?.role === 'input'
  return sheet.rows[row]?.[column + 1]?.role !== 'unit' && bandOf(sheet, row) !== undefined && (isInput(row - 1) || isInput(row + 1)) && !isLabelled(sheet, row, column)
}

const isLabelled = (sheet: InputCell['sheet'], row: number, column: number): boolean => sheet.rows[row]?.slice(0, column).some((cell) => cell?.role === 'label') === true

/** Whether more than half of the inputs above and below it feed formulas. */
function mostOfColumn(survey: Survey, { sheet, row, column }: InputCell): boolean {
  const { top, bottom } = bandOf(sheet, row) ?? { top: row, bottom: row }
  let [used, all] = [0, 0]
  for (let at = Math.max(top, row - ROWS_LOOKED_AT); at <= Math.min(bottom, row + ROWS_LOOKED_AT); at++) {
    const cell = sheet.rows[at]?.[column]
    if (at === row || cell?.role !== 'input' || cell.content === null) continue
    all++
    if (survey.isUsed(sheet, at, column)) used++
  }
  return used * 2 > all
}

const ROWS_LOOKED_AT = 50

/** A text that is one of a few that functions know, or of those that its label lists. */
function isChoice(survey: Survey, input: InputCell): boolean {
  const { content } = input.cell
  if (typeof content !== 'string' || isListed(input)) return false
  const text = content.toLowerCase()
  const { beside = '', over = '' } = wordsOf(input, namingText(survey, input))
  return CHOICES.has(text) || [beside, over].some((words) => choicesIn(words).includes(text))
}

/** "(entered or sized)", "(flat, 2:1, hemi)". */
const choicesIn = (words: string): string[] => (/\(([^)]*)\)/.exec(words)?.[1] ?? '').toLowerCase().split(/,|\bor\b/).map((one) => one.trim()).filter((one, _, all) => one !== '' && all.length > 1)

const CHOICES: ReadonlySet<string> = new Set(catalogue.flatMap((definition) => Object.values(definition.arguments).flatMap(({ choices }) => choices.map((one) => one.toLowerCase()))))
