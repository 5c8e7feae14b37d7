import { isFormula } from '../../workbook/document.ts'
import type { FindingKind } from '../finding.ts'
import { formulaDifference } from '../formula-difference.ts'
import { merge, type CellFound } from '../merge.ts'
import type { OddOne } from '../odd-along.ts'
import { oddOnes } from '../odd-ones.ts'
import { templateDifferences } from '../template-differences.ts'

/** One or two formulas that are not as those they stand among. */
export const unlikeNeighbours: FindingKind = {
  kind: 'unlike-neighbours',
  heading: 'Formulas unlike their neighbours',
  about: 'In columns and rows of one formula, one or two that are another. Totals at their ends are not meant, nor what comes again and again, nor what the template has so.',
  find(survey) {
    const told = new Set(templateDifferences(survey).map(({ sheet, row, column }) => `${row}:${column}:${sheet.name}`))
    return merge(oddOnes(survey).flatMap((odd): CellFound[] => {
      const { sheet, row, column, cell, expected } = odd
      const ofTemplate = survey.template?.cell({ sheet: sheet.name, row, column })?.content
      // The template has it so, or has told already that it is not so.
      if (!isFormula(cell.content) || told.has(`${row}:${column}:${sheet.name}`) || isFormula(ofTemplate)) return []
      const { words, key, cells } = formulaDifference(cell.content, expected, sheet.name)
      return [{
        found: {
          severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
          reason: `Not as the formulas ${whereWords(odd)}: ${words}.`, key, causes: cells,
          mend: { words: 'Fill in the neighbours’ formula', edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: { ...cell, content: expected } }] }] },
        },
        alike: key,
      }]
    }))
  },
}

function whereWords({ way, isBetween }: OddOne): string {
  if (!isBetween) return way === 'down' ? 'of its column' : 'of its row'
  return way === 'down' ? 'above and below' : 'on both sides'
}
