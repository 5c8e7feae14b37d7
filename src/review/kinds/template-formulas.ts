import { isFormula } from '../../workbook/document.ts'
import type { FindingKind } from '../finding.ts'
import { formulaDifference } from '../formula-difference.ts'
import { merge, type CellFound } from '../merge.ts'
import { templateDifferences } from '../template-differences.ts'

/** Formulas that someone has changed since the workbook was made from its template. */
export const templateFormulas: FindingKind = {
  kind: 'template-formulas',
  heading: 'Formulas other than the template’s',
  about: 'A formula that came with the template and was changed. What only follows inserted rows, lengthened tables or renamed sheets is no change; what was added is not looked at. Of a workbook made with an earlier edition of the template it names what has changed since, too.',
  find(survey) {
    const title = survey.template?.title ?? ''
    return merge(templateDifferences(survey).flatMap(({ sheet, row, column, cell, expected }): CellFound[] => {
      if (cell === undefined || !isFormula(cell.content)) return []
      const { words, key, cells } = formulaDifference(cell.content, expected.content, sheet.name)
      return [{
        found: {
          severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
          reason: `Not the formula of the template “${title}”: ${words}.`, key, causes: cells,
          mend: { words: 'Put the template’s formula back', edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: { ...cell, content: expected.content } }] }] },
        },
        alike: key,
      }]
    }))
  },
}
