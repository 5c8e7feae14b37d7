import { basename } from 'node:path'
import { Graph } from '../calc/graph.ts'
import { rowBlocks } from '../calc/row-blocks.ts'
import { computedOtherwise, hasFormulas } from '../exchange/import/compare-values.ts'
import { importedWorkbook, importEdits } from '../exchange/import/import-edits.ts'
import { isLoss, remarkLine, type ImportRemark } from '../exchange/import/import-remark.ts'
import { importSheets, type Imported } from '../exchange/import/import-sheets.ts'
import type { Dialect, FileContents } from '../exchange/reading/contents.ts'
import { readFileContents } from '../exchange/reading/read-file.ts'
import { returnedWorkbook, type Accept, type Returned } from '../exchange/return/return-workbook.ts'
import { foldCase, type Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { writeWorkbook } from '../workbook/file.ts'
import { readArguments } from './arguments.ts'
import { importList } from './import-list.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { bytesOf, changeReason, openWorkbook, WORKBOOK_ENDING, writeTo } from './workbook-file.ts'

const OPTIONS = {
  output: { type: 'string', short: 'o' },
  sheet: { type: 'string', multiple: true },
  delimiter: { type: 'string' },
  decimal: { type: 'string' },
  encoding: { type: 'string' },
  into: { type: 'string' },
  list: { type: 'string' },
  mapping: { type: 'string' },
  'skip-bad': { type: 'boolean' },
  accept: { type: 'string' },
  force: { type: 'boolean' },
} as const

/** Sheets of a spreadsheet or text file as a workbook, or into one; what is not as in the file goes to standard error, a line each. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values, positionals: [path = ''] } = readArguments(args, OPTIONS, ['FILE'])
  const { output } = values
  if (output === undefined) throw new BadUsage(`-o OUT${WORKBOOK_ENDING} missing`)
  if (!output.endsWith(WORKBOOK_ENDING)) throw new Refusal(`"${output}": a workbook is written to a file that ends in ${WORKBOOK_ENDING}`)
  const contents = await readFileContents(await bytesOf(path, io), basename(path), { dialect: dialectOf(values) })
  if ('problem' in contents) throw new Refusal(`${path}: ${contents.problem}`)
  if (values.list !== undefined) {
    const { list, into, mapping, sheet, force } = values
    return importList(path, contents, { list, into, mapping, sheet, output, skipBad: values['skip-bad'] === true, force: force === true }, io)
  }
  if (values.mapping !== undefined || values['skip-bad'] === true) throw new BadUsage('--mapping and --skip-bad go with --list NAME')
  if (values.into === undefined && values.sheet === undefined) {
    const returned = await returnedWorkbook(contents, values.accept === undefined ? 'inputs' : oneOf('--accept', ACCEPTS, values.accept))
    if (returned !== undefined && !('problem' in returned)) return keepReturned(returned, output, values.force === true, io)
    if (returned !== undefined) io.err(`${path}: ${returned.problem}`)
  }
  if (values.accept !== undefined) throw new BadUsage(`--accept is for files that Lowside exported, brought back whole, and ${path} is none`)
  const target = values.into === undefined ? undefined : await openWorkbook(values.into, io)
  const sheets = values.sheet === undefined ? undefined : positionsOf(contents, values.sheet)
  const imported = importSheets(contents, sheets === undefined ? {} : { sheets }, target)
  if (imported.sheets.length === 0) throw new Refusal(`${path}: it has no sheet to bring in; --sheet NAME brings in a hidden one`)
  const workbook = target === undefined ? importedWorkbook(basename(path).replace(/\.[^.]*$/, ''), imported) : withImported(target, imported)
  const remarks = [...imported.remarks, ...differences(workbook, imported)]
  await writeTo(output, writeWorkbook(workbook), values.force !== true, io)
  for (const remark of remarks) io.err(remarkLine(remark))
  return remarks.some(isLoss) ? NOT_MET : FINE
}

/** A file that Lowside exported is the workbook it was, not sheets of another program; what was changed in it and is not taken over is told. */
async function keepReturned({ workbook, setAside }: Returned, output: string, force: boolean, io: Io): Promise<ExitCode> {
  await writeTo(output, writeWorkbook(workbook), !force, io)
  for (const change of setAside) io.err(`set aside: ${change.place}: ${changeReason(change)}`)
  return setAside.length > 0 ? NOT_MET : FINE
}

const ACCEPTS: ReadonlyMap<string, Accept> = new Map([['inputs', 'inputs'], ['all', 'all'], ['none', 'none']])

function withImported(target: Workbook, { sheets, names }: Imported): Workbook {
  let workbook = target
  for (const { edits } of importEdits(target, sheets.map(({ sheet }) => sheet), names)) workbook = applyEdits(workbook, edits).workbook
  return workbook
}

/** Where the sheets come to other values than the file holds. */
function differences(workbook: Workbook, { sheets }: Imported): ImportRemark[] {
  const withFormulas = sheets.filter(hasFormulas)
  if (withFormulas.length === 0) return []
  const graph = new Graph(workbook)
  return withFormulas.flatMap((imported) => [...rowBlocks(imported.sheet.rows, Infinity)].flatMap(({ top, end, width }) =>
    computedOtherwise(imported, top, graph.read(imported.sheet.name, { top, left: 0, bottom: end - 1, right: width - 1 }).values)))
}

function positionsOf({ sheets }: FileContents, names: readonly string[]): ReadonlySet<number> {
  return new Set(names.map((name) => {
    const position = sheets.findIndex((sheet) => foldCase(sheet.name) === foldCase(name))
    if (position < 0) throw new Refusal(`--sheet "${name}": the file has no such sheet; it has ${sheets.map((sheet) => `"${sheet.name}"`).join(', ')}`)
    return position
  }))
}

const DELIMITERS: ReadonlyMap<string, Dialect['delimiter']> = new Map([[',', ','], [';', ';'], ['\t', '\t'], ['tab', '\t'], ['|', '|']])
const DECIMAL_MARKS: ReadonlyMap<string, Dialect['decimalMark']> = new Map([['.', '.'], [',', ',']])
const ENCODINGS: ReadonlyMap<string, Dialect['encoding']> = new Map([['utf-8', 'UTF-8'], ['utf-16', 'UTF-16'], ['windows-1252', 'Windows-1252']])

function dialectOf({ delimiter, decimal, encoding }: { readonly delimiter?: string | undefined; readonly decimal?: string | undefined; readonly encoding?: string | undefined }): Partial<Dialect> {
  return {
    ...(delimiter === undefined ? {} : { delimiter: oneOf('--delimiter', DELIMITERS, delimiter) }),
    ...(decimal === undefined ? {} : { decimalMark: oneOf('--decimal', DECIMAL_MARKS, decimal) }),
    ...(encoding === undefined ? {} : { encoding: oneOf('--encoding', ENCODINGS, encoding.toLowerCase()) }),
  }
}

function oneOf<Value>(option: string, accepted: ReadonlyMap<string, Value>, given: string): Value {
  const value = accepted.get(given)
  if (value === undefined) throw new BadUsage(`${option} ${given}: accepted are ${[...accepted.keys()].map((one) => JSON.stringify(one)).join(', ')}`)
  return value
}
