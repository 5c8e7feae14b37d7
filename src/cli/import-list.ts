import { Graph } from '../calc/graph.ts'
import { appendRows } from '../exchange/lists/append-rows.ts'
import { fromKept, keptFor, readMapping } from '../exchange/lists/kept.ts'
import { listsOf } from '../exchange/lists/lists-of.ts'
import type { WorkbookList } from '../exchange/lists/list.ts'
import { mapRows, type CellRemark } from '../exchange/lists/map-rows.ts'
import type { Mapping } from '../exchange/lists/mapping.ts'
import { sitePressureFormula } from '../exchange/lists/site-pressure.ts'
import { sourceFor, suggestMapping } from '../exchange/lists/suggest-mapping.ts'
import type { SourceTable } from '../exchange/lists/source-table.ts'
import type { FileContents, ReadSheet } from '../exchange/reading/contents.ts'
import { foldCase, type Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { writeWorkbook } from '../workbook/file.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { bytesOf, openWorkbook, utf8, writeTo } from './workbook-file.ts'

export interface ListOptions {
  readonly into: string | undefined
  readonly list: string
  /** The name of a mapping that the workbook keeps, or a file that holds one. */
  readonly mapping: string | undefined
  readonly sheet: readonly string[] | undefined
  readonly output: string
  readonly skipBad: boolean
  readonly force: boolean
}

/**
 * Appends the rows of a file to a list of a workbook. Problems go to standard error, a line each. Without `skipBad` a row with a problem
 * stops it and nothing is written.
 */
export async function importList(path: string, contents: FileContents, options: ListOptions, io: Io): Promise<ExitCode> {
  if (options.into === undefined) throw new BadUsage('--list goes with --into WORKBOOK')
  const workbook = await openWorkbook(options.into, io)
  const list = listNamed(workbook, options.list, options.into)
  const sheet = sheetNamed(path, contents, options.sheet)
  const source = sourceFor(list, sheet)
  const mapping = await mappingFor(workbook, list, source, options.mapping, io)
  const rows = mapRows(list, source, mapping, { workbook, sitePa: sitePressure(workbook), fileHasDecimalCommas: contents.dialect?.decimalMark === ',' })
  const bad = rows.filter(({ problems }) => problems.length > 0)
  const good = rows.filter(({ problems }) => problems.length === 0)

  for (const [column, { unsure }] of mapping.columns) {
    const heading = list.columns.find((one) => one.column === column)?.heading
    if (unsure !== undefined) io.err(`${path}: column for ${heading ?? ''}: ${unsure}`)
  }
  for (const { sourceRow, problems, marks } of rows) {
    for (const problem of problems) io.err(`${path}: row ${sourceRow + 1}, ${remarkWords(problem)}; accepted: ${problem.accepted}`)
    for (const mark of marks) io.err(`${path}: row ${sourceRow + 1}, ${remarkWords(mark)} (taken)`)
  }
  if (bad.length > 0 && !options.skipBad) throw new Refusal(`${path}: ${bad.length} of ${rows.length} rows have problems, nothing is written; --skip-bad leaves them out`)
  if (good.length === 0) throw new Refusal(`${path}: there is no row to append to ${list.name}`)
  const after = applyEdits(workbook, appendRows(workbook, list, good.map(({ values }) => values))).workbook
  await writeTo(options.output, writeWorkbook(after), !options.force, io)
  io.out(`${good.length} ${good.length === 1 ? 'row' : 'rows'} appended to ${list.name}${bad.length > 0 ? `, ${bad.length} left out` : ''}`)
  return bad.length > 0 ? NOT_MET : FINE
}

const remarkWords = ({ heading, found, why }: CellRemark): string => `${heading}: ${found === '' ? '' : `“${found}” `}${why}`

function listNamed(workbook: Workbook, name: string, path: string): WorkbookList {
  const lists = listsOf(workbook)
  const folded = foldCase(name.trim())
  const exact = lists.filter((list) => foldCase(list.name) === folded)
  const fitting = exact.length > 0 ? exact : lists.filter((list) => foldCase(list.sheet) === folded || foldCase(list.columns[0]?.heading ?? '') === folded)
  const [found] = fitting
  const names = (some: readonly WorkbookList[]): string => some.map((list) => `"${list.name}"`).join(', ')
  if (!found) throw new Refusal(`--list "${name}": ${path} has no such list; ${lists.length === 0 ? 'it has none that rows can be appended to' : `it has ${names(lists)}`}`)
  if (fitting.length > 1) throw new Refusal(`--list "${name}": ${path} has several: ${names(fitting)}`)
  return found
}

function sheetNamed(path: string, { sheets }: FileContents, wanted: readonly string[] = []): ReadSheet {
  const [name, second] = wanted
  if (second !== undefined) throw new BadUsage('--list takes the rows of one --sheet')
  const filled = sheets.filter(({ hidden, rows }) => !hidden && rows.length > 0)
  const found = name === undefined ? filled[0] : sheets.find((sheet) => foldCase(sheet.name) === foldCase(name))
  const names = sheets.map((sheet) => `"${sheet.name}"`).join(', ')
  if (!found) throw new Refusal(name === undefined ? `${path}: it has no rows` : `--sheet "${name}": the file has no such sheet; it has ${names}`)
  if (name === undefined && filled.length > 1) throw new Refusal(`${path}: it has several sheets, ${names}; --sheet NAME says which`)
  return found
}

/** The one asked for; else one that is kept for files with these headings; else what the headings suggest. */
async function mappingFor(workbook: Workbook, list: WorkbookList, source: SourceTable, asked: string | undefined, io: Io): Promise<Mapping> {
  if (asked === undefined) {
    const [kept] = keptFor(workbook, list, source)
    return kept ? fromKept(kept, list, source).mapping : suggestMapping(list, source)
  }
  const { mappings = [] } = workbook
  const named = mappings.find(({ name }) => foldCase(name) === foldCase(asked))
  const kept = named ?? (/\.json$/i.test(asked) ? readMapping(utf8(asked, await bytesOf(asked, io), 'a mapping as a workbook keeps it (.json)')) : undefined)
  if (!kept) throw new Refusal(`--mapping "${asked}": the workbook keeps no such mapping; ${mappings.length === 0 ? 'it keeps none' : `it keeps ${mappings.map(({ name }) => `"${name}"`).join(', ')}`}; a file with one ends in .json`)
  if ('problem' in kept) throw new Refusal(`${asked}: ${kept.problem}`)
  const { mapping, missing } = fromKept(kept, list, source)
  if (missing.length > 0) throw new Refusal(`--mapping "${asked}": ${missing.join('; ')}; the file has ${source.columns.map(({ name }) => `"${name}"`).join(', ')}`)
  return mapping
}

/** The atmosphere where the plant stands, if the workbook names it. */
function sitePressure(workbook: Workbook): number | undefined {
  const [sheet] = workbook.sheets
  const formula = sitePressureFormula(workbook)
  if (!sheet || formula === undefined) return undefined
  const value = new Graph(workbook).evaluate(formula, sheet.name)
  return typeof value === 'number' ? value : undefined
}
