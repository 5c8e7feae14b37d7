import { isCellError, type CellValue } from '../../calc/values.ts'
import { printAddress } from '../../workbook/address.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { isFormula, sheetByName, type Role, type Sheet } from '../../workbook/document.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import type { Survey } from '../survey.ts'
import { withUnit } from './with-unit.ts'

/** A number as derivations print it: one that was typed in as it was typed, any other to five digits. */
export function printedNumber({ workbook }: Survey, value: number, place?: CellPlace): string {
  const content = place && sheetByName(workbook, place.sheet)?.rows[place.row]?.[place.column]?.content
  return typeof content === 'number' ? formatNumber(value, { digits: 15 }) : formatNumber(value)
}

/** What a cell comes to, with its unit; of a check the verdict. */
export function cellWords(survey: Survey, sheet: Sheet, row: number, column: number): string {
  const value = survey.value(sheet.name, row, column)
  const check = survey.check(sheet.name, row, column)
  return check?.words ?? valueWords(survey, value, survey.unit(sheet, row, column), { sheet: sheet.name, row, column })
}

function valueWords(survey: Survey, value: CellValue, unit: string | undefined, place: CellPlace): string {
  if (typeof value === 'number') return withUnit(printedNumber(survey, value, place), unit)
  if (value === null) return 'empty'
  if (isCellError(value)) return value.error
  return typeof value === 'boolean' ? String(value).toUpperCase() : value
}

/**
 * What a cell is called: the label nearest on its left, and where its row has several values, or no label, the heading above it; in a table whose rows go
 * by a name, that name before the heading. Unlike the words beside a cell, labels that are computed count. Its address where there are none.
 */
export function cellName(survey: Survey, sheet: Sheet, row: number, column: number): string {
  const left = leftLabel(survey, sheet, row, column)
  const above = left === undefined || isOneOfSeveral(sheet, row) ? headingAbove(survey, sheet, row, column) : undefined
  const name = left ?? nameInRow(survey, sheet, row, column)
  return (name === undefined || above === undefined ? (name ?? above) : `${name}: ${above}`) ?? printAddress(row, column)
}

/** The heading alone, or else the label: of a range. */
export const rangeHeading = (survey: Survey, sheet: Sheet, row: number, column: number): string =>
  headingAbove(survey, sheet, row, column) ?? leftLabel(survey, sheet, row, column) ?? printAddress(row, column)

/** Further up than this, a text is no heading of the cell. */
const ROWS_LOOKED_AT = 1000

const VALUES: ReadonlySet<Role> = new Set(['input', 'result', 'check'])
const isOneOfSeveral = (sheet: Sheet, row: number): boolean => (sheet.rows[row] ?? []).filter((cell) => cell && VALUES.has(cell.role)).length > 1

function leftLabel(survey: Survey, sheet: Sheet, row: number, column: number): string | undefined {
  for (let at = column - 1; at >= 0; at--) {
    const text = labelText(survey, sheet, row, at)
    if (text !== undefined) return text
  }
  return undefined
}

function headingAbove(survey: Survey, sheet: Sheet, row: number, column: number): string | undefined {
  for (let at = row - 1; at >= Math.max(0, row - ROWS_LOOKED_AT); at--) {
    const text = labelText(survey, sheet, at, column)
    if (text !== undefined) return text
  }
  return undefined
}

function labelText(survey: Survey, sheet: Sheet, row: number, column: number): string | undefined {
  const cell = sheet.rows[row]?.[column]
  if (cell?.role !== 'label' && cell?.role !== 'heading') return undefined
  const value = isFormula(cell.content) || typeof cell.content === 'string' ? survey.value(sheet.name, row, column) : undefined
  return typeof value === 'string' && value !== '' ? value : undefined
}

/** The text by which a row of a table goes. */
function nameInRow(survey: Survey, sheet: Sheet, row: number, column: number): string | undefined {
  for (let at = 0; at < column; at++) {
    const role = sheet.rows[row]?.[at]?.role
    const value = role === 'input' || role === 'result' || role === 'text' ? survey.value(sheet.name, row, at) : undefined
    if (typeof value === 'string' && value !== '') return value
  }
  return undefined
}
