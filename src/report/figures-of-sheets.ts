import { sheetByName, type Workbook } from '../workbook/document.ts'
import type { Figure } from '../workbook/figure.ts'

/** A figure with its number in the report. */
export interface NumberedFigure {
  readonly number: number
  readonly figure: Figure
}

export interface FiguresOfSheets {
  /** By the name of the sheet that they stand after. */
  readonly ofSheets: ReadonlyMap<string, readonly NumberedFigure[]>
  /** Those of no sheet. */
  readonly others: readonly NumberedFigure[]
}

/** The figures of the printed sheets and of the workbook, numbered as they follow each other on paper. */
export function figuresOfSheets(workbook: Workbook, sheets: ReadonlySet<string>): FiguresOfSheets {
  const sheetOf = ({ sheet }: Figure): string | undefined => (sheet === undefined ? undefined : sheetByName(workbook, sheet)?.name)
  const of = (name: string | undefined): readonly Figure[] => workbook.figures.filter((figure) => sheetOf(figure) === name)
  let count = 0
  const numbered = (figures: readonly Figure[]): NumberedFigure[] => figures.map((figure) => ({ figure, number: ++count }))
  const ofSheets = new Map(workbook.sheets.filter(({ name }) => sheets.has(name)).map(({ name }) => [name, numbered(of(name))]))
  return { ofSheets, others: numbered(of(undefined)) }
}
