import type { CellValue } from '../calc/values.ts'
import { isCellError } from '../calc/values.ts'

/** A value as a line or a field of one holds it: full precision, TRUE and FALSE, text as it is, an error by its sign. */
export function printValue(value: CellValue): string {
  if (value === null) return ''
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  return isCellError(value) ? value.error : String(value)
}

/** Fields in a line, apart by tabs; a tab or a line break within one would break it. */
export const tabbed = (fields: readonly string[]): string => fields.map((field) => field.replace(/[\t\r\n]+/g, ' ')).join('\t')
