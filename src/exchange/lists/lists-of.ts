import { findUnit } from '../../../functions/units/units.ts'
import { isFormula, type Cell, type Sheet, type Workbook } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { shifter } from '../../workbook/formula/references.ts'
import { unitOfValue } from '../../workbook/unit-scope.ts'
import { usesOfRow } from './column-uses.ts'
import type { ColumnModel, ListColumn, WorkbookList } from './list.ts'

/**
 * The tables of a workbook that can take rows, known by how they are built: a row of headings; below it, perhaps, units and totals; then rows
 * whose first cell, and perhaps others, is filled in, with the same formulas in each. A row a step, with its label on the left, is none.
 */
export function listsOf(workbook: Workbook): WorkbookList[] {
  return workbook.sheets.flatMap((sheet) => {
    const found = sheet.rows.flatMap((_, row) => listAt(sheet, row) ?? [])
    return found.map((list) => ({ ...list, name: found.length === 1 ? sheet.name : `${sheet.name}: ${list.columns[0]?.heading ?? ''}` }))
  })
}

/** Rows of units and totals that may stand between the headings and the items. */
const ROWS_BETWEEN = 3

function listAt(sheet: Sheet, headingRow: number): WorkbookList | undefined {
  const headings = headingsOf(sheet, headingRow)
  const [first] = headings
  if (!first || headings.length < 2) return undefined
  const firstRow = firstItemRow(sheet, headingRow, headings)
  if (firstRow === undefined) return undefined
  let lastRow = firstRow
  while (isItemRow(sheet, lastRow + 1, headings)) lastRow++
  const body = { sheet, firstRow, lastRow }
  const models = headings.map(({ column }) => modelOf(body, column))
  const inputs = models.filter(({ kind }) => kind === 'input')
  if (inputs[0]?.column !== first.column) return undefined

  const rows = Array.from({ length: lastRow - firstRow + 1 }, (_, index) => firstRow + index)
  const freeRows = rows.filter((row) => inputs.every(({ column }) => isEmpty(sheet, row, column)))
  const filled = rows.filter((row) => !freeRows.includes(row))
  const modelRow = filled.at(-1) ?? lastRow
  const formulas = models.flatMap(({ kind, row, column }) => {
    const content = row === undefined || kind !== 'formula' ? undefined : sheet.rows[row]?.[column]?.content
    return row !== undefined && isFormula(content) ? [shifter(content)(modelRow - row, 0)] : []
  })
  const { uses, choices } = usesOfRow(formulas, modelRow)
  const columns = headings.flatMap(({ column, heading }, index): ListColumn[] => {
    const model = models[index]
    if (!model || (model.kind !== 'input' && model.kind !== 'remark')) return []
    const cells = filled.flatMap((row) => sheet.rows[row]?.[column] ?? [])
    const unit = model.kind === 'input' ? unitAt(sheet, modelRow, column) : undefined
    const understood = choices.get(column) ?? []
    const kind = understood.length > 0 ? 'choice' : unit !== undefined || isMostlyNumbers(cells) ? 'number' : 'text'
    return [{
      column, heading, unit, kind,
      choices: understood,
      isTag: column === first.column,
      isRemark: model.kind === 'remark',
      isAlwaysFilled: filled.length > 0 && filled.every((row) => !isEmpty(sheet, row, column)),
      uses: (uses.get(column) ?? []).map((use) => ({ ...use, when: use.when.filter((condition) => condition.column !== first.column) })),
    }]
  })
  return { name: sheet.name, sheet: sheet.name, headingRow, firstRow, lastRow, lastFilledRow: filled.at(-1) ?? firstRow - 1, freeRows, columns, models }
}

interface Heading {
  readonly column: number
  readonly heading: string
}

/** The longest run of headings side by side. */
function headingsOf(sheet: Sheet, row: number): Heading[] {
  const runs: Heading[][] = [[]]
  for (const [column, cell] of (sheet.rows[row] ?? []).entries()) {
    const heading = cell?.role === 'heading' ? meantText(cell.content) : undefined
    if (heading === undefined) runs.push([])
    else runs.at(-1)?.push({ column, heading })
  }
  return runs.reduce((longest, run) => (run.length > longest.length ? run : longest))
}

function firstItemRow(sheet: Sheet, headingRow: number, headings: readonly Heading[]): number | undefined {
  for (let row = headingRow + 1; row <= headingRow + 1 + ROWS_BETWEEN; row++) {
    if (isItemRow(sheet, row, headings)) return row
    const isBetween = headings.some(({ column }) => sheet.rows[row]?.[column]?.role === 'unit' || isFormula(sheet.rows[row]?.[column]?.content))
    if (!isBetween) return undefined
  }
  return undefined
}

/** Something in it is to be filled in, and it does not begin with words of the sheet's own. */
function isItemRow(sheet: Sheet, row: number, headings: readonly Heading[]): boolean {
  const cells = sheet.rows[row]
  const [first] = headings
  const start = first && cells?.[first.column]
  if (!cells || !start || (start.role !== 'input' && start.role !== 'result')) return false
  return headings.some(({ column }) => cells[column]?.role === 'input')
}

interface Body {
  readonly sheet: Sheet
  readonly firstRow: number
  readonly lastRow: number
}

/** Of rows further up no more is asked: they have the same formulas, or are no example. */
const EXAMPLES = 60

/** What a column of the items is, and its cell to copy: of formulas the one that most rows have. */
function modelOf({ sheet, firstRow, lastRow }: Body, column: number): ColumnModel {
  const from = Math.max(firstRow, lastRow - EXAMPLES + 1)
  const shapes = new Map<string, { count: number; row: number }>()
  let input: number | undefined
  let unit: number | undefined
  let remark: number | undefined
  for (let row = from; row <= lastRow; row++) {
    const cell = sheet.rows[row]?.[column]
    if (cell?.role === 'input') input = row
    else if (cell?.role === 'unit') unit = row
    else if (isFormula(cell?.content)) {
      const shape = shifter(cell.content)(lastRow - row, 0)
      shapes.set(shape, { count: (shapes.get(shape)?.count ?? 0) + 1, row })
    } else if (cell) remark = row
  }
  if (input === undefined) for (let row = firstRow; row < from && input === undefined; row++) if (sheet.rows[row]?.[column]?.role === 'input') input = row
  if (input !== undefined) return { column, row: input, kind: 'input' }
  if (unit !== undefined) return { column, row: unit, kind: 'unit' }
  const [commonest] = [...shapes.values()].toSorted((one, other) => other.count - one.count || other.row - one.row)
  return commonest ? { column, row: commonest.row, kind: 'formula' } : { column, row: remark, kind: 'remark' }
}

function unitAt(sheet: Sheet, row: number, column: number): string | undefined {
  const at = unitOfValue(sheet, { row, column })
  const text = at && meantText(sheet.rows[at.row]?.[at.column]?.content)
  return text !== undefined && findUnit(text) !== undefined ? text : undefined
}

const isEmpty = (sheet: Sheet, row: number, column: number): boolean => (sheet.rows[row]?.[column]?.content ?? null) === null

function isMostlyNumbers(cells: readonly Cell[]): boolean {
  const contents = cells.filter(({ content }) => content !== null && !isFormula(content))
  return contents.length > 0 && contents.filter(({ content }) => typeof content === 'number').length > contents.length / 2
}
