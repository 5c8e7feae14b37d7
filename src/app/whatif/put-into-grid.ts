import { setEntry } from '../../workbook/commands.ts'
import { printCellPlace, type CellPlace } from '../../workbook/cell-place.ts'
import type { Session } from '../state/session.ts'
import { withUnit } from '../../whatif/quantity-words.ts'

export interface ToPut {
  readonly place: CellPlace
  /** In the unit of the cell. */
  readonly number: number
  readonly unitText: string | undefined
}

/** Numbers into their cells, as one action that Undo takes back; the first of them is shown. */
export function putIntoGrid(session: Session, all: readonly ToPut[]): void {
  const [first] = all
  if (first === undefined || !session.settle()) return
  session.act('Put into the grid', (workbook) => all.flatMap(({ place, number }) => setEntry(workbook, place.sheet, place, String(number))))
  if (session.notice()?.tone === 'problem') return
  session.goTo(first.place.sheet, first.place)
  session.setNotice({ tone: 'done', text: `${all.map(({ place, number, unitText }) => `${printCellPlace(place)} is now ${withUnit(number, unitText)}`).join(', ')}; Undo brings back what it was` })
}
