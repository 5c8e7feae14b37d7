import { printReference, type CellAddress, type Reference } from './address.ts'

/** A cell of a workbook, by the name of its sheet. */
export interface CellPlace extends CellAddress {
  readonly sheet: string
}

export const samePlace = (one: CellPlace, other: CellPlace): boolean => one.row === other.row && one.column === other.column && one.sheet === other.sheet

/** `Drum!C5`, `'Wet return'!C5` */
export const printCellPlace = (place: CellPlace): string => printReference(placeReference(place))

export const placeReference = ({ sheet, row, column }: CellPlace): Reference => ({ sheet, from: { row, column, rowAbsolute: false, columnAbsolute: false }, to: null })

/** By the name of the sheet, then in the order of reading. */
export function byPlace(one: CellPlace, other: CellPlace): number {
  if (one.sheet !== other.sheet) return one.sheet < other.sheet ? -1 : 1
  return one.row - other.row || one.column - other.column
}
