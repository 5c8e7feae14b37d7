import type { Cell, Role, Sheet, Workbook } from '../../workbook/document.ts'
import { literalContent } from '../../workbook/entry.ts'
import { MAX_TEXT } from '../../workbook/limits.ts'
import { newSheetNames } from '../../workbook/new-sheet-name.ts'
import { isAsked, type Change } from './changes.ts'

/** What of a file was not taken over, kept as a sheet of the workbook. */
export function setAsideSheet({ sheets }: Workbook, changes: readonly Change[]): Sheet {
  const name = newSheetNames(sheets.map((sheet) => sheet.name))('Set aside')
  return {
    name, columns: [200, 260, 260, 520], frozen: [3, 0],
    rows: [
      line(['title', 'Set aside from the file']),
      line(['note', 'What a spreadsheet file that came back held otherwise, and the workbook did not take over. Texts only: nothing here computes.']),
      line(['heading', 'Place'], ['heading', 'In the file'], ['heading', 'Kept'], ['heading', 'Reason']),
      ...changes.map((change) => line(['label', change.place], ['text', change.is], ['text', change.was], ['text', reasonOf(change)])),
    ],
  }
}

const line = (...cells: readonly (readonly [role: Role, text: string])[]): (Cell | undefined)[] =>
  cells.map(([role, text]) => {
    const content = literalContent(text.slice(0, MAX_TEXT - 1))
    return content === null ? undefined : { content, role, ...(role === 'text' ? { wrap: true as const } : {}) }
  })

/** Why a change was not taken over. */
export function reasonOf(change: Change): string {
  if (change.kind === 'workings') return `Workings of ${change.of}${change.step === '' ? '' : `, step “${change.step}”`}${change.firstCalledIn === '' ? '' : `, first called in ${change.firstCalledIn}`}: the workbook computes with its own.`
  if (change.kind === 'passedOver') return change.reason
  return isAsked(change) && 'refused' in change.taking ? `It cannot be taken over: ${change.taking.refused}.` : 'Left as it is in Lowside when the file was opened.'
}
