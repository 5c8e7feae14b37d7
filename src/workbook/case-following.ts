import type { Reference } from './address.ts'
import { casesOf, placeReference, type CaseValue, type CellPlace } from './cases.ts'
import { foldCase, isFormula, type Workbook } from './document.ts'
import type { Edit } from './edits.ts'
import { renameSheetInFormula, rewriteReferences } from './formula/references.ts'
import type { ChangeReference } from './rewrite.ts'

/** What becomes of a cell; `null` for one that is gone. */
type Follow = (place: CellPlace) => CellPlace | null

/**
 * Cells of cases follow as references to them do, and so do formulas that a case holds. Of a cell that is gone no case keeps a value.
 * Nothing where there are no cases; else an edit even if all stays as it is, so that what becomes of the cells is taken for no edit of an input.
 */
export function followCases(workbook: Workbook, change: ChangeReference): Edit[] {
  return followedCases(workbook, (place) => placeOf(change(placeReference(place), null)), (formula, { sheet }) => rewriteReferences(formula, (reference) => change(reference, sheet)))
}

/** @param follow for the cells in which cases have values, @param followCompared for results that are compared */
export function followedCases(workbook: Workbook, follow: Follow, rewrite: (formula: string, from: CellPlace) => string, followCompared: Follow = follow): Edit[] {
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

/** As a sheet gets another name. */
export function renameSheetInCases(workbook: Workbook, from: string, to: string): Edit[] {
  const renamed = (place: CellPlace): CellPlace => (foldCase(place.sheet) === foldCase(from) ? { ...place, sheet: to } : place)
  return followedCases(workbook, renamed, (formula) => renameSheetInFormula(formula, from, to))
}

/** As a sheet is taken away, and with it what cases have in its cells. */
export function removeSheetFromCases(workbook: Workbook, sheet: string): Edit[] {
  return followedCases(workbook, (place) => (place.sheet === sheet ? null : place), (formula) => formula)
}

/** As a sheet is doubled: cases have in the copy what they have in the sheet. */
export function doubleSheetInCases(workbook: Workbook, sheet: string, copy: string): Edit[] {
  if (!workbook.cases) return []
  const { list, ...others } = casesOf(workbook)
  const doubled = (value: CaseValue): CaseValue => ({ ...value, sheet: copy, content: isFormula(value.content) ? renameSheetInFormula(value.content, sheet, copy) : value.content })
  return [{ kind: 'cases', cases: { ...others, list: list.map((one) => ({ ...one, aside: [...one.aside, ...one.aside.filter((value) => value.sheet === sheet).map(doubled)] })) } }]
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
