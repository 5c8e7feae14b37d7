import type { Dialect, FileContents, ReadCell } from '../../exchange/reading/contents.ts'
import { dateKind, dateText, type DateSystem } from '../../exchange/import/date-text.ts'
import type { RemarkKind } from '../../exchange/import/import-remark.ts'

export const KIND_WORDS: Readonly<Record<RemarkKind, string>> = {
  'computed otherwise': 'Computed otherwise than in the file',
  'kept as text': 'Formulas kept as text',
  'left out': 'Left out',
  'written otherwise': 'Written otherwise',
  'looks otherwise': 'Looks otherwise',
}

export const FILE_KIND_WORDS: Readonly<Record<FileContents['kind'], string>> = {
  xlsx: 'Spreadsheet (ECMA-376)', ods: 'Spreadsheet (OpenDocument)', csv: 'Text in columns (RFC 4180)',
}

export const DELIMITER_WORDS: readonly (readonly [Dialect['delimiter'], string])[] = [[',', 'comma ,'], [';', 'semicolon ;'], ['\t', 'tabulator'], ['|', 'bar |']]
export const DECIMAL_WORDS: readonly (readonly [Dialect['decimalMark'], string])[] = [['.', 'point 1.5'], [',', 'comma 1,5']]
export const ENCODING_WORDS: readonly (readonly [Dialect['encoding'], string])[] = [['UTF-8', 'UTF-8'], ['UTF-16', 'UTF-16'], ['Windows-1252', 'Windows-1252']]

/** What a cell of a file shows in a preview: a formula by its value, days as days. */
export function previewText(cell: ReadCell | undefined, system: DateSystem): string {
  const value = cell?.value ?? null
  if (value === null) return cell?.formula === undefined ? '' : `=${cell.formula}`
  if (typeof value === 'object') return value.error
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  if (typeof value === 'string') return value
  const kind = dateKind(cell?.format)
  return (kind && dateText(value, kind, system)) ?? String(Number(value.toPrecision(12)))
}
