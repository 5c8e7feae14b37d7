import { isCellError } from '../../calc/values.ts'
import { isFormula } from '../../workbook/document.ts'
import type { FindingKind } from '../finding.ts'
import { merge } from '../merge.ts'
import type { Survey } from '../survey.ts'
import { checksThat, type CheckCell } from './checks-not-met.ts'

/** Checks that give neither TRUE nor FALSE. */
export const checksWithoutVerdict: FindingKind = {
  kind: 'checks-without-verdict',
  heading: 'Checks without a verdict',
  about: 'A cell that is meant to be a check and says neither yes nor no. One with an error is among the cells with errors; one of an empty row of a list has nothing to check.',
  find(survey) {
    return merge(checksThat(survey, (value) => typeof value !== 'boolean' && !isCellError(value)).filter((check) => !isOfEmptyRow(survey, check)).map(({ sheet, row, column, cell: { content } }) => {
      const value = survey.value(sheet, row, column)
      const gives = value === null || value === '' ? '' : `, but ${typeof value === 'string' ? `“${value}”` : String(value)}`
      return {
        found: {
          severity: 'warning', sheet, area: { top: row, bottom: row, left: column, right: column },
          reason: `Check without a verdict: it gives neither TRUE nor FALSE${gives}.`, key: `gives ${value === null ? 'nothing' : JSON.stringify(value)}`,
        },
        alike: `${JSON.stringify(value)}${isFormula(content) ? survey.shape({ formula: content, row, column }) : ''}`,
      }
    }))
  },
}

/** Its formula gives a blank, and all that it refers to in its row is blank. */
function isOfEmptyRow(survey: Survey, { sheet, row, column, cell: { content }, home }: CheckCell): boolean {
  if (!isFormula(content) || survey.value(sheet, row, column) !== '') return false
  const inRow = survey.referred(content, home).filter(({ sheet: on, area: { top, bottom } }) => on === home && top === row && bottom === row)
  return inRow.length > 0 && inRow.every(({ area: { left, right } }) => {
    for (let at = left; at <= right; at++) {
      const value = survey.value(sheet, row, at)
      if (value !== null && value !== '') return false
    }
    return true
  })
}
