import { answerExports } from '../calc/export-thread.ts'
import { exportXlsx } from './xlsx.ts'

answerExports(({ workbook, areas }, date, report) => exportXlsx(workbook, new Map([...areas].map(([sheet, { values }]) => [sheet, values])), { date, report }))
