import { byPlace, printCellPlace, samePlace, type CellPlace } from './cell-place.ts'
import { sheetByName, type Workbook } from './document.ts'
import type { Edit } from './edits.ts'
import { MAX_TOLERANCES } from './limits.ts'

/**
 * How far an input may be off, both ways: a share of its value, or so much in the unit of its cell. Of a temperature that is a difference,
 * of a gauge pressure a plain pressure: both have no zero of which a share could be taken.
 */
export type Tolerance = { readonly kind: 'share'; readonly share: number } | ToleranceSize

export interface ToleranceSize {
  readonly kind: 'size'
  readonly size: number
  /** What the size was before Restate, as in a cell. */
  readonly restatedFrom?: number
}

/** A tolerance that the user has given an input, kept with the workbook. */
export interface GivenTolerance {
  readonly place: CellPlace
  readonly tolerance: Tolerance
}

/** Gives an input a tolerance; undefined takes it back, so that the usual one counts. */
export function giveTolerance(workbook: Workbook, { sheet, row, column }: CellPlace, tolerance: Tolerance | undefined): Edit[] {
  const place: CellPlace = { sheet: sheetByName(workbook, sheet)?.name ?? sheet, row, column }
  const others = (workbook.tolerances ?? []).filter((one) => !samePlace(one.place, place))
  return [{ kind: 'tolerances', tolerances: tolerance === undefined ? others : [...others, { place, tolerance }] }]
}

/** What is wrong with tolerances, with what is accepted; undefined if nothing is. */
export function tolerancesProblem(tolerances: readonly GivenTolerance[]): string | undefined {
  if (tolerances.length > MAX_TOLERANCES) return `${tolerances.length.toLocaleString('en')} tolerances; accepted: up to ${MAX_TOLERANCES.toLocaleString('en')}`
  const taken = new Set<string>()
  for (const { place, tolerance } of tolerances) {
    const cell = printCellPlace(place)
    if (taken.has(cell)) return `cell ${cell}: two tolerances; accepted: one`
    taken.add(cell)
    const number = tolerance.kind === 'share' ? tolerance.share : tolerance.size
    if (!(number >= 0 && Number.isFinite(number))) return `cell ${cell}: ${number} is no tolerance; accepted: a finite number, not negative`
  }
  return undefined
}

/** In an order that depends on nothing but what they say; undefined where there is none. */
export function normalTolerances(tolerances: readonly GivenTolerance[]): readonly GivenTolerance[] | undefined {
  if (tolerances.length === 0) return undefined
  return tolerances
    .map(({ place: { sheet, row, column }, tolerance }) => ({ place: { sheet, row, column }, tolerance: normalTolerance(tolerance) }))
    .toSorted((one, other) => byPlace(one.place, other.place))
}

/** Whether tolerances in their normal form say the same. */
export const sameTolerances = (one: readonly GivenTolerance[] | undefined, other: readonly GivenTolerance[] | undefined): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other)

/** Without a zero that is negative, which no file tells from the other. */
const normalTolerance = (tolerance: Tolerance): Tolerance =>
  tolerance.kind === 'share'
    ? { kind: 'share', share: tolerance.share + 0 }
    : { kind: 'size', size: tolerance.size + 0, ...(tolerance.restatedFrom === undefined ? {} : { restatedFrom: tolerance.restatedFrom + 0 }) }
