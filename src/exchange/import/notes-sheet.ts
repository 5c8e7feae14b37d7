import type { Cell, Role, Sheet } from '../../workbook/document.ts'
import { literalContent } from '../../workbook/entry.ts'
import { MAX_TEXT } from '../../workbook/limits.ts'
import { acceptableSheetName } from './imported-names.ts'
import { REMARK_KINDS, type ImportRemark } from './import-remark.ts'

/** The remarks of an import as a sheet, to be kept with what was brought in. */
export function notesSheet(fileName: string, date: Date, remarks: readonly ImportRemark[], taken: readonly string[]): Sheet {
  const rows = [
    [cell('Import notes', 'title')],
    [cell('File', 'label'), cell(fileName, 'text')],
    [cell('Brought in', 'label'), cell(date.toISOString().slice(0, 10), 'text')],
    undefined,
    [cell('Where', 'heading'), cell('What became of it', 'heading'), cell('Remark', 'heading')],
    ...REMARK_KINDS.flatMap((kind) => remarks.filter((one) => one.kind === kind)).map((remark) => [
      cell(remark.place, 'text'), cell(remark.kind, 'text'), { ...cell(remark.words, 'text'), wrap: true as const },
    ]),
  ]
  return { name: acceptableSheetName('Import notes', taken), columns: [150, 170, 520], frozen: [5, 0], rows }
}

const cell = (text: string, role: Role): Cell => ({ content: literalContent(text.slice(0, MAX_TEXT - 1)), role })
