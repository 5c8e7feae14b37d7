import { STANDING_CAUTION } from '../../../functions/cautions.ts'
import { signature } from '../../pages/facts.ts'
import { element, type Child, type Html } from '../../pages/html.ts'
import { htmlDocument } from '../../pages/html-document.ts'
import { listing } from '../../pages/listing.ts'
import { pageRules } from '../../pages/page-rules.ts'
import { REPORT_STYLE } from '../../pages/report-style.ts'
import type { Pages } from '../../pages/pages.ts'
import { printCellPlace } from '../../workbook/cell-place.ts'
import type { ReportSettings } from '../../workbook/report-settings.ts'
import { areaText } from './area-text.ts'
import { aside } from './derivation-text.ts'
import { DERIVATION_STYLE } from './derivation-style.ts'
import { givenLetter, type HandEquation, type HandSheet } from './hand-sheet.ts'

export interface HandPagesInput {
  /** One for each result: each begins on a page of its own. */
  readonly sheets: readonly HandSheet[]
  readonly settings: ReportSettings
  /** As it is to be printed. */
  readonly date: string
  /** The program's values stand on a page of their own, so that whoever computes does not see them. */
  readonly blind?: boolean
}

/** A page to compute one result on by hand: what is sought and given, the equation, room for each step, the comparison, and room to sign. */
export function handPages({ sheets, settings, date, blind = false }: HandPagesInput): Pages {
  return {
    markup: element('article', { class: 'report derivation hand', lang: 'en' }, sheets.map((sheet) => firstPage(sheet, blind)), blind ? sheets.map(valuesPage) : undefined),
    style: `${REPORT_STYLE}${DERIVATION_STYLE}`,
    pages: pageRules({ title: `${sheets[0]?.title ?? ''}  –  hand calculation`, date, settings }, []),
  }
}

/** The same as one HTML file. */
export const handFile = (input: HandPagesInput): string =>
  htmlDocument({ title: `${input.sheets[0]?.title ?? ''} – hand calculation of ${input.sheets.map(({ sought }) => sought.label).join(', ')}`, paper: input.settings.paper, ...handPages(input) })

function firstPage({ title, caseWords, sought, given, equations, lines }: HandSheet, blind: boolean): Html {
  return element(
    'section', { class: 'sought' },
    element('p', { class: 'kicker' }, 'Hand calculation sheet'),
    element('h1', {}, sought.label),
    element('p', { class: 'purpose' }, `Sought: ${sought.label}, ${printCellPlace(sought.place)}${unitOf(sought.value)}. ${title}${caseWords === undefined ? '' : `. Case: ${caseWords}`}`),
    given.length === 0 ? undefined : listing('Given', 'given', ['', 'Cell', 'What', 'Value', 'Source, remarks'], given.map((step, at) => element(
      'tr', {},
      element('td', { class: 'count' }, givenLetter(at)),
      element('td', { class: 'place' }, areaText(step.cells)),
      element('td', {}, step.label),
      element('td', { class: 'value' }, step.value, element('small', {}, aside(step))),
      element('td', { class: 'remarks' }, [step.formula === undefined ? 'typed in' : 'computed before this', ...step.remarks.map(({ heading, text }) => `${heading ?? 'Remark'}: ${text}`)].join('. ')),
    ))),
    element('div', { class: 'equations' }, equations.map(equationPart), sought.formula === undefined ? undefined : element('p', { class: 'raw' }, sought.formula.raw)),
    (sought.formula?.reasons ?? []).map((reason) => element('p', { class: 'where' }, reason)),
    element(
      'table', { class: 'listing work' },
      element('caption', {}, element('h2', {}, 'Calculation')),
      element('thead', {}, element('tr', {}, ['', 'Step', 'By hand', ...(blind ? [] : ['By Lowside'])].map((text) => element('th', { scope: 'col', class: text === 'By Lowside' ? 'lowside' : undefined }, text)))),
      element('tbody', {}, lines.map(({ number, what, blind: hidden, how, value }) => element(
        'tr', {},
        element('td', { class: 'count' }, String(number)),
        element('td', {}, blind ? hidden : what, how === undefined ? undefined : element('small', {}, `\n= ${how}`)),
        element('td', { class: 'room' }),
        blind ? undefined : element('td', { class: 'value' }, value),
      ))),
    ),
    comparison(sought.value, blind),
    element('table', { class: 'facts' }, element('tbody', {}, signature('Computed by', ''))),
    element('p', { class: 'caution' }, STANDING_CAUTION),
  )
}

function equationPart({ name, gives, equation, symbols, sources }: HandEquation): readonly Child[] {
  return [
    element('p', {}, name === undefined ? undefined : element('b', {}, `${name} (${gives ?? ''}): `), equation),
    symbols.length === 0 ? undefined : element('p', { class: 'symbols' }, `Where ${symbols.map((symbol) => `${symbol.name}: ${symbol.words}`).join('; ')}.`),
    sources.length === 0 ? undefined : element('p', { class: 'symbols' }, sources.join('. ')),
  ]
}

const comparison = (value: string, blind: boolean): Html => listing('Comparison', 'compared', ['By hand', 'By Lowside', 'Difference', 'Difference, % of the value by Lowside'], [
  element('tr', {}, element('td', {}), element('td', { class: 'value' }, blind ? '' : value), element('td', {}), element('td', {})),
])

const valuesPage = ({ sought, lines }: HandSheet): Html => element(
  'section', { class: 'values' },
  element('p', { class: 'kicker' }, 'Hand calculation sheet: values by Lowside'),
  element('h1', {}, sought.label),
  element('p', { class: 'purpose' }, `Keep this page apart until the calculation is done. ${printCellPlace(sought.place)}`),
  listing('Values', 'of-lines', ['', 'Step', 'By Lowside'], [
    ...lines.map(({ number, what, value }) => element('tr', {}, element('td', { class: 'count' }, String(number)), element('td', {}, what), element('td', { class: 'value' }, value))),
    element('tr', {}, element('td', {}), element('td', {}, 'Result'), element('td', { class: 'value' }, sought.value)),
  ]),
)

/** The unit in which it is sought. */
function unitOf(value: string): string {
  const unit = /^-?[\d.]+(?:e-?\d+)? (\S+)$/.exec(value)?.[1]
  return unit === undefined ? '' : `, unit ${unit}`
}
