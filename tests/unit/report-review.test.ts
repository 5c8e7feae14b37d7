import { describe, expect, it } from 'vitest'
import { findingsInWords, findingsPart } from '../../src/report/review-part.ts'
import type { Finding } from '../../src/review/finding.ts'
import type { Reviewed } from '../../src/review/reviewed.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import type { AcceptedFinding } from '../../src/workbook/review-record.ts'
import { workbookOf } from './workbook-of.ts'

const workbook = workbookOf({ 'Duty': { B3: 40 }, 'Wet return': { B3: 40 } })

const area = (row: number, column = 1): Finding['area'] => ({ top: row, bottom: row, left: column, right: column })

const found = (change: Partial<Finding>): Finding => ({ kind: 'buried-numbers', severity: 'warning', sheet: 'Duty', area: area(2), key: '40', label: undefined, reason: 'It holds the number 40.', ...change })

const acceptance = (change: Partial<AcceptedFinding>): AcceptedFinding => ({ kind: 'buried-numbers', sheet: 'Duty', area: area(2), key: '40', note: 'It is exact', by: 'R. Ellis', at: '2026-02-03T10:11:12Z', ...change })

const reviewedOf = (findings: readonly Finding[], template?: string): Reviewed =>
  ({ findings, template, lookedFor: [{ kind: 'buried-numbers', heading: 'Numbers buried in formulas', about: '' }] })

/** Each row as its texts. */
const rows = (reviewed: Reviewed | undefined, of: Workbook = workbook): string[][] =>
  findingsPart(of, reviewed).flatMap(({ markup }) => markup.split('<tr>').slice(1).map((row) => [...row.matchAll(/<t[dh][^>]*>(?:<svg.*?<\/svg>)?([^<]*)<\/t[dh]>/g)].map(([, text = '']) => text)))

describe('how a review stands', () => {
  it('says that nobody looked where findings were not looked for', () => {
    expect(findingsInWords(undefined)).toBe('findings were not looked for')
    expect(findingsPart(workbook, undefined)).toEqual([])
  })

  it('counts what is open and what is accepted, and says what the workbook was laid beside', () => {
    const reviewed = reviewedOf([found({}), found({ severity: 'error' }), found({ severity: 'error' }), found({ accepted: acceptance({}) })], 'Pressure relief')
    expect(findingsInWords(reviewed)).toBe('2 errors, 1 warning open, 1 accepted; laid beside the template “Pressure relief”')
    expect(findingsInWords(reviewedOf([]))).toBe('none open; the workbook is like no template')
  })
})

describe('the findings of a report', () => {
  it('come the worst first, with places, labels and reasons', () => {
    expect(rows(reviewedOf([
      found({ severity: 'remark', reason: 'It is a remark.' }),
      found({ label: 'Load', area: { top: 2, bottom: 5, left: 1, right: 1 } }),
      found({ severity: 'error', sheet: 'Wet return', reason: '#N/A' }),
    ]))).toEqual([
      ['Severity', 'Cells', 'Finding'],
      ['error', '&#39;Wet return&#39;!B3', '#N/A'],
      ['warning', 'Duty!B3:B6', 'Load: It holds the number 40.'],
      ['remark', 'Duty!B3', 'It is a remark.'],
    ])
  })

  it('remarks of a kind share a line where they are many; errors and warnings never do', () => {
    const many = (severity: Finding['severity'], count: number): Finding[] => Array.from({ length: count }, (_, row) => found({ severity, area: area(row) }))
    const [, ...listed] = rows(reviewedOf([...many('warning', 5), ...many('remark', 14)]))
    expect(listed).toHaveLength(6)
    expect(listed[5]).toEqual(['remark', expect.stringMatching(/^Duty!B1, Duty!B2, .* and 2 more$/), 'Numbers buried in formulas: 14 places. It holds the number 40.'])
  })

  it('tell of those accepted with note, name and date, those accepted together on one line', () => {
    const withTemplate: AcceptedFinding = { kind: 'hidden-lines', sheet: 'Duty', area: area(8), key: 'x', note: 'Made so' }
    expect(rows(reviewedOf([
      found({ accepted: acceptance({}) }), found({ area: area(3), reason: 'Another.', accepted: acceptance({}) }), found({ area: area(8), kind: 'hidden-lines', label: 'Load', reason: 'It is hidden.', accepted: withTemplate }),
    ]))).toEqual([
      ['Cells', 'Finding', 'It may stand because', 'By'],
      ['Duty!B3, Duty!B4', 'Numbers buried in formulas: 2 places', 'It is exact', 'R. Ellis, 2026-02-03'],
      ['Duty!B9', 'Load: It is hidden.', 'Made so', 'with the template'],
    ])
  })

  it('tell of acceptances even where findings were not looked for', () => {
    const reviewed: Workbook = { ...workbook, review: { marks: [], record: [], accepted: [acceptance({})] } }
    expect(rows(undefined, reviewed).slice(1)).toEqual([['Duty!B3', 'Buried numbers', 'It is exact', 'R. Ellis, 2026-02-03']])
  })
})
