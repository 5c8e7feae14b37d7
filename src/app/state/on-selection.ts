import { columnLetters, printAddress, type Area } from '../../workbook/address.ts'
import { disjoint } from '../../workbook/areas.ts'
import type { CellRange } from '../../workbook/commands.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import type { Session } from './session.ts'

/** One action on all cells selected, on each of them once. */
export function actOnSelection(session: Pick<Session, 'act' | 'sheet' | 'usedAreas'>, label: string, edits: (workbook: Workbook, sheet: string, range: CellRange) => readonly Edit[]): void {
  const ranges = disjoint(session.usedAreas()).map(rangeOf)
  session.act(label, (workbook) => ranges.flatMap((range) => edits(workbook, session.sheet().name, range)))
}

export const isOneCell = ({ selection }: Pick<Session, 'selection'>): boolean => {
  const [{ top, left, bottom, right } = selection.area(), ...others] = selection.areas()
  return others.length === 0 && top === bottom && left === right
}

/** All that is selected, as addresses: `A1:B4, D2, 7:8`. */
export function selectionWords({ selection, size }: Pick<Session, 'selection' | 'size'>): string {
  const words = selection.areas().map(({ top, left, bottom, right }) => {
    if (top === 0 && bottom === size().rows - 1) return `${columnLetters(left)}:${columnLetters(right)}`
    if (left === 0 && right === size().columns - 1) return `${top + 1}:${bottom + 1}`
    const first = printAddress(top, left)
    return top === bottom && left === right ? first : `${first}:${printAddress(bottom, right)}`
  })
  return [...new Set(words)].join(', ')
}

const rangeOf = ({ top, left, bottom, right }: Area): CellRange => ({ from: { row: top, column: left }, to: { row: bottom, column: right } })
