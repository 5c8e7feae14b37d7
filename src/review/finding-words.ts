import { printAddress, quoteSheetName } from '../workbook/address.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import type { Finding, Found, Severity } from './finding.ts'

/** `Duty!C5`, `'Wet return'!C5:C9` */
export function findingPlace({ sheet, area: { top, left, bottom, right } }: Pick<Found, 'sheet' | 'area'>): string {
  const isOne = top === bottom && left === right
  return `${quoteSheetName(sheet)}!${printAddress(top, left)}${isOne ? '' : `:${printAddress(bottom, right)}`}`
}

/** What the cell is called, and what is to be said of it: "Suction line velocity: #N/A, no pipe of that size". */
export const findingWords = ({ label, reason }: Pick<Finding, 'label' | 'reason'>): string => (label === undefined ? reason : `${label}: ${reason}`)

/** "2 errors, 1 warning"; nothing where there is none. */
export function countWords(found: readonly Pick<Found, 'severity'>[]): string {
  return SEVERITIES.flatMap((severity) => {
    const count = found.filter((one) => one.severity === severity).length
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`]
  }).join(', ')
}

/** The worst first. */
export const SEVERITIES: readonly Severity[] = ['error', 'warning', 'remark']

/** A cell as a reason on a sheet names it: its address, with its sheet's name where it is on another. */
export const cellWords = ({ sheet, row, column }: CellPlace, home: string): string => (sheet === home ? '' : `${quoteSheetName(sheet)}!`) + printAddress(row, column)

/** "C5", "C5 and C6", "C5, C6 and 10 more". */
export const cellsWords = (places: readonly CellPlace[], home: string, most = 4): string => listed(places.map((place) => cellWords(place, home)), most)

/** "0.75", "0.75 and 1.1", "0.75, 1.1 and 3 more". */
export function listed(words: readonly string[], most = 4): string {
  const shown = words.slice(0, words.length === most + 1 ? most + 1 : most)
  const last = words.length > shown.length ? `${words.length - shown.length} more` : shown.pop()
  return shown.length === 0 ? (last ?? '') : `${shown.join(', ')} and ${last}`
}

/** A formula as a reason quotes it: whole, or its beginning. */
export const quotedFormula = (formula: string): string => (formula.length > MOST_QUOTED ? `${formula.slice(0, MOST_QUOTED - 1)}…` : formula)

const MOST_QUOTED = 90

/** With a full stop, so that something can follow. */
export const asSentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`)
