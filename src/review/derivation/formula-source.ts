import type { CellValue } from '../../calc/values.ts'
import { areaOf, type Area } from '../../workbook/address.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { sheetByName, usedRange, type Cell, type Sheet, type Workbook } from '../../workbook/document.ts'
import { namedReference } from '../../workbook/formula/references.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import { unitOfValue } from '../../workbook/unit-scope.ts'
import type { Survey } from '../survey.ts'

/** What a formula is read with: the workbook, the sheet it stands on, and what cells come to as far as that is known. */
export interface FormulaSource {
  readonly workbook: Workbook
  readonly home: Sheet
  /** The cell the formula stands in, where it stands in one. */
  readonly at?: { readonly row: number; readonly column: number }
  /** Undefined where it is not known. */
  readonly value: (sheet: string, row: number, column: number) => CellValue | undefined
}

/** A formula of a workbook whose values are all known. */
export const surveySource = (survey: Survey, home: Sheet, at: { readonly row: number; readonly column: number }): FormulaSource => ({
  workbook: survey.workbook, home, at, value: (sheet, row, column) => survey.value(sheet, row, column),
})

/** Cells that a reference or a name stands for, whole rows and columns as far as the sheet is filled. */
export interface ReferredCells {
  readonly sheet: Sheet
  readonly area: Area
}

/** Undefined where the node is no reference, its sheet is not there, or its name stands for no cells. */
export function referredCells(node: FormulaNode, { workbook, home }: Pick<FormulaSource, 'workbook' | 'home'>): ReferredCells | undefined {
  const reference = node.kind === 'reference' ? node.reference : node.kind === 'name' ? namedReference(workbook.names, node.name) : undefined
  if (reference === undefined) return undefined
  const sheet = reference.sheet === null ? home : sheetByName(workbook, reference.sheet)
  if (sheet === undefined) return undefined
  const area = areaOf(reference)
  const { from, to } = reference
  // Only whole rows and columns end where the sheet does; to find out where takes a walk through it.
  if (from.row !== null && from.column !== null && to?.row !== null && to?.column !== null) return { sheet, area }
  const { rows, columns } = usedRange(sheet)
  return { sheet, area: { ...area, bottom: Math.min(area.bottom, Math.max(area.top, rows - 1)), right: Math.min(area.right, Math.max(area.left, columns - 1)) } }
}

export const isOneCell = ({ top, left, bottom, right }: Area): boolean => top === bottom && left === right

/** A value with the unit cell on its right: what functions take as one quantity. */
export const isPair = ({ sheet, area: { top, left, bottom, right } }: ReferredCells): boolean =>
  top === bottom && right === left + 1 && sheet.rows[top]?.[right]?.role === 'unit'

export const cellOf = (sheet: Sheet, row: number, column: number): Cell | undefined => sheet.rows[row]?.[column]

/** The unit that stands beside a cell or over it, as it reads there. */
export function unitText({ value }: Pick<FormulaSource, 'value'>, sheet: Sheet, row: number, column: number): string | undefined {
  const at = unitOfValue(sheet, { row, column })
  const text = at === undefined ? undefined : value(sheet.name, at.row, at.column)
  return typeof text === 'string' && text !== '' ? text : undefined
}

export const placeOf = ({ sheet, area: { top, left } }: ReferredCells): CellPlace => ({ sheet: sheet.name, row: top, column: left })
