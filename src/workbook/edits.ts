import { isOnSheet, printAddress } from './address.ts'
import { casesProblem, normalCases, sameCases, type Cases } from './cases.ts'
import { sameCell, withCells } from './cells.ts'
import { definedNameProblem } from './defined-name.ts'
import { sheetIndex, type Cell, type Sheet, type Workbook } from './document.ts'
import { figureProblem, normalFigure, sameFigures, type Figure } from './figure.ts'
import { normalTolerances, sameTolerances, tolerancesProblem, type GivenTolerance } from './given-tolerances.ts'
import { mappingsProblem, normalMapping, sameMappings, type KeptMapping } from './kept-mapping.ts'
import { frozenLines, withLines, withMovedLines, withoutLines, type Alongside, type Lines } from './line-edits.ts'
import { MAX_COLUMNS, MAX_COLUMN_WIDTH, MAX_FIGURES, MAX_NAMES, MAX_ROWS, MAX_SHEETS, MAX_TEXT } from './limits.ts'
import { WorkbookProblem } from './problem.ts'
import { reportSettingsProblem, sameReportSettings, type ReportSettings } from './report-settings.ts'
import { changeReview, reviewProblem, type ReviewChange } from './review/review-edit.ts'
import { sheetNameProblem } from './sheet-name.ts'

export interface CellChange {
  readonly row: number
  readonly column: number
  /** The whole cell as it is to be; `null` takes it away. */
  readonly cell: Cell | null
}

/** The primitives. Each is dumb (it rewrites no formula) and exactly invertible; a user action is a list of them. */
export type Edit =
  | ({ readonly kind: 'cells'; readonly sheet: string; readonly cells: readonly CellChange[] } & Following)
  /** Opens a gap; `cells` fill it, at their addresses in the new state. */
  | ({ readonly kind: 'insertLines'; readonly sheet: string; readonly cells?: readonly CellChange[] } & Lines & Alongside & Following)
  | ({ readonly kind: 'deleteLines'; readonly sheet: string } & Lines & Alongside & Following)
  /** `to`: where the first of the lines is then. */
  | ({ readonly kind: 'moveLines'; readonly sheet: string; readonly to: number } & Lines & Alongside)
  | { readonly kind: 'columnWidths'; readonly sheet: string; readonly columns: readonly number[] }
  | { readonly kind: 'frozen'; readonly sheet: string; readonly frozen: readonly [rows: number, columns: number] }
  | { readonly kind: 'addSheet'; readonly at: number; readonly sheet: Sheet }
  | { readonly kind: 'removeSheet'; readonly sheet: string }
  | { readonly kind: 'moveSheet'; readonly sheet: string; readonly to: number }
  | { readonly kind: 'renameSheet'; readonly sheet: string; readonly name: string }
  | { readonly kind: 'title'; readonly title: string }
  | { readonly kind: 'purpose'; readonly purpose: string }
  /** `refersTo` is reference text such as `Duty!$C$5`; `null` takes the name away. */
  | { readonly kind: 'name'; readonly name: string; readonly refersTo: string | null }
  /** What a printed report says of its making; `null` takes it away. */
  | { readonly kind: 'report'; readonly report: ReportSettings | null }
  /** All kept mappings of lists, in their order. */
  | { readonly kind: 'mappings'; readonly mappings: readonly KeptMapping[] }
  /** All figures, in their order. */
  | { readonly kind: 'figures'; readonly figures: readonly Figure[] }
  /** All cases; `null` takes them away. The cells stay as they are. A list of edits has seen to the cases itself up to the last one of these (`case-keeping.ts`). */
  | { readonly kind: 'cases'; readonly cases: Cases | null }
  /** All tolerances that inputs are given. */
  | { readonly kind: 'tolerances'; readonly tolerances: readonly GivenTolerance[] }
  /** Marks and acceptances. Its inverse takes back all but the record, which gains a line by that too. */
  | ({ readonly kind: 'review' } & ReviewChange)

export interface Following {
  /**
   * On lines: the list of edits also rewrites every formula that refers to the sheet. On cells: all that changes is the text of references,
   * as the lines moved beneath them. A calculation that lets references follow by itself has them already.
   */
  readonly follow?: true
}

export interface Applied {
  /** The very same object if the edit changes nothing. */
  readonly workbook: Workbook
  /** What undoes it. */
  readonly inverse: Edit
}

export interface AppliedAll {
  /** The very same object if the edits change nothing. */
  readonly workbook: Workbook
  /** What undoes them, in the order to apply. */
  readonly inverse: readonly Edit[]
}

/** @throws WorkbookProblem if the workbook has no such place, or the edit would leave it in a state no file accepts. */
export function applyEdit(workbook: Workbook, edit: Edit): Applied {
  // The record below pairs each kind with its own handler; a union cannot follow that through an index.
  const apply = APPLY[edit.kind] as (workbook: Workbook, edit: Edit) => Applied
  return apply(workbook, edit)
}

/** All or nothing: a problem leaves the given workbook as it was. */
export function applyEdits(workbook: Workbook, edits: readonly Edit[]): AppliedAll {
  const inverse: Edit[] = []
  let current = workbook
  for (const edit of edits) {
    const applied = applyEdit(current, edit)
    if (applied.workbook !== current) inverse.push(applied.inverse)
    current = applied.workbook
  }
  return { workbook: current, inverse: inverse.reverse() }
}

type EditOf<Kind extends Edit['kind']> = Extract<Edit, { kind: Kind }>

const APPLY: { readonly [Kind in Edit['kind']]: (workbook: Workbook, edit: EditOf<Kind>) => Applied } = {
  cells(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    const sheet = sheetAt(workbook, index)
    for (const change of edit.cells) refuseBadCell(edit.sheet, change)
    const changes = lastOfEach(edit.cells).filter(({ row, column, cell }) => !sameCell(sheet.rows[row]?.[column], cell))
    const before = changes.map(({ row, column }) => ({ row, column, cell: sheet.rows[row]?.[column] ?? null }))
    const inverse: Edit = { ...edit, cells: before }
    return { workbook: changes.length === 0 ? workbook : withSheet(workbook, index, withCells(sheet, changes)), inverse }
  },

  insertLines(workbook, edit) {
    const { cells = [], ...lines } = edit
    const index = indexOf(workbook, edit.sheet)
    const sheet = sheetAt(workbook, index)
    for (const change of cells) refuseBadCell(edit.sheet, change)
    const outside = cells.find((change) => !isOnLine(edit, change))
    refuse(outside !== undefined, `sheet "${edit.sheet}": cells for new ${edit.axis} lie beside them; accepted: cells of the new ${edit.axis}`)
    return { workbook: withSheet(workbook, index, withLines(sheet, edit, cells, edit)), inverse: { ...lines, kind: 'deleteLines', ...alongside(sheet, edit) } }
  },

  deleteLines(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    const before = sheetAt(workbook, index)
    const { sheet, cells } = withoutLines(before, edit, edit)
    return { workbook: withSheet(workbook, index, sheet), inverse: { ...edit, kind: 'insertLines', cells, ...alongside(before, edit) } }
  },

  moveLines(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    const sheet = sheetAt(workbook, index)
    const inverse: Edit = { ...edit, at: edit.to, to: edit.at, ...alongside(sheet, edit) }
    if (edit.to === edit.at) return { workbook, inverse }
    return { workbook: withSheet(workbook, index, withMovedLines(sheet, edit, edit.to, edit)), inverse }
  },

  columnWidths(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    const sheet = sheetAt(workbook, index)
    refuse(edit.columns.length > MAX_COLUMNS, `sheet "${edit.sheet}": ${edit.columns.length} column widths; accepted: up to ${MAX_COLUMNS}`)
    for (const [column, width] of edit.columns.entries()) {
      refuse(!(width > 0 && width <= MAX_COLUMN_WIDTH), `sheet "${edit.sheet}", column ${column + 1}: width ${width}; accepted: above 0, up to ${MAX_COLUMN_WIDTH} px`)
    }
    const inverse: Edit = { ...edit, columns: sheet.columns }
    const same = sameList(sheet.columns, edit.columns)
    return { workbook: same ? workbook : withSheet(workbook, index, { ...sheet, columns: edit.columns }), inverse }
  },

  frozen(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    const sheet = sheetAt(workbook, index)
    const [rows, columns] = edit.frozen
    refuse(!isOnSheet(rows, columns), `sheet "${edit.sheet}": ${rows} rows and ${columns} columns in view; accepted: whole numbers from 0, less than the sheet has`)
    const inverse: Edit = { ...edit, frozen: sheet.frozen }
    const same = sameList(sheet.frozen, edit.frozen)
    return { workbook: same ? workbook : withSheet(workbook, index, { ...sheet, frozen: edit.frozen }), inverse }
  },

  addSheet(workbook, { at, sheet }) {
    const { sheets } = workbook
    refuse(sheets.length >= MAX_SHEETS, `the workbook has ${sheets.length} sheets; accepted: up to ${MAX_SHEETS}`)
    refuse(!(Number.isInteger(at) && at >= 0 && at <= sheets.length), `a sheet cannot be put at position ${at}; accepted: 0 to ${sheets.length}`)
    refuseMessage(sheetNameProblem(sheet.name, sheets.map(({ name }) => name)))
    return { workbook: { ...workbook, sheets: sheets.toSpliced(at, 0, sheet) }, inverse: { kind: 'removeSheet', sheet: sheet.name } }
  },

  removeSheet(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    refuse(workbook.sheets.length === 1, `sheet "${edit.sheet}" is the only one; a workbook keeps at least one sheet`)
    const inverse: Edit = { kind: 'addSheet', at: index, sheet: sheetAt(workbook, index) }
    return { workbook: { ...workbook, sheets: workbook.sheets.toSpliced(index, 1) }, inverse }
  },

  moveSheet(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    const { sheets } = workbook
    refuse(!(Number.isInteger(edit.to) && edit.to >= 0 && edit.to < sheets.length), `sheet "${edit.sheet}" cannot be moved to position ${edit.to}; accepted: 0 to ${sheets.length - 1}`)
    const inverse: Edit = { ...edit, to: index }
    if (edit.to === index) return { workbook, inverse }
    return { workbook: { ...workbook, sheets: sheets.toSpliced(index, 1).toSpliced(edit.to, 0, sheetAt(workbook, index)) }, inverse }
  },

  renameSheet(workbook, edit) {
    const index = indexOf(workbook, edit.sheet)
    const sheet = sheetAt(workbook, index)
    const others = workbook.sheets.filter((other) => other !== sheet).map(({ name }) => name)
    refuseMessage(sheetNameProblem(edit.name, others))
    const inverse: Edit = { kind: 'renameSheet', sheet: edit.name, name: sheet.name }
    return { workbook: sheet.name === edit.name ? workbook : withSheet(workbook, index, { ...sheet, name: edit.name }), inverse }
  },

  title(workbook, { title }) {
    refuseLongText('the title', title)
    return { workbook: workbook.title === title ? workbook : { ...workbook, title }, inverse: { kind: 'title', title: workbook.title } }
  },

  purpose(workbook, { purpose }) {
    refuseLongText('the purpose', purpose)
    return { workbook: workbook.purpose === purpose ? workbook : { ...workbook, purpose }, inverse: { kind: 'purpose', purpose: workbook.purpose } }
  },

  name(workbook, { name, refersTo }) {
    const before = workbook.names.get(name) ?? null
    const inverse: Edit = { kind: 'name', name, refersTo: before }
    if (before === refersTo) return { workbook, inverse }
    const names = new Map(workbook.names)
    if (refersTo === null) names.delete(name)
    else {
      refuse(before === null && names.size >= MAX_NAMES, `the workbook has ${names.size} names; accepted: up to ${MAX_NAMES}`)
      refuseMessage(definedNameProblem(name, names.keys()))
      refuse(refersTo === '', `name "${name}" refers to nothing; accepted: reference text such as Duty!$C$5`)
      refuseLongText(`name "${name}"`, refersTo)
      names.set(name, refersTo)
    }
    return { workbook: { ...workbook, names }, inverse }
  },

  report(workbook, { report }) {
    const { report: before, ...rest } = workbook
    const inverse: Edit = { kind: 'report', report: before ?? null }
    if (sameReportSettings(before, report ?? undefined)) return { workbook, inverse }
    if (report === null) return { workbook: rest, inverse }
    refuseMessage(reportSettingsProblem(report))
    return { workbook: { ...rest, report }, inverse }
  },

  mappings(workbook, { mappings }) {
    const { mappings: before = [], ...rest } = workbook
    const inverse: Edit = { kind: 'mappings', mappings: before }
    if (sameMappings(before, mappings)) return { workbook, inverse }
    refuseMessage(mappingsProblem(mappings)?.message)
    return { workbook: mappings.length === 0 ? rest : { ...rest, mappings: mappings.map(normalMapping) }, inverse }
  },

  figures(workbook, { figures }) {
    const before = workbook.figures
    refuse(figures.length > MAX_FIGURES, `${figures.length} figures; accepted: up to ${MAX_FIGURES}`)
    for (const [index, figure] of figures.entries()) {
      const problem = figureProblem(figure)
      refuse(problem !== undefined, `figure ${index + 1}: ${problem?.message}`)
    }
    const after = figures.map(normalFigure)
    return { workbook: sameFigures(before, after) ? workbook : { ...workbook, figures: after }, inverse: { kind: 'figures', figures: before } }
  },

  cases(workbook, { cases }) {
    const { cases: before, ...rest } = workbook
    const inverse: Edit = { kind: 'cases', cases: before ?? null }
    if (cases) refuseMessage(casesProblem(cases))
    const after = cases ? normalCases(cases) : undefined
    if (sameCases(before, after)) return { workbook, inverse }
    return { workbook: after ? { ...rest, cases: after } : rest, inverse }
  },

  tolerances(workbook, { tolerances }) {
    const { tolerances: before, ...rest } = workbook
    const inverse: Edit = { kind: 'tolerances', tolerances: before ?? [] }
    refuseMessage(tolerancesProblem(tolerances))
    const after = normalTolerances(tolerances)
    if (sameTolerances(before, after)) return { workbook, inverse }
    return { workbook: after ? { ...rest, tolerances: after } : rest, inverse }
  },

  review(workbook, { kind, ...change }) {
    const { review: before, ...rest } = workbook
    const { review, inverse } = changeReview(before, change)
    if (review === before) return { workbook, inverse: { kind, ...inverse } }
    refuseMessage(review && reviewProblem(review)?.message)
    return { workbook: review ? { ...rest, review } : rest, inverse: { kind, ...inverse } }
  },
}

/** Of two changes to one cell the later. */
function lastOfEach(cells: readonly CellChange[]): readonly CellChange[] {
  const key = ({ row, column }: CellChange): number => row * MAX_COLUMNS + column
  // In reading order, as large edits are, no cell comes twice.
  if (cells.every((change, index) => index === 0 || key(change) > key(cells[index - 1] ?? change))) return cells
  return [...new Map(cells.map((change) => [key(change), change])).values()]
}

function alongside(sheet: Sheet, { axis }: Lines): Alongside {
  const frozen = frozenLines(sheet, axis)
  return axis === 'rows' ? { frozen } : { frozen, columns: sheet.columns }
}

function isOnLine({ axis, at, count }: Lines, { row, column }: CellChange): boolean {
  const line = axis === 'rows' ? row : column
  return line >= at && line < at + count
}

function indexOf(workbook: Workbook, name: string): number {
  const index = sheetIndex(workbook, name)
  refuse(index < 0, `there is no sheet "${name}"; there are ${workbook.sheets.map((sheet) => `"${sheet.name}"`).join(', ')}`)
  return index
}

function sheetAt(workbook: Workbook, index: number): Sheet {
  const sheet = workbook.sheets[index]
  if (!sheet) throw new WorkbookProblem(`there is no sheet at position ${index}`)
  return sheet
}

function withSheet(workbook: Workbook, index: number, sheet: Sheet): Workbook {
  return { ...workbook, sheets: workbook.sheets.with(index, sheet) }
}

/** Runs for every cell of a bulk edit, so a message is only made once it is needed. */
function refuseBadCell(sheet: string, { row, column, cell }: CellChange): void {
  if (!isOnSheet(row, column)) {
    throw new WorkbookProblem(`sheet "${sheet}": row ${row + 1}, column ${column + 1} is off the sheet; accepted: ${MAX_ROWS} rows, ${MAX_COLUMNS} columns`)
  }
  const wrong = cell && cellProblem(cell)
  if (wrong) throw new WorkbookProblem(`sheet "${sheet}", cell ${printAddress(row, column)}: ${wrong}`)
}

function cellProblem({ content, note }: Cell): string | undefined {
  if (typeof content === 'number' && !Number.isFinite(content)) return `${content} is no number that a cell holds; accepted: finite numbers`
  if (content === '') return 'empty text; accepted: null for a cell without content'
  if (typeof content === 'string' && content.length > MAX_TEXT) return `${content.length} characters; accepted: up to ${MAX_TEXT}`
  if (note !== undefined && note.length > MAX_TEXT) return `a note of ${note.length} characters; accepted: up to ${MAX_TEXT}`
  return undefined
}

function refuseLongText(what: string, text: string): void {
  refuse(text.length > MAX_TEXT, `${what} has ${text.length} characters; accepted: up to ${MAX_TEXT}`)
}

function refuse(wrong: boolean, message: string): void {
  if (wrong) throw new WorkbookProblem(message)
}

function refuseMessage(message: string | undefined): void {
  if (message !== undefined) throw new WorkbookProblem(message)
}

function sameList(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((item, index) => item === other[index])
}
