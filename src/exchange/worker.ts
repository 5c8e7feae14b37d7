import { answerExports, type ExportFormat } from '../calc/export-thread.ts'
import { exportCsv } from './csv.ts'
import { exportOds } from './ods.ts'
import { exportXlsx } from './xlsx.ts'

const WRITERS: Readonly<Partial<Record<ExportFormat, typeof exportXlsx>>> = { xlsx: exportXlsx, ods: exportOds, csv: exportCsv }

answerExports(({ workbook, areas, cases }, date, report, format) => {
  const write = WRITERS[format]
  if (write === undefined) throw new Error(`the thread for spreadsheet files writes no .${format}`)
  return write(workbook, new Map([...areas].map(([sheet, { values }]) => [sheet, values])), { date, report, checks: areas, ...(cases ? { cases } : {}) })
})
