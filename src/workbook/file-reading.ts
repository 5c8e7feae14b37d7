import { parseAddress, printAddress } from './address.ts'
import { casesOfFile } from './case-files.ts'
import { switchCase } from './case-switching.ts'
import { normalCases } from './cases.ts'
import { foldCase, type Cell, type Row, type Workbook } from './document.ts'
import { applyEdits } from './edits.ts'
import { normalFigure } from './figure.ts'
import { normalMapping } from './kept-mapping.ts'
import { jsonProblems, placeFinder, type TextPlace } from './json-text.ts'
import { MAX_CELLS, MAX_COLUMNS, MAX_FILE_CHARACTERS, MAX_NAMES, MAX_ROWS } from './limits.ts'
import { migrate, MIGRATIONS, type Migrations } from './migrations.ts'
import { quickCells, type Report } from './quick-reading.ts'
import { reviewOfFile } from './review/review-files.ts'
import { fileSchema, type FileCell, type WorkbookFile } from './schema.ts'
import { sheetNameProblem } from './sheet-name.ts'
import { tolerancesOfFile } from './tolerance-files.ts'

/** Why a file cannot be read; `message` says where and what is accepted, and may be shown as it is. */
export interface ReadProblem {
  readonly message: string
  readonly at?: TextPlace
  readonly sheet?: string
  readonly cell?: string
}

export type ReadResult = { readonly workbook: Workbook } | { readonly problems: readonly ReadProblem[] }

/** More would only repeat the same fault. */
const MAX_PROBLEMS = 20

/** Reads the text of a workbook file. Strict: a file that is not wholly understood gives problems, at most 20, and no workbook. */
export function readWorkbook(text: string, migrations: Migrations = MIGRATIONS, report?: Report): ReadResult {
  if (text.length > MAX_FILE_CHARACTERS) {
    return refused(`the file has ${text.length} characters; accepted: up to ${MAX_FILE_CHARACTERS}`)
  }
  const source = text.startsWith('\uFEFF') ? text.slice(1) : text
  const quick = readQuickly(source, report)
  return quick ? { workbook: quick } : readPrecisely(source, migrations)
}

/** The workbook of a text with which all is in order; undefined else. */
function readQuickly(source: string, report: Report | undefined): Workbook | undefined {
  const quick = quickCells(source, report)
  const parsed = fileSchema.safeParse(quick?.file)
  if (!quick || !parsed.success) return undefined
  const { workbook, current, faults } = build(parsed.data)
  return faults.length > 0 ? undefined : inCase({ ...workbook, sheets: workbook.sheets.map((sheet, index) => ({ ...sheet, rows: quick.rows[index] ?? [] })) }, current)
}

/** The same, some four times as slow, with every fault at its place; and files of older versions. */
export function readPrecisely(source: string, migrations: Migrations = MIGRATIONS): ReadResult {
  const found = jsonProblems(source, MAX_PROBLEMS)
  if (found.broken) {
    return { problems: found.problems.map(({ message, at }) => ({ message: `line ${at.line}, column ${at.column}: ${message}`, at })) }
  }
  const raw: unknown = JSON.parse(source)
  const faults: Fault[] = found.problems.map(({ message, at, path = [] }) => ({ message, at, path }))
  if (faults.length > 0) return located(source, raw, faults)

  const cells = cellCount(raw)
  if (cells > MAX_CELLS) return refused(`the file has ${cells} cells; accepted: up to ${MAX_CELLS}`)
  const migrated = migrate(raw, migrations)
  if ('problem' in migrated) return refused(migrated.problem)
  const parsed = fileSchema.safeParse(migrated.file)
  if (!parsed.success) {
    return located(source, raw, parsed.error.issues.map(({ message, path }) => ({ message, path: path.map(asSegment) })))
  }
  const { workbook, current, faults: inside } = build(parsed.data)
  return inside.length > 0 ? located(source, raw, inside) : { workbook: inCase(workbook, current) }
}

type Path = readonly (string | number)[]

interface Fault {
  readonly message: string
  readonly path: Path
  readonly at?: TextPlace
}

/** A file has the base in its cells. */
const inCase = (base: Workbook, current: number | null): Workbook => applyEdits(base, switchCase(base, current)).workbook

/** What no schema says: addresses, and names that are the same but for their case. `current`: the case that is to be switched to. */
function build(file: WorkbookFile): { readonly workbook: Workbook; readonly current: number | null; readonly faults: readonly Fault[] } {
  const faults: Fault[] = []
  const sheets = file.sheets.map(({ name, columns, frozen, cells }, index) => {
    const before = file.sheets.slice(0, index).map((other) => other.name)
    addFault(faults, sheetNameProblem(name, before), ['sheets', index, 'name'])
    return { name, columns, frozen, rows: rowsOf(cells, (message, address) => addFault(faults, message, ['sheets', index, 'cells', address])) }
  })
  const names = new Map<string, string>()
  const folded = new Map<string, string>()
  for (const [name, refersTo] of Object.entries(file.names)) {
    const other = folded.get(foldCase(name))
    addFault(faults, other && `name "${name}" is taken by "${other}", upper and lower case being the same`, ['names', name])
    folded.set(foldCase(name), name)
    names.set(name, refersTo)
  }
  if (names.size > MAX_NAMES) faults.push({ message: `${names.size} names; accepted: up to ${MAX_NAMES}`, path: ['names'] })
  const { cases: inFile, current } = casesOfFile(file, (message, path) => addFault(faults, message, path))
  const cases = normalCases(inFile)
  const tolerances = tolerancesOfFile(file, (message, path) => addFault(faults, message, path))
  const review = reviewOfFile(file, (message, path) => addFault(faults, message, path))
  const workbook: Workbook = {
    title: file.title, purpose: file.purpose, sheets, names, figures: file.figures.map(normalFigure),
    ...(file.report ? { report: file.report } : {}), ...(file.mappings && file.mappings.length > 0 ? { mappings: file.mappings.map(normalMapping) } : {}), ...(cases ? { cases } : {}), ...(tolerances ? { tolerances } : {}), ...(review ? { review } : {}),
  }
  return { workbook, current, faults }
}

function rowsOf(cells: Readonly<Record<string, FileCell>>, report: (message: string, address: string) => void): Row[] {
  const rows: (Cell | undefined)[][] = []
  for (const [address, [content, role, format]] of Object.entries(cells)) {
    const at = parseAddress(address)
    if (at && printAddress(at.row, at.column) === address) (rows[at.row] ??= [])[at.column] = { content, role, ...format }
    else report(`${JSON.stringify(address)} is no address; accepted: A1 to ${printAddress(MAX_ROWS - 1, MAX_COLUMNS - 1)}, in capitals, without $`, address)
  }
  return rows
}

/** Before the schema, so that a file of far too many cells costs little. */
function cellCount(raw: unknown): number {
  const sheets: unknown = isObject(raw) ? raw['sheets'] : undefined
  if (!Array.isArray(sheets)) return 0
  return sheets.reduce((sum: number, sheet: unknown) => sum + (isObject(sheet) && isObject(sheet['cells']) ? Object.keys(sheet['cells']).length : 0), 0)
}

/** Says for each fault in which line it stands, and in which sheet and cell if it is in one. */
function located(source: string, raw: unknown, faults: readonly Fault[]): ReadResult {
  const find = placeFinder(source)
  const problems = faults.slice(0, MAX_PROBLEMS).map(({ message, path, at = find(path) }): ReadProblem => {
    const sheet = sheetNameAt(raw, path)
    const cell = path[0] === 'sheets' && path[2] === 'cells' && typeof path[3] === 'string' ? path[3] : undefined
    const figure = path[0] === 'figures' && typeof path[1] === 'number' ? [`figure ${path[1] + 1}`] : []
    const oneCase = path[0] === 'cases' && typeof path[1] === 'number' ? [`case ${path[1] + 1}`] : []
    const inReview = path[0] !== undefined && typeof path[1] === 'number' ? (REVIEW_WORDS[path[0]] ?? []).map((word) => `${word} ${Number(path[1]) + 1}`) : []
    const where = [`line ${at.line}`, ...figure, ...oneCase, ...inReview, ...(sheet === undefined ? [] : [`sheet "${sheet}"`]), ...(cell === undefined ? [] : [`cell ${cell}`])]
    return { message: `${where.join(', ')}: ${message}`, at, ...(sheet === undefined ? {} : { sheet }), ...(cell === undefined ? {} : { cell }) }
  })
  return { problems }
}

/** What the items of the lists that tell of reviews are called. */
const REVIEW_WORDS: Readonly<Record<string, readonly [string]>> = { marks: ['mark'], accepted: ['accepted finding'], record: ['line of the record'] }

/** A sheet without a usable name goes by its number. */
function sheetNameAt(raw: unknown, [list, index]: Path): string | undefined {
  if (list !== 'sheets' || typeof index !== 'number') return undefined
  const sheet: unknown = isObject(raw) && Array.isArray(raw['sheets']) ? raw['sheets'][index] : undefined
  return isObject(sheet) && typeof sheet['name'] === 'string' ? sheet['name'] : `number ${index + 1}`
}

function addFault(faults: Fault[], message: string | undefined, path: Path): void {
  if (message !== undefined) faults.push({ message, path })
}

function asSegment(key: PropertyKey): string | number {
  return typeof key === 'symbol' ? key.toString() : key
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

function refused(message: string): ReadResult {
  return { problems: [{ message }] }
}
