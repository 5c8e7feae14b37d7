import type { CellValue } from '../calc/values.ts'
import { columnLetters } from '../workbook/address.ts'
import type { Workbook } from '../workbook/document.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import type { ExportOptions } from './computing-file.ts'
import { csvText, extentOf } from './csv/csv-text.ts'
import { METADATA_FILE, metadataText } from './csv/csv-metadata.ts'
import { reviewInWords } from './cover/review-lines.ts'
import { fileNamesOf } from './csv/file-names.ts'
import { README_FILE, readmeText } from './csv/readme.ts'
import { zip, type Part } from './package/zip.ts'

type Values = ReadonlyMap<string, readonly (readonly CellValue[])[]>

/**
 * The values of the workbook's sheets as comma-separated text, a file a sheet, with a description of them for readers and one for programs.
 * @param values every value by sheet name, rows and columns from A1, as the calculation graph gives them
 * @throws WorkbookProblem where a cell far out would make a file of mostly nothing
 */
export function csvFiles(workbook: Workbook, values: Values, { date, report = () => undefined }: ExportOptions): readonly Part[] {
  const names = fileNamesOf(workbook.sheets.map(({ name }) => name))
  const sheets = workbook.sheets.map(({ name }, index) => ({ sheet: name, file: `${names[index]}.csv`, values: values.get(name) ?? [], ...extentOf(values.get(name) ?? []) }))
  const tooWide = sheets.find(({ rows, columns }) => rows * columns > MOST_FIELDS)
  if (tooWide) {
    throw new WorkbookProblem(
      `sheet "${tooWide.sheet}" has values out to row ${tooWide.rows}, column ${columnLetters(tooWide.columns - 1)}: a text file would need ${tooWide.rows * tooWide.columns} fields, most of them empty; accepted: up to ${MOST_FIELDS}. Move the cells far out nearer, or export .xlsx or .ods`,
    )
  }
  const facts = { title: workbook.title, subject: workbook.purpose, date, files: sheets, review: reviewInWords(workbook, values) }
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

/** A text file has every field of a sheet, empty ones too: ten times the cells that a workbook holds at most, some 20 MB of commas. */
const MOST_FIELDS = 20_000_000

/** {@link csvFiles} as one file. */
export const exportCsv = (workbook: Workbook, values: Values, options: ExportOptions): Promise<Uint8Array<ArrayBuffer>> => zip(csvFiles(workbook, values, options), options.date)
