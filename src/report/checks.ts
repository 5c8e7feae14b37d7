import { checkCells } from '../calc/check-cells.ts'
import { isCellError, type AreaValues, type CellValue, type Check } from '../calc/values.ts'
import { printAddress, type CellAddress } from '../workbook/address.ts'
import type { Sheet } from '../workbook/document.ts'
import { labelOf } from '../workbook/words-beside.ts'
import type { MarkKind } from '../pages/marks.ts'

/** A check with what it is about and how it stands. */
export interface ReportedCheck {
  readonly sheet: string
  readonly address: string
  readonly label: string
  readonly verdict: MarkKind
  readonly words: string
}

/** The checks of a sheet in reading order; empty ones are left off, those without a verdict are not. */
export function reportedChecks(sheet: Sheet, { values, checks }: AreaValues): ReportedCheck[] {
  return checkCells(sheet).flatMap(({ row, column }): ReportedCheck[] => {
    const [address, value] = [printAddress(row, column), values[row]?.[column] ?? null]
    if (value === null) return []
    const check: Check | undefined = checks.get(address)
    const words = check?.words ?? (isCellError(value) ? `no verdict, ${value.error}: ${value.message}` : 'no verdict: neither TRUE nor FALSE')
    const verdict = check === undefined ? 'error' : check.met ? 'met' : 'not-met'
    return [{ sheet: sheet.name, address, label: wordsFor(sheet, { row, column }, values[row]), verdict, words }]
  })
}

/** What a check is called, after the name of its row where that is no label: in a table, what is typed first. */
function wordsFor(sheet: Sheet, at: CellAddress, values: readonly CellValue[] = []): string {
  const label = labelOf(sheet, at)
  const name = values.slice(0, at.column).find((value) => typeof value === 'string' && value !== '')
  const isSaid = typeof name !== 'string' || (label ?? '').startsWith(name)
  return isSaid ? (label ?? '') : [name, label].filter((words) => words !== undefined).join(': ')
}
