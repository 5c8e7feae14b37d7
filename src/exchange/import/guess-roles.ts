import { findUnit } from '../../../functions/units/units.ts'
import { isFormula, type CellContent, type Role } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'

/** The contents of a sheet, sparse, rows and columns from A1. */
export type Contents = readonly (readonly (CellContent | undefined)[] | undefined)[]

/**
 * What each cell of a file's sheet seems to be for. A file does not say; the guess goes by contents alone:
 *
 * - a formula is a result; one that gave TRUE or FALSE a check
 * - a number or a truth value is an input
 * - a text that is exactly a unit known to Lowside is a unit, beside a number or a formula on its left, or over one
 * - the texts of a row without numbers are headings, where numbers or formulas stand right below one of them (units may stand between)
 * - the only text of the first row in use is the title
 * - the first text of a row is a label where a number or a formula follows it; any other text is a text
 *
 * @param givesTruth whether the formula of a cell gave TRUE or FALSE in the file
 */
export function guessRoles(contents: Contents, row: number, givesTruth: (column: number) => boolean): (Role | undefined)[] {
  const cells = contents[row] ?? []
  const filled = cells.flatMap((content, column) => (content === undefined || content === null ? [] : [column]))
  const isTitle = filled.length === 1 && isText(cells[filled[0] ?? 0]) && contents.findIndex((one) => one?.some(isFilled)) === row && contents.length > row + 1
  const isHeadings = !isTitle && headsNumbers(contents, row)
  const lastValue = cells.findLastIndex(isValue)
  const firstText = cells.findIndex(isText)
  return Array.from(cells, (content, column): Role | undefined => {
    if (content === undefined || content === null) return undefined
    if (isFormula(content)) return givesTruth(column) ? 'check' : 'result'
    if (typeof content !== 'string') return 'input'
    if (isUnit(contents, row, column)) return 'unit'
    if (isTitle) return 'title'
    if (isHeadings) return 'heading'
    return column === firstText && column < lastValue ? 'label' : 'text'
  })
}

const isFilled = (content: CellContent | undefined): boolean => content !== undefined && content !== null
const isValue = (content: CellContent | undefined): boolean => typeof content === 'number' || isFormula(content)
const isText = (content: CellContent | undefined): boolean => typeof content === 'string' && !isFormula(content)

function isUnit(contents: Contents, row: number, column: number): boolean {
  const text = meantText(contents[row]?.[column])
  if (text === undefined || findUnit(text) === undefined) return false
  return isValue(contents[row]?.[column - 1]) || isValue(contents[row + 1]?.[column])
}

function headsNumbers(contents: Contents, row: number): boolean {
  const cells = contents[row] ?? []
  if (!cells.some(isText) || cells.some((content) => isFilled(content) && !isText(content))) return false
  let below = row + 1
  while (below <= row + MOST_UNIT_ROWS && isUnitRow(contents, below)) below++
  return cells.some((content, column) => isText(content) && isValue(contents[below]?.[column]))
}

const MOST_UNIT_ROWS = 2

/** A row of units, words such as "tag" among them at most. */
function isUnitRow(contents: Contents, row: number): boolean {
  const cells = contents[row]
  if (cells === undefined || cells.some((content) => isFilled(content) && !isText(content))) return false
  return cells.some((_, column) => isUnit(contents, row, column))
}
