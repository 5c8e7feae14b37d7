import { BASE, currentName } from '../../workbook/cases.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { foldCase, type Workbook } from '../../workbook/document.ts'
import { applyEdits } from '../../workbook/edits.ts'
import { restate, unitSystemOf } from '../../workbook/restate.ts'
import type { UnitSystem } from '../../workbook/unit-pairs.ts'
import { caseDifferences } from './case-differences.ts'
import type { Comparison, Difference } from './difference.ts'
import { effectsOn } from './effects.ts'
import { fewestDifferences } from './fewest-differences.ts'
import type { Found } from './found.ts'
import { layoutOf } from './layout.ts'
import { markDifferences } from './mark-differences.ts'
import { figureDifferences, nameDifferences, titleDifferences } from './outside-differences.ts'
import { sheetAdded, sheetDifferences, sheetGone, sheetRenamed, sheetsMoved } from './sheet-differences.ts'
import { resultsCase } from './results-case.ts'
import { pairedSheets, Side, sidesOf, type Areas, type Sides } from './sides.ts'
import { toleranceDifferences } from './tolerance-differences.ts'

export interface ComparedSide {
  /** With its own case in the cells. */
  readonly workbook: Workbook
  /** By sheet name, every value from A1, as they come out in the case that `resultsCase` names, so that like is compared with like. */
  readonly areas: Areas
}

export interface CompareOptions {
  /** The results whose effects are told, by their places now; all results and checks that come to something else where there is none. */
  readonly results?: readonly CellPlace[]
  /** Of a workbook held against its template, title and purpose, who made it, cases and what reviewers left are its own; the template is restated in its units. */
  readonly sides?: 'workbooks' | 'template'
  /** Told from time to time what share of the work is done, from 0 to 1. */
  readonly report?: (share: number) => void
}

/**
 * What differs between two workbooks, and what that does to results. Not compared: column widths, rows and columns that stay in view, paper, kept mappings of lists.
 * Cells are compared with the base in them, cases by themselves.
 */
export function compareWorkbooks(before: ComparedSide, now: ComparedSide, { results, sides: kind = 'workbooks', report = () => undefined }: CompareOptions = {}): Comparison {
  const restatedTo = kind === 'template' ? otherSystem(before.workbook, now.workbook) : undefined
  const old = inSystem(before.workbook, restatedTo)
  const [sideBefore, sideNow] = [new Side(old, before.areas), new Side(now.workbook, now.areas)]
  const layout = fewestDifferences(layoutOf(old, now.workbook, (share) => report(ALIGNING * share)), (one) => [...differencesIn(sidesOf(sideBefore, sideNow, one), SAME_CASE)].length)
  const sides = sidesOf(sideBefore, sideNow, layout)
  const current = { before: currentName(before.workbook), now: currentName(now.workbook) }
  const found = [...differencesIn(sides, current, kind, (share) => report(ALIGNING + (WITH_CELLS - ALIGNING) * share))]
  // Values are in the units in which they were computed.
  const { effects, compared } = effectsOn(restatedTo === undefined ? sides : { ...sides, before: new Side(before.workbook, before.areas) }, results)
  report(1)
  return { differences: found.map((one, id): Difference => ({ ...one, id })), effects, resultsCompared: compared, resultsOf: resultsCase(before.workbook, now.workbook), layout, ...(restatedTo === undefined ? {} : { restatedTo }) }
}

/** The system of units that a workbook is in and its template is not. */
function otherSystem(template: Workbook, workbook: Workbook): UnitSystem | undefined {
  const [theirs, own] = [unitSystemOf(template), unitSystemOf(workbook)]
  return theirs !== undefined && theirs !== own ? own : undefined
}

export const inSystem = (workbook: Workbook, system: UnitSystem | undefined): Workbook => (system === undefined ? workbook : applyEdits(workbook, restate(workbook, system)).workbook)

/** Where it does not matter which case is current. */
export const SAME_CASE = { before: BASE, now: BASE }

/** Shares of the time, measured on 10 000 rows. */
const ALIGNING = 0.4
const WITH_CELLS = 0.9

export function* differencesIn(sides: Sides, current: { readonly before: string; readonly now: string }, kind: 'workbooks' | 'template' = 'workbooks', report: (share: number) => void = () => undefined): Generator<Found> {
  const pairs = pairedSheets(sides)
  const byName = new Map(pairs.map((pair) => [pair.now, pair]))
  if (kind === 'workbooks') yield* titleDifferences(sides)
  yield* sheetsMoved(sides.before.workbook, pairs)
  const rows = Math.max(1, sides.now.workbook.sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0))
  let passed = 0
  let gone = sheetsGone(sides)
  for (const sheet of sides.now.workbook.sheets) {
    const pair = byName.get(sheet.name)
    if (pair === undefined) yield sheetAdded(sheet, sides.now.workbook.sheets.length === 1)
    else {
      yield* sheetRenamed(pair)
      yield* sheetDifferences(sides, pair, (share) => report((passed + share * sheet.rows.length) / rows))
      yield* gone.filter(({ after }) => after === foldCase(pair.before)).map(({ difference }) => difference)
      gone = gone.filter(({ after }) => after !== foldCase(pair.before))
    }
    passed += sheet.rows.length
  }
  yield* gone.map(({ difference }) => difference)
  yield* nameDifferences(sides)
  if (kind === 'workbooks') yield* caseDifferences(sides, current)
  yield* toleranceDifferences(sides)
  yield* figureDifferences(sides)
  if (kind === 'workbooks') yield* markDifferences(sides)
}

/** The sheets that are gone, each with the one that it came after and that is still there. */
function sheetsGone({ before, layout }: Sides): { readonly difference: Found; readonly after: string | undefined }[] {
  const still = new Set(layout.pairs.map((pair) => foldCase(pair.before)))
  let after: string | undefined
  return before.workbook.sheets.flatMap((sheet) => {
    if (!still.has(foldCase(sheet.name))) return [{ difference: sheetGone(sheet), after }]
    after = foldCase(sheet.name)
    return []
  })
}
