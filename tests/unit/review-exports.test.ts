import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { read, utils } from 'xlsx'
import { Graph } from '../../src/calc/graph.ts'
import { csvFiles } from '../../src/exchange/csv.ts'
import { exportOds } from '../../src/exchange/ods.ts'
import { readFileContents } from '../../src/exchange/reading/read-file.ts'
import { ownWorkbook } from '../../src/exchange/return/own-workbook.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { reportFile } from '../../src/report/report-file.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../src/workbook/edits.ts'
import { acceptFinding, markChecked, withdrawMark } from '../../src/workbook/review/review-commands.ts'
import { changesIn, contentsOfExport, takenOver, typed } from './return/edited-contents.ts'
import { at, workbookOf } from './workbook-of.ts'
import { markStates } from '../../src/workbook/review/mark-states.ts'

const DATE = new Date('2026-03-04T05:06:07Z')
const AT = '2026-03-02T14:05:00Z'

/** Numbers of this workbook are invented. */
const start = workbookOf({ Duty: { A5: ['Load', 'label'], B5: 42, C5: ['TR', 'unit'], A6: ['Margin', 'label'], B6: 1.1, A7: ['Design load', 'label'], B7: '=B5*B6', C7: ['TR', 'unit'] } })
const mark = (address: string, note: string) => (workbook: Workbook): Edit[] => {
  const { row, column } = at(address)
  const graph = new Graph(workbook)
  return markChecked(workbook, { sheet: 'Duty', area: { top: row, bottom: row, left: column, right: column }, by: 'R. Smith', at: AT, method: 'by hand', note }, (place) => {
    const value = graph.value(place.sheet, place.row, place.column)
    return typeof value === 'object' && value !== null ? value.error : value
  })
}
const workbook = [
  mark('B6', 'margin as agreed'), mark('B7', 'against the load list'), mark('B5', 'too early'), (one: Workbook) => withdrawMark(one, '3', { by: 'A. Jones', at: AT, why: 'no list yet' }),
  (one: Workbook) => acceptFinding(one, { kind: 'buried-numbers', sheet: 'Duty', area: { top: 6, bottom: 6, left: 1, right: 1 }, key: '1.1' }, 'usual here', 'A. Jones', AT),
  (one: Workbook) => setEntry(one, 'Duty', at('B5'), '48'),
].reduce((current, make) => applyEdits(current, make(current)).workbook, start)
const graph = new Graph(workbook)
const values = graph.allValues()
const lastHash = workbook.review?.record.at(-1)?.hash ?? ''

describe('a reviewed workbook in a spreadsheet file', () => {
  it.each([['xlsx', exportXlsx], ['ods', exportOds]] as const)('lists marks with their state, accepted findings and the record on the cover: %s', async (_format, write) => {
    const { Sheets, SheetNames } = read(await write(workbook, values, { date: DATE }))
    const cover = Sheets[SheetNames[0] ?? '']
    const rows = (cover ? utils.sheet_to_json<(string | null)[]>(cover, { header: 1, defval: null }) : []).map((row) => row.map((text) => String(text ?? '')))
    const row = (first: string) => rows.find(([text]) => text === first)
    expect(row('Checked')?.[1]).toBe('2 check marks: 1 good, 1 stale')
    expect(row('Duty!B6')?.slice(0, 3)).toEqual(['Duty!B6', 'R. Smith, 2026-03-02, by hand: margin as agreed', 'good at export'])
    expect(rows.filter(([text]) => text === 'Duty!B7').map((one) => one.slice(0, 4))).toEqual([
      ['Duty!B7', 'R. Smith, 2026-03-02, by hand: against the load list', 'stale at export', 'Load (Duty!B5) was 42 TR, is 48 TR'], ['Duty!B7', 'buried-numbers', 'A. Jones, 2026-03-02', 'usual here'],
    ])
    expect(row(`4  ${AT}`)?.slice(0, 5)).toEqual([`4  ${AT}`, 'mark withdrawn 3, Duty!B5', 'A. Jones', 'no list yet', workbook.review?.record[3]?.hash])
    expect(row('The record')?.[1]).toBe('All 5 lines fit.')
    expect(row('Last hash')?.[1]).toBe(lastHash)
  })

  it.each([['xlsx', exportXlsx], ['ods', exportOds]] as const)('comes back with it: %s', async (format, write) => {
    const contents = await readFileContents(await write(workbook, values, { date: DATE }), `a.${format}`)
    if ('problem' in contents) throw new Error(contents.problem)
    const own = await ownWorkbook(contents)
    expect(own && 'workbook' in own ? own.workbook.review : own).toEqual(workbook.review)
  })

  it('goes stale by what another program changed in it, once that is taken over', async () => {
    const contents = await contentsOfExport(workbook)
    expect(await changesIn(contents)).toEqual([])
    const back = await takenOver(typed(contents, 'Duty', 'B6', 1.2), 'inputs')
    expect(markStates(back).map(({ isGood, changes }) => [isGood, changes.map(({ words }) => words)])).toEqual([
      [false, ['Margin (Duty!B6) was 1.1, is 1.2']], [false, ['Load (Duty!B5) was 42 TR, is 48 TR', 'Margin (Duty!B6) was 1.1, is 1.2']],
    ])
  })

  it('says nothing of reviews where there was none', async () => {
    const { Sheets, SheetNames } = read(await exportXlsx(start, new Graph(start).allValues(), { date: DATE }))
    expect(JSON.stringify(Sheets[SheetNames[0] ?? ''])).not.toMatch(/Check marks|Record of the review|Last hash|"Checked"/)
  })
})

it('the description of values as text tells of marks and record in sentences', () => {
  const readme = [...(csvFiles(workbook, values, { date: DATE }).find(({ name }) => name === 'README.txt')?.text ?? [])].join('').replaceAll('\r\n', '\n').replaceAll(/\n {2}/g, ' ')
  expect(readme).toContain('REVIEW\n\n- 2 check marks: 1 good, 1 stale.\n- Duty!B6: good, checked by R. Smith, 2026-03-02, by hand: margin as agreed.\n')
  expect(readme).toContain('- Duty!B7: stale, checked by R. Smith, 2026-03-02, by hand: against the load list; changed since: Load (Duty!B5) was 42 TR, is 48 TR.\n- 1 accepted finding;')
  expect(readme).toContain(`- Record of the review: All 5 lines fit. Last hash ${lastHash}.`)
})

describe('a reviewed workbook in the printed report', () => {
  const figureStyle = readFileSync(new URL('../../src/figures/figures.css', import.meta.url), 'utf8')
  const html = (of: Workbook): string => {
    const calculated = new Graph(of)
    return reportFile({ workbook: of, values: calculated.allAreas(), states: calculated.states(), date: DATE, figureStyle })
  }
  const text = html(workbook)

  it('has the marks at its cells, by shape', () => {
    expect(text).toMatch(/<td class="role-input number checked"><span>1\.1/)
    expect(text).toMatch(/<td class="role-result number checked-stale">52\.8/)
    expect(text).toMatch(/<td class="role-input number"><span>48/)
  })

  it('lists them with their state, and the record with its last hash', () => {
    const words = text.replaceAll(/<svg.*?<\/svg>/g, '').replaceAll(/<[^>]*>/g, '|').replaceAll(/\|+/g, '|')
    expect(words).toContain('|Checked|2 check marks: 1 good, 1 stale|')
    expect(words).toContain('|good|Duty!B6|R. Smith, 2026-03-02, by hand: margin as agreed|')
    expect(words).toContain('|stale|Duty!B7|R. Smith, 2026-03-02, by hand: against the load list|Load (Duty!B5) was 42 TR, is 48 TR|')
    expect(words).toContain(`|4|mark withdrawn 3|Duty!B5|A. Jones, 2026-03-02 14:05|no list yet|${workbook.review?.record[3]?.hash.slice(0, 16)}|`)
    expect(words).toContain(`|Last hash (SHA-256): |${lastHash}|`)
  })

  it('says where the record does not fit', () => {
    const record = workbook.review?.record.map((entry, index) => (index === 2 ? { ...entry, by: 'Someone' } : entry)) ?? []
    const broken = html({ ...workbook, review: { marks: [], accepted: [], ...workbook.review, record } })
    expect(broken).toContain(`Line 3 of the record (marked, Duty!B5, ${AT}) does not fit`)
    expect(broken).toContain('<td class="hash">does not fit</td>')
  })

  it('has nothing of the kind where nobody has reviewed anything', () => {
    expect(html(start)).not.toMatch(/<caption><h2>(Check marks|Record of the review)|class="[^"]*checked/)
  })
})
