import { checkCells } from '../../calc/check-cells.ts'
import { isCellError, type CellValue, type Check } from '../../calc/values.ts'
import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import type { Sheet } from '../../workbook/document.ts'
import { labelOf } from '../../workbook/words-beside.ts'

/** A check of the workbook and how it stood at export. */
export interface Verdict {
  readonly place: string
  /** To its cell, as a formula of a file has it. */
  readonly reference: string
  readonly label: string
  readonly met: boolean | undefined
  /** With its margin where there is one. */
  readonly words: string
}

/** The checks of a sheet in reading order; empty ones are left off. */
export function verdictsOf(sheet: Sheet, values: readonly (readonly CellValue[])[], checks: ReadonlyMap<string, Check> = new Map()): Verdict[] {
  return checkCells(sheet).flatMap(({ row, column }) => {
    const value = values[row]?.[column] ?? null
    if (value === null || value === '') return []
    const first = values[row]?.slice(0, column).find((one) => typeof one === 'string' && one !== '')
    const label = labelOf(sheet, { row, column }) ?? ''
    const address = printAddress(row, column)
    const met = typeof value === 'boolean' ? value : undefined
    return [{
      place: `${sheet.name}!${address}`, reference: `${quoteSheetName(sheet.name)}!${address}`, label: typeof first !== 'string' || label.startsWith(first) ? label : `${first}: ${label}`,
      met, words: met === undefined ? withoutVerdict(value) : (checks.get(address)?.words ?? (met ? 'met' : 'not met')),
    }]
  })
}

const withoutVerdict = (value: CellValue): string => (isCellError(value) ? `no verdict, ${value.error}: ${value.message}` : 'no verdict: neither TRUE nor FALSE')

/** How many of the checks are met. */
export function countInWords(verdicts: readonly Verdict[]): string {
  if (verdicts.length === 0) return 'no checks'
  const [met, notMet] = [true, false].map((wanted) => verdicts.filter((one) => one.met === wanted).length)
  const open = verdicts.length - (met ?? 0) - (notMet ?? 0)
  return `${met} of ${verdicts.length} checks met${notMet ? `, ${notMet} not met` : ''}${open > 0 ? `, ${open} without verdict` : ''} at export`
}
