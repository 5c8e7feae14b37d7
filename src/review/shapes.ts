import type { FormulaNode } from '../workbook/formula/tree.ts'
import { grouped } from './grouped.ts'
import type { FormulaCell, Survey } from './survey.ts'

/** Cells whose formulas were filled from one, or might have been: each does the same with its own neighbours. */
export interface Shape {
  /** That of the first cell; undefined where the formula cannot be read. */
  readonly tree: FormulaNode | undefined
  readonly cells: readonly [FormulaCell, ...FormulaCell[]]
}

const known = new WeakMap<Survey, readonly Shape[]>()

/** All formulas of a workbook by their shape, in the order in which shapes come up: what is so by the formula alone is found once for thousands of cells. */
export function shapesOf(survey: Survey): readonly Shape[] {
  const before = known.get(survey)
  if (before !== undefined) return before
  const shapes = [...grouped(survey.formulas, (cell) => survey.shape(cell)).values()].flatMap(([first, ...others]): Shape[] =>
    first === undefined ? [] : [{ tree: survey.tree(first.formula), cells: [first, ...others] }])
  known.set(survey, shapes)
  return shapes
}
