import type { AreaValues, SheetState } from '../calc/values.ts'
import type { Workbook } from '../workbook/document.ts'
import type { Paper } from '../workbook/report-settings.ts'
import { dateInWords } from './date-words.ts'
import { element } from './html.ts'
import { printableWidth } from './paper.ts'
import { makeReport } from './report.ts'
import { reportSettingsOf } from './settings-of.ts'

export interface ReportFileInput {
  readonly workbook: Workbook
  /** By sheet name, every value from A1. */
  readonly values: ReadonlyMap<string, AreaValues>
  readonly states: readonly SheetState[]
  /** The day that the report names. */
  readonly date: Date
  /** The text of figures.css. */
  readonly figureStyle: string
}

/** The calculation report of the whole workbook as one HTML file, which needs nothing else: it reads in any browser, and prints with page numbers where the browser knows page margins. */
export function reportFile({ workbook, values, states, date, figureStyle }: ReportFileInput): string {
  const sheets = new Set(workbook.sheets.map(({ name }) => name))
  const settings = reportSettingsOf(workbook)
  const { markup, style, pages } = makeReport({ workbook, values, states, sheets, settings, date: dateInWords(date), figureStyle })
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
${element('title', {}, `${workbook.title} – calculation report`).markup}
<style>
${screenStyle(settings.paper)}${style}
${pages}
</style>
</head>
<body>
${markup.markup}
</body>
</html>
`
}

/** Sheets under each other on the screen, each as wide as its page. */
const screenStyle = (paper: Paper): string => `
html { color-scheme: light; }
body { margin: 0; background: #fff; }
@media screen {
  .report { width: fit-content; margin: 0 auto; padding: 24px; }
  .report section { width: ${printableWidth(paper, 'portrait')}px; }
  .report .turned { width: ${printableWidth(paper, 'landscape')}px; }
  .report section + section { margin-top: 40px; padding-top: 16px; border-top: 2px solid #777; }
}
`
