import type { CellAddress } from '../workbook/address.ts'
import { eachCell } from '../workbook/cells.ts'
import { isFormula, type Cell, type Sheet } from '../workbook/document.ts'
import { oddAlong, type OddOne, type OddStep, type Step } from './odd-along.ts'
import type { Survey } from './survey.ts'

const known = new WeakMap<Survey, readonly OddOne[]>()

/** Cells with a formula or a typed value unlike both their neighbours, where these are alike. Walked through once a survey. */
export function oddOnes(survey: Survey): readonly OddOne[] {
  const before = known.get(survey)
  if (before !== undefined) return before
  const found = survey.workbook.sheets.flatMap((sheet) => onSheet(survey, sheet))
  known.set(survey, found)
  return found
}

function onSheet(survey: Survey, sheet: Sheet): OddOne[] {
  const columns = new Map<number, Step[]>()
  const rows = new Map<number, Step[]>()
  const steps = new Map<string, Step>()
  eachCell(sheet, (cell, row, column) => {
    const step = stepOf(survey, sheet, cell, row, column)
    if (step === undefined) return
    push(columns, column, step)
    push(rows, row, { ...step, at: column })
    steps.set(`${row}:${column}`, step)
  })
  const shapeAt = (row: number, column: number): string | undefined => steps.get(`${row}:${column}`)?.shape
  const isOfItsRow = ({ row, column, shape }: Step): boolean => shape !== undefined && (shapeAt(row, column - 1) === shape || shapeAt(row, column + 1) === shape || shapeAt(row, column - 2) === shape || shapeAt(row, column + 2) === shape)
  const isOfItsColumn = ({ row, column, shape }: Step): boolean => shape !== undefined && (shapeAt(row - 1, column) === shape || shapeAt(row + 1, column) === shape)
  // At the end of a column a typed number is in a formula’s place if its row is filled as the others are; but not where the others go on from it.
  const isOfTheList = ({ step: { row, column, shape, cell }, odd: { isBetween, neighbour, at } }: OddStep): boolean =>
    shape !== undefined || isBetween || (typeof cell.content !== 'string' && alikeRows(sheet, shapeAt, row, at.row) >= LEAST_ALIKE_COLUMNS && !refersTo(survey, neighbour, sheet, { row, column }))
  const down = [...columns.values()].flatMap((way) => oddAlong(way, 'down')).filter((found) => !isOfItsRow(found.step) && isOfTheList(found))
  const taken = new Set(down.map(({ step: { row, column } }) => `${row}:${column}`))
  const across = [...rows.values()].flatMap((way) => oddAlong(way.filter(isValueOrFormula), 'across')).filter(({ step, odd }) => !isOfItsColumn(step) && !taken.has(`${step.row}:${step.column}`) && (step.shape !== undefined || odd.isBetween))
  return [...down, ...across].map(({ odd }) => odd).toSorted((one, other) => one.row - other.row || one.column - other.column)
}

const LEAST_ALIKE_COLUMNS = 2

/** In how many columns two rows have the same formula. */
function alikeRows(sheet: Sheet, shapeAt: (row: number, column: number) => string | undefined, row: number, other: number): number {
  let count = 0
  for (let column = 0; column < (sheet.rows[row]?.length ?? 0); column++) {
    const shape = shapeAt(row, column)
    if (shape !== undefined && shape === shapeAt(other, column)) count++
  }
  return count
}

const refersTo = (survey: Survey, { content }: Cell, sheet: Sheet, { row, column }: CellAddress): boolean => isFormula(content) && survey.referred(content, sheet).some(
  ({ sheet: on, area: { top, bottom, left, right } }) => on === sheet && row >= top && row <= bottom && column >= left && column <= right)

function push(lists: Map<number, Step[]>, key: number, step: Step): void {
  const list = lists.get(key)
  if (list) list.push(step)
  else lists.set(key, [step])
}

/** Formulas, and what is typed where values stand. */
function stepOf(survey: Survey, sheet: Sheet, cell: Cell, row: number, column: number): Step | undefined {
  const { content, role } = cell
  if (isFormula(content)) return { sheet, row, column, at: row, cell, shape: survey.shape({ formula: content, row, column }) }
  return content !== null && (role === 'input' || role === 'result' || role === 'check') ? { sheet, row, column, at: row, cell, shape: undefined } : undefined
}

/** Units stand between the values of a row, each beside its own. */
const isValueOrFormula = ({ cell }: Step): boolean => cell.role !== 'unit'
