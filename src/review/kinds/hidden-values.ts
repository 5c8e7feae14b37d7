import { findUnit } from '../../../functions/units/units.ts'
import { isProportional } from '../../calc/check.ts'
import type { CellValue } from '../../calc/values.ts'
import { columnLetters } from '../../workbook/address.ts'
import { eachCell } from '../../workbook/cells.ts'
import { columnWidth, type Cell, type Sheet } from '../../workbook/document.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import type { FindingKind, Found } from '../finding.ts'
import { grouped } from '../grouped.ts'
import { merge, type CellFound } from '../merge.ts'
import type { Survey } from '../survey.ts'

/** What stands in the workbook and is not to be seen in it. */
export const hiddenValues: FindingKind = {
  kind: 'hidden-values',
  heading: 'Values that do not show',
  about: 'Columns too narrow for the numbers in them, texts of which nothing is left, and numbers shown with so few digits that they read as nothing or as another number. By the usual width of characters; texts cut off in part are not meant.',
  find: (survey) => survey.workbook.sheets.flatMap((sheet) => [...narrowColumns(survey, sheet), ...merge(coarseNumbers(survey, sheet))]),
}

/** No digit of a usual typeface at the size of the sheet is narrower; nor is a cell's padding less. */
const DIGIT_PX = 6.2
const PADDING_PX = 10
/** Of a text so many characters say something: a check’s "met". */
const LEAST_CHARACTERS = 3

interface Hidden {
  readonly row: number
  readonly column: number
  readonly shown: string
  readonly isNumber: boolean
}

function narrowColumns(survey: Survey, sheet: Sheet): Found[] {
  const hidden: Hidden[] = []
  eachCell(sheet, (cell, row, column) => {
    const shown = shownText(cell, survey.value(sheet.name, row, column))
    if (shown === undefined) return
    const fits = Math.floor((columnWidth(sheet, column) - PADDING_PX) / DIGIT_PX)
    if (shown.isNumber ? fits < shown.text.length : fits < Math.min(LEAST_CHARACTERS, shown.text.length) && isFilled(survey, sheet, row, column + 1)) {
      hidden.push({ row, column, shown: shown.text, isNumber: shown.isNumber })
    }
  })
  return [...grouped(hidden, ({ column }) => column)].map(([column, cells]) => narrow(sheet, column, cells))
}

const SHOWN_ROLES: ReadonlySet<Cell['role']> = new Set<Cell['role']>(['input', 'result', 'check', 'unit'])

function shownText(cell: Cell, value: CellValue): { readonly text: string; readonly isNumber: boolean } | undefined {
  if (!SHOWN_ROLES.has(cell.role) || value === null || value === '' || cell.wrap) return undefined
  if (typeof value === 'number') return { text: formatNumber(value, cell), isNumber: true }
  return { text: typeof value === 'string' ? value : 'met', isNumber: false }
}

/** A text runs on over what is empty on its right. */
const isFilled = (survey: Survey, sheet: Sheet, row: number, column: number): boolean => {
  const value = survey.value(sheet.name, row, column)
  return value !== null && value !== ''
}

function narrow(sheet: Sheet, column: number, cells: readonly Hidden[]): Found {
  const numbers = cells.filter(({ isNumber }) => isNumber)
  const [first, last] = [cells[0], cells.at(-1)]
  const what = numbers.length > 0 ? countOf(numbers.length, 'number') : countOf(cells.length, 'text')
  const longest = (numbers.length > 0 ? numbers : cells).reduce((most, { shown }) => (shown.length > most.length ? shown : most), '')
  const width = columnWidth(sheet, column)
  const columns = Array.from({ length: Math.max(sheet.columns.length, column + 1) }, (_, index) => (index === column ? Math.min(MOST_WIDE_PX, Math.ceil((longest.length + 1) * WIDE_DIGIT_PX + WIDE_PADDING_PX)) : columnWidth(sheet, index)))
  return {
    severity: numbers.length > 0 ? 'warning' : 'remark', sheet: sheet.name, area: { top: first?.row ?? 0, bottom: last?.row ?? 0, left: column, right: column },
    reason: `Column ${columnLetters(column)} is ${width} px wide: ${what} in it ${cells.length === 1 ? 'does' : 'do'} not show whole, such as ${longest.slice(0, MOST_QUOTED)}.`,
    key: `too narrow for ${what}`,
    mend: { words: 'Widen the column', edits: [{ kind: 'columnWidths', sheet: sheet.name, columns }] },
  }
}

const MOST_QUOTED = 24
/** Room in any typeface. */
const WIDE_DIGIT_PX = 8
const WIDE_PADDING_PX = 20
const MOST_WIDE_PX = 320

const countOf = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`

/** A shown number may be off by so much of the value before it reads as another. */
const MOST_OFF = 0.05
/** What is left of a subtraction of equal numbers is no value. */
const NOISE = 1e-9

/** Where zero is not nothing, as of temperatures and gauge pressures, a part of the value is no measure; a tenth of a percent of a whole is little, whatever part it is of the share. */
function isFineEnough(unitText: string | undefined, { decimals = 0 }: Cell): boolean {
  const unit = unitText === undefined ? undefined : findUnit(unitText)
  return unit !== undefined && (!isProportional(unit) || (unit.code === '%' && decimals > 0))
}

function coarseNumbers(survey: Survey, sheet: Sheet): CellFound[] {
  const found: CellFound[] = []
  eachCell(sheet, (cell, row, column) => {
    if (cell.decimals === undefined && cell.digits === undefined) return
    const value = survey.value(sheet.name, row, column)
    if (typeof value !== 'number' || Math.abs(value) < NOISE) return
    const text = formatNumber(value, cell)
    const shown = Number(text)
    if (Math.abs(shown - value) <= MOST_OFF * Math.abs(value) || isFineEnough(survey.unit(sheet, row, column), cell)) return
    const { digits: _digits, decimals: _decimals, ...plain } = cell
    found.push({
      found: {
        severity: 'remark', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
        reason: shown === 0 ? `Shows ${text}, and is ${formatNumber(value)}.` : `Shows ${text}, and is ${formatNumber(value)}: ${Math.round((Math.abs(shown - value) / Math.abs(value)) * 100)} % off.`,
        key: shown === 0 ? 'shown as 0' : 'shown too coarsely',
        mend: { words: 'Show more digits', edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: plain }] }] },
      },
      alike: shown === 0 ? 'zero' : 'coarse',
    })
  })
  return found
}
