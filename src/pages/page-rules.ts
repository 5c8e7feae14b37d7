import { STANDING_CAUTION } from '../../functions/cautions.ts'
import type { ReportSettings } from '../workbook/report-settings.ts'
import { SIDE_MARGIN, type Orientation } from './paper.ts'

interface Head {
  readonly title: string
  readonly date: string
  readonly settings: ReportSettings
}

interface PrintedSheet {
  readonly name: string
  readonly className: string
  readonly orientation: Orientation
}

/** What stands in the margins of the pages; each sheet has pages of its own, upright or turned, with its name in the head. */
export function pageRules({ title, date, settings: { preparedBy, checkedBy, paper } }: Head, sheets: readonly PrintedSheet[]): string {
  const size = paper === 'A4' ? 'A4' : 'letter'
  const people = [...named('Prepared by', preparedBy), ...named('Checked by', checkedBy), date].join(' · ')
  return [
    `@page {
      size: ${size} portrait;
      margin: 0.8in ${SIDE_MARGIN}px 0.75in;
      @top-left { content: ${cssString(title)}; ${MARGIN_TYPE} font-weight: 600; text-align: left; ${HEAD_LINE} }
      @top-right { content: ${cssString(people)}; ${MARGIN_TYPE} text-align: right; ${HEAD_LINE} }
      @bottom-left { content: ${cssString(STANDING_CAUTION)}; ${MARGIN_TYPE} text-align: left; ${FOOT_LINE} }
      @bottom-right { content: counter(page) " / " counter(pages); ${MARGIN_TYPE} width: 60px; text-align: right; ${FOOT_LINE} }
    }`,
    ...sheets.map(({ name, className, orientation }) => `
    @page ${className} { size: ${size} ${orientation}; @top-left { content: ${cssString(`${title}  –  ${name}`)}; } }`),
  ].join('\n')
}

const MARGIN_TYPE = "font: 6.8pt/1.35 system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', 'DejaVu Sans', sans-serif; color: #444; white-space: pre-wrap; font-variant-ligatures: none;"
const HEAD_LINE = 'vertical-align: bottom; padding-bottom: 3pt; margin-bottom: 11pt; border-bottom: 0.5pt solid #999;'
const FOOT_LINE = 'vertical-align: top; padding-top: 4pt; margin-top: 9pt; border-top: 0.5pt solid #999;'

const named = (what: string, name: string): string[] => (name.trim() === '' ? [] : [`${what} ${name.trim()}`])

/** A text as a string of a style sheet; everything that could end it, or the element around it, is written as its number. */
export const cssString = (text: string): string =>
  `"${[...text].map((character) => (/[\p{L}\p{N} .,;:()+–·’-]/u.test(character) ? character : `\\${(character.codePointAt(0) || 0xfffd).toString(16)} `)).join('')}"`
