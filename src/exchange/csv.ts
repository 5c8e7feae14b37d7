import type { CellValue } from '../calc/values.ts'
import type { Workbook } from '../workbook/document.ts'
import type { ExportOptions } from './computing-file.ts'
import { csvText, extentOf } from './csv/csv-text.ts'
import { METADATA_FILE, metadataText } from './csv/csv-metadata.ts'
import { fileNamesOf } from './csv/file-names.ts'
import { README_FILE, readmeText } from './csv/readme.ts'
import { zip, type Part } from './package/zip.ts'

type Values = ReadonlyMap<string, readonly (readonly CellValue[])[]>

/**
 * The values of the workbook's sheets as comma-separated text, a file a sheet, with a description of them for readers and one for programs.
 * @param values every value by sheet name, rows and columns from A1, as the calculation graph gives them
 */
export function csvFiles(workbook: Workbook, values: Values, { date, report = () => undefined }: ExportOptions): readonly Part[] {
  const names = fileNamesOf(workbook.sheets.map(({ name }) => name))
  const sheets = workbook.sheets.map(({ name }, index) => ({ sheet: name, file: `${names[index]}.csv`, values: values.get(name) ?? [], ...extentOf(values.get(name) ?? []) }))
  const facts = { title: workbook.title, subject: workbook.purpose, date, files: sheets }
  const all = sheets.reduce((sum, { rows }) => sum + rows, 0)
  let before = 0
  return [
    { name: README_FILE, text: [readmeText(facts)] },
    { name: METADATA_FILE, text: [metadataText(facts)] },
    ...sheets.map(({ file, values: rows, rows: count }): Part => {
      const from = before
      before += count
      return { name: file, text: csvText(rows, (done) => report((from + done) / all)) }
    }),
  ]
}

/** {@link csvFiles} as one file. */
export const exportCsv = (workbook: Workbook, values: Values, options: ExportOptions): Promise<Uint8Array<ArrayBuffer>> => zip(csvFiles(workbook, values, options), options.date)
