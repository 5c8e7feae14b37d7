import { eachCell } from '../workbook/cells.ts'
import { isFormula, usedRange, type Cell, type Sheet } from '../workbook/document.ts'
import { sameFormula } from './plain-formula.ts'
import type { Survey } from './survey.ts'

/** A cell that has something else where the template has a formula. */
export interface TemplateDifference {
  readonly sheet: Sheet
  readonly row: number
  readonly column: number
  /** Undefined where nothing stands any more. */
  readonly cell: Cell | undefined
  /** As the template has it, in the layout of the workbook. */
  readonly expected: Cell & { readonly content: `=${string}` }
  readonly now: 'formula' | 'typed' | 'nothing'
}

const known = new WeakMap<Survey, readonly TemplateDifference[]>()

/** Where a workbook has another formula than its template, or none; in the order of reading. Walked through once a survey. */
export function templateDifferences(survey: Survey): readonly TemplateDifference[] {
  const before = known.get(survey)
  if (before !== undefined) return before
  const found = survey.workbook.sheets.flatMap((sheet) => onSheet(survey, sheet))
  known.set(survey, found)
  return found
}

function onSheet({ template }: Survey, sheet: Sheet): TemplateDifference[] {
  if (template === undefined) return []
  const found: TemplateDifference[] = []
  const { columns } = usedRange(sheet)
  // A lone far cell leaves a list of a million holes.
  const rows = new Set<number>()
  eachCell(sheet, (_cell, row) => void rows.add(row))
  for (const row of rows) {
    const inRow: TemplateDifference[] = []
    let kept = 0
    for (let column = 0; column < columns; column++) {
      const expected = template.cell({ sheet: sheet.name, row, column })
      if (expected === undefined || !isExpected(expected)) continue
      const cell = sheet.rows[row]?.[column]
      if (isFormula(cell?.content)) {
        kept++
        // References whose cells were taken away leave nothing to compare with.
        if (!expected.content.includes('#REF!') && !sameFormula(cell.content, expected.content, sheet.name)) inRow.push({ sheet, row, column, cell, expected, now: 'formula' })
      } else inRow.push({ sheet, row, column, cell, expected, now: cell === undefined || cell.content === null ? 'nothing' : 'typed' })
    }
    // A row that has lost all its formulas was taken away on purpose, cell by cell.
    found.push(...inRow.filter(({ now }) => now !== 'nothing' || kept > 0))
  }
  return found
}

const isExpected = (cell: Cell): cell is TemplateDifference['expected'] => isFormula(cell.content)
