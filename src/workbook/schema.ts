import { z } from 'zod'
import { definedNameProblem } from './defined-name.ts'
import { ROLES } from './document.ts'
import { textContent } from './entry.ts'
import { figureProblem } from './figure.ts'
import { figureKinds } from './figure-kinds.ts'
import { MAX_COLUMN_WIDTH, MAX_COLUMNS, MAX_FIGURES, MAX_ROWS, MAX_SHEETS, MAX_TEXT } from './limits.ts'
import { PAPERS } from './report-settings.ts'
import { sheetNameProblem } from './sheet-name.ts'

/** The shape of a workbook file, version 1. Its messages say what is accepted; the reader adds where. */

export const FILE_VERSION = 1

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

export const formatSchema = strict('in the third place of a cell', {
  digits: whole('digits', 1, 15).exactOptional(),
  decimals: whole('decimals', 0, 12).exactOptional(),
  wrap: z.literal(true, saying('wrap: true')).exactOptional(),
  note: text('note').exactOptional(),
  restatedFrom: z.union([z.number(), z.string().max(MAX_TEXT)], saying('restatedFrom: a number or a text')).exactOptional(),
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

/** Lists that a later version fills; anything in them would be lost here, so it is refused. */
const reserved = (what: string) =>
  z.array(z.unknown(), saying(`${what}: a list`)).max(0, `${what}: made by a newer Lowside, this one cannot keep them; accepted: an empty list`).exactOptional()

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
  cases: reserved('cases'),
  marks: reserved('marks'),
})

/** A workbook file after reading; the type of what the writer writes. */
export type WorkbookFile = z.output<typeof fileSchema>
export type FileCell = z.output<typeof cell>
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
