import type { CellPlace } from '../workbook/cell-place.ts'
import type { Cell } from '../workbook/document.ts'

/** The template that a workbook is like, laid over it: sheets by their names, rows as they align. */
export interface TemplateMatch {
  readonly title: string
  /** Its defined names, with the cells that they would stand for in the layout of the workbook. */
  readonly names: ReadonlyMap<string, string>
  /**
   * What the template has where a cell of the workbook stands, its formula with references as they would be in the layout of the workbook;
   * undefined where the template has no such cell, or the cell stands in rows that the template does not have.
   */
  cell(place: CellPlace): Cell | undefined
}
