import { parseReference, printAddress } from './address.ts'
import type { CellPlace } from './cell-place.ts'

/** Where in a file something is wrong. */
export type FilePath = readonly (string | number)[]

/**
 * Reads cells as a file has them beside its sheets, such as `Drum!C5`: the one cell, or none where it is wrong.
 * @param sheets those that there are; undefined where a cell may be of a sheet that there is not
 * @param report hears of what is wrong, and where in the file
 */
export function placeReader(sheets: readonly { readonly name: string }[] | undefined, report: (message: string, path: FilePath) => void): (text: string, path: FilePath) => CellPlace[] {
  const names = sheets && new Set(sheets.map(({ name }) => name))
  return (text, path) => {
    const place = placeIn(text)
    if (place && names?.has(place.sheet) !== false) return [place]
    report(place ? `there is no sheet ${JSON.stringify(place.sheet)}` : `${JSON.stringify(text)} is no cell; accepted: a sheet and an address, as in Drum!C5`, path)
    return []
  }
}

/** The address as it would be written; the sheet in quotes or not. */
function placeIn(text: string): CellPlace | undefined {
  const reference = parseReference(text)
  if (!reference || reference.sheet === null || reference.to !== null || reference.from.row === null || reference.from.column === null) return undefined
  const place = { sheet: reference.sheet, row: reference.from.row, column: reference.from.column }
  return text.slice(text.lastIndexOf('!') + 1) === printAddress(place.row, place.column) ? place : undefined
}
