import { Graph } from '../../src/calc/graph.ts'
import type { CaseValue } from '../../src/workbook/cases.ts'
import type { CellPlace } from '../../src/workbook/cell-place.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { sheetOf } from '../../src/workbook/commands.ts'
import { sheetByName, type Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { meantText } from '../../src/workbook/entry.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import type { ComparedCells, DemoCase } from './demo-inputs.ts'
import { withInputs } from './typed-inputs.ts'

/** The workbook with those cases, its own inputs being the base. @throws WorkbookProblem where it has no such cells */
export function withCases(base: Workbook, cases: readonly DemoCase[], compared: readonly ComparedCells[]): Workbook {
  const list = cases.map(({ name, note, inputs }) => ({ name, note, aside: differences(base, withInputs(base, inputs)) }))
  const graph = new Graph(base)
  return applyEdits(base, [{ kind: 'cases', cases: { list, current: null, compared: compared.flatMap((cells) => comparedCells(graph, cells)) } }]).workbook
}

function differences(base: Workbook, other: Workbook): CaseValue[] {
  return other.sheets.flatMap((sheet) => {
    const before = sheetByName(base, sheet.name)
    const found: CaseValue[] = []
    if (before !== sheet) {
      eachCell(sheet, ({ content }, row, column) => {
        if (before?.rows[row]?.[column]?.content !== content) found.push({ sheet: sheet.name, row, column, content })
      })
    }
    return found
  })
}

/** A zone's name stands in its own sheet only; elsewhere formulas bring it, so rows are found by what they show. */
function comparedCells(graph: Graph, { sheet: name, words, rows }: ComparedCells): CellPlace[] {
  const sheet = sheetOf(graph.workbook, name)
  const headings: { row: number; column: number }[] = []
  eachCell(sheet, ({ content, role }, row, column) => {
    if ((role === 'label' || role === 'heading') && meantText(content) === words) headings.push({ row, column })
  })
  const [heading, ...others] = headings
  if (!heading || others.length > 0) throw new WorkbookProblem(`sheet "${name}": ${headings.length} cells say "${words}"; accepted: one`)
  const isCompared = (row: number, column: number): boolean => ['result', 'check'].includes(sheet.rows[row]?.[column]?.role ?? '')
  if (!rows) {
    if (!isCompared(heading.row, heading.column + 1)) throw new WorkbookProblem(`sheet "${name}": no result or check stands beside "${words}"`)
    return [{ sheet: name, row: heading.row, column: heading.column + 1 }]
  }
  return rows.map((text) => {
    for (let row = heading.row + 1; row < sheet.rows.length; row++) {
      const shows = (sheet.rows[row] ?? []).slice(0, heading.column).some((_, column) => graph.value(name, row, column) === text)
      if (shows && isCompared(row, heading.column)) return { sheet: name, row, column: heading.column }
    }
    throw new WorkbookProblem(`sheet "${name}": no row with "${text}" has a result or check under "${words}"`)
  })
}
