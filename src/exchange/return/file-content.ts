import type { CellContent } from '../../workbook/document.ts'
import { literalContent } from '../../workbook/entry.ts'
import { MAX_TEXT } from '../../workbook/limits.ts'
import type { ReadCell } from '../reading/contents.ts'
import { formulaBack, type Back } from './formula-back.ts'
import { valueWords } from './same-value.ts'

export type Content = { readonly content: CellContent } | { readonly refused: string }

/** What stands in a cell of a file as content of the workbook: a number, a text that means itself, a formula brought back; or why it cannot be had. */
export function contentInFile(cell: ReadCell | undefined, host: string | null, back: Back): Content {
  if (cell === undefined) return { content: null }
  if (cell.formula !== undefined) {
    const found = formulaBack(cell.formula, host, back)
    return 'refused' in found ? found : { content: found.formula }
  }
  return plainContent(cell)
}

export function plainContent({ value }: ReadCell): Content {
  if (typeof value === 'number') return Number.isFinite(value) ? { content: value + 0 } : { refused: `${value} is no number that a cell holds` }
  if (typeof value === 'object' && value !== null) return { refused: `${value.error} is an error without a formula` }
  if (typeof value !== 'string') return { content: value }
  const content = literalContent(value)
  return content !== null && content.length > MAX_TEXT ? { refused: `it has ${content.length} characters; accepted: up to ${MAX_TEXT}` } : { content }
}

/** What stands in a cell, in words. */
export const cellWords = (cell: { readonly value: Parameters<typeof valueWords>[0]; readonly formula?: string } | undefined): string =>
  cell === undefined ? 'nothing' : cell.formula === undefined ? valueWords(cell.value) : `=${cell.formula}`

export const contentWords = (content: CellContent | undefined): string => (content === null || content === undefined ? 'nothing' : valueWords(content))
