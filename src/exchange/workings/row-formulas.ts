import type { FunctionDefinition } from '../../../functions/define.ts'
import { columnLetters } from '../../workbook/address.ts'
import { COLUMNS_BEFORE } from './call-book.ts'

/** The formula of a column for a row of the sheet, counted from 0; without "=". */
export type RowFormula = (row: number) => string

/** The formulas of a function's own columns, undefined for those that hold what is given. */
export function rowFormulas({ name, workings }: FunctionDefinition, addresses: ReadonlyMap<string, string>): readonly (RowFormula | undefined)[] {
  return workings.columns.map(({ formula }) => {
    if (formula === undefined) return undefined
    const pieces = formula.split(/⟨([^⟩]+)⟩/).map((piece, index) => {
      if (index % 2 === 0) return piece
      if (/^\d+$/.test(piece)) return { letters: columnLetters(COLUMNS_BEFORE + Number(piece)) }
      const address = addresses.get(piece)
      if (address === undefined) throw new Error(`${name}: there is no table block ${piece}`)
      return address
    })
    return (row) => pieces.map((piece) => (typeof piece === 'string' ? piece : piece.letters + (row + 1))).join('')
  })
}

/** The marks of shared tables in a function's workings. */
export const tableMarks = ({ workings }: FunctionDefinition): readonly string[] =>
  workings.columns.flatMap(({ formula = '' }) => [...formula.matchAll(/⟨([^⟩]*\.[^⟩]*)⟩/g)].map(([, mark = '']) => mark))
