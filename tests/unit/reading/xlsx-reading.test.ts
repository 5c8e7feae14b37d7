import { describe, expect, it } from 'vitest'
import { utils, write } from 'xlsx'
import { exportXlsx } from '../../../src/exchange/xlsx.ts'
import { Graph } from '../../../src/calc/graph.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { buildXlsx, rowsXml, xlsxParts } from './build-xlsx.ts'
import { buildZip } from './build-zip.ts'
import { cell, contents, problem, values, words } from './reading.ts'

const sheet = (rows: string, more: Partial<Parameters<typeof buildXlsx>[0]> = {}, before = '', after = ''): Uint8Array =>
  buildXlsx({ sheets: [['Duty', before + rowsXml(rows) + after]], ...more })

describe('values of cells (ECMA-376, part 1, 18.18.11)', () => {
  it('numbers, texts of three kinds, booleans, errors, dates', async () => {
    const read = await contents(sheet(
      '<row r="1"><c r="A1"><v>1.5</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="inlineStr"><is><t>in line</t></is></c><c r="D1" t="str"><f>A1&amp;""</f><v>1.5</v></c><c r="E1" t="b"><v>1</v></c><c r="F1" t="e"><v>#N/A</v></c><c r="G1" t="d"><v>2026-11-27</v></c><c r="H1" s="1"/></row>',
      { texts: '<si><t>first</t></si><si><r><rPr><b/></rPr><t>two</t></r><r><t xml:space="preserve"> runs</t></r><rPh sb="0" eb="1"><t>read aloud</t></rPh></si>' },
    ))
    // 2026-11-27 is day 46 353 from 1899-12-30: 126 years of 365 days with 31 leap days to 2026-01-01 (46 023), and 330 days.
    expect(values(read)).toEqual([[1.5, 'two runs', 'in line', '1.5', true, { error: '#N/A' }, 46_353]])
    expect(cell(read, 'D1')?.formula).toBe('A1&""')
  })

  it('cells without addresses follow one another', async () => {
    expect(values(await contents(sheet('<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>')))).toEqual([[1, 2], [3]])
  })

  it('characters by their numbers (22.9.2.19)', async () => {
    expect(values(await contents(sheet('<row><c t="str"><v>a_x000A_b _x005F_x000A_</v></c></row>')))).toEqual([['a\nb _x000A_']])
  })

  it('elements with a prefix, CDATA, comments and signs in UTF-16', async () => {
    const [first, ...rest] = xlsxParts({ sheets: [['Duty', '']] }).filter(({ name }) => !name.includes('sheet1'))
    const xml = '\ufeff<?xml version="1.0" encoding="UTF-16"?><x:worksheet xmlns:x="urn:x"><x:sheetData><!-- a > b --><x:row><x:c t="str"><x:v><![CDATA[a<b & °F]]></x:v></x:c></x:row></x:sheetData></x:worksheet>'
    const read = await contents(buildZip([...(first ? [first] : []), ...rest, { name: 'xl/worksheets/sheet1.xml', data: new Uint8Array(Buffer.from(xml, 'utf16le')) }]))
    expect(values(read)).toEqual([['a<b & °F']])
  })

  it('a number that is none is kept as text, a text that is missing is said', async () => {
    const read = await contents(sheet('<row><c><v>1e999</v></c><c t="s"><v>7</v></c></row>'))
    expect(values(read)).toEqual([['1e999', null]].map((row) => row.slice(0, 1)))
    expect(words(read)).toContain('Duty!B1: The text of this cell is not in the file; the cell is empty.')
  })

  it('days counted from 1904 show the same day: 1904-01-01 is 1462 days after 1899-12-30 (18.17.4.1)', async () => {
    const read = await contents(sheet('<row><c s="1"><v>0</v></c><c><v>0</v></c></row>', { styles: '<cellXfs><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs>', book: '<workbookPr date1904="1"/>' }))
    expect(values(read)).toEqual([[1462, 0]])
  })
})

describe('formulas', () => {
  it('a shared formula moves its relative references and keeps the others (18.3.1.40)', async () => {
    const read = await contents(sheet(
      '<row r="2"><c r="C2"><f t="shared" ref="C2:D4" si="0">A2*$B$1+B$1+$A2+Loads!A2+SUM(A$1:A2)&amp;"A2"</f><v>1</v></c><c r="D2"><f t="shared" si="0"/><v>2</v></c></row><row r="4"><c r="C4"><f t="shared" si="0"/><v>3</v></c></row>',
    ))
    expect(cell(read, 'C2')?.formula).toBe('A2*$B$1+B$1+$A2+Loads!A2+SUM(A$1:A2)&"A2"')
    expect(cell(read, 'D2')?.formula).toBe('B2*$B$1+C$1+$A2+Loads!B2+SUM(B$1:B2)&"A2"')
    expect(cell(read, 'C4')).toEqual({ value: 3, formula: 'A4*$B$1+B$1+$A4+Loads!A4+SUM(A$1:A4)&"A2"' })
  })

  it('one that shares what the file does not have keeps its value, and says so', async () => {
    const read = await contents(sheet('<row><c r="A1"><f t="shared" si="3"/><v>5</v></c></row>'))
    expect(cell(read, 'A1')).toEqual({ value: 5 })
    expect(words(read)).toContain('shares the formula of another cell that is not in the file')
  })

  it('an array formula is kept with a remark, a table of trials as its value', async () => {
    const read = await contents(sheet('<row><c r="A1"><f t="array" ref="A1:A2">_xlfn.SEQUENCE(2)</f><v>1</v></c><c r="B1"><f t="dataTable" ref="B1" r1="A1"/><v>9</v></c></row><row><c r="A2"><v>2</v></c></row>'))
    expect(cell(read, 'A1')).toEqual({ value: 1, formula: 'SEQUENCE(2)' })
    expect([cell(read, 'A2'), cell(read, 'B1')]).toEqual([{ value: 2 }, { value: 9 }])
    expect(words(read)).toContain('Duty!A1: The formula is an array formula')
    expect(words(read)).toContain('Duty!B1: The cell is computed by a table of trials')
  })
})

it('number formats: built in by number (18.8.30), and the file\'s own; General is none', async () => {
  const read = await contents(sheet('<row><c s="0"><v>1</v></c><c s="1"><v>1</v></c><c s="2"><v>1</v></c><c s="3"><v>1</v></c><c s="9"><v>1</v></c></row>', {
    styles: '<numFmts count="1"><numFmt numFmtId="164" formatCode="0.0&quot; kW&quot;"/></numFmts><cellStyleXfs><xf numFmtId="9"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="4"/><xf numFmtId="164"/><xf numFmtId="22"/></cellXfs>',
  }))
  expect(read.sheets[0]?.rows[0]?.map((one) => one?.format)).toEqual([undefined, '#,##0.00', '0.0" kW"', 'm/d/yy h:mm', undefined])
})

it('notes, widths in digits of 7 px (18.3.1.13), a hidden column, rows and columns in view, merged cells', async () => {
  const read = await contents(sheet('<row r="1"><c r="A1"><v>1</v></c><c r="C1"><v>3</v></c></row>', { notes: '<comment ref="A1"><text><r><t>As </t></r><r><t>built</t></r></text></comment><comment ref="B2"><text><t>Empty cell</t></text></comment>' },
    '<sheetViews><sheetView><pane xSplit="1" ySplit="2" state="frozen"/></sheetView></sheetViews><cols><col min="1" max="1" width="20"/><col min="2" max="2" width="10" hidden="1"/><col min="5" max="16384" width="3"/></cols>', '<mergeCells><mergeCell ref="A3:B4"/></mergeCells>'))
  expect(cell(read, 'A1')).toEqual({ value: 1, note: 'As built' })
  expect(cell(read, 'B2')).toEqual({ value: null, note: 'Empty cell' })
  expect(read.sheets[0]?.widthsPx.slice(0, 3)).toEqual([140, 0, 64])
  expect(read.sheets[0]?.widthsPx.length).toBeLessThan(20)
  expect(read.sheets[0]?.frozen).toEqual([2, 1])
  expect(words(read)).toContain('Duty: One range of merged cells is taken apart')
})

it('hidden rows that hold something (18.3.1.73): the first, and how many', async () => {
  const read = await contents(sheet('<row r="1"><c r="A1"><v>1</v></c></row><row r="3" hidden="1"><c r="A3"><v>2</v></c></row><row r="4" hidden="1"/><row r="7" hidden="1"><c r="A7"><v>3</v></c></row>'))
  expect(read.sheets[0]?.hiddenRows).toEqual({ first: 2, count: 2 })
})

it('defined names: of the file, of one sheet, of printing; a sheet that is a chart', async () => {
  const parts = xlsxParts({
    sheets: [['Duty', ''], ['Picture', '']],
    book: '<definedNames><definedName name="Rate">Duty!$C$5</definedName><definedName name="Loss" localSheetId="0">Duty!$C$6</definedName><definedName name="Rate" localSheetId="0">Duty!$C$7</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Duty!$A$1</definedName></definedNames>',
  }).map((part) => ({ ...part, data: String(part.data).replace('relationships/worksheet" Target="worksheets/sheet2.xml"', 'relationships/chartsheet" Target="chartsheets/sheet2.xml"') }))
  const read = await contents(buildZip(parts))
  expect([...read.names]).toEqual([['Rate', 'Duty!$C$5'], ['Loss', 'Duty!$C$6']])
  expect(read.sheets.map(({ name }) => name)).toEqual(['Duty'])
  expect(words(read)).toContain('Picture: The sheet is a chart; it is left out.')
  expect(words(read)).toContain('Duty: The name “Loss” held on this sheet only; it holds everywhere now.')
  expect(words(read)).toContain('Duty: The name “Rate” stands for something else on this sheet (Duty!$C$7); it is left out.')
})

it('a file that the library for spreadsheet files wrote', async () => {
  const book = utils.book_new()
  const written = utils.aoa_to_sheet([['Tag', 'Duty'], ['V-101', 12.5], ['V-102', true]])
  written['C2'] = { t: 'n', v: 25, f: 'B2*2', z: '0.00' }
  written['!ref'] = 'A1:C3'
  utils.book_append_sheet(book, written, 'Loads & "more"')
  utils.book_append_sheet(book, utils.aoa_to_sheet([['x']]), 'Kept')
  book.Workbook = { Sheets: [{ Hidden: 0 }, { Hidden: 2 }], Names: [{ Name: 'Rate', Ref: "'Loads & \"more\"'!$B$2" }] }
  const read = await contents(new Uint8Array(write(book, { type: 'buffer', bookType: 'xlsx', compression: true }) as Buffer))
  expect(values(read)).toEqual([['Tag', 'Duty'], ['V-101', 12.5, 25], ['V-102', true]])
  expect(cell(read, 'C2')).toEqual({ value: 25, formula: 'B2*2', format: '0.00' })
  expect(read.sheets.map(({ name, hidden }) => [name, hidden])).toEqual([['Loads & "more"', false], ['Kept', true]])
  expect([...read.names]).toEqual([['Rate', "'Loads & \"more\"'!$B$2"]])
})

it('a file of our own: every number, text and formula of the template\'s sheets as written', async () => {
  const workbook = readTemplate('templates/vessel-sizing.lowside.json')
  const computed = new Graph(workbook).allValues()
  const shares: (number | undefined)[] = []
  const read = await contents(await exportXlsx(workbook, computed, { date: new Date(0) }), 'vessel.xlsx', { report: (share) => shares.push(share) })
  for (const { name, rows } of workbook.sheets) {
    const found = read.sheets.find((one) => one.name === name)
    for (const [row, cells] of rows.entries()) {
      for (const [column, one] of (cells ?? []).entries()) {
        if (one === undefined || one.content === '' || one.content === null) continue
        const value = computed.get(name)?.[row]?.[column]
        const got = found?.rows[row]?.[column]
        if (typeof value === 'number' || typeof value === 'boolean') expect(got?.value, `${name} ${row} ${column}`).toBe(value)
        if (typeof value === 'string' && value !== '') expect(got?.value, `${name} ${row} ${column}`).toBe(value)
        if (typeof one.content === 'string' && one.content.startsWith('=') && !one.content.includes('.')) expect(got?.formula).toBe(one.content.slice(1))
      }
    }
  }
  expect(read.remarks.filter(({ place }) => place !== 'Cover')).toEqual([])
  expect(shares.at(-1)).toBeCloseTo(1, 1)
  expect(shares.every((share, index) => index === 0 || (share ?? 0) >= (shares[index - 1] ?? 0))).toBe(true)
})

it.each([
  ['spreadsheet in binary form', 'xl/workbook.bin', /spreadsheet in binary form, which is not read. Save it as .xlsx or .ods/],
  ['text document', 'word/document.xml', /a text document, not a spreadsheet/],
  ['presentation', 'ppt/presentation.xml', /a presentation, not a spreadsheet/],
])('a %s in a package says what it is', async (_, main, says) => {
  const parts = xlsxParts({ sheets: [['Duty', '']] }).map((part) => (part.name === '_rels/.rels' ? { ...part, data: String(part.data).replace('xl/workbook.xml', main) } : part))
  expect(await problem(buildZip([...parts, { name: main, data: '<x/>' }]))).toMatch(says)
})

it('a package of something else', async () => expect(await problem(buildZip([{ name: 'readme.txt', data: 'x' }]))).toMatch(/it has no part for the workbook/))
