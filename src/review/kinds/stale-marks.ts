import { isCellError } from '../../calc/values.ts'
import { sheetByName } from '../../workbook/document.ts'
import { markStates, type MarkState } from '../../workbook/review/mark-states.ts'
import { reviewPlace } from '../../workbook/review/review-words.ts'
import type { FindingKind, Found } from '../finding.ts'
import type { Survey } from '../survey.ts'

/** What someone has checked, and is not what it was. */
export const staleMarks: FindingKind = {
  kind: 'stale-marks',
  heading: 'Check marks that are stale',
  about: 'Something in the marked cells, or upstream of them, is not what it was when it was checked, or the same contents come to something else. Who checks it again makes the mark good.',
  find: (survey) => markStates(survey.workbook, ({ sheet, row, column }) => {
    const value = survey.value(sheet, row, column)
    return isCellError(value) ? value.error : value
  }).filter(({ isGood }) => !isGood).map((state) => found(survey, state)),
}

function found({ workbook }: Survey, { mark, changes, count, remark }: MarkState): Found {
  const { id, sheet, area, by, at, gone } = mark
  const isThere = gone !== true && sheetByName(workbook, sheet) !== undefined
  const more = count - Math.min(count, NAMED)
  const what = changes.slice(0, NAMED).map(({ words }) => words).join('; ')
  return {
    severity: 'warning',
    // Of what is gone the finding stands at the beginning.
    sheet: isThere ? sheet : (workbook.sheets[0]?.name ?? sheet), area: isThere && area !== null ? area : { top: 0, bottom: 0, left: 0, right: 0 },
    reason: `Mark ${id} on ${reviewPlace(mark)}, checked by ${by} on ${at.slice(0, 10)}, is stale: ${what}${more > 0 ? `; and ${more.toLocaleString('en')} more` : ''}.${remark === undefined ? '' : ` ${remark}`}`,
    key: `mark ${id}: ${changes.map(({ words }) => words.replaceAll(/\$?[A-Z]{1,3}\$?\d+/g, '#')).join('; ')}`.slice(0, LONGEST_KEY),
    causes: changes.flatMap(({ place }) => place ?? []).slice(0, MOST_CAUSES).map(({ sheet: name, row, column }) => ({ sheet: name, row, column })),
  }
}

/** Changes that the reason tells; the panel Checked lists them all. */
const NAMED = 3
const MOST_CAUSES = 10
const LONGEST_KEY = 1000
