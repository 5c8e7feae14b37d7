import type { FindingKind, Found } from '../finding.ts'
import { inputsOf, namingText, wordsOf } from '../input-cells.ts'
import { merge } from '../merge.ts'

/** Numbers of which nothing on the sheet says what they are. */
export const inputsWithoutLabel: FindingKind = {
  kind: 'inputs-without-label',
  heading: 'Inputs without label',
  about: 'A number without words: neither a text on its left nor a heading over it. Texts and choices that are typed say themselves what they are.',
  find: (survey) => merge(inputsOf(survey).flatMap((input) => {
    const { sheet, row, column, cell: { content, note } } = input
    if (typeof content === 'string' || (note !== undefined && note.trim() !== '')) return []
    const { beside, over } = wordsOf(input, namingText(survey, input))
    if (beside !== undefined || over !== undefined || hasTextOver(survey.unit(sheet, row, column) !== undefined, input)) return []
    const found: Found = {
      severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, key: 'no label',
      reason: 'Nothing says what this number is: write a label on its left, or a heading over its column.',
    }
    return [{ found, alike: '' }]
  })),
}

/** A label over a unit over the number is a heading as well. */
function hasTextOver(hasUnit: boolean, { sheet, row, column }: ReturnType<typeof inputsOf>[number]): boolean {
  for (let above = row - 1; above >= Math.max(0, row - ROWS_LOOKED_AT); above--) {
    const cells = sheet.rows[above]
    if (cells === undefined) return false
    const role = cells[column]?.role
    if (role === 'label' || role === 'heading' || role === 'text') return true
    if (role === undefined && !hasUnit) return false
  }
  return false
}

const ROWS_LOOKED_AT = 1000
