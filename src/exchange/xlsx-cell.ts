import type { CellObject, Comments } from 'xlsx'
import { isCellError, type CellError, type CellValue } from '../calc/values.ts'
import { isFormula, type Cell } from '../workbook/document.ts'
import { meantText } from '../workbook/entry.ts'
import { fileFormula, type FileNames } from './file-formula.ts'
import { numberCode } from './number-code.ts'

/** A cell as the file library takes it; undefined where there is nothing to write. `address` is its own, for an array formula. */
export function xlsxCell(cell: Cell, value: CellValue, address: string, names: FileNames): CellObject | undefined {
  const { content, note } = cell
  if (!isFormula(content)) return withComments(valueCell(meantText(content) ?? content, cell), [note])
  const formula = fileFormula(content, names)
  if (formula === undefined || isUnknownToFiles(value)) {
    const reason = isCellError(value) ? `${value.error}: ${value.message}` : undefined
    return withComments(valueCell(value, cell), [note, `Lowside computes this: ${content}`, reason])
  }
  // A formula that refers to an empty cell comes to 0 in other programs, and needs some value here.
  const cached = valueCell(value ?? 0, cell) ?? { t: 's', v: '' }
  return withComments({ ...cached, f: formula.text, ...(formula.array ? { F: address } : {}) }, [note])
}

/** The error values of ECMA-376 by their codes in the file library. */
const ERROR_CODES: Readonly<Record<string, number>> = {
  '#NULL!': 0x00, '#DIV/0!': 0x07, '#VALUE!': 0x0f, '#REF!': 0x17, '#NAME?': 0x1d, '#NUM!': 0x24, '#N/A': 0x2a,
}

/** Errors of the engine that no file has, and names or functions that no other program would find either. */
const isUnknownToFiles = (value: CellValue): boolean => isCellError(value) && (value.error === '#NAME?' || !(value.error in ERROR_CODES))

function valueCell(value: CellValue, format: Cell): CellObject | undefined {
  if (value === null || value === '') return undefined
  if (typeof value === 'number') return { t: 'n', v: value, z: numberCode(value, format) }
  if (typeof value === 'boolean') return { t: 'b', v: value }
  return typeof value === 'string' ? { t: 's', v: value } : errorCell(value)
}

const errorCell = ({ error }: CellError): CellObject => ({ t: 'e', v: ERROR_CODES[error] ?? ERROR_CODES['#VALUE!'] ?? 0 })

/** What a comment holds at most in a file. */
const MAX_COMMENT = 32_767

function withComments(cell: CellObject | undefined, parts: readonly (string | undefined)[]): CellObject | undefined {
  const text = parts.filter((part) => part !== undefined && part !== '').join('\n\n').slice(0, MAX_COMMENT)
  if (text === '') return cell
  const comments: Comments = [{ a: 'Lowside', t: text }]
  comments.hidden = true
  return { ...(cell ?? { t: 'z' }), c: comments }
}
