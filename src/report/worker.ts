import { answerExports } from '../calc/export-thread.ts'
import figureStyle from '../figures/figures.css?inline'
import { readTemplates } from '../review/read-templates.ts'
import { reviewed } from '../review/reviewed.ts'
import { reportFile } from './report-file.ts'

answerExports(async ({ workbook, areas, states }, date, report, _format, templates) => {
  const found = reviewed(workbook, areas, await readTemplates(templates), report)
  // How long the pages take is not known beforehand.
  report(undefined)
  return new TextEncoder().encode(reportFile({ workbook, values: areas, states, date, figureStyle, reviewed: found }))
})
