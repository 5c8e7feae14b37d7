import { STANDING_CAUTION } from '../../../functions/cautions.ts'
import { dateInWords } from '../../pages/date-words.ts'
import { fact, signature } from '../../pages/facts.ts'
import { element, type Html } from '../../pages/html.ts'
import { htmlDocument } from '../../pages/html-document.ts'
import { listing } from '../../pages/listing.ts'
import { pageRules } from '../../pages/page-rules.ts'
import { REPORT_STYLE } from '../../pages/report-style.ts'
import { reportSettingsOf } from '../../pages/settings-of.ts'
import { printAddress } from '../../workbook/address.ts'
import { printCellPlace } from '../../workbook/cell-place.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { Comparison, Difference, Effect } from './difference.ts'
import { kindCounts } from './counts.ts'
import { printedEffect } from './printed-effect.ts'
import { DIFFERENCES_STYLE } from './report-style.ts'
import { counted } from './words.ts'

export interface DifferencesReportInput {
  readonly before: { readonly workbook: Workbook }
  readonly now: { readonly workbook: Workbook }
  readonly comparison: Comparison
  /** The day that the report names. */
  readonly date: Date
  /** Which workbooks these are: names of files, "the workbook as it was saved last". */
  readonly beforeWords: string
  readonly nowWords: string
}

/** What differs between two workbooks as one HTML file to read, to print and to sign: which they are, by sheet what differs, then what that does to results. */
export function differencesReport(input: DifferencesReportInput): string {
  const { now, comparison, date } = input
  const settings = reportSettingsOf(now.workbook)
  const title = `${now.workbook.title} – differences`
  return htmlDocument({
    title, paper: settings.paper,
    markup: element('article', { class: 'report differences-report', lang: 'en' }, element('section', { class: 'front' }, cover(input), bySheet(comparison.differences), effectsPart(comparison))),
    style: `${REPORT_STYLE}${DIFFERENCES_STYLE}`,
    pages: pageRules({ title, date: dateInWords(date), settings }, []),
  })
}

function cover({ before, now, comparison: { differences, effects, resultsCompared, resultsOf }, date, beforeWords, nowWords }: DifferencesReportInput): Html[] {
  const settings = reportSettingsOf(now.workbook)
  const turned = effects.filter((effect) => effect.turned && effect.is === false).length
  const hasCases = before.workbook.cases !== undefined || now.workbook.cases !== undefined
  return [
    element('p', { class: 'kicker' }, 'Differences between two workbooks'),
    element('h1', {}, now.workbook.title),
    ...(now.workbook.purpose === '' ? [] : [element('p', { class: 'purpose' }, now.workbook.purpose)]),
    element('table', { class: 'facts' }, element(
      'tbody', {},
      fact('Before', `${before.workbook.title}: ${beforeWords}`),
      fact('Now', `${now.workbook.title}: ${nowWords}`),
      fact('Date', dateInWords(date)),
      hasCases ? fact('Results of', `${resultsOf}, in both. Cells are compared as they are in the base, what cases hold by itself.`) : undefined,
      fact('Differences', differences.length === 0 ? 'none' : `${differences.length.toLocaleString('en')}: ${kindCounts(differences).map(({ kind, count }) => `${kind} (${count.toLocaleString('en')})`).join(', ')}`),
      fact('Results', `${counted(effects.length, 'result or check', 'results and checks')} of ${resultsCompared.toLocaleString('en')} told below${turned === 0 ? '' : `; ${counted(turned, 'check')} no longer met`}`),
      fact('Not compared', 'Column widths, rows and columns that stay in view, paper, kept mappings of lists. Numbers that are the same quantity in another unit are told with their unit.'),
      signature('Prepared by', settings.preparedBy),
      signature('Checked by', settings.checkedBy),
    )),
    element('p', { class: 'caution' }, STANDING_CAUTION),
  ]
}

function effectsPart({ effects }: Comparison): Html | undefined {
  if (effects.length === 0) return undefined
  const shown = effects.slice(0, MOST_EFFECTS)
  const rest = effects.length - shown.length
  return element('div', {}, listing('Effects on results', 'effects', ['Cell', 'Result', 'Was', 'Is', 'Change'], shown.map(effectRow)), rest === 0 ? undefined : element('p', {}, `and ${rest.toLocaleString('en')} more that changed less`))
}

/** A report is read by a person: the most changed say what the others do. */
const MOST_EFFECTS = 300

function effectRow(effect: Effect): Html {
  const { was, is, change } = printedEffect(effect)
  return element('tr', effect.turned ? { class: 'turned' } : {}, element('td', {}, printCellPlace(effect.now)), element('td', {}, effect.label ?? ''), element('td', {}, was), element('td', {}, is), element('td', {}, change))
}

function bySheet(differences: readonly Difference[]): Html[] {
  const parts = new Map<string | undefined, Difference[]>()
  for (const one of differences) {
    const part = parts.get(one.sheet)
    if (part) part.push(one)
    else parts.set(one.sheet, [one])
  }
  return [...parts].map(([sheet, some]) => listing(
    sheet ?? 'The workbook as a whole', 'differences', ['Difference', 'Cell', 'What', 'Was', 'Is'], some.map(differenceRow),
  ))
}

const QUIET: ReadonlySet<string> = new Set(['format', 'role'])

function differenceRow({ kind, now, before, subject, label, was, is }: Difference): Html {
  const place = subject.of === 'lines' ? undefined : (now ?? before)
  return element(
    'tr', QUIET.has(kind) ? { class: 'quiet' } : {},
    element('td', { class: 'kind' }, kind),
    element('td', {}, place === undefined ? '' : printAddress(place.row, place.column), place !== undefined && now === undefined ? element('small', {}, 'before') : undefined),
    element('td', {}, label ?? ''), element('td', {}, was), element('td', {}, is),
  )
}
