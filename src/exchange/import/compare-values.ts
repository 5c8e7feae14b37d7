import { isCellError, type CellValue } from '../../calc/values.ts'
import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import { isFormula } from '../../workbook/document.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import type { ReadValue } from '../reading/contents.ts'
import type { ImportRemark } from './import-remark.ts'
import type { ImportedSheet } from './import-sheets.ts'
import { isVolatile } from './known-functions.ts'
import { shortened } from './shortened.ts'

/** Numbers that differ by less, in proportion, are the same: engines add in different orders. */
const SAME_WITHIN = 1e-9
const LONGEST_SHOWN = 120
/** What is left where equal numbers are subtracted. */
const NOTHING_BELOW = 1e-14

/**
 * Where formulas of an imported sheet come to other values than the file holds, in some of its rows.
 * @param values what Lowside computes, from the row `top` and column A on
 */
export function computedOtherwise({ sheet, from }: ImportedSheet, top: number, values: readonly (readonly CellValue[])[]): ImportRemark[] {
  const remarks: ImportRemark[] = []
  for (const [index, computed] of values.entries()) {
    const row = top + index
    for (const [column, cell] of (sheet.rows[row] ?? []).entries()) {
      if (!isFormula(cell?.content)) continue
      const expected = from.rows[row]?.[column]?.value ?? null
      const value = computed[column] ?? null
      if (isSame(expected, value)) continue
      const changing = tokenise(cell.content).some(({ kind, text }) => kind === 'function' && isVolatile(text)) ? '; it changes with every calculation' : ''
      remarks.push({
        place: `${quoteSheetName(sheet.name)}!${printAddress(row, column)}`, kind: 'computed otherwise',
        words: `${shortened(cell.content, LONGEST_SHOWN)} comes to ${inWords(value)}, in the file to ${inWords(expected)}${changing}`,
      })
    }
  }
  return remarks
}

/** Whether any cell has a formula: without one there is nothing to compare. */
export const hasFormulas = ({ sheet }: ImportedSheet): boolean => sheet.rows.some((row) => row?.some((cell) => isFormula(cell?.content)) === true)

/** A file that has never been calculated holds no value: nothing to differ from. */
function isSame(expected: ReadValue, value: CellValue): boolean {
  if (expected === null) return true
  if (typeof expected === 'object') return isCellError(value) && sameError(expected.error, value.error)
  if (isCellError(value)) return false
  // What refers to an empty cell comes to 0 in other programs, and "" shows nothing.
  if (value === null) return expected === 0 || expected === ''
  if (typeof expected === 'number' && typeof value === 'number') return sameNumber(expected, value)
  return expected === value
}

function sameNumber(one: number, other: number): boolean {
  const difference = Math.abs(one - other)
  return difference <= SAME_WITHIN * Math.max(Math.abs(one), Math.abs(other)) || difference < NOTHING_BELOW
}

/** Lowside tells errors apart that other programs' files do not. */
const sameError = (file: string, here: string): boolean => file === here || (here === '#ERROR!' && file === '#NAME?')

function inWords(value: ReadValue | CellValue): string {
  if (value === null) return 'nothing'
  if (typeof value === 'object') return 'message' in value ? `${value.error} (${value.message})` : value.error
  return typeof value === 'string' ? JSON.stringify(shortened(value, LONGEST_SHOWN)) : typeof value === 'boolean' ? String(value).toUpperCase() : String(value)
}
