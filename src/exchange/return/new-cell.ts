import type { CellAddress } from '../../workbook/address.ts'
import { suggestedRole } from '../../workbook/commands.ts'
import { isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import type { NewCell } from './changes.ts'

/**
 * A cell of new rows as the workbook takes it: like the cell above it, where that holds something of the same kind, as in a list; else with the role that its content suggests.
 * @param like the cell that the list goes on from
 */
export function newCell(sheet: Sheet, at: CellAddress, { content, note }: NewCell, like?: Cell): Cell {
  const noted = note === undefined || note === '' ? {} : { note }
  if (like !== undefined && kindOf(like.content) === kindOf(content)) {
    const { restatedFrom: _, note: __, ...rest } = like
    return { ...rest, content, ...noted }
  }
  return { content, role: suggestedRole(sheet, at, content), ...noted }
}

const kindOf = (content: Cell['content']): string => (isFormula(content) ? 'formula' : typeof content)
