import { z } from 'zod'
import { definedNameProblem } from './defined-name.ts'
import { ROLES } from './document.ts'
import { textContent } from './entry.ts'
import { figureProblem } from './figure.ts'
import { figureKinds } from './figure-kinds.ts'
import { FILE_VERSION } from './file-version.ts'
import { MAX_MAPPING_COLUMNS, MAX_MAPPINGS, mappingsProblem } from './kept-mapping.ts'
import { MAX_ACCEPTED, MAX_CASES, MAX_COLUMN_WIDTH, MAX_COLUMNS, MAX_COMPARED, MAX_FIGURES, MAX_MARKS, MAX_ROWS, MAX_SHEETS, MAX_TEXT } from './limits.ts'
import { PAPERS } from './report-settings.ts'
import { CHECK_METHODS, RECORDED } from './review-record.ts'
import { sheetNameProblem } from './sheet-name.ts'

/** The shape of a workbook file, version 1. Its messages say what is accepted; the reader adds where. */

const text = (what: string) => z.string(saying(`${what}: text`)).max(MAX_TEXT, saying(`${what}: up to ${MAX_TEXT} characters`))
const whole = (what: string, from: number, to: number) => {
  const message = saying(`${what}: a whole number from ${from} to ${to}`)
  return z.int(message).min(from, message).max(to, message)
}

/** A text that would read as a number, a truth value or nothing if typed means itself, and is kept with the "'" that says so. */
const content = z.union(
  [z.string().min(1).max(MAX_TEXT).transform(textContent), z.number(), z.boolean(), z.null()],
  { error: ({ input }) => (input === '' ? 'empty text; accepted: null, or no such cell' : `accepted as content: a number, true, false, null or a text of up to ${MAX_TEXT} characters`) },
)

const role = z.enum(ROLES, { error: ({ input }) => `unknown role ${JSON.stringify(input)}; accepted: ${ROLES.join(', ')}` })

const restatedFrom = z.union([z.number(), z.string().max(MAX_TEXT)], saying('restatedFrom: a number or a text'))

export const formatSchema = strict('in the third place of a cell', {
  digits: whole('digits', 1, 15).exactOptional(),
  decimals: whole('decimals', 0, 12).exactOptional(),
  wrap: z.literal(true, saying('wrap: true')).exactOptional(),
  note: text('note').exactOptional(),
  restatedFrom: restatedFrom.exactOptional(),
})

const cell = z.tuple([content, role, formatSchema.optional()], saying('a cell: [content, role] or [content, role, {digits, decimals, wrap, note, restatedFrom}]'))

const columnWidth = z.number(saying('a column width: a number')).positive(saying('a column width: above 0')).max(MAX_COLUMN_WIDTH, saying(`a column width: up to ${MAX_COLUMN_WIDTH} px`))

const sheet = strict('in a sheet', {
  name: z.string(saying('the name of a sheet: text')).superRefine((name, context) => addProblem(context, sheetNameProblem(name))),
  columns: z.array(columnWidth, saying('columns: a list of widths')).max(MAX_COLUMNS, saying(`columns: up to ${MAX_COLUMNS}`)).default([]),
  frozen: z.tuple([whole('frozen rows', 0, MAX_ROWS - 1), whole('frozen columns', 0, MAX_COLUMNS - 1)], saying('frozen: [rows, columns]')).default([0, 0]),
  cells: z.record(z.string(), cell, saying('cells: an object of address to cell')),
})

const figure = strict('in a figure', {
  kind: z.enum(figureKinds, { error: ({ input }) => `unknown kind of figure ${JSON.stringify(input)}; accepted: ${figureKinds.join(', ')}` }),
  title: text('the title of a figure'),
  sheet: text('the sheet of a figure').exactOptional(),
  options: z.record(z.string(), text('an option'), saying('options: an object of option to choice')).default({}),
  bindings: z.record(z.string(), text('a binding'), saying('bindings: an object of part to reference text')).default({}),
}).superRefine((one, context) => {
  const problem = figureProblem(one)
  if (problem) addProblem(context, problem.message, [...problem.path])
})

const report = strict('in a report', {
  preparedBy: text('preparedBy'),
  checkedBy: text('checkedBy'),
  paper: z.enum(PAPERS, { error: ({ input }) => `unknown paper ${JSON.stringify(input)}; accepted: ${PAPERS.join(', ')}` }),
})

/** What a case holds in a cell: its content, or with it what it was restated from. */
const heldContent = z.union([content, z.tuple([content, strict('beside a value of a case', { restatedFrom })])], saying('a value of a case: a number, true, false, null or a text, or [value, {restatedFrom}]'))

const oneCase = strict('in a case', {
  name: text('the name of a case'),
  note: text('note').exactOptional(),
  values: z.record(z.string(), heldContent, saying('values: an object of cell, such as Drum!C5, to value')).default({}),
})

const amount = (what: string) => z.number(saying(`${what}: a number`)).min(0, saying(`${what}: not negative`))

const tolerance = strict('in a tolerance', {
  share: amount('share').exactOptional(),
  size: amount('size').exactOptional(),
  restatedFrom: amount('restatedFrom').exactOptional(),
}).superRefine(({ share, size, restatedFrom }, context) => {
  if ((share === undefined) === (size === undefined)) addProblem(context, 'accepted as a tolerance: a share of the value such as {"share": 0.05}, or so much in the unit of the input such as {"size": 0.5}')
  else if (share !== undefined && restatedFrom !== undefined) addProblem(context, 'accepted: restatedFrom beside a size only', ['restatedFrom'])
})

const keptColumn = strict('in a column of a mapping', {
  to: text('to, the heading in the list'),
  from: text('from, the heading in the file').exactOptional(),
  unit: text('the unit of a mapping').exactOptional(),
  unitFrom: text('unitFrom, the heading of a column of units').exactOptional(),
  constant: text('the constant of a mapping').exactOptional(),
  choices: z
    .array(z.tuple([text('a text of the file'), text('a choice')], saying('a choice: [text of the file, choice]')), saying('choices: a list of [text, choice]'))
    .max(MAX_MAPPING_COLUMNS, saying(`choices: up to ${MAX_MAPPING_COLUMNS}`))
    .exactOptional(),
})

export const mappingSchema = strict('in a mapping', {
  name: text('the name of a mapping'),
  list: text('the list of a mapping'),
  headings: z.array(text('a heading'), saying('headings: a list of texts')).max(MAX_MAPPING_COLUMNS, saying(`headings: up to ${MAX_MAPPING_COLUMNS}`)),
  columns: z.array(keptColumn, saying('columns: a list of columns')).max(MAX_MAPPING_COLUMNS, saying(`columns: up to ${MAX_MAPPING_COLUMNS}`)),
})

const mappings = z
  .array(mappingSchema, saying('mappings: a list of mappings'))
  .max(MAX_MAPPINGS, saying(`mappings: up to ${MAX_MAPPINGS}`))
  .superRefine((all, context) => {
    const problem = mappingsProblem(all)
    if (problem) addProblem(context, problem.message, [String(problem.index)])
  })

const checkedValue = z.union([z.number(), z.boolean(), z.null(), z.string().max(MAX_TEXT)], saying('a value that was checked: a number, true, false, null or a text'))

const goneCell = z.tuple([text('a cell that is gone'), heldContent], saying('a cell that is gone: [cell, content]'))

const mark = strict('in a check mark', {
  id: text('the id of a mark'),
  sheet: text('the sheet of a mark'),
  cells: text('the cells of a mark').exactOptional(),
  gone: z.literal(true, saying('gone: true')).exactOptional(),
  by: text('by, who checked'),
  at: text('at, when it was checked'),
  inCase: text('inCase').exactOptional(),
  method: z.enum(CHECK_METHODS, { error: ({ input }) => `unknown method ${JSON.stringify(input)}; accepted: ${CHECK_METHODS.join(', ')}` }),
  note: text('the note of a mark').default(''),
  values: z.record(z.string(), checkedValue, saying('values: an object of cell, such as Drum!C5, to value')).default({}),
  covers: z.record(z.string(), heldContent, saying('covers: an object of cell, such as Drum!C5, to content')).default({}),
  names: z.record(z.string(), text('what a name refers to'), saying('names: an object of name to reference text')).default({}),
  goneCells: z.array(goneCell, saying('goneCells: a list of [cell, content]')).default([]),
  goneValues: z.array(z.tuple([text('a cell that is gone'), checkedValue], saying('a value of a cell that is gone: [cell, value]')), saying('goneValues: a list of [cell, value]')).default([]),
})

const acceptedFinding = strict('in an accepted finding', {
  kind: text('the kind of a finding'),
  cells: text('the cells of a finding'),
  key: text('the key of a finding'),
  note: text('the note of an accepted finding').default(''),
  by: text('by, who accepted it').exactOptional(),
  at: text('at, when it was accepted').exactOptional(),
})

const recordEntry = strict('in a line of the record', {
  what: z.enum(RECORDED, { error: ({ input }) => `unknown ${JSON.stringify(input)} in the record; accepted: ${RECORDED.join(', ')}` }),
  of: text('of, what a line of the record is about'),
  place: text('place'),
  by: text('by'),
  at: text('at'),
  words: z.string(saying('words: text')),
  holds: text('holds'),
  hash: text('hash'),
})

export const fileSchema = strict('in a workbook file', {
  lowside: z.literal(FILE_VERSION, saying(`lowside: ${FILE_VERSION}`)),
  title: text('title'),
  purpose: text('purpose').default(''),
  sheets: z.array(sheet, saying('sheets: a list of sheets')).min(1, saying('sheets: at least one sheet')).max(MAX_SHEETS, saying(`sheets: up to ${MAX_SHEETS}`)),
  names: z
    .record(z.string(), text('what a name refers to').min(1, saying('what a name refers to: reference text such as Duty!$C$5')), saying('names: an object of name to reference text'))
    .superRefine((names, context) => {
      for (const name of Object.keys(names)) addProblem(context, definedNameProblem(name), [name])
    })
    .default({}),
  figures: z.array(figure, saying('figures: a list of figures')).max(MAX_FIGURES, saying(`figures: up to ${MAX_FIGURES}`)).default([]),
  report: report.exactOptional(),
  mappings: mappings.exactOptional(),
  cases: z.array(oneCase, saying('cases: a list of cases')).max(MAX_CASES, saying(`cases: up to ${MAX_CASES}`)).default([]),
  currentCase: text('currentCase').exactOptional(),
  compared: z.array(text('a cell that is compared'), saying('compared: a list of cells')).max(MAX_COMPARED, saying(`compared: up to ${MAX_COMPARED}`)).default([]),
  tolerances: z.record(z.string(), tolerance, saying('tolerances: an object of cell, such as Drum!C5, to tolerance')).default({}),
  marks: z.array(mark, saying('marks: a list of check marks')).max(MAX_MARKS, saying(`marks: up to ${MAX_MARKS}`)).default([]),
  accepted: z.array(acceptedFinding, saying('accepted: a list of accepted findings')).max(MAX_ACCEPTED, saying(`accepted: up to ${MAX_ACCEPTED}`)).default([]),
  record: z.array(recordEntry, saying('record: a list of lines')).default([]),
})

/** A workbook file after reading; the type of what the writer writes. */
export type WorkbookFile = z.output<typeof fileSchema>
export type FileCell = z.output<typeof cell>
export type FileHeld = z.output<typeof heldContent>
export type FileMark = z.output<typeof mark>
export type FileTolerance = z.output<typeof tolerance>
export type FileCellFormat = z.output<typeof formatSchema>

function saying(accepted: string): { error: string } {
  return { error: `accepted: ${accepted}` }
}

function strict<Shape extends z.ZodRawShape>(where: string, shape: Shape) {
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? `unknown ${issue.keys.map((key) => JSON.stringify(key)).join(', ')} ${where}; accepted: ${Object.keys(shape).join(', ')}`
        : `accepted ${where}: an object with ${Object.keys(shape).join(', ')}`,
  })
}

function addProblem(context: z.RefinementCtx, message: string | undefined, path: string[] = []): void {
  if (message !== undefined) context.addIssue({ code: 'custom', message, path })
}
