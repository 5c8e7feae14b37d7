import type { FigureSource } from '../figures/read-parts.ts'
import { figuresOfSheets, type NumberedFigure } from './figures-of-sheets.ts'
import { frontSection } from './front.ts'
import { element, type Html } from '../pages/html.ts'
import type { Pages } from '../pages/pages.ts'
import { pageRules } from '../pages/page-rules.ts'
import { sheetRules } from './sheet-rules.ts'
import { printableWidth, type Orientation } from '../pages/paper.ts'
import { printedFigure } from './printed-figure.ts'
import { NO_VALUES, type ReportInput } from './report-input.ts'
import { markedCells, reportedMarks } from './review-marks.ts'
import { REPORT_STYLE } from '../pages/report-style.ts'
import { sheetSection } from './sheet-section.ts'

/** The calculation report: what the workbook is, how its checks stand and what it rests on, then its sheets as they are with their figures, then the figures of no sheet. */
export function makeReport(input: ReportInput): Pages {
  const { workbook, values, states, settings, date, figureStyle } = input
  const state = new Map(states.map((one) => [one.sheet, one]))
  const { ofSheets, others } = figuresOfSheets(workbook, input.sheets)
  const source: FigureSource = { workbook, value: (sheet, row, column) => values.get(sheet)?.values[row]?.[column] ?? null }
  const drawn = (figures: readonly NumberedFigure[], orientation: Orientation): readonly Html[] =>
    figures.map((figure) => printedFigure(figure, source, printableWidth(settings.paper, orientation)))
  const marks = reportedMarks(workbook, values)
  const sections = workbook.sheets
    .filter(({ name }) => input.sheets.has(name))
    .map((sheet, index) => {
      const className = `sheet-${index + 1}`
      const figures = (orientation: Orientation): readonly Html[] => drawn(ofSheets.get(sheet.name) ?? [], orientation)
      return { sheet, className, ...sheetSection(sheet, values.get(sheet.name) ?? NO_VALUES, state.get(sheet.name), settings.paper, className, figures, markedCells(marks, sheet.name)) }
    })
  const figureSection = others.length === 0 ? undefined : element('section', { class: 'figures' }, element('h2', {}, 'Figures'), drawn(others, 'portrait'))
  return {
    markup: element('article', { class: 'report', lang: 'en' }, frontSection(input, marks), sections.map(({ markup }) => markup), figureSection),
    style: `${figureStyle}${REPORT_STYLE}${sheetRules(sections)}`,
    pages: pageRules({ title: workbook.title, date, settings }, sections.map(({ sheet, className, layout }) => ({ name: sheet.name, className, orientation: layout.orientation }))),
  }
}
