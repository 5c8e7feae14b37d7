import { CAUTIONS, STANDING_CAUTION } from '../../functions/cautions.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import { checkCells } from '../calc/check-cells.ts'
import type { CellValue } from '../calc/values.ts'
import { printAddress } from '../workbook/address.ts'
import type { Sheet, Workbook } from '../workbook/document.ts'
import { labelOf } from '../workbook/words-beside.ts'
import type { FileRow, FileSheet } from './package/file-sheet.ts'
import type { Look } from './package/styles.ts'

/** A sheet that the export adds, in words. */
export interface AddedSheet {
  readonly name: string
  readonly holds: string
}

interface Cover {
  readonly name: string
  readonly workbook: Workbook
  readonly values: ReadonlyMap<string, readonly (readonly CellValue[])[]>
  readonly date: Date
  readonly methods: readonly FunctionDefinition[]
  readonly added: readonly AddedSheet[]
}

/** The first sheet of an export: what the file is, its basis, contents, checks, methods with their sources, and cautions. */
export function coverSheet({ name, workbook, values, date, methods, added }: Cover): FileSheet {
  const verdicts = workbook.sheets.map((sheet) => ({ sheet, verdicts: verdictsOf(sheet, values.get(sheet.name) ?? []) }))
  const all = verdicts.flatMap((one) => one.verdicts)
  const lines: Line[] = [
    line(['title', workbook.title]),
    ...(workbook.purpose === '' ? [] : [line(['text', workbook.purpose])]),
    line(['label', 'Date'], ['text', `${date.toISOString().slice(0, 16).replace('T', ' ')} UTC, exported by Lowside`]),
    line(['label', 'Basis'], ['text', 'Every number has its unit beside it, or above its column. Pressures in gauge units count from the atmosphere that the workbook states.']),
    line(['label', 'Checks'], ['text', countInWords(all)]),
    ...(workbook.report ? [line(['label', 'Prepared by'], ['text', workbook.report.preparedBy]), line(['label', 'Checked by'], ['text', workbook.report.checkedBy])] : []),
    line(['check', STANDING_CAUTION]),
    [],
    line(['heading', 'What this file is']),
    line(['text', 'A Lowside workbook that recalculates in any spreadsheet program. Input cells are tinted and unlocked.']),
    ...(methods.length === 0 ? [] : [line(['text', HOW])]),
    [],
    line(['heading', 'Contents'], ['heading', 'Holds']),
    ...verdicts.map((one) => line(['label', one.sheet.name], ['text', countInWords(one.verdicts)])),
    ...added.map((one) => line(['label', one.name], ['text', one.holds])),
    ...checkLines(all),
    ...(methods.length === 0 ? [] : [[], line(...METHOD_HEADER.map((words) => ['heading', words] as const)), ...methods.map(methodLine)]),
    [],
    line(['heading', 'Cautions']),
    ...CAUTIONS.map((caution) => line(['text', caution])),
  ]
  return { name, widthsPx: [200, 320, 420, 520, 420], frozen: [0, 0], rows: lines.map((cells, row): FileRow => ({ row, cells })) }
}

const HOW =
  'Each call of a function of Lowside is written out on a sheet named after the function: a row a call, a column a step, arguments as given, in SI, ' +
  'and the result in the unit asked for. Cells of the workbook refer to those results; calls with the same arguments share a row.'

type Line = FileRow['cells']

const line = (...cells: readonly (readonly [look: Look, text: string])[]): Line =>
  cells.map(([look, value]) => ({ value, style: { look, wrap: cells.length > 2 && look === 'text' } }))

interface Verdict {
  readonly place: string
  readonly label: string
  readonly met: boolean | undefined
}

function verdictsOf(sheet: Sheet, values: readonly (readonly CellValue[])[]): Verdict[] {
  return checkCells(sheet).flatMap(({ row, column }) => {
    const value = values[row]?.[column] ?? null
    if (value === null || value === '') return []
    const first = values[row]?.slice(0, column).find((one) => typeof one === 'string' && one !== '')
    const label = labelOf(sheet, { row, column }) ?? ''
    const words = typeof first !== 'string' || label.startsWith(first) ? label : `${first}: ${label}`
    return [{ place: `${sheet.name}!${printAddress(row, column)}`, label: words, met: typeof value === 'boolean' ? value : undefined }]
  })
}

function countInWords(verdicts: readonly Verdict[]): string {
  if (verdicts.length === 0) return 'no checks'
  const [met, notMet] = [true, false].map((wanted) => verdicts.filter((one) => one.met === wanted).length)
  const open = verdicts.length - (met ?? 0) - (notMet ?? 0)
  return `${met} of ${verdicts.length} checks met${notMet ? `, ${notMet} not met` : ''}${open > 0 ? `, ${open} without verdict` : ''} at export`
}

/** Checks listed in full; of more, those that are not met come first. */
const LISTED = 300

function checkLines(verdicts: readonly Verdict[]): Line[] {
  if (verdicts.length === 0) return []
  const listed = verdicts.length <= LISTED ? verdicts : [...verdicts.filter(({ met }) => met !== true), ...verdicts.filter(({ met }) => met === true)].slice(0, LISTED)
  return [
    [],
    line(['heading', 'Checks at export'], ['heading', 'Verdict'], ['heading', 'Check']),
    ...listed.map(({ place, label, met }) => line(['label', place], [met === true ? 'text' : 'result', met === undefined ? 'no verdict' : met ? 'met' : 'not met'], ['text', label])),
    ...(listed.length < verdicts.length ? [line(['note', `and ${verdicts.length - listed.length} more on their sheets`])] : []),
  ]
}

const METHOD_HEADER = ['Methods used', 'Gives', 'Equation', 'Sources', 'Cautions']

const methodLine = ({ name, gives, equation, sources, cautions = [] }: FunctionDefinition): Line =>
  line(['label', name], ['text', gives], ['text', equation], ['text', sources.map(({ cite, confidence }) => `${cite} [${confidence}]`).join('; ')], ['text', cautions.join(' ')])
