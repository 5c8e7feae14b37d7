import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { HyperFormula } from 'hyperformula'
import { describe, expect, it } from 'vitest'
import { read, type CellObject } from 'xlsx'
import { catalogue } from '../../functions/catalogue.ts'
import { LINES_OF_COMPUTED } from '../../src/calc/lines-of-computed.ts'
import { Graph } from '../../src/calc/graph.ts'
import { ENGINE_ONLY, PREFIXED } from '../../src/exchange/function-names.ts'
import { exportOds } from '../../src/exchange/ods.ts'
import { numberStyle, shownNumber } from '../../src/exchange/ods/number-style.ts'
import { movingOpenFormula, openFormula } from '../../src/exchange/ods/open-formula.ts'
import { openFunctionName } from '../../src/exchange/ods/open-function-names.ts'
import { paragraphs } from '../../src/exchange/ods/open-xml.ts'
import { readFileContents } from '../../src/exchange/reading/read-file.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { printAddress } from '../../src/workbook/address.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { readTemplate } from '../templates/open-template.ts'
import { fromOpenFormula, openInput, openSheets } from '../workings/open-document.ts'
import { fileInput } from '../workings/recalculated.ts'
import { readZip } from './read-zip.ts'
import { descendants, elements, strictXml, type XmlElement } from './strict-xml.ts'
import { sheetOf } from './workbook-of.ts'

const DATE = new Date('2025-03-04T05:06:07Z')
const TEMPLATES = readdirSync(join(import.meta.dirname, '../../templates')).filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`)

/** Numbers of this workbook are invented. */
const workbook: Workbook = {
  title: 'Drum & <leg>',
  purpose: 'A test of the export',
  sheets: [
    {
      ...sheetOf('Duty', {
        A1: ['Load', 'label'], B1: 85, C1: ['TR', 'unit'], A2: ['Drum temperature', 'label'], B2: 5, C2: ['°F', 'unit'],
        B3: '=SAT.PRESSURE(B2:C2,"psia")', B4: '=if(B1>1e2;true;B1*1E-5)', B5: ['=B1<=100', 'check'], B6: '=SAT.PRESSURE(31,"psia")', B7: '=B1/0', B8: "'=1+1",
        B9: ' two  blanks\tand\n\nlines ', B11: '=B10', B12: '="n: "&Load&"; or | more"', B13: 1.25e-9, B14: '=B14', B15: true, B16: '=IF(B1>0,"","x")', F20: 3,
      }),
      columns: [240, 96], frozen: [2, 1],
    },
    sheetOf("Driver's leg", { A1: '=SUM(Duty!b1:B2)', A2: '=SUM(Duty!B1:B2*2)', A3: '=ifs(A1>0,1,true,2)' }),
    sheetOf('Empty', {}),
    { ...sheetOf('Only a heading', { A1: 'x' }), frozen: [4, 0] },
    { ...sheetOf('Far', { A9: 'x' }), frozen: [3, 2] },
  ],
  names: new Map([['Load', 'Duty!$B$1'], ['Loads', "'Driver''s leg'!$A$1:$A$2"], ['Computed', 'SAT.PRESSURE("5 °F","psia")'], ['Half', '0.5'], ['Column', 'Duty!$B:$B'], ['Odd', 'Load+']]),
  figures: [],
}
const noted = { ...workbook, sheets: workbook.sheets.map((sheet, index) => (index > 0 ? sheet : { ...sheet, rows: sheet.rows.map((row, at) => (at === 0 ? row?.map((cell, column) => cell && (column === 1 ? { ...cell, note: 'from the\nload  list' } : cell)) : row)) })) }
const values = new Graph(noted).allValues()
const bytes = await exportOds(noted, values, { date: DATE })
const parts = readZip(bytes)
const part = (name: string): XmlElement => strictXml(parts.get(name) ?? expect.fail(`the file has no part ${name}`))
const sheets = openSheets(bytes)
const duty = sheets.get('Duty')?.cells ?? new Map<string, XmlElement>()
const cell = (address: string): Readonly<Record<string, string>> => Object.fromEntries(duty.get(address)?.attributes ?? [])
const everyElement = [...parts.keys()].filter((name) => name.endsWith('.xml')).flatMap((name) => [...descendants(part(name))])

describe('an exported OpenDocument file', () => {
  it('begins with its kind, not compressed, and names every part (OpenDocument 1.3, part 2, 3.2 and 3.3)', () => {
    const file = Buffer.from(bytes)
    expect(file.subarray(0, 4).toString('latin1')).toBe('PK\u0003\u0004')
    expect({ method: file.readUInt16LE(8), extra: file.readUInt16LE(28), name: file.toString('latin1', 30, 38) }).toEqual({ method: 0, extra: 0, name: 'mimetype' })
    expect(file.toString('latin1', 38, 38 + 46)).toBe('application/vnd.oasis.opendocument.spreadsheet')
    const listed = elements(part('META-INF/manifest.xml')).map(({ attributes }) => attributes.get('manifest:full-path'))
    expect(listed).toEqual(['/', ...[...parts.keys()].filter((name) => name !== 'mimetype' && !name.startsWith('META-INF'))])
  })

  it('has its elements in the order of the schema (OpenDocument 1.3, part 3)', () => {
    // Section of each rule beside it; what comes once or not at all is not told apart from what may come often.
    const order: Readonly<Record<string, RegExp>> = {
      'office:document-content': /^office:font-face-decls office:automatic-styles office:body$/, // 3.1.3.2
      'office:document-styles': /^office:font-face-decls office:styles office:automatic-styles office:master-styles$/, // 3.1.3.3
      'office:spreadsheet': /^table:calculation-settings (table:table )+table:named-expressions$/, // 3.7
      'table:table': /^(table:table-header-columns ?)?(table:table-column ?)*(table:table-header-rows ?)?(table:table-row ?)*$/, // 9.1.2
      'table:table-header-rows': /^(table:table-row ?)+$/, // 9.1.7
      'table:table-row': /^(table:(covered-)?table-cell ?)+$/, // 9.1.3
      'table:table-cell': /^(office:annotation ?)?(text:p ?)*$/, // 9.1.4
      'style:style': /^(style:table-(cell|column|row)-properties|style:table-properties)? ?(style:text-properties ?)?(style:map ?)*$/, // 16.2
      'style:page-layout': /^style:page-layout-properties style:header-style style:footer-style$/, // 16.5
      'style:master-page': /^style:header style:footer$/, // 16.9
    }
    for (const one of everyElement) {
      const rule = order[one.name]
      if (rule) expect(elements(one).map(({ name }) => name).join(' '), one.name).toMatch(rule)
      if (one.name === 'table:table') expect([...descendants(one)].map(({ name }) => name)).toEqual(expect.arrayContaining(['table:table-column', 'table:table-row']))
    }
  })

  it('uses no style that it has not', () => {
    const defined = new Set(everyElement.filter(({ name }) => /:(?:style|number-style|page-layout|master-page)$/.test(name)).map(({ attributes }) => attributes.get('style:name')))
    const used = everyElement.flatMap(({ attributes }) => ['table:style-name', 'table:default-cell-style-name', 'style:parent-style-name', 'style:data-style-name', 'style:apply-style-name', 'style:page-layout-name', 'style:master-page-name'].flatMap((key) => attributes.get(key) ?? []))
    expect(used.length).toBeGreaterThan(50)
    expect(used.filter((name) => !defined.has(name))).toEqual([])
  })

  it('has a cover, the sheets in their order, the workings and their tables, and the document on a hidden sheet', () => {
    expect([...sheets.keys()]).toEqual(['Cover', 'Duty', "Driver's leg", 'Empty', 'Only a heading', 'Far', 'SAT.PRESSURE', 'Units', 'Coefficients', 'Lowside workbook'])
    const display = new Map(everyElement.filter(({ attributes }) => attributes.get('style:family') === 'table').map((style) => [style.attributes.get('style:name'), elements(style)[0]?.attributes.get('table:display')]))
    expect([...sheets.values()].filter(({ table }) => display.get(table.attributes.get('table:style-name')) === 'false').map(({ table }) => table.attributes.get('table:name'))).toEqual(['Lowside workbook'])
  })

  it('has numbers, truth values and texts with their kinds', () => {
    expect(cell('B1')).toMatchObject({ 'office:value-type': 'float', 'office:value': '85' })
    expect(cell('B13')).toMatchObject({ 'office:value-type': 'float', 'office:value': '1.25e-9' })
    expect(cell('B15')).toMatchObject({ 'office:value-type': 'boolean', 'office:boolean-value': 'true' })
    expect(cell('B8')).toMatchObject({ 'office:value-type': 'string' })
    expect(cell('B8')['table:formula']).toBeUndefined()
    expect(cell('F20')).toMatchObject({ 'office:value': '3' })
  })

  it('has formulas in OpenFormula, with their values', () => {
    expect(cell('B4')).toMatchObject({ 'table:formula': 'of:=IF([.B1]>100;TRUE();[.B1]*0.00001)', 'office:value': '0.00085' })
    expect(cell('B5')).toMatchObject({ 'table:formula': 'of:=[.B1]<=100', 'office:boolean-value': 'true' })
    expect(cell('B12')).toMatchObject({ 'table:formula': 'of:="n: "&Load&"; or | more"', 'office:value-type': 'string' })
    expect(cell('B11')).toMatchObject({ 'table:formula': 'of:=[.B10]', 'office:value': '0' })
    const leg = sheets.get("Driver's leg")?.cells
    expect(leg?.get('A1')?.attributes.get('table:formula')).toBe('of:=SUM([$Duty.B1:.B2])')
    expect(Object.fromEntries(leg?.get('A2')?.attributes ?? [])).toMatchObject({ 'table:formula': 'of:=SUM([$Duty.B1:.B2]*2)', 'table:number-matrix-columns-spanned': '1', 'table:number-matrix-rows-spanned': '1', 'office:value': '180' })
    expect(leg?.get('A3')?.attributes.get('table:formula')).toBe('of:=COM.MICROSOFT.IFS([.A1]>0;1;TRUE();2)')
  })

  it('has a call of a function of Lowside as a reference to its workings', () => {
    expect(cell('B3')['table:formula']).toBe("of:=[$'SAT.PRESSURE'.T7]")
    // 34.2445 psia at 5 °F: example of SAT.PRESSURE, Gao et al. 2023.
    expect(Number(cell('B3')['office:value'])).toBeCloseTo(34.2445, 4)
  })

  it('has an error of a formula as its text, and one without a formula as a formula', () => {
    expect(cell('B7')).toMatchObject({ 'table:formula': 'of:=[.B1]/0', 'office:value-type': 'string' })
    expect(elements(duty.get('B7') ?? part('meta.xml')).map(({ children }) => children)).toEqual([['#DIV/0!']])
    expect(cell('B14')).toMatchObject({ 'table:formula': 'of:=#VALUE!' })
  })

  it('has names of cells, areas, and what else a formula says, and no others', () => {
    const names = everyElement.filter(({ name }) => /^table:named-(range|expression)$/.test(name)).map(({ name, attributes }) => [name, attributes.get('table:name'), attributes.get('table:cell-range-address') ?? attributes.get('table:expression')])
    expect(names).toEqual([
      ['table:named-range', 'Load', '$Duty.$B$1'],
      ['table:named-range', 'Loads', "$'Driver''s leg'.$A$1:$'Driver''s leg'.$A$2"],
      ['table:named-range', 'Computed', "$'SAT.PRESSURE'.$T$6"],
      ['table:named-expression', 'Half', 'of:=0.5'],
      ['table:named-expression', 'Column', 'of:=[$Duty.$B:.$B]'],
    ])
  })

  it('keeps header rows and columns in view and on every page', () => {
    const header = (sheet: string, name: string) => elements(elements(sheets.get(sheet)?.table ?? part('meta.xml')).find((one) => one.name === name) ?? part('meta.xml')).reduce((sum, { attributes }) => sum + Number(attributes.get('table:number-rows-repeated') ?? 1), 0)
    expect([header('Duty', 'table:table-header-rows'), header('Duty', 'table:table-header-columns')]).toEqual([2, 1])
    expect([header('SAT.PRESSURE', 'table:table-header-rows'), header('Only a heading', 'table:table-header-rows'), header('Far', 'table:table-header-rows')]).toEqual([5, 4, 3])
    expect(sheets.get('Far')?.cells.has('A9')).toBe(true)
    const view = everyElement.find(({ name, attributes }) => name === 'config:config-item-map-entry' && attributes.get('config:name') === 'Duty')
    const items = Object.fromEntries(elements(view ?? part('meta.xml')).map(({ attributes, children }) => [attributes.get('config:name'), children[0]]))
    expect(items).toMatchObject({ HorizontalSplitMode: '2', HorizontalSplitPosition: '1', VerticalSplitMode: '2', VerticalSplitPosition: '2', ActiveSplitRange: '3' })
  })

  it('has input cells tinted, framed and unprotected, and no others', () => {
    const styles = new Map(everyElement.filter(({ name }) => name === 'style:style').map((style) => [style.attributes.get('style:name'), style]))
    const looks = (address: string) => elements(styles.get(styles.get(cell(address)['table:style-name'])?.attributes.get('style:parent-style-name')) ?? part('meta.xml'))[0]?.attributes
    expect(Object.fromEntries(looks('B1') ?? [])).toMatchObject({ 'style:cell-protect': 'none', 'fo:background-color': '#FFF7DC', 'fo:border-left': '0.5pt solid #B9A15A' })
    expect([...duty.keys()].filter((address) => looks(address)?.get('style:cell-protect') === 'none')).toEqual(['B1', 'B2', 'B13', 'B15', 'F20'])
  })

  it('shows numbers as their cells do', () => {
    const styles = new Map(everyElement.map((one) => [one.attributes.get('style:name'), one]))
    const format = (address: string) => Object.fromEntries(elements(styles.get(styles.get(cell(address)['table:style-name'])?.attributes.get('style:data-style-name')) ?? part('meta.xml'))[0]?.attributes ?? [])
    expect(format('B3')).toMatchObject({ 'number:decimal-places': '3', 'number:min-decimal-places': '3' })
    expect(format('B13')).toMatchObject({ 'number:decimal-places': '2', 'number:min-exponent-digits': '1' })
    expect(elements(duty.get('B3') ?? part('meta.xml')).map(({ children }) => children)).toEqual([['34.245']])
  })

  it('marks a check that is FALSE, and one of which the cover says that it is not met', () => {
    const map = everyElement.filter(({ name }) => name === 'style:map')
    expect(new Set(map.map(({ attributes }) => attributes.get('style:condition')))).toEqual(new Set(['is-true-formula(AND(ISLOGICAL([.A1]);NOT([.A1])))', 'cell-content()="not met"']))
  })

  it('has the page set up: landscape, a page wide, title and sheet above, caution and page numbers below', () => {
    expect(Object.fromEntries(everyElement.find(({ name }) => name === 'style:page-layout-properties')?.attributes ?? [])).toMatchObject({ 'style:print-orientation': 'landscape', 'fo:page-width': '11in', 'fo:page-height': '8.5in', 'style:scale-to-X': '1' })
    const words = (name: string) => texts(everyElement.find((one) => one.name === name) ?? part('meta.xml'))
    expect(words('style:header')).toContain('Drum & <leg>')
    expect(words('style:footer')).toBe('Engineering estimate, not a compliance findingPage 1 of 1')
  })

  it('names title, subject and date in its properties, and no author', () => {
    expect(elements(elements(part('meta.xml'))[0] ?? part('meta.xml')).map((one) => [one.name, texts(one)])).toEqual([
      ['meta:generator', 'Lowside'], ['dc:title', 'Drum & <leg>'], ['dc:subject', 'A test of the export'], ['meta:creation-date', '2025-03-04T05:06:07Z'], ['dc:date', '2025-03-04T05:06:07Z'],
    ])
  })

  it('is read back by another library: values, notes and number formats', () => {
    const { Sheets } = read(bytes, { type: 'array', sheetStubs: true })
    const found = (address: string): CellObject | undefined => Sheets['Duty']?.[address]
    expect(found('B9')?.v).toBe(' two  blanks\tand\n\nlines ')
    expect(found('B1')?.c?.map(({ t }) => t)).toEqual(['from the\nload  list'])
    expect(found('B3')?.z).toBe('0.000')
    expect(found('B16')?.v).toBe('')
  })

  it('is read back by Lowside', async () => {
    const found = await readFileContents(bytes, 'drum.ods')
    if ('problem' in found) expect.fail(found.problem)
    expect(found.sheets.map(({ name, hidden }) => [name, hidden])).toEqual([...sheets.keys()].map((name) => [name, name === 'Lowside workbook']))
    const rows = found.sheets[1]?.rows ?? []
    expect(rows[0]?.[1]).toMatchObject({ value: 85, note: 'from the\nload  list' })
    expect(rows[3]?.[1]).toMatchObject({ value: 0.00085, formula: 'IF(B1>100,TRUE(),B1*0.00001)' })
    expect(rows[2]?.[1]).toMatchObject({ formula: "'SAT.PRESSURE'!T7", format: '0.000' })
    expect(rows[8]?.[1]?.value).toBe(' two  blanks\tand\n\nlines ')
    expect(found.names.get('Load')).toBe('Duty!$B$1')
  })

  it('is the same for the same workbook and date', async () => {
    expect(Buffer.from(await exportOds(noted, values, { date: DATE })).equals(Buffer.from(bytes))).toBe(true)
  })
})

describe.each([...TEMPLATES, 'demo-data/tallowmere.lowside.json'])('%s in OpenDocument', (path) => {
  it('has every value, formula, name and note that the .xlsx has', { timeout: 120_000 }, async () => {
    const template = readTemplate(path)
    const allValues = new Graph(template).allValues()
    const [open, other] = [await exportOds(template, allValues, { date: DATE }), await exportXlsx(template, allValues, { date: DATE })]
    const [input, otherInput] = [openInput(open), fileInput(other)]
    expect([...input.names]).toEqual([...otherInput.names])
    expect([...input.sheets.keys()]).toEqual([...otherInput.sheets.keys()])
    let cells = 0
    const differing: string[] = []
    for (const [name, rows] of otherInput.sheets) {
      for (const [row, line] of rows.entries()) {
        for (const [column, wanted] of (line ?? []).entries()) {
          if (wanted === undefined) continue
          cells++
          const found = input.sheets.get(name)?.[row]?.[column]
          const [was, is] = [saysXlsx(wanted), found === undefined ? 'nothing' : says(found)]
          if (was !== is) differing.push(`${name}!${printAddress(row, column)}: ${was}, in OpenDocument ${is}`)
        }
      }
    }
    expect(cells).toBeGreaterThan(100)
    expect(differing.slice(0, 5)).toEqual([])
  })
})

describe('a formula in OpenFormula (OpenDocument 1.3, part 4)', () => {
  it.each([
    // 5.8 references; 5.10 named expressions; 5.13 inline arrays; 5.5 operators; 5.12 errors.
    ['A1', '[.A1]'],
    ['$A$1+Duty!B2', '[.$A$1]+[$Duty.B2]'],
    ["SUM('It''s; a [sheet]'!$A1:B$2)", "SUM([$'It''s; a [sheet]'.$A1:.B$2])"],
    ['SUM(B:C,2:3)', 'SUM([.B:.C];[.2:.3])'],
    ["SUM('My sheet'!$B:$B)", "SUM([$'My sheet'.$B:.$B])"],
    ['SUM({1,2;3,4})', 'SUM({1;2|3;4})'],
    ['IF(A1="a;b,c",TRUE,FALSE)', 'IF([.A1]="a;b,c";TRUE();FALSE())'],
    ['IF(A1,,2)', 'IF([.A1];;2)'],
    ['"say ""no"""', '"say ""no"""'],
    ['load*2%', 'load*2%'],
    ['#N/A', '#N/A'],
    ['A1:INDEX(B1:B9,2)', '[.A1]:INDEX([.B1:.B9];2)'],
    ['_xlfn.IFS(A1>0,1)', 'COM.MICROSOFT.IFS([.A1]>0;1)'],
    ['_xlfn.STDEV.S(A1:A9)', 'STDEV([.A1:.A9])'],
    ['NORMSDIST(1)', 'LEGACY.NORMSDIST(1)'],
    ['_xlfn.IFNA(A1,1E-5)', 'IFNA([.A1];1E-5)'],
    // 6.17.1 and 6.17.3: a third argument other than 0 makes a negative step round by size, as Lowside does.
    ['CEILING(A1,0.5)', 'CEILING([.A1];0.5)'],
    ['CEILING(A1)', 'CEILING([.A1])'],
    ['FLOOR(A1,-2)', 'FLOOR([.A1];-2;(-2)<0)'],
    ['CEILING(A1,MAX(B1,C1))', 'CEILING([.A1];MAX([.B1];[.C1]);(MAX([.B1];[.C1]))<0)'],
    ['CEILING(A1,CEILING(B1,C1))', 'CEILING([.A1];CEILING([.B1];[.C1];([.C1])<0);(CEILING([.B1];[.C1];([.C1])<0))<0)'],
  ])('%s is %s', (text, open) => {
    expect(openFormula(text)).toBe(open)
  })

  it('moves its relative rows with the cell, and nothing else', () => {
    const moving = movingOpenFormula('A7+A$7+$A7*Units!$B7+"A7"+SUM(7:$8)')
    expect(moving(0)).toBe('[.A7]+[.A$7]+[.$A7]*[$Units.$B7]+"A7"+SUM([.7:.$8])')
    expect(moving(3)).toBe('[.A10]+[.A$7]+[.$A10]*[$Units.$B10]+"A7"+SUM([.10:.$8])')
  })

  it('is read back as it was by a reader of its own', () => {
    const leaf = fc.constantFrom('A1', '$B$2', "'My; sheet'!C3", 'Duty!A1:B$2', '1.5', '"a;b"', '"|"', 'load', '{1,2;3,4}', '#REF!')
    const { formula } = fc.letrec<{ formula: string }>((tie) => ({
      formula: fc.oneof({ depthSize: 'small' }, leaf, fc.tuple(tie('formula'), fc.constantFrom('+', '&', '<=', '^'), tie('formula')).map((all) => all.join('')), fc.tuple(tie('formula'), tie('formula')).map(([one, other]) => `IF(${one},${other})`)),
    }))
    fc.assert(fc.property(formula, (text) => {
      expect(fromOpenFormula(`of:=${openFormula(text)}`)).toBe(text)
    }))
  })

  // From memory of part 4, chapter 6.
  it('has a name of the standard for every function that a workbook can use, or one under its maker’s domain', () => {
    const known = new Set(STANDARD_FUNCTIONS.split(' '))
    const used = HyperFormula.getRegisteredFunctionNames('enGB').filter((name) => !ENGINE_ONLY.has(name) && !OWN.has(name))
    expect(used.length).toBeGreaterThan(300)
    expect(used.map((name) => openFunctionName(PREFIXED.has(name) ? `_xlfn.${name}` : name)).filter((name) => !known.has(name) && !name.startsWith('COM.MICROSOFT.'))).toEqual([])
    expect(used.filter((name) => known.has(name) && !/^(?:CHI|F|T|NORMS)(?:DIST|INV|TEST)$/.test(name) && openFunctionName(name) !== name)).toEqual([])
  })
})

describe('a text in OpenDocument', () => {
  it('keeps its white space (part 3, 6.1), read by another library', async () => {
    await fc.assert(fc.asyncProperty(fc.array(fc.array(fc.constantFrom('a', ' ', '\n', '\t', '<', '&', '"', '°', '😀'), { minLength: 1, maxLength: 9 }).map((signs) => signs.join('')), { minLength: 1, maxLength: 8 }), async (wanted) => {
      const filled = { ...workbook, names: new Map(), sheets: [sheetOf('S', Object.fromEntries(wanted.map((text, index) => [`A${index + 1}`, text])))] }
      const file = await exportOds(filled, new Map(), { date: DATE })
      const { Sheets } = read(file, { type: 'array' })
      expect(wanted.map((_, index): unknown => Sheets['S']?.[`A${index + 1}`]?.v)).toEqual(wanted)
    }), { numRuns: 40 })
  })

  it('has no blank that would come together with another', () => {
    fc.assert(fc.property(fc.string(), (text) => {
      expect(paragraphs(text).replace(/<[^>]*>/g, '|')).not.toMatch(/ {2}|[\t\r]/)
    }))
  })
})

describe('a number style', () => {
  it.each(['0', '0.0', '0.00000', '0E+0', '0.00E+0'])('of %s shows a number as that code does', (code) => {
    expect(strictXml((numberStyle(code, 'N1') ?? '').replace('<number:number-style', '<number:number-style xmlns:number="n" xmlns:style="s"')).name).toBe('number:number-style')
    expect(shownNumber(1234.5678, code)).toBe({ '0': '1235', '0.0': '1234.6', '0.00000': '1234.56780', '0E+0': '1E+3', '0.00E+0': '1.23E+3' }[code])
  })

  it('of General is none, and of a code that numbers here never have a fault', () => {
    expect(numberStyle('General', 'N1')).toBeUndefined()
    expect(() => numberStyle('# ?/?', 'N1')).toThrow('no number style')
  })
})

describe('the strict reader of these tests', () => {
  it.each(['<a>', '<a/><b/>', '<a b="1" b="2"/>', '<a>&</a>', '<a>&nbsp;</a>', '<x:a/>', '<a b=1/>', '<a></b>', '<a b="<"/>', '<a>\u0001</a>', '<a>\ud800</a>', 'a', '<a b="1"c="2"/>'])('refuses %j', (text) => {
    expect(() => strictXml(text)).toThrow()
  })
})

const texts = (one: XmlElement): string => one.children.map((child) => (typeof child === 'string' ? child : texts(child))).join('')

const noteOf = ({ c }: CellObject): string => (c ?? []).map(({ t }) => t).join('')

/** How the library has errors (MS-XLS 2.5.10, BErr). */
const ERROR_CODES: ReadonlyMap<number, string> = new Map([[0x00, '#NULL!'], [0x07, '#DIV/0!'], [0x0f, '#VALUE!'], [0x17, '#REF!'], [0x1d, '#NAME?'], [0x24, '#NUM!'], [0x2a, '#N/A']])

const saysXlsx = (one: CellObject): string => {
  const error = one.t === 'e' ? ERROR_CODES.get(Number(one.v)) : undefined
  const formula = one.f === undefined ? error : one.f.split(/("(?:[^"]|"")*")/).map((piece, at) => (at % 2 === 1 ? piece : piece.replace(/_xlfn\./g, '').replace(/\b(TRUE|FALSE)\b(?!\()/g, '$1()'))).join('')
  return JSON.stringify([error ?? one.v, formula, noteOf(one)])
}

const says = (one: CellObject): string => JSON.stringify([one.v, one.f, noteOf(one)])

/** What Lowside itself has put into the engine; no file has it. */
const OWN: ReadonlySet<string> = new Set([...catalogue.map(({ name }) => name), 'UNREADABLE.FORMULA', 'ONE.VALUE', ...Object.values(LINES_OF_COMPUTED)])

const STANDARD_FUNCTIONS =
  'ABS ACCRINT ACCRINTM ACOS ACOSH ACOT ACOTH ADDRESS AMORLINC AND ARABIC AREAS ASC ASIN ASINH ATAN ATAN2 ATANH AVEDEV AVERAGE AVERAGEA AVERAGEIF AVERAGEIFS B BASE BESSELI BESSELJ BESSELK ' +
  'BESSELY BETADIST BETAINV BIN2DEC BIN2HEX BIN2OCT BINOMDIST BITAND BITLSHIFT BITOR BITRSHIFT BITXOR CEILING CELL CHAR CHISQDIST CHISQINV CHOOSE CLEAN CODE COLUMN COLUMNS COMBIN COMBINA ' +
  'COMPLEX CONCATENATE CONFIDENCE CONVERT CORREL COS COSH COT COTH COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS COUPDAYBS COUPDAYS COUPDAYSNC COUPNCD COUPNUM COUPPCD COVAR CRITBINOM CSC CSCH ' +
  'CUMIPMT CUMPRINC DATE DATEDIF DATEVALUE DAVERAGE DAY DAYS DAYS360 DB DCOUNT DCOUNTA DDB DDE DEC2BIN DEC2HEX DEC2OCT DECIMAL DEGREES DELTA DEVSQ DGET DISC DMAX DMIN DOLLAR DOLLARDE DOLLARFR ' +
  'DPRODUCT DSTDEV DSTDEVP DSUM DURATION DVAR DVARP EASTERSUNDAY EDATE EFFECT EOMONTH ERF ERFC ERROR.TYPE EUROCONVERT EVEN EXACT EXP EXPONDIST FACT FACTDOUBLE FALSE FDIST FIND FINDB FINV FISHER ' +
  'FISHERINV FIXED FLOOR FORECAST FORMULA FREQUENCY FTEST FV FVSCHEDULE GAMMA GAMMADIST GAMMAINV GAMMALN GAUSS GCD GEOMEAN GESTEP GETPIVOTDATA GROWTH HARMEAN HEX2BIN HEX2DEC HEX2OCT HLOOKUP HOUR ' +
  'HYPERLINK HYPGEOMDIST IF IFERROR IFNA IMABS IMAGINARY IMARGUMENT IMCONJUGATE IMCOS IMCOSH IMCOT IMCSC IMCSCH IMDIV IMEXP IMLN IMLOG10 IMLOG2 IMPOWER IMPRODUCT IMREAL IMSEC IMSECH IMSIN IMSINH ' +
  'IMSQRT IMSUB IMSUM IMTAN INDEX INDIRECT INFO INT INTERCEPT INTRATE IPMT IRR ISBLANK ISERR ISERROR ISEVEN ISFORMULA ISLOGICAL ISNA ISNONTEXT ISNUMBER ISODD ISOWEEKNUM ISPMT ISREF ISTEXT JIS ' +
  'KURT LARGE LCM LEFT LEFTB LEGACY.CHIDIST LEGACY.CHIINV LEGACY.CHITEST LEGACY.FDIST LEGACY.FINV LEGACY.NORMSDIST LEGACY.NORMSINV LEGACY.TDIST LEN LENB LINEST LN LOG LOG10 LOGEST LOGINV ' +
  'LOGNORMDIST LOOKUP LOWER MATCH MAX MAXA MDETERM MDURATION MEDIAN MID MIDB MIN MINA MINUTE MINVERSE MIRR MMULT MOD MODE MONTH MROUND MULTINOMIAL MULTIPLE.OPERATIONS MUNIT N NA NEGBINOMDIST ' +
  'NETWORKDAYS NOMINAL NORMDIST NORMINV NOT NOW NPER NPV NUMBERVALUE OCT2BIN OCT2DEC OCT2HEX ODD ODDFPRICE ODDFYIELD ODDLPRICE ODDLYIELD OFFSET OR PDURATION PEARSON PERCENTILE PERCENTRANK PERMUT ' +
  'PERMUTATIONA PHI PI PMT POISSON POWER PPMT PRICE PRICEDISC PRICEMAT PROB PRODUCT PROPER PV QUARTILE QUOTIENT RADIANS RAND RANDBETWEEN RANK RATE RECEIVED REPLACE REPLACEB REPT RIGHT RIGHTB ROMAN ' +
  'ROUND ROUNDDOWN ROUNDUP ROW ROWS RRI RSQ SEARCH SEARCHB SEC SECH SECOND SERIESSUM SHEET SHEETS SIGN SIN SINH SKEW SKEWP SLN SLOPE SMALL SQRT SQRTPI STANDARDIZE STDEV STDEVA STDEVP STDEVPA STEYX ' +
  'SUBSTITUTE SUBTOTAL SUM SUMIF SUMIFS SUMPRODUCT SUMSQ SUMX2MY2 SUMX2PY2 SUMXMY2 SYD T TAN TANH TBILLEQ TBILLPRICE TBILLYIELD TEXT TIME TIMEVALUE TINV TODAY TRANSPOSE TREND TRIM TRIMMEAN TRUE TRUNC ' +
  'TTEST TYPE UNICHAR UNICODE UPPER USDOLLAR VALUE VAR VARA VARP VARPA VDB VLOOKUP WEEKDAY WEEKNUM WEIBULL WORKDAY XIRR XNPV XOR YEAR YEARFRAC YIELD YIELDDISC YIELDMAT ZTEST'
