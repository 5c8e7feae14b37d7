import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { readTemplate } from '../templates/open-template.ts'
import { packageProblems } from './package/package-problems.ts'
import { readZip } from './read-zip.ts'
import { workbookOf } from './workbook-of.ts'

const DATE = new Date('2025-03-04T05:06:07Z')
const TEMPLATES = readdirSync(fileURLToPath(new URL('../../templates', import.meta.url))).filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`)

const partsOf = async (workbook: Workbook): Promise<ReadonlyMap<string, string>> => readZip(await exportXlsx(workbook, new Graph(workbook).allValues(), { date: DATE }))

describe('the parts of an exported file are sound by ECMA-376', () => {
  it.each([...TEMPLATES, 'demo-data/tallowmere.lowside.json'])('%s', { timeout: 300_000 }, async (path) => {
    expect(packageProblems(await partsOf(readTemplate(path)))).toEqual([])
  })

  // Numbers and words are invented.
  const odd: Workbook = {
    ...workbookOf(
      {
        "It's <&> \"quoted\"": { A1: ['a\u0000b\u001f_x0041_ \ud800', 'text'], A2: [' edge ', 'input'], A3: ['line\r\nline\ttab', 'note'], A4: ['x'.repeat(32_000), 'text'], B1: '="<&>"&A1', B2: ['=1<2', 'check'], B3: ['=1/0', 'result'] },
        'Ein längerer Name, 31 Zeichen..': { A1: 1, AZ1: ['far', 'text'], A1048: 2, B2: '=SUM(A1:A2*2)' },
        'Empty': {},
      },
      { 'süd_1': "'It''s <&> \"quoted\"'!$A$1", 'odd.name': '1+1' },
    ),
    title: `12 & <drums> ${'long '.repeat(100)}`,
    purpose: 'a\u0001 <b> & "c"',
  }

  it('whatever the workbook holds', async () => {
    expect(packageProblems(await partsOf(odd))).toEqual([])
  })
})

describe('what is not sound is found', async () => {
  const workbook = workbookOf({ Duty: { A1: [31, 'input'], B1: ['°F', 'unit'], C1: '=SAT.PRESSURE(A1:B1,"psia")', C2: '=SAT.PRESSURE("5 °F","psia")', D1: ['=A1<40', 'check'] } }, { drum: 'Duty!$A$1' })
  const parts = await partsOf({ ...workbook, sheets: workbook.sheets.map((sheet) => ({ ...sheet, frozen: [1, 1] as const, rows: sheet.rows.map((row) => row?.map((cell) => cell && { ...cell, note: 'why' })) })) })

  it('nothing before', () => expect(packageProblems(parts)).toEqual([]))

  it.each<[string, string, string | RegExp, string]>([
    ['an element that is not closed', 'xl/workbook.xml', '</sheets>', ''],
    ['a sign that XML has not', 'xl/worksheets/sheet2.xml', '°F', '\u0001'],
    ['a part without kind', '[Content_Types].xml', 'Extension="vml"', 'Extension="vm"'],
    ['a part that is not there', '_rels/.rels', 'docProps/app.xml', 'docProps/none.xml'],
    ['elements in another order', 'xl/worksheets/sheet2.xml', /(<sheetViews>.*<\/sheetViews>)(<sheetFormatPr [^>]*>)/, '$2$1'],
    ['an attribute of no schema', 'xl/worksheets/sheet2.xml', '<c r="A1"', '<c q="1" r="A1"'],
    ['rows in another order', 'xl/worksheets/sheet2.xml', '<row r="2"', '<row r="1"'],
    ['a cell twice', 'xl/worksheets/sheet2.xml', 'r="B1"', 'r="A1"'],
    ['a cell format that is not there', 'xl/worksheets/sheet2.xml', /(<c r="A1" s=)"\d+"/, '$1"999"'],
    ['a truth value of another spelling', 'xl/worksheets/sheet2.xml', '<v>1</v>', '<v>TRUE</v>'],
    ['a number that is none', 'xl/worksheets/sheet2.xml', '<v>31</v>', '<v>NaN</v>'],
    ['a shared formula without its first cell', 'xl/worksheets/sheet3.xml', /<f t="shared" ref="[^"]*" si="4">/, '<f>'],
    ['a conditional format without look', 'xl/worksheets/sheet2.xml', 'dxfId="0"', 'dxfId="7"'],
    ['a view split elsewhere', 'xl/worksheets/sheet2.xml', 'topLeftCell="B2"', 'topLeftCell="C2"'],
    ['a count that is wrong', 'xl/styles.xml', /<fonts count="\d+"/, '<fonts count="99"'],
    ['a font that is not there', 'xl/styles.xml', /fontId="1"/, 'fontId="98"'],
    ['a sheet name that is too long', 'xl/workbook.xml', 'name="Duty"', `name="${'Duty'.repeat(8)}"`],
    ['two sheets of one name', 'xl/workbook.xml', 'name="Duty"', 'name="cover"'],
    ['a name that reads as a cell', 'xl/workbook.xml', 'name="drum"', 'name="AB12"'],
    ['a note whose box is elsewhere', 'xl/drawings/vmlDrawing2.vml', '<x:Row>0</x:Row>', '<x:Row>7</x:Row>'],
    ['a note twice', 'xl/comments2.xml', 'ref="B1"', 'ref="A1"'],
  ])('%s', (_, name, from, to) => {
    const text = parts.get(name) ?? expect.fail(`there is no part ${name}`)
    const damaged = text.replace(from, to)
    expect(damaged).not.toBe(text)
    expect(packageProblems(new Map([...parts, [name, damaged]])).length).toBeGreaterThan(0)
  })
})
