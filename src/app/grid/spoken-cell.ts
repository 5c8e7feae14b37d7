import { printAddress, type CellAddress } from '../../workbook/address.ts'
import { isFormula } from '../../workbook/document.ts'
import { labelOf } from '../../workbook/words-beside.ts'
import type { Session } from '../state/session.ts'

/** What a screen reader says of the active cell. */
export interface SpokenCell {
  /** What it shows with its unit, and where it is: `84 TR, C6`. */
  readonly name: string
  /** Its role, what it is called, and what its marks stand for: `input, Refrigeration load; note: revision 2`. */
  readonly description: string
}

/** @param text what the cell shows; @param marks its marks in words */
export function spokenCell(session: Session, { row, column }: CellAddress, text: string, marks: string | undefined): SpokenCell {
  const cell = session.cell(row, column)
  const isValue = cell !== undefined && (VALUES.has(cell.role) || isFormula(cell.content))
  const value = [text || 'empty', isValue && text !== '' ? session.unit(row, column) : undefined]
  const about = [cell?.role, isValue ? labelOf(session.sheet(), { row, column }) : undefined]
  return {
    name: `${words(value, ' ')}, ${printAddress(row, column)}`,
    description: words([words(about, ', '), marks], '; '),
  }
}

const VALUES: ReadonlySet<string> = new Set(['input', 'result', 'check'])

const words = (parts: readonly (string | undefined)[], between: string): string => parts.filter(Boolean).join(between)
