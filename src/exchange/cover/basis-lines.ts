import type { CellValue } from '../../calc/values.ts'
import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import { eachCell } from '../../workbook/cells.ts'
import { foldCase, type Sheet, type Workbook } from '../../workbook/document.ts'
import { unitOfValue } from '../../workbook/unit-scope.ts'
import { labelOf } from '../../workbook/words-beside.ts'
import { numberCode } from '../number-code.ts'
import { across, EMPTY, headings, line, live, words, type Line } from './cover-lines.ts'

/** The sheet whose values all others take as given, where the workbook has one. */
const BASIS = 'basis'
/** More are told by number. */
const LISTED = 24

/** What the sheet Basis takes as given, each value and its unit as references to their cells: site, high side, suction, practice values. */
export function basisLines({ sheets }: Workbook, values: ReadonlyMap<string, readonly (readonly CellValue[])[]>): readonly Line[] {
  const sheet = sheets.find(({ name }) => foldCase(name) === BASIS)
  if (sheet === undefined) return []
  const found = givenOn(sheet, values.get(sheet.name) ?? [])
  if (found.length === 0) return []
  return [
    EMPTY,
    headings('Basis of the calculation', '', 'Value', 'Unit', 'Cell'),
    ...found.slice(0, LISTED),
    ...(found.length > LISTED ? [{ cells: across('note', `and ${found.length - LISTED} more on the sheet ${sheet.name}`) }] : []),
  ]
}

function givenOn(sheet: Sheet, values: readonly (readonly CellValue[])[]): Line[] {
  const lines: Line[] = []
  const reference = (row: number, column: number): string => `${quoteSheetName(sheet.name)}!${printAddress(row, column)}`
  eachCell(sheet, (cell, row, column) => {
    const value = values[row]?.[column] ?? null
    if (cell.role !== 'input' && cell.role !== 'result') return
    if ((typeof value !== 'number' && typeof value !== 'string') || value === '' || isNameOfRow(sheet, row, column)) return
    const unit = typeof value === 'number' ? unitOfValue(sheet, { row, column }) : undefined
    const unitText = unit && values[unit.row]?.[unit.column]
    const number = typeof value === 'number' ? { format: numberCode(value, cell) } : { wrap: true }
    lines.push(line(
      { value: nameOf(sheet, values, row, column), style: { look: 'label', wrap: true }, across: 2 }, { value: null, style: { look: 'label' } },
      live(reference(row, column), value, { look: 'result', ...number }),
      unit && typeof unitText === 'string' ? live(reference(unit.row, unit.column), unitText, { look: 'unit' }) : undefined,
      words('note', `${sheet.name}!${printAddress(row, column)}`),
    ))
  })
  return lines
}

/** A text that is typed where a table has its rows' names is none of its values. */
const isNameOfRow = (sheet: Sheet, row: number, column: number): boolean => {
  const cells = sheet.rows[row] ?? []
  const isFirst = cells.findIndex((cell) => cell !== undefined) === column
  return isFirst && cells.some((cell, at) => at > column && (cell?.role === 'input' || cell?.role === 'result'))
}

function nameOf(sheet: Sheet, values: readonly (readonly CellValue[])[], row: number, column: number): string {
  const label = labelOf(sheet, { row, column }) ?? ''
  const first = values[row]?.slice(0, column).find((one) => typeof one === 'string' && one !== '')
  return typeof first !== 'string' || label.startsWith(first) ? label : `${first}: ${label}`
}
