import { switchCase } from '../../workbook/case-switching.ts'
import { BASE, casesOf, currentName } from '../../workbook/cases.ts'
import { foldCase, type Workbook } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'

/** In which case results of two workbooks are held against each other: in the one that is current now, where both have one of that name; else in the base. */
export function resultsCase(before: Workbook, now: Workbook): string {
  const name = currentName(now)
  return casesOf(before).list.some((one) => isSameCase(one.name, name)) ? name : BASE
}

/** The edits that make the case of that name current; the base, where there is none. */
export function toCase(workbook: Workbook, name: string): Edit[] {
  const at = casesOf(workbook).list.findIndex((one) => isSameCase(one.name, name))
  return switchCase(workbook, isSameCase(name, BASE) || at < 0 ? null : at)
}

export const isSameCase = (one: string, other: string): boolean => foldCase(one) === foldCase(other)
