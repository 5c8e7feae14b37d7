import { CAUTIONS, STANDING_CAUTION } from '../../../functions/cautions.ts'
import { element, type Child, type Html } from '../../pages/html.ts'
import { fact, signature } from '../../pages/facts.ts'
import { htmlDocument } from '../../pages/html-document.ts'
import { listing } from '../../pages/listing.ts'
import { pageRules } from '../../pages/page-rules.ts'
import { REPORT_STYLE } from '../../pages/report-style.ts'
import type { Pages } from '../../pages/pages.ts'
import { printCellPlace } from '../../workbook/cell-place.ts'
import type { ReportSettings } from '../../workbook/report-settings.ts'
import { areaText } from './area-text.ts'
import type { Derivation, Step } from './derivation.ts'
import { aside, functionsOf } from './derivation-text.ts'
import { whereWords } from './where.ts'
import { DERIVATION_STYLE } from './derivation-style.ts'
import { functionPart, withLinks } from './report-parts.ts'
import { shownEqualities, shownWords } from './shown-lines.ts'

export interface DerivationReportInput {
  readonly derivation: Derivation
  readonly settings: ReportSettings
  /** As it is to be printed. */
  readonly date: string
  /** Ranges and rows with every row. */
  readonly unfold?: boolean
}

/** The derivation of chosen results, to read and to sign: what they are, what is given, step after step, the functions with their sources and limits, cautions. */
export function derivationReport(input: DerivationReportInput): Pages {
  const { derivation, settings, date } = input
  const { title, steps, noPart, cut } = derivation
  const functions = functionsOf(derivation)
  const given = steps.filter(({ formula }) => formula === undefined)
  return {
    markup: element(
      'article', { class: 'report derivation', lang: 'en' },
      element(
        'section', { class: 'front' },
        cover(input),
        given.length === 0 ? undefined : listing('Given', 'given', ['', 'Cell', 'What', 'Value', 'Method, source, remarks'], given.map((step) => givenRow(step, input.unfold ?? false))),
        element('h2', {}, 'Steps'),
        stepParts(input),
        functions.length === 0 ? undefined : [element('h2', {}, 'Functions'), functions.map(functionPart)],
        noPart.length === 0 && cut === 0 ? undefined : [element('h2', {}, 'Without part in these numbers'), element('p', { class: 'beside' }, besideWords(derivation))],
        element('h2', {}, 'Cautions'),
        element('ul', { class: 'cautions' }, CAUTIONS.map((caution) => element('li', {}, caution))),
      ),
    ),
    style: `${REPORT_STYLE}${DERIVATION_STYLE}`,
    pages: pageRules({ title: `${title}  –  derivation`, date, settings }, []),
  }
}

/** The same as one HTML file. */
export const derivationFile = (input: DerivationReportInput): string =>
  htmlDocument({ title: `${input.derivation.title} – derivation`, paper: input.settings.paper, ...derivationReport(input) })

function cover({ derivation: { title, caseWords, results, steps }, settings, date }: DerivationReportInput): readonly Child[] {
  const chosen = results.flatMap((number) => steps[number - 1] ?? [])
  const unsure = steps.filter(({ standing }) => standing.length > 0).length
  const errors = steps.filter(({ error }) => error !== undefined).length
  return [
    element('p', { class: 'kicker' }, 'Derivation of chosen results'),
    element('h1', {}, chosen.length === 1 ? (chosen[0]?.label ?? title) : title),
    element('p', { class: 'purpose' }, chosen.length === 1 ? title : `${chosen.length} results`),
    element('table', { class: 'facts' }, element(
      'tbody', {},
      chosen.map((step) => fact(printCellPlace(step.place), `${chosen.length === 1 ? '' : `${step.label}: `}${step.value} [${step.number}]`)),
      fact('Date', date),
      caseWords === undefined ? undefined : fact('Case', caseWords),
      fact('Steps', `${steps.length}: ${steps.filter(({ formula }) => formula === undefined).length} given, the others computed from them${errors > 0 ? `; ${errors} with an error` : ''}`),
      unsure === 0 ? undefined : fact('To be confirmed', `${unsure} values or methods are common practice or from memory, marked where they stand`),
      fact('Numbers', 'Put in with five digits, computed with some fifteen; what was typed in stands as typed'),
      signature('Prepared by', settings.preparedBy),
      signature('Checked by', settings.checkedBy),
    )),
    element('p', { class: 'caution' }, STANDING_CAUTION),
  ]
}

function givenRow(step: Step, unfold: boolean): Html {
  const said = [...step.remarks.map(({ heading, text }) => `${heading ?? 'Remark'}: ${text}`), ...noteTexts(step)]
  return element(
    'tr', { id: `step-${step.number}` },
    element('td', { class: 'count' }, String(step.number)),
    element('td', { class: 'place' }, areaText(step.cells)),
    element('td', {}, step.label, unfold && step.rows.length > 0 ? rowsTable(step) : undefined),
    element('td', { class: 'value' }, step.value, element('small', {}, aside(step))),
    element('td', { class: 'remarks' }, said.join('. ')),
  )
}

function noteTexts({ note, passedOn }: Step): string[] {
  return [
    ...(note === undefined ? [] : [`Note: ${note}`]),
    ...(passedOn.length === 0 ? [] : [`passed on at ${passedOn.map(({ place, value }) => `${printCellPlace(place)} (${value})`).join(', ')}`]),
  ]
}

function stepParts({ derivation: { steps, results }, unfold = false }: DerivationReportInput): readonly Child[] {
  const computed = steps.filter(({ formula }) => formula !== undefined)
  const isStep = (number: number): boolean => number >= 1 && number <= steps.length
  return computed.map((step, at) => [
    step.place.sheet === computed[at - 1]?.place.sheet ? undefined : element('h3', { class: 'of-sheet' }, step.place.sheet),
    stepPart(step, results.includes(step.number), isStep, unfold),
  ])
}

function stepPart(step: Step, isResult: boolean, isStep: (number: number) => boolean, unfold: boolean): Html {
  const { formula } = step
  const equalities = shownEqualities(step)
  return element(
    'div', { class: isResult ? 'step result' : 'step', id: `step-${step.number}` },
    element('p', { class: 'step-head' }, element('b', { class: 'count' }, String(step.number)), element('span', { class: 'what' }, step.label, isResult ? element('i', {}, ' – result') : undefined), element('span', { class: 'place' }, areaText(step.cells))),
    element(
      'div', { class: 'step-lines' },
      shownWords(step).map((words) => element('p', { class: 'words' }, '= ', withLinks(words, isStep))),
      equalities.map((line, at) => element('p', { class: at === equalities.length - 1 ? 'comes' : 'numbers' }, '= ', withLinks(line, isStep), at === 0 && step.kind !== 'computed' ? element('small', {}, ` (the first, ${printCellPlace(formula?.at ?? step.place)})`) : undefined, at === equalities.length - 1 ? element('small', {}, aside(step)) : undefined)),
      step.kind === 'computed' && equalities.length > 0 ? undefined : element('p', { class: 'comes' }, step.value, element('small', {}, aside(step))),
      [...(formula?.reasons ?? []), ...(formula?.wheres.map((where) => `where ${whereWords(where)}`) ?? [])].map((text) => element('p', { class: 'where' }, withLinks(text, isStep))),
      step.error === undefined ? undefined : element('p', { class: 'error' }, `Error: ${step.error}`),
      step.circular === true ? element('p', { class: 'error' }, 'Hangs on itself: its references go in a circle.') : undefined,
      step.functions.map((name) => element('p', { class: 'where' }, `${name}: see Functions`)),
      [...step.remarks.map(({ heading, text }) => `${heading ?? 'Remark'}: ${text}`), ...noteTexts(step)].map((text) => element('p', { class: 'where' }, text)),
      formula === undefined ? undefined : element('p', { class: 'raw' }, formula.raw),
      unfold && step.rows.length > 0 ? rowsTable(step) : undefined,
    ),
  )
}

const rowsTable = ({ rows, count }: Step): Html => element(
  'table', { class: 'rows' },
  element('tbody', {},
    rows.map(({ place, label, line, value }) => element('tr', {}, element('td', { class: 'place' }, printCellPlace(place)), element('td', {}, label), element('td', {}, line === undefined || line === value ? '' : line), element('td', { class: 'value' }, value))),
    count > rows.length ? element('tr', {}, element('td', { colspan: 4 }, `and ${count - rows.length} more`)) : undefined),
)

function besideWords({ noPart, cut, steps }: Derivation): string {
  const listed = noPart.length === 0 ? '' : `Formulas refer to these cells too, in branches that were not taken and rows that were not looked up: ${noPart.map(areaText).join(', ')}.`
  return cut === 0 ? listed : `${listed} ${cut} references were not gone into: a derivation has up to ${steps.length} steps.`
}
