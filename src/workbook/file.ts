/** The file of a workbook, `*.lowside.json`: its text is read and written here, whatever it is kept in. */
export { readWorkbook, type ReadProblem, type ReadResult } from './fileReading.ts'
export { writeWorkbook } from './fileWriting.ts'
