/** The file of a workbook, `*.lowside.json`: its text is read and written here, whatever it is kept in. */
export { readWorkbook, type ReadProblem, type ReadResult } from './file-reading.ts'
export { workbookText, writeWorkbook } from './file-writing.ts'
