import { answerExports } from '../calc/export-thread.ts'
import figureStyle from '../figures/figures.css?inline'
import { reportFile } from './report-file.ts'

answerExports(({ workbook, areas, states }, date) => new TextEncoder().encode(reportFile({ workbook, values: areas, states, date, figureStyle })))
