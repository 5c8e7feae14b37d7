import type { CellValue } from '../calc/values.ts'
import type { Workbook } from '../workbook/document.ts'
import { computingFile, type ExportOptions } from './computing-file.ts'
import { openPackageParts } from './ods/open-package.ts'
import { zip } from './package/zip.ts'

/**
 * The workbook as a spreadsheet file of OpenDocument 1.3 (`.ods`) that recalculates in any program: the sheets of {@link exportXlsx}, formulas in OpenFormula.
 * @param values every value by sheet name, rows and columns from A1, as the calculation graph gives them
 */
export async function exportOds(workbook: Workbook, values: ReadonlyMap<string, readonly (readonly CellValue[])[]>, options: ExportOptions): Promise<Uint8Array<ArrayBuffer>> {
  const { date } = options
  return zip(
    openPackageParts({ ...await computingFile(workbook, values, options), title: workbook.title, subject: workbook.purpose, date, paper: workbook.report?.paper ?? 'Letter' }),
    date,
  )
}
