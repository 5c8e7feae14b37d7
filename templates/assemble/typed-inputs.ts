import { withCells } from '../../src/workbook/cells.ts'
import { sheetOf } from '../../src/workbook/commands.ts'
import { sheetByName, usedRange, type Workbook } from '../../src/workbook/document.ts'
import { applyEdits, type CellChange } from '../../src/workbook/edits.ts'
import { fillFrom } from '../../src/workbook/fill.ts'
import { deleteLines, insertLines } from '../../src/workbook/line-commands.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { inputsCalled } from './called.ts'

/** What is typed into an input; numbers in the unit that stands there. Null empties it. */
export type Entry = number | string | boolean | null

export interface SheetInputs {
  readonly sheet: string
  /** Inputs by the words on their left; as many as stand there. */
  readonly values?: Readonly<Record<string, Entry | readonly Entry[]>>
  readonly tables?: readonly TableInputs[]
}

/** A table by the headings of its columns. It gets as many rows as are given. */
export interface TableInputs {
  readonly headings: readonly string[]
  readonly rows: readonly (readonly Entry[])[]
}

/** The workbook with those inputs; sheets that it lacks are passed over. @throws WorkbookProblem where a sheet has no such input. */
export function withInputs(workbook: Workbook, inputs: readonly SheetInputs[]): Workbook {
  return inputs.filter(({ sheet }) => sheetByName(workbook, sheet) !== undefined).reduce((before, { sheet, values = {}, tables = [] }) => {
    const withValues = Object.entries(values).reduce((so, [words, entry]) => withColumn(so, sheet, words, [entry].flat()), before)
    return tables.reduce((so, table) => withTable(so, sheet, table), withValues)
  }, workbook)
}

function withTable(workbook: Workbook, sheet: string, { headings, rows }: TableInputs): Workbook {
  const uneven = rows.findIndex((row) => row.length !== headings.length)
  if (uneven >= 0) throw new WorkbookProblem(`inputs of ${sheet}: row ${uneven + 1} has not the ${headings.length} values of ${headings.join(', ')}`)
  const [first] = headings
  const sized = first === undefined ? workbook : withRows(workbook, sheet, first, rows.length)
  return headings.reduce((before, heading, index) => withColumn(before, sheet, heading, rows.map((row) => row[index] ?? null)), sized)
}

/** More rows come above the line that closes the table, filled down from the last; fewer: the last ones go. */
function withRows(workbook: Workbook, sheetName: string, heading: string, count: number): Workbook {
  const inputs = inputsCalled(sheetOf(workbook, sheetName), heading)
  const last = inputs[inputs.length - 1]
  const more = count - inputs.length
  if (last === undefined || more === 0) return workbook
  if (more < 0) return applyEdits(workbook, deleteLines(workbook, sheetName, { axis: 'rows', at: last.row + more + 1, count: -more })).workbook
  const longer = applyEdits(workbook, insertLines(workbook, sheetName, { axis: 'rows', at: last.row + 1, count: more })).workbook
  const source = { top: last.row, bottom: last.row, left: 0, right: usedRange(sheetOf(longer, sheetName)).columns - 1 }
  return applyEdits(longer, fillFrom(longer, sheetName, source, { ...source, bottom: last.row + more })).workbook
}

function withColumn(workbook: Workbook, sheetName: string, words: string, entries: readonly Entry[]): Workbook {
  const sheet = sheetOf(workbook, sheetName)
  const inputs = inputsCalled(sheet, words)
  if (inputs.length !== entries.length) throw new WorkbookProblem(`inputs of ${sheetName}, ${words}: ${entries.length} values for ${inputs.length} inputs`)
  const cells = inputs.flatMap(({ row, column }, index): CellChange[] => {
    const cell = sheet.rows[row]?.[column]
    return cell ? [{ row, column, cell: { ...cell, content: entries[index] ?? null } }] : []
  })
  return { ...workbook, sheets: workbook.sheets.map((one) => (one === sheet ? withCells(sheet, cells) : one)) }
}
