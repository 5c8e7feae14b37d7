import type { FunctionDefinition } from '../../functions/define.ts'
import { functionsCalled } from '../calc/functions-called.ts'
import type { Workbook } from '../workbook/document.ts'
import { sheetNameProblem } from '../workbook/sheet-name.ts'
import { CAUTIONS } from '../../functions/cautions.ts'

/** The sheet of an export that says what the file is, with its cautions and the sources of its methods: rows of texts. */
export function aboutSheet(workbook: Workbook, date: Date): readonly (readonly string[])[] {
  const methods = functionsCalled(workbook)
  return [
    [workbook.title],
    ...(workbook.purpose === '' ? [] : [[workbook.purpose]]),
    [`Exported by Lowside, ${date.toISOString().slice(0, 16).replace('T', ' ')} UTC`],
    [],
    ['What this file is'],
    ['A copy of a Lowside workbook for spreadsheet programs. Formulas of standard functions are kept and recalculate.'],
    ...(methods.length === 0 ? [] : [[
      'Cells that call a function of Lowside stand as the values they had at export, and do not follow changes made in this file; ' +
        'a comment at each gives its formula. Change inputs in Lowside, and export again.',
    ]]),
    [],
    ['Cautions'],
    ...CAUTIONS.map((caution) => [caution]),
    ...(methods.length === 0 ? [] : [[], ['Methods used'], METHOD_HEADER, ...methods.map(methodRow)]),
  ]
}

/** Widths of its columns, in px: the first takes headings and function names, the others what a method says of itself. */
export const ABOUT_COLUMNS: readonly number[] = [200, 260, 420, 560, 420]

/** A name for that sheet that no sheet of the workbook has. */
export function aboutSheetName({ sheets }: Workbook): string {
  const taken = sheets.map(({ name }) => name)
  let name = 'About this file'
  for (let number = 2; sheetNameProblem(name, taken) !== undefined; number++) name = `About this file ${number}`
  return name
}

const METHOD_HEADER = ['Function', 'Gives', 'Equation', 'Sources', 'Cautions']

function methodRow({ name, gives, equation, sources, cautions = [] }: FunctionDefinition): string[] {
  return [name, gives, equation, sources.map(({ cite, confidence }) => `${cite} [${confidence}]`).join('; '), cautions.join(' ')]
}
