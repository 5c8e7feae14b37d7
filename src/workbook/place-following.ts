import type { Reference } from './address.ts'
import { casesOf, type CaseValue } from './cases.ts'
import { placeReference, type CellPlace } from './cell-place.ts'
import { foldCase, isFormula, type Workbook } from './document.ts'
import type { Edit } from './edits.ts'
import { renameSheetInFormula, rewriteReferences } from './formula/references.ts'
import { doubledReview, followedReview, reviewWithoutSheet, type ReviewFollow } from './review/review-following.ts'
import type { ChangeReference } from './rewrite.ts'

/** What becomes of a cell; `null` for one that is gone. */
type Follow = (place: CellPlace) => CellPlace | null

/** A formula of a case as it is by then. */
type Rewrite = (formula: string, from: CellPlace) => string

/**
 * What is kept beside the sheets by its cell, in cases, tolerances and reviews, follows as references to the cells do, and so do formulas that are
 * held there. Of a cell that is gone nothing is kept, but by check marks.
 */
export function followPlaces(workbook: Workbook, change: ChangeReference, { concerns = () => true, keepsTogether = false }: Shortcuts = {}): Edit[] {
  return followedPlaces(workbook, {
    place: (place) => placeOf(change(placeReference(place), null)),
    formula: (formula, { sheet }) => (concerns(formula, sheet) ? rewriteReferences(formula, (reference) => change(reference, sheet)) : formula),
    keepsTogether,
    reference: (reference) => change(reference, null),
  })
}

/** What is known of a change, so that much need not be looked at. */
interface Shortcuts {
  /** False for a formula on a sheet in which nothing changes. */
  readonly concerns?: (formula: string, sheet: string) => boolean
  /** As in `ReviewFollow`. */
  readonly keepsTogether?: boolean
}

/** @param compared for results that are compared, where that is another way than that of the cells in which cases have values, and those of tolerances */
export function followedPlaces(workbook: Workbook, follow: { readonly place: Follow; readonly formula: Rewrite; readonly reference: ReviewFollow['reference']; readonly keepsTogether?: boolean; readonly compared?: Follow }): Edit[] {
  return [...followedCases(workbook, follow.place, follow.formula, follow.compared ?? follow.place), ...followedTolerances(workbook, follow.place), ...followedReview(workbook, follow)]
}

/** As a sheet gets another name. */
export function renameSheetInPlaces(workbook: Workbook, from: string, to: string): Edit[] {
  const sheet = (name: string): string => (foldCase(name) === foldCase(from) ? to : name)
  const renamed = (place: CellPlace): CellPlace => (sheet(place.sheet) === place.sheet ? place : { ...place, sheet: to })
  const formula = (text: string) => renameSheetInFormula(text, from, to)
  return [
    ...followedCases(workbook, renamed, formula, renamed), ...followedTolerances(workbook, renamed),
    ...followedReview(workbook, { place: renamed, formula, reference: (reference) => (reference.sheet === null || sheet(reference.sheet) === reference.sheet ? reference : { ...reference, sheet: to }), sheet }),
  ]
}

/** As a sheet is taken away, and with it what is kept of its cells. */
export function removeSheetFromPlaces(workbook: Workbook, sheet: string): Edit[] {
  const place = (one: CellPlace) => (one.sheet === sheet ? null : one)
  return [...followedCases(workbook, place, (formula) => formula, place), ...followedTolerances(workbook, place), ...reviewWithoutSheet(workbook, sheet)]
}

/** As a sheet is doubled: what is kept of its cells is kept of the copy's too. */
export function doubleSheetInPlaces(workbook: Workbook, sheet: string, copy: string): Edit[] {
  return [...doubledInCases(workbook, sheet, copy), ...doubledInTolerances(workbook, sheet, copy), ...doubledReview(workbook, sheet, copy)]
}

/** Nothing where there are no cases; else an edit even if all stays as it is, so that what becomes of the cells is taken for no edit of an input. */
function followedCases(workbook: Workbook, follow: Follow, rewrite: Rewrite, followCompared: Follow): Edit[] {
  if (!workbook.cases) return []
  const { list, current, compared } = casesOf(workbook)
  const followed = list.map((one) => ({
    ...one,
    aside: one.aside.flatMap((value): CaseValue[] => {
      const place = follow(value)
      if (!place) return []
      const content = isFormula(value.content) ? rewrite(value.content, value) : value.content
      return [{ ...value, sheet: place.sheet, row: place.row, column: place.column, content }]
    }),
  }))
  return [{ kind: 'cases', cases: { list: followed, current, compared: distinct(compared.flatMap((place) => followCompared(place) ?? [])) } }]
}

function followedTolerances({ tolerances }: Workbook, follow: Follow): Edit[] {
  if (!tolerances) return []
  return [{ kind: 'tolerances', tolerances: tolerances.flatMap(({ place, tolerance }) => {
    const after = follow(place)
    return after ? [{ place: after, tolerance }] : []
  }) }]
}

function doubledInCases(workbook: Workbook, sheet: string, copy: string): Edit[] {
  if (!workbook.cases) return []
  const { list, ...others } = casesOf(workbook)
  const doubled = (value: CaseValue): CaseValue => ({ ...value, sheet: copy, content: isFormula(value.content) ? renameSheetInFormula(value.content, sheet, copy) : value.content })
  return [{ kind: 'cases', cases: { ...others, list: list.map((one) => ({ ...one, aside: [...one.aside, ...one.aside.filter((value) => value.sheet === sheet).map(doubled)] })) } }]
}

function doubledInTolerances({ tolerances }: Workbook, sheet: string, copy: string): Edit[] {
  if (!tolerances) return []
  const doubled = tolerances.filter(({ place }) => place.sheet === sheet).map(({ place, tolerance }) => ({ place: { ...place, sheet: copy }, tolerance }))
  return [{ kind: 'tolerances', tolerances: [...tolerances, ...doubled] }]
}

function placeOf(reference: Reference | null): CellPlace | null {
  if (reference === null || reference.sheet === null || reference.from.row === null || reference.from.column === null) return null
  return { sheet: reference.sheet, row: reference.from.row, column: reference.from.column }
}

function distinct(places: readonly CellPlace[]): CellPlace[] {
  const seen = new Set<string>()
  return places.filter(({ sheet, row, column }) => {
    const key = `${sheet}!${row}:${column}`
    return !seen.has(key) && seen.add(key)
  })
}
