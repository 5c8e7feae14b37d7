import type { Graph } from '../calc/graph.ts'
import { isCellError } from '../calc/values.ts'
import { eachCell } from '../workbook/cells.ts'
import type { Sheet } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { printPlace, type Place } from './locate.ts'

/** Something to look at before a workbook is relied on. */
export interface Finding {
  /** An error makes a number missing or a limit broken; a warning leaves something open. */
  readonly severity: 'error' | 'warning'
  /** `Duty!C20` */
  readonly place: string
  readonly reason: string
}

/** Cells with error values, checks that are not met, and checks without a verdict, in reading order. */
export function findings(graph: Graph): Finding[] {
  const found: Finding[] = []
  for (const sheet of graph.workbook.sheets) {
    eachCell(sheet, ({ role }, row, column) => {
      const place = { sheet, row, column }
      const value = graph.value(sheet.name, row, column)
      const add = (severity: Finding['severity'], reason: string) =>
        found.push({ severity, place: printPlace(place), reason: `${labelWords(place)}${reason}` })
      if (isCellError(value)) add('error', `${value.error}: ${value.message}`)
      else if (role === 'check' && value === false) add('error', `check ${graph.check(sheet.name, row, column)?.words ?? 'not met'}`)
      else if (role === 'check' && value !== true) add('warning', 'check without a verdict: it gives neither TRUE nor FALSE')
    })
  }
  return found
}

/** The nearest label on the left, which says what the cell is. */
function labelWords({ sheet, row, column }: Place): string {
  for (let left = column - 1; left >= 0; left--) {
    const text = labelAt(sheet, row, left)
    if (text !== undefined) return `${text}: `
  }
  return ''
}

function labelAt(sheet: Sheet, row: number, column: number): string | undefined {
  const cell = sheet.rows[row]?.[column]
  return cell?.role === 'label' ? meantText(cell.content) : undefined
}
