import type { Paper } from '../workbook/report-settings.ts'
import { element, type Html } from './html.ts'
import { printableWidth } from './paper.ts'

export interface ReportDocument {
  readonly title: string
  readonly paper: Paper
  readonly markup: Html
  readonly style: string
  readonly pages: string
}

/** Something to print as one HTML file, which needs nothing else and may load nothing. */
export const htmlDocument = ({ title, paper, markup, style, pages }: ReportDocument): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
${element('title', {}, title).markup}
<style>
${screenStyle(paper)}${style}
${pages}
</style>
</head>
<body>
${markup.markup}
</body>
</html>
`

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
