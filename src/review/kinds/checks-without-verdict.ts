import { isCellError } from '../../calc/values.ts'
import { isFormula } from '../../workbook/document.ts'
import type { FindingKind } from '../finding.ts'
import { merge } from '../merge.ts'
import { checksThat } from './checks-not-met.ts'

/** Checks that give neither TRUE nor FALSE. */
export const checksWithoutVerdict: FindingKind = {
  kind: 'checks-without-verdict',
  heading: 'Checks without a verdict',
  about: 'A cell that is meant to be a check and says neither yes nor no. One with an error is among the cells with errors.',
  find(survey) {
    return merge(checksThat(survey, (value) => typeof value !== 'boolean' && !isCellError(value)).map(({ sheet, row, column, cell: { content } }) => {
      const value = survey.value(sheet, row, column)
      const gives = value === null || value === '' ? '' : `, but ${typeof value === 'string' ? `“${value}”` : String(value)}`
      return {
        found: {
          severity: 'warning', sheet, area: { top: row, bottom: row, left: column, right: column },
          reason: `check without a verdict: it gives neither TRUE nor FALSE${gives}.`, key: `gives ${value === null ? 'nothing' : JSON.stringify(value)}`,
        },
        alike: `${JSON.stringify(value)}${isFormula(content) ? survey.shape({ formula: content, row, column }) : ''}`,
      }
    }))
  },
}
