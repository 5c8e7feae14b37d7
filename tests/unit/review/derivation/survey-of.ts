import { Graph } from '../../../../src/calc/graph.ts'
import { derive } from '../../../../src/review/derivation/derive.ts'
import type { Derivation, Step } from '../../../../src/review/derivation/derivation.ts'
import { Survey } from '../../../../src/review/survey.ts'
import type { CellPlace } from '../../../../src/workbook/cell-place.ts'
import type { Workbook } from '../../../../src/workbook/document.ts'
import { at, workbookOf, type Put } from '../../workbook-of.ts'

/** A workbook with its values, as findings and derivations look at it. */
export const surveyOf = (workbook: Workbook): Survey => new Survey(workbook, new Graph(workbook).allAreas())

/** `Duty!C5` */
export function placeAt(text: string): CellPlace {
  const split = text.lastIndexOf('!')
  return { sheet: text.slice(0, split), ...at(text.slice(split + 1)) }
}

export const deriveIn = (workbook: Workbook, ...results: readonly string[]): Derivation => derive(surveyOf(workbook), results.map(placeAt))

/** The derivation of a cell of the one sheet that has these cells. */
export const deriveCell = (cells: Readonly<Record<string, Put>>, address: string, names: Readonly<Record<string, string>> = {}): Derivation =>
  deriveIn(workbookOf({ S: cells }, names), `S!${address}`)

export function stepAt({ steps }: Derivation, text: string): Step {
  const place = placeAt(text)
  const found = steps.find(({ cells: { sheet, area } }) => sheet === place.sheet && place.row >= area.top && place.row <= area.bottom && place.column >= area.left && place.column <= area.right)
  if (found === undefined) throw new Error(`no step has ${text}`)
  return found
}
