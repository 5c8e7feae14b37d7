import { CAUTIONS, STANDING_CAUTION } from '../../functions/cautions.ts'
import { functionsCalled } from '../calc/functions-called.ts'
import { stateWords } from '../calc/state-words.ts'
import { caseInWords, casesOf } from '../workbook/cases.ts'
import { marksInWords, recordInWords } from '../workbook/review/marks-in-words.ts'
import type { MarkState } from '../workbook/review/mark-states.ts'
import { reportedChecks, type ReportedCheck } from './checks.ts'
import { fact, signature } from '../pages/facts.ts'
import { element, type Html } from '../pages/html.ts'
import { listing } from '../pages/listing.ts'
import { mark } from '../pages/marks.ts'
import { methodsPart } from './methods-part.ts'
import { NO_VALUES, type ReportInput } from './report-input.ts'
import { marksPart } from './review-marks.ts'
import { findingsInWords, findingsPart } from './review-part.ts'
import { unitsInUse } from '../workbook/units-in-use.ts'

/** What stands before the sheets: what this is and by whom, contents, review, checks, methods and cautions. */
export function frontSection(input: ReportInput, marks: readonly MarkState[]): Html {
  const { workbook, values, settings, date, sheets, reviewed } = input
  const checks = workbook.sheets.flatMap((sheet) => reportedChecks(sheet, values.get(sheet.name) ?? NO_VALUES))
  const methods = functionsCalled(workbook)
  const record = recordInWords(workbook.review)
  return element(
    'section', { class: 'front' },
    element('p', { class: 'kicker' }, 'Calculation report'),
    element('h1', {}, workbook.title),
    workbook.purpose === '' ? undefined : element('p', { class: 'purpose' }, workbook.purpose),
    element('table', { class: 'facts' }, element(
      'tbody', {},
      fact('Date', date),
      fact('Units in use', UNITS_IN_WORDS[unitsInUse(workbook) ?? 'neither']),
      casesOf(workbook).list.length === 0 ? undefined : fact('Case', caseInWords(workbook)),
      fact('Checks', verdictsInWords(checks)),
      fact('Findings', findingsInWords(reviewed)),
      marks.length === 0 ? undefined : fact('Checked', marksInWords(marks)),
      record === undefined ? undefined : fact('Record', record),
      fact('Sheets', sheets.size === workbook.sheets.length ? `all ${sheets.size} printed` : `${sheets.size} of ${workbook.sheets.length} printed`),
      signature('Prepared by', settings.preparedBy),
      signature('Checked by', settings.checkedBy),
    )),
    element('p', { class: 'caution' }, STANDING_CAUTION),
    contents(input),
    findingsPart(workbook, reviewed),
    marksPart(workbook, marks),
    checks.length === 0 ? undefined : checkTable(checks),
    methods.length === 0 ? undefined : methodsPart(methods),
    element('h2', {}, 'Cautions'),
    element('ul', { class: 'cautions' }, CAUTIONS.map((caution) => element('li', {}, caution))),
  )
}

const UNITS_IN_WORDS = {
  US: 'US units',
  SI: 'SI units',
  mixed: 'Mixed: US and SI units; each number has its unit beside it or above it',
  neither: 'None of US or SI alone; each number has its unit beside it or above it',
} as const

function verdictsInWords(checks: readonly ReportedCheck[]): string {
  if (checks.length === 0) return 'none in this workbook'
  const [met, notMet] = [countOf(checks, 'met'), countOf(checks, 'not-met')]
  const open = checks.length - met - notMet
  return `${met} of ${checks.length} met${notMet > 0 ? `, ${notMet} not met` : ''}${open > 0 ? `, ${open} without verdict` : ''}`
}

const countOf = (checks: readonly ReportedCheck[], verdict: ReportedCheck['verdict']): number => checks.filter((check) => check.verdict === verdict).length

function contents({ workbook, states, sheets }: ReportInput): Html {
  const rows = workbook.sheets.map(({ name }, index) => {
    const { kind, words } = stateWords(states.find(({ sheet }) => sheet === name))
    return element(
      'tr', {},
      element('td', { class: 'count' }, String(index + 1)),
      element('td', {}, name),
      element('td', { class: kind }, kind === 'plain' ? undefined : mark(kind), words === '' ? 'no checks' : words),
      element('td', {}, sheets.has(name) ? '' : 'not printed'),
    )
  })
  return listing('Contents', 'contents', ['', 'Sheet', 'State', ''], rows)
}

const checkTable = (checks: readonly ReportedCheck[]): Html =>
  listing('Checks', 'checks', ['Sheet', 'Cell', 'Check', 'Verdict and margin'], checks.map(({ sheet, address, label, verdict, words }) =>
    element('tr', {}, element('td', {}, sheet), element('td', {}, address), element('td', {}, label), element('td', { class: verdict }, mark(verdict), words))))
