import { CAUTIONS, STANDING_CAUTION } from '../../functions/cautions.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import type { CellValue, Check } from '../calc/values.ts'
import { unitsInUse } from '../workbook/units-in-use.ts'
import { VERSION } from '../version.ts'
import { eachCell } from '../workbook/cells.ts'
import { caseInWords, casesOf } from '../workbook/cases.ts'
import type { Workbook } from '../workbook/document.ts'
import { marksInWords } from '../workbook/review/marks-in-words.ts'
import { basisLines } from './cover/basis-lines.ts'
import { across, COVER_WIDTHS_PX, EMPTY, fact, headings, line, live, words, type Line } from './cover/cover-lines.ts'
import { exportedMarks, reviewLines } from './cover/review-lines.ts'
import { countInWords, verdictsOf, type Verdict } from './cover/verdicts.ts'
import type { FileRow, FileSheet } from './package/file-sheet.ts'

/** A sheet that the export adds, in words. */
export interface AddedSheet {
  readonly name: string
  readonly holds: string
}

/** The verdicts of a workbook's checks in words, by sheet and address. */
export type ChecksOfSheets = ReadonlyMap<string, { readonly checks: ReadonlyMap<string, Check> }>

interface Cover {
  readonly name: string
  readonly workbook: Workbook
  readonly values: ReadonlyMap<string, readonly (readonly CellValue[])[]>
  readonly checks: ChecksOfSheets
  readonly date: Date
  readonly methods: readonly FunctionDefinition[]
  readonly added: readonly AddedSheet[]
}

/** The first sheet of an export: what the file is and by whom, its basis, contents, checks as they are now and were, methods with their sources, and cautions. */
export function coverSheet({ name, workbook, values, checks, date, methods, added }: Cover): FileSheet {
  const verdicts = workbook.sheets.map((sheet) => ({ sheet, verdicts: verdictsOf(sheet, values.get(sheet.name) ?? [], checks.get(sheet.name)?.checks) }))
  const all = verdicts.flatMap((one) => one.verdicts)
  const marks = exportedMarks(workbook, values)
  const lines: Line[] = [
    line({ value: workbook.title, style: { look: 'title' } }),
    ...(workbook.purpose === '' ? [] : [{ cells: across('text', workbook.purpose) }]),
    EMPTY,
    fact('Date', `${date.toISOString().slice(0, 16).replace('T', ' ')} UTC, exported by Lowside`),
    fact('Made with', `Lowside ${VERSION}`),
    fact('Units in use', UNITS_IN_WORDS[unitsInUse(workbook) ?? 'neither']),
    fact('Basis', 'Every number has its unit beside it, or above its column. Pressures in gauge units count from the atmosphere that the workbook states.'),
    ...(casesOf(workbook).list.length === 0 ? [] : [fact('Case', caseInWords(workbook))]),
    fact('Inputs', inputsInWords(workbook)),
    fact('Checks', countInWords(all)),
    ...(marks.length === 0 ? [] : [fact('Checked', marksInWords(marks))]),
    EMPTY,
    ...signatures(workbook),
    EMPTY,
    { cells: across('check', STANDING_CAUTION) },
    ...basisLines(workbook, values),
    EMPTY,
    headings('What this file is'),
    { cells: across('text', 'A Lowside workbook that recalculates in any spreadsheet program. Input cells are tinted and unlocked.') },
    ...(methods.length === 0 ? [] : [{ cells: across('text', HOW) }]),
    EMPTY,
    headings('Contents', 'Holds'),
    ...verdicts.map((one) => fact(one.sheet.name, countInWords(one.verdicts))),
    ...added.map((one) => fact(one.name, one.holds)),
    ...checkLines(all),
    ...reviewLines(workbook, marks),
    ...(methods.length === 0 ? [] : [EMPTY, headings('Methods used'), ...methods.flatMap(methodLines)]),
    EMPTY,
    headings('Cautions'),
    ...CAUTIONS.map((caution) => ({ cells: across('text', caution) })),
  ]
  return {
    name, widthsPx: COVER_WIDTHS_PX, frozen: [0, 0], ...(all.length === 0 ? {} : { checks: [VERDICT_COLUMN] }),
    rows: lines.map(({ cells, heightPt }, row): FileRow => ({ row, cells, ...(heightPt === undefined ? {} : { heightPt }) })),
  }
}

const HOW =
  'Each call of a function of Lowside is written out on a sheet named after the function: a row a call, a column a step, arguments as given, in SI, ' +
  'and the result in the unit asked for. Cells of the workbook refer to those results; calls with the same arguments share a row.'

const UNITS_IN_WORDS = {
  US: 'US units',
  SI: 'SI units',
  mixed: 'US and SI units, mixed',
  neither: 'none that is of US or SI units alone',
} as const

function inputsInWords({ sheets }: Workbook): string {
  let [inputs, onSheets] = [0, 0]
  for (const sheet of sheets) {
    const before = inputs
    eachCell(sheet, ({ role }) => void (inputs += role === 'input' ? 1 : 0))
    if (inputs > before) onSheets++
  }
  return inputs === 0 ? 'no input cells' : `${inputs} input ${inputs === 1 ? 'cell' : 'cells'} on ${onSheets} ${onSheets === 1 ? 'sheet' : 'sheets'}`
}

/** Room for names, signatures and days, and for which revision they are of. */
function signatures({ report }: Workbook): readonly Line[] {
  const place = (what: string, name: string): Line => ({ cells: [words('label', what), ...[name, '', '', ''].map((text) => words('line', text))], heightPt: SIGNATURE_HEIGHT })
  return [headings('', 'Name', 'Date', 'Signature', 'Revision'), place('Prepared by', report?.preparedBy ?? ''), place('Checked by', report?.checkedBy ?? '')]
}

const SIGNATURE_HEIGHT = 27

/** Checks listed in full; of more, those that are not met come first. */
const LISTED = 300
/** Where a check that is no longer met is marked. */
const VERDICT_COLUMN = 'C1:C1000'

function checkLines(verdicts: readonly Verdict[]): Line[] {
  if (verdicts.length === 0) return []
  const listed = verdicts.length <= LISTED ? verdicts : [...verdicts.filter(({ met }) => met !== true), ...verdicts.filter(({ met }) => met === true)].slice(0, LISTED)
  return [
    EMPTY,
    headings('Checks', '', 'Verdict now', 'Verdict at export', ''),
    ...listed.map(({ place, reference, label, met, words: atExport }) => line(
      words('label', place), words('text', label),
      live(`IF(ISLOGICAL(${reference}),IF(${reference},"met","not met"),"no verdict")`, met === undefined ? 'no verdict' : met ? 'met' : 'not met', { look: 'text', wrap: true }),
      ...across('text', atExport, 3),
    )),
    ...(listed.length < verdicts.length ? [{ cells: across('note', `and ${verdicts.length - listed.length} more on their sheets`) }] : []),
  ]
}

/** A method on rows of its own, each across the page: an equation in words can be a page's width several times over. */
function methodLines({ name, gives, equation, sources, cautions = [] }: FunctionDefinition): Line[] {
  const said = (what: string, text: string): Line => line(words('note', what), ...across('text', text, 1))
  return [
    line(words('result', name), ...across('result', gives, 1)),
    said('Equation', equation),
    said('Sources', sources.map(({ cite, confidence }) => `${cite} [${confidence}]`).join('; ')),
    ...(cautions.length === 0 ? [] : [said('Cautions', cautions.join(' '))]),
  ]
}
