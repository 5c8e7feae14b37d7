import type { CellValue } from '../calc/values.ts'
import type { Workbook } from '../workbook/document.ts'
import { computingFile, type ExportOptions } from './computing-file.ts'
import { packageParts } from './package/package.ts'
import { zip } from './package/zip.ts'

/**
 * The workbook as a spreadsheet file (ECMA-376, `.xlsx`) that recalculates in any program. The document itself lies in it on a
 * sheet of its own, so that Lowside opens the file as the workbook it was.
 * @param values every value by sheet name, rows and columns from A1, as the calculation graph gives them
 */
export async function exportXlsx(workbook: Workbook, values: ReadonlyMap<string, readonly (readonly CellValue[])[]>, options: ExportOptions): Promise<Uint8Array<ArrayBuffer>> {
  const { date } = options
  return zip(
    packageParts({
      ...await computingFile(workbook, values, options), title: workbook.title, subject: workbook.purpose, date,
      paper: PAPER[workbook.report?.paper ?? 'Letter'],
    }),
    date,
  )
}

/** Paper sizes by their numbers in a file (ECMA-376, part 1, 18.3.1.63). */
const PAPER = { Letter: 1, A4: 9 } as const
