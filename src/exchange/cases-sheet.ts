import { comparedText, differenceText, type CaseOutcome } from '../calc/case-outcomes.ts'
import { isCellError, type CellValue } from '../calc/values.ts'
import { BASE, casesOf, currentName, heldIn, isOwn, ownPlaces } from '../workbook/cases.ts'
import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'
import { cellAt, isFormula, sheetByName, type CellContent, type Workbook } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { labelInRow } from '../workbook/words-beside.ts'
import { numberCode } from './number-code.ts'
import type { FileRow, FileSheet } from './package/file-sheet.ts'
import type { Look } from './package/looks.ts'

type Line = FileRow['cells']

/** What the sheet is for, in the words of the cover. */
export const CASES_HOLD = 'inputs and results of every case as values at export; nothing in it recalculates'

/**
 * A sheet of all cases: their inputs, and what comes out in each, as values at export.
 * @param outcomes of the base and each case; without them there are the inputs only
 */
export function casesSheet(workbook: Workbook, name: string, outcomes: readonly CaseOutcome[] | undefined): FileSheet {
  const { list, compared } = casesOf(workbook)
  const names = [BASE, ...list.map((one) => one.name)]
  const notes = list.flatMap(({ name: of, note }) => (note === undefined ? [] : [[text('label', of), text('text', note)]]))
  const lines: Line[] = [
    [text('title', 'Cases')],
    [text('note', `Values as they were at export: nothing on this sheet recalculates. The other sheets hold ${currentName(workbook) === BASE ? 'the base' : `the case "${currentName(workbook)}"`}, and recalculate.`)],
    ...(notes.length === 0 ? [] : [[], ...notes]),
    [],
    ['Inputs', 'Cell', 'Unit', ...names].map((words) => text('heading', words)),
    ...ownPlaces(workbook).map((place) => inputLine(workbook, place)),
    ...(outcomes && outcomes.length === names.length ? outcomeLines(workbook, compared, outcomes) : []),
  ]
  return { name, widthsPx: [260, 140, 70, ...names.map(() => 180)], frozen: [0, 1], rows: lines.map((cells, row): FileRow => ({ row, cells })) }
}

/** The base's value, and those that cases have of their own. */
function inputLine(workbook: Workbook, place: CellPlace): Line {
  const { list } = casesOf(workbook)
  const sheet = sheetByName(workbook, place.sheet)
  const unitAt = sheet && unitOfValue(sheet, place)
  const unit = unitAt && meantText(sheet.rows[unitAt.row]?.[unitAt.column]?.content)
  const own = list.map((_, at) => (isOwn(workbook, at, place) ? number(workbook, place, plain(heldIn(workbook, at, place)?.content ?? null)) : text('note', 'as the base')))
  return [text('label', (sheet && labelInRow(sheet, place)) ?? ''), text('text', printCellPlace(place)), text('unit', unit ?? ''), number(workbook, place, plain(heldIn(workbook, null, place)?.content ?? null)), ...own]
}

function outcomeLines(workbook: Workbook, compared: readonly CellPlace[], outcomes: readonly CaseOutcome[]): Line[] {
  const [base] = outcomes
  const results = compared.flatMap((place, index): Line[] => {
    const values = outcomes.map((one) => one.compared[index])
    const of = values[0]
    if (!of) return []
    const shown = values.map((one) => (one && typeof one.value === 'number' ? number(workbook, place, one.value) : text('text', one ? comparedText(one) : '')))
    const differences = values.map((one, at) => (at === 0 || !one ? undefined : differenceText(of, one)))
    const line: Line = [text('label', of.label ?? printCellPlace(place)), text('text', printCellPlace(place)), text('unit', of.unit ?? ''), ...shown]
    return differences.some((words) => words !== undefined) ? [line, [text('note', 'difference from the base'), text('text', ''), text('unit', ''), ...differences.map((words) => text('note', words ?? ''))]] : [line]
  })
  const checks = outcomes.map(({ checks: count, notMet, errors }) => text('text', `${count - notMet.length} of ${count} met${errors > 0 ? `, ${errors} errors` : ''}`))
  const notMet = outcomes.flatMap(({ name, notMet: open }) => open.map((check): Line => [text('label', name), text('text', printCellPlace(check)), text('unit', ''), text('text', `${check.label ?? ''}: ${check.words}`)]))
  return [
    [],
    ['Results at export', 'Cell', 'Unit', ...outcomes.map(({ name }) => name)].map((words) => text('heading', words)),
    ...results,
    [text('label', 'All checks of the workbook'), text('text', ''), text('unit', ''), ...checks],
    ...(base && notMet.length > 0 ? [[], ['Checks not met', 'Cell'].map((words) => text('heading', words)), ...notMet] : []),
  ]
}

/** A formula that stands in an input is told as text: on this sheet nothing computes. */
const plain = (content: CellContent): CellValue => (isFormula(content) ? content : (meantText(content) ?? content))

const text = (look: Look, value: string) => ({ value, style: { look } })

function number(workbook: Workbook, { sheet, row, column }: CellPlace, value: CellValue) {
  const cell = cellAt(workbook, sheet, row, column)
  const format = typeof value === 'number' && cell ? numberCode(value, cell) : undefined
  return { value: isCellError(value) ? value.error : value, style: { look: 'text' as const, ...(format === undefined ? {} : { format }) } }
}
