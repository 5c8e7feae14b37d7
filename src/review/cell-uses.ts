import { areaOf, type Area } from '../workbook/address.ts'
import { isInArea } from '../workbook/areas.ts'
import { casesOf } from '../workbook/cases.ts'
import { foldCase, isFormula, sheetByName, type Sheet, type Workbook } from '../workbook/document.ts'
import { namedReference } from '../workbook/formula/references.ts'
import { parseReference } from '../workbook/address.ts'
import type { Survey } from './survey.ts'

/** Who uses a cell, beside the formulas of the workbook. */
export interface CellUses {
  /** A formula, a name, a figure or the comparison of cases. */
  readonly isUsed: (sheet: Sheet, row: number, column: number) => boolean
  /** Whether a formula of the template that the workbook came from uses the cell that stands there. */
  readonly isUsedInTemplate: (sheet: Sheet, row: number, column: number) => boolean
}

const known = new WeakMap<Survey, CellUses>()

export function cellUses(survey: Survey): CellUses {
  const before = known.get(survey)
  if (before !== undefined) return before
  const others = otherUses(survey.workbook)
  let inTemplate: ((sheet: Sheet, row: number, column: number) => boolean) | undefined
  const uses: CellUses = {
    isUsed: (sheet, row, column) => survey.isUsed(sheet, row, column) || (others.get(sheet)?.some((area) => isInArea({ row, column }, area)) ?? false),
    isUsedInTemplate: (sheet, row, column) => (inTemplate ??= templateUses(survey))(sheet, row, column),
  }
  known.set(survey, uses)
  return uses
}

function otherUses(workbook: Workbook): ReadonlyMap<Sheet, readonly Area[]> {
  const found = new Map<Sheet, Area[]>()
  const add = (text: string): void => {
    const reference = namedReference(workbook.names, text) ?? parseReference(text)
    const sheet = reference?.sheet == null ? undefined : sheetByName(workbook, reference.sheet)
    if (reference !== undefined && sheet !== undefined) found.set(sheet, [...(found.get(sheet) ?? []), areaOf(reference)])
  }
  for (const name of workbook.names.keys()) add(name)
  for (const { bindings } of workbook.figures) for (const binding of Object.values(bindings)) add(binding)
  for (const { sheet: name, row, column } of casesOf(workbook).compared) {
    const sheet = workbook.sheets.find((one) => foldCase(one.name) === foldCase(name))
    if (sheet !== undefined) found.set(sheet, [...(found.get(sheet) ?? []), { top: row, bottom: row, left: column, right: column }])
  }
  return found
}

function templateUses(survey: Survey): CellUses['isUsedInTemplate'] {
  const { template, workbook } = survey
  if (template === undefined) return () => false
  const cells = new Set<string>()
  for (const home of workbook.sheets) {
    for (const [row, held] of home.rows.entries()) {
      for (let column = 0; column < (held?.length ?? 0); column++) {
        const content = template.cell({ sheet: home.name, row, column })?.content
        if (!isFormula(content)) continue
        for (const { sheet, area: { top, left, bottom, right } } of survey.referred(content, home)) {
          for (let at = top; at <= bottom; at++) for (let across = left; across <= right; across++) cells.add(keyOf(sheet, at, across))
        }
      }
    }
  }
  return (sheet, row, column) => cells.has(keyOf(sheet, row, column))
}

const keyOf = (sheet: Sheet, row: number, column: number): string => `${row}:${column}:${sheet.name}`
