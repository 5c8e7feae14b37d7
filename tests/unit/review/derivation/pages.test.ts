import { describe, expect, it } from 'vitest'
import { STANDING_CAUTION } from '../../../../functions/cautions.ts'
import { derivationFile } from '../../../../src/review/derivation/derivation-report.ts'
import { handFile, handPages } from '../../../../src/review/derivation/hand-pages.ts'
import { handSheet } from '../../../../src/review/derivation/hand-sheet.ts'
import type { ReportSettings } from '../../../../src/workbook/report-settings.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { workbookOf } from '../../workbook-of.ts'
import { DRUM_BOOK } from './drum-book.ts'
import { deriveIn, placeAt, surveyOf } from './survey-of.ts'

const settings: ReportSettings = { preparedBy: 'A. Writer', checkedBy: '', paper: 'A4' }
const said = { settings, date: '2026-11-27' }

describe('the derivation report', () => {
  const html = derivationFile({ ...said, derivation: deriveIn(DRUM_BOOK, 'Duty!C13', 'Duty!C11') })

  it('has what it is of, who made it and room to sign, what is given, each step once, functions and cautions', () => {
    for (const part of ['Derivation of chosen results', '2 results', 'A. Writer', 'Checked by', 'Signature', 'Given', 'Functions', 'Cautions', STANDING_CAUTION]) expect(html).toContain(part)
    expect(html.match(/id="step-\d+"/g)).toHaveLength(9)
    expect(html).toContain('counter(page)')
    expect(html).toMatch(/size: A4 portrait/)
  })

  it('leads from the number of a step to that step', () => {
    expect(html).toContain('<a href="#step-6">[6]</a>')
  })

  it('lets no text of the workbook be more than text', () => {
    const book = workbookOf({ S: { A1: ['<img src=x onerror=alert(1)>', 'label'], B1: 2, A2: ['T', 'label'], B2: '=B1*2' } })
    const evil = derivationFile({ ...said, derivation: deriveIn({ ...book, title: '</style><script>' }, 'S!B2') })
    expect(evil).not.toMatch(/<script|<img/)
    expect(evil).toContain('&lt;img src=x')
  })

  it('has ranges row by row only where that is asked for', () => {
    const derivation = deriveIn(workbookOf({ S: { A1: 1, A2: 2, B1: '=SUM(A1:A2)' } }), 'S!B1')
    expect(derivationFile({ ...said, derivation })).not.toContain('class="rows"')
    expect(derivationFile({ ...said, derivation, unfold: true })).toContain('class="rows"')
  })
})

describe('the hand calculation sheet', () => {
  const sheet = handSheet(surveyOf(DRUM_BOOK), placeAt('Duty!C11'))

  it('has what is given, the equation with its words, and each step of the function with its value', () => {
    expect(sheet.given.map(({ label, value }) => [label, value])).toEqual([['Vapour flow', '0.059577 m3/s'], ['Velocity allowed', '0.84661 m/s']])
    expect(sheet.equations).toMatchObject([
      { name: undefined, equation: 'Least diameter = least inside diameter of a vertical drum for vapour flow (Vapour flow [A]), velocity (Velocity allowed [B])' },
      { name: 'DRUM.DIAMETER', equation: 'D = √(4 V / (π v))', symbols: [{ name: 'vapour flow' }, { name: 'velocity' }] },
    ])
    // D = √(4 · 0.059577 / (π · 0.84661)) = 0.29933 m by a pocket calculator; 11.78 in, domain notes section 2.5.
    expect(sheet.lines.map(({ what, how, value }) => [what, how, value])).toEqual([
      ['least inside diameter of a vertical drum for vapour flow 0.059577 m3/s, velocity 0.84661 m/s, in SI', '√(4 × vapour flow / (π × velocity))', '0.29933 m'],
      ['converted to in', undefined, '11.785 in'],
    ])
  })

  it('gives conversions, functions in functions with their steps, and the result, in the order of computing', () => {
    const ballast = handSheet(surveyOf(readTemplate('templates/vessel-sizing.lowside.json')), placeAt('Duty!C47'))
    expect(ballast.lines.map(({ what, blind, value }) => [what, blind === what ? '' : blind, value])).toEqual([
      ['23.508 lb/min, in kg/s', '', '0.17772 kg/s'],
      ['1 min, in s', '', '60 s'],
      ['temperature, in K', '', '266.48 K'],
      // 40.429 lb/ft3 at 20 °F (domain notes, section 1.4), which is 647.61 kg/m3.
      ['density of saturated liquid at 20 °F', '', '647.61 kg/m3'],
      ['0.17772 kg/s × 60 s / 647.61 kg/m3', '(line 1) × (line 2) / (line 4)', '0.016465 m3'],
      ['converted to ft3', '', '0.58147 ft3'],
    ])
  })

  it('tells of an iteration the last turn only, and no more than a dozen steps of a function', () => {
    const { lines } = handSheet(surveyOf(readTemplate('templates/vessel-sizing.lowside.json')), placeAt('Vertical drum!C14'))
    expect(lines.filter(({ what }) => /step \d+/.test(what))).toHaveLength(1)
    expect(lines.length).toBeLessThanOrEqual(14)
  })

  it('prints room for each step, the comparison, name, date and signature, and the caution', () => {
    const html = handFile({ ...said, sheets: [sheet] })
    for (const part of ['Hand calculation sheet', 'Sought: Least diameter, Duty!C11, unit in', 'By hand', 'By Lowside', 'Difference, %', 'Computed by', 'Signature', 'Date', STANDING_CAUTION]) expect(html).toContain(part)
    expect(html.match(/class="room"/g)).toHaveLength(2)
  })

  it('hides the values where the checker computes blind: they stand on a page after it', () => {
    const { markup: { markup } } = handPages({ ...said, sheets: [sheet], blind: true })
    const [first, second] = markup.split('<section class="values">')
    expect(first).not.toContain('11.785')
    expect(first).not.toContain('0.29933')
    expect(second).toContain('11.785 in')
    expect(second).toContain('0.29933 m')
    // What is given is given.
    expect(first).toContain('0.059577 m3/s')
  })

  it('refuses what is typed in, with what is accepted', () => {
    expect(() => handSheet(surveyOf(DRUM_BOOK), placeAt('Duty!C5'))).toThrow('Duty!C5 holds no formula: there is nothing to compute by hand; choose a result or a check')
  })
})
