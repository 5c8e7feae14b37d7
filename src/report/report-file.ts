import type { AreaValues, SheetState } from '../calc/values.ts'
import type { Reviewed } from '../review/reviewed.ts'
import type { Workbook } from '../workbook/document.ts'
import { dateInWords } from '../pages/date-words.ts'
import { htmlDocument } from '../pages/html-document.ts'
import { makeReport } from './report.ts'
import { reportSettingsOf } from '../pages/settings-of.ts'

export interface ReportFileInput {
  readonly workbook: Workbook
  /** By sheet name, every value from A1. */
  readonly values: ReadonlyMap<string, AreaValues>
  readonly states: readonly SheetState[]
  /** The day that the report names. */
  readonly date: Date
  /** The text of figures.css. */
  readonly figureStyle: string
  /** Absent where findings were not looked for: the report says so. */
  readonly reviewed?: Reviewed
}

/** The calculation report of the whole workbook as one HTML file, which needs nothing else: it reads in any browser, and prints with page numbers where the browser knows page margins. */
export function reportFile({ workbook, values, states, date, figureStyle, reviewed }: ReportFileInput): string {
  const sheets = new Set(workbook.sheets.map(({ name }) => name))
  const settings = reportSettingsOf(workbook)
  const { markup, style, pages } = makeReport({ workbook, values, states, sheets, settings, date: dateInWords(date), figureStyle, ...(reviewed && { reviewed }) })
  return htmlDocument({ title: `${workbook.title} – calculation report`, paper: settings.paper, markup, style, pages })
}
