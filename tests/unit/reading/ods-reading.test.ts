import { describe, expect, it } from 'vitest'
import { utils, write } from 'xlsx'
import { fromOpenFormula } from '../../../src/exchange/reading/open-formula.ts'
import { buildOds, odsParts, tableXml } from './build-ods.ts'
import { buildZip } from './build-zip.ts'
import { cell, contents, problem, values, words } from './reading.ts'

const row = (cells: string, more = ''): string => `<table:table-row ${more}>${cells}</table:table-row>`
const float = (value: string, more = ''): string => `<table:table-cell office:value-type="float" office:value="${value}" ${more}/>`

describe('OpenFormula in A1 form (OpenDocument 1.3, part 4)', () => {
  it.each([
    // 5.8: references in brackets, with the sheet where it is another one.
    ['of:=SUM([.A1:.B2];[.$C$3])', 'SUM(A1:B2,$C$3)'],
    ["of:=[$Loads.B2]*[$'My sheet'.$C$3]+['It''s'.A1:.B2]", "Loads!B2*'My sheet'!$C$3+'It''s'!A1:B2"],
    ['of:=SUM([Loads.A1:Loads.B2])', 'SUM(Loads!A1:B2)'],
    ['of:=SUM([.A:.C])+SUM([.$1:.$3])', 'SUM(A:C)+SUM($1:$3)'],
    ['of:=SUM([First.A1:Last.B2])', 'SUM(First:Last!A1:B2)'],
    ['of:=[.#REF!]+[#REF!]', '#REF!+#REF!'],
    ["of:=['file:///C:/other.ods'#$Sheet1.A1]", "'file:///C:/other.ods'#Sheet1!A1"],
    // 5.13: arrays, columns divided by ";" and rows by "|".
    ['of:=SUM({1;2|3;4})', 'SUM({1,2;3,4})'],
    // 5.4: texts stay as they are.
    ['of:=IF([.A1]="a;b[.C1]""|";"x";"")', 'IF(A1="a;b[.C1]""|","x","")'],
    // 6.4.12 and 6.4.13: union and intersection.
    ['of:=SUM([.A1:.B2]~[.C1])', 'SUM(A1:B2,C1)'],
    ['of:=SUM([.A1:.B2]![.B1:.C2])', 'SUM(A1:B2 B1:C2)'],
    ['oooc:=SUM([.A1];[.B1])', 'SUM(A1,B1)'],
    ['=SUM([.A1];2)', 'SUM(A1,2)'],
    ['xyz:=SUM(A1,B1)', 'SUM(A1,B1)'],
    ['of:=2*ORG.EXAMPLE.CONVERTED([.A1])', '2*CONVERTED(A1)'],
  ])('%s', (open, a1) => expect(fromOpenFormula(open)).toBe(a1))

  it.each(['of:=SUM([.A1', 'of:="open', "of:=['x.A1]", 'of:=[nonsense]'])('%s cannot be taken apart', (open) => expect(fromOpenFormula(open)).toBeUndefined())
})

it('values by their types (part 3, 19.385), dates as days from 1899-12-30, times as parts of a day', async () => {
  const text = (type: string, attributes: string, shown: string): string => `<table:table-cell office:value-type="${type}" ${attributes}><text:p>${shown}</text:p></table:table-cell>`
  const read = await contents(buildOds(tableXml(row(
    text('float', 'office:value="1.5"', '1,50') + text('percentage', 'office:value="0.05"', '5 %') + text('currency', 'office:value="12" office:currency="EUR"', '12 €') + text('date', 'office:date-value="2026-11-27T12:00:00"', '27.11.26') +
    text('time', 'office:time-value="PT06H00M00S"', '06:00') + text('boolean', 'office:boolean-value="false"', 'FALSCH') + text('string', '', 'a<text:s text:c="2"/>b<text:tab/>c<text:line-break/>d <text:span>bold</text:span></text:p><text:p>second') +
    text('string', 'calcext:value-type="error" office:string-value=""', '#DIV/0!') + '<table:table-cell/>',
  ))))
  expect(values(read)).toEqual([[1.5, 0.05, 12, 46_353.5, 0.25, false, 'a  b\tc\nd bold\nsecond', { error: '#DIV/0!' }]])
})

it('repeated cells and rows, covered cells, hidden sheets and columns, widths at 96 px an inch, number formats, notes', async () => {
  const styles = '<number:number-style style:name="N1"><number:number number:decimal-places="2" number:min-decimal-places="2" number:min-integer-digits="1" number:grouping="true"/><number:text> kW</number:text></number:number-style>' +
    '<number:date-style style:name="N2"><number:year number:style="long"/><number:text>-</number:text><number:month number:style="long"/><number:text>-</number:text><number:day number:style="long"/></number:date-style>' +
    '<style:style style:name="ce1" style:family="table-cell" style:data-style-name="N1"/><style:style style:name="ce2" style:family="table-cell" style:parent-style-name="ce1"/><style:style style:name="ce3" style:family="table-cell" style:data-style-name="N2"/>' +
    '<style:style style:name="co1" style:family="table-column"><style:table-column-properties style:column-width="2.54cm"/></style:style><style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style>'
  const read = await contents(buildOds(
    tableXml(
      '<table:table-column table:style-name="co1" table:number-columns-repeated="2"/><table:table-column table:visibility="collapse"/>' +
      row(float('1', 'table:style-name="ce1" table:number-columns-repeated="2"') + float('2', 'table:style-name="ce2"'), 'table:number-rows-repeated="2"') +
      row('<table:table-cell table:number-columns-spanned="2" office:value-type="string"><text:p>wide</text:p><office:annotation><dc:creator xmlns:dc="x">Someone</dc:creator><text:p>Why</text:p><text:p>so</text:p></office:annotation></table:table-cell><table:covered-table-cell/>' + float('45000', 'table:style-name="ce3"'))) +
    '<table:table table:name="Kept" table:style-name="ta2"/>', styles))
  expect(values(read)).toEqual([[1, 1, 2], [1, 1, 2], ['wide', null, 45_000]])
  expect(read.sheets[0]?.rows[0]?.map((one) => one?.format)).toEqual(['#,##0.00" kW"', '#,##0.00" kW"', '#,##0.00" kW"'])
  expect(cell(read, 'C3')?.format).toBe('yyyy-mm-dd')
  expect(cell(read, 'A3')?.note).toBe('Why\nso')
  expect(read.sheets[0]?.widthsPx).toEqual([96, 96, 0])
  expect(read.sheets.map(({ hidden }) => hidden)).toEqual([false, true])
  expect(words(read)).toContain('Sheet: One range of merged cells is taken apart')
})

it('hidden rows that hold something (table:visibility), by hand or by a filter', async () => {
  const read = await contents(buildOds(tableXml(row(float('1', '')) + row(float('2', ''), 'table:visibility="collapse" table:number-rows-repeated="2"') + row('<table:table-cell/>', 'table:visibility="collapse"') + row(float('3', ''), 'table:visibility="filter"'))))
  expect(read.sheets[0]?.hiddenRows).toEqual({ first: 1, count: 3 })
})

it('defined names of ranges and of expressions', async () => {
  const read = await contents(buildOds(`${tableXml('')}<table:named-expressions><table:named-range table:name="Rate" table:cell-range-address="$Sheet.$A$1:.$B$2" table:base-cell-address="$Sheet.$A$1"/><table:named-expression table:name="Twice" table:expression="of:=2*[$Sheet.$A$1]"/></table:named-expressions>`))
  expect([...read.names]).toEqual([['Rate', 'Sheet!$A$1:$B$2'], ['Twice', '2*Sheet!$A$1']])
})

it('a formula in an unknown form keeps its value; links, changes and drawings are left out', async () => {
  const read = await contents(buildOds(
    '<table:tracked-changes><table:deletion><table:table-cell office:value-type="float" office:value="99"/></table:deletion></table:tracked-changes>' +
    tableXml(row(float('4', 'table:formula="of:=SUM([.A1"') + '<table:table-cell><draw:frame><draw:text-box><text:p>box</text:p></draw:text-box></draw:frame></table:table-cell>')) +
    `<table:table table:name="'file:///other.ods'#Sheet1">${row(float('5'))}</table:table><table:dde-links><table:dde-link><table:table>${row(float('6'))}</table:table></table:dde-link></table:dde-links>`,
  ))
  expect(values(read)).toEqual([[4]])
  expect(read.sheets.length).toBe(1)
  for (const said of ['The formula is in a form that is not known', 'What the file keeps of another file', 'links to other programs', 'The list of changes', 'Charts, pictures and drawings']) expect(words(read)).toContain(said)
})

it('rows and columns that stay in view, from the views that the file keeps', async () => {
  const item = (name: string, value: string): string => `<config:config-item config:name="${name}">${value}</config:config-item>`
  const settings = `<office:document-settings xmlns:office="o" xmlns:config="c"><config:config-item-map-named><config:config-item-map-entry config:name="Sheet">${item('HorizontalSplitMode', '2')}${item('VerticalSplitMode', '2')}${item('HorizontalSplitPosition', '1')}${item('VerticalSplitPosition', '3')}</config:config-item-map-entry></config:config-item-map-named></office:document-settings>`
  const read = await contents(buildZip(odsParts(tableXml(''), '', [{ name: 'settings.xml', data: settings }])))
  expect(read.sheets[0]?.frozen).toEqual([3, 1])
})

it('a file that the library for spreadsheet files wrote', async () => {
  const book = utils.book_new()
  const sheet = utils.aoa_to_sheet([['Tag', 'Duty'], ['V-101', 12.5]])
  sheet['C2'] = { t: 'n', v: 25, f: 'SUM(B2,B2)' }
  sheet['!ref'] = 'A1:C2'
  utils.book_append_sheet(book, sheet, 'Loads')
  const read = await contents(new Uint8Array(write(book, { type: 'buffer', bookType: 'ods' }) as Buffer))
  expect(read.kind).toBe('ods')
  expect(values(read)).toEqual([['Tag', 'Duty'], ['V-101', 12.5, 25]])
  expect(cell(read, 'C2')?.formula).toBe('SUM(B2,B2)')
})

describe('what is no spreadsheet of OpenDocument', () => {
  const with_ = (name: string, data: string): Uint8Array => buildZip(odsParts('').map((part) => (part.name === name ? { ...part, data } : part)))
  it.each([
    ['a text document', with_('mimetype', 'application/vnd.oasis.opendocument.text'), /a text document, not a spreadsheet/],
    ['a package of another kind', with_('mimetype', 'application/epub+zip'), /a package of another kind \(application\/epub\+zip\)/],
    ['one with a password', with_('META-INF/manifest.xml', '<manifest:manifest xmlns:manifest="m"><manifest:file-entry><manifest:encryption-data/></manifest:file-entry></manifest:manifest>'), /protected by a password/],
    ['one without sheets', buildOds(''), /no sheet with cells/],
  ])('%s', async (_, file, says) => expect(await problem(file, 'x.ods')).toMatch(says))
})
