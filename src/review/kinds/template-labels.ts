import { eachCell } from '../../workbook/cells.ts'
import type { Cell, Sheet } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import type { FindingKind, Found } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import type { Survey } from '../survey.ts'

/** Labels that have changed places: the numbers are right, and each is taken for another. */
export const templateLabels: FindingKind = {
  kind: 'template-labels',
  heading: 'Labels that stand where the template has others',
  about: 'A label or heading that the template has at another cell of the sheet, over or beside other numbers. Labels in words of one’s own are not looked at, nor rows that were moved whole.',
  find: (survey) => survey.workbook.sheets.flatMap((sheet) => onSheet(survey, sheet)),
}

interface Moved {
  readonly row: number
  readonly column: number
  readonly text: string
  readonly expected: string
  readonly cell: Cell
}

function onSheet({ template }: Survey, sheet: Sheet): Found[] {
  if (template === undefined) return []
  const moved: Moved[] = []
  eachCell(sheet, (cell, row, column) => {
    if (cell.role !== 'label' && cell.role !== 'heading') return
    const before = template.cell({ sheet: sheet.name, row, column })
    const [text, expected] = [meantText(cell.content), before?.role === cell.role ? meantText(before.content) : undefined]
    if (text !== undefined && expected !== undefined && text !== expected) moved.push({ row, column, text, expected, cell })
  })
  return moved.flatMap(({ row, column, text, expected, cell }) => {
    // Its own place has another label now: both were changed, and this one is known to belong there.
    const home = moved.find((one) => one.expected === text)
    return home === undefined ? [] : [{
      severity: 'warning' as const, sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
      reason: `“${text}” stands where the template “${template.title}” has “${expected}”; there it is the label of ${cellWords({ sheet: sheet.name, ...home }, sheet.name)}.`,
      key: `${text} for ${expected}`, causes: [{ sheet: sheet.name, row: home.row, column: home.column }],
      mend: { words: 'Put the template’s label back', edits: [{ kind: 'cells' as const, sheet: sheet.name, cells: [{ row, column, cell: { ...cell, content: expected } }] }] },
    }]
  })
}
