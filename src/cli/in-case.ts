import { caseCalled } from '../workbook/case-commands.ts'
import { switchCase } from '../workbook/case-switching.ts'
import type { Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'

/** The workbook with the case of that name in its cells; as the file has it where none is named. @throws WorkbookProblem where there is no such case */
export function inCase(workbook: Workbook, name: string | undefined): Workbook {
  return name === undefined ? workbook : applyEdits(workbook, switchCase(workbook, caseCalled(workbook, name))).workbook
}
