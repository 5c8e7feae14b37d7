import type { Workbook } from '../workbook/document.ts'
import { readWorkbook } from '../workbook/file-reading.ts'

/** The workbooks of template files, on a thread that is given the files. One that cannot be read is one less to be like: its own words belong to whoever opens it. */
export async function readTemplates(files: readonly Blob[]): Promise<readonly Workbook[]> {
  const read = await Promise.all(files.map(async (file) => readWorkbook(await file.text())))
  return read.flatMap((one) => ('workbook' in one ? [one.workbook] : []))
}
