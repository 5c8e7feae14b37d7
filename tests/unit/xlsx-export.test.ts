import fc from 'fast-check'
import { HyperFormula } from 'hyperformula'
import { format } from 'numfmt'
import { describe, expect, it } from 'vitest'
import { read } from 'xlsx'
import { Graph } from '../../src/calc/graph.ts'
import { CAUTIONS } from '../../functions/cautions.ts'
import { fileFormula, fileNames } from '../../src/exchange/file-formula.ts'
import { ENGINE_ONLY, PREFIXED, RANGE_TAKERS } from '../../src/exchange/function-names.ts'
import { numberCode } from '../../src/exchange/number-code.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { withCells } from '../../src/workbook/cells.ts'
import { VERSION } from '../../src/version.ts'
import { version as packageVersion } from '../../package.json'
import { parseAddress } from '../../src/workbook/address.ts'
import { emptySheet, type Cell, type Sheet, type Workbook } from '../../src/workbook/document.ts'
import { formatNumber, type NumberFormat } from '../../src/workbook/number-format.ts'
import { readZip, unescapeXml, xmlCells, xmlComments } from './read-zip.ts'

const DATE = new Date('2025-03-04T05:06:07Z')

/** Numbers of this workbook are invented. */
const workbook: Workbook = {
  title: 'Drum & <leg>',
  purpose: 'A test of the export',
  sheets: [
    {
      ...sheet('Duty', {
        A1: { content: 'Load', role: 'label' },
        B1: { content: 85, role: 'input', note: 'from the load list' },
        C1: { content: 'TR', role: 'unit' },
        A2: { content: 'Drum temperature', role: 'label' },
        B2: { content: 5, role: 'input' },
        C2: { content: '°F', role: 'unit' },
        B3: { content: '=SAT.PRESSURE(B2:C2,"psia")', role: 'result', digits: 4 },
        B4: { content: '=if(B1>1e2;true;B1*1E-5)', role: 'result' },
        B5: { content: '=B1<=100', role: 'check' },
        B6: { content: '=SAT.PRESSURE(31,"psia")', role: 'result' },
        B7: { content: '=B1/0', role: 'result' },
        B8: { content: "'=1+1", role: 'text' },
        B9: { content: '+cmd|x', role: 'text' },
        B10: { content: null, role: 'input', note: 'to be filled in' },
        B11: { content: '=B10', role: 'result' },
        B12: { content: '="n: "&Load', role: 'result' },
        B13: { content: 1.25, role: 'input', decimals: 3 },
        B14: { content: '=B14', role: 'result' },
        B15: { content: true, role: 'input' },
      }),
      columns: [240, 96],
      frozen: [2, 1],
    },
    sheet("Driver's leg", { A1: { content: '=SUM(Duty!b1:B2)', role: 'result' }, A2: { content: '=SUM(Duty!B1:B2*2)', role: 'result' } }),
    sheet('About this file', { A1: { content: 'a sheet of the user', role: 'text' } }),
  ],
  names: new Map([['Load', 'Duty!$B$1'], ['Computed', 'SAT.PRESSURE("5 °F","psia")'], ['Odd', 'Load+']]),
  figures: [],
}
const values = new Graph(workbook).allValues()
const bytes = await exportXlsx(workbook, values, { date: DATE })
const parts = readZip(bytes)
const part = (name: string): string => parts.get(name) ?? expect.fail(`the file has no part ${name}; it has ${[...parts.keys()].join(', ')}`)
const duty = xmlCells(part('xl/worksheets/sheet2.xml'))
const comments = xmlComments(part('xl/comments2.xml'))

describe('an exported spreadsheet file', () => {
  it('has a cover, the sheets in their order, then the workings and their tables, and at last, hidden, the document', () => {
    const names = [...part('xl/workbook.xml').matchAll(/<sheet name="([^"]*)"/g)].map(([, name = '']) => unescapeXml(name))
    expect(names).toEqual(['Cover', 'Duty', "Driver's leg", 'About this file', 'SAT.PRESSURE', 'Units', 'Coefficients', 'Lowside workbook'])
  })

  it('keeps numbers, truth values and texts', () => {
    expect(duty.get('B1')).toMatchObject({ value: '85', formula: undefined })
    expect(duty.get('C2')).toMatchObject({ type: 'inlineStr', value: '°F' })
    expect(duty.get('B15')).toMatchObject({ type: 'b', value: '1', formula: undefined })
  })

  it('keeps a text that begins like a formula a text', () => {
    expect(duty.get('B8')).toMatchObject({ type: 'inlineStr', value: '=1+1', formula: undefined })
    expect(duty.get('B9')).toMatchObject({ type: 'inlineStr', value: '+cmd|x', formula: undefined })
  })

  it('keeps formulas of standard functions, in the dialect of the file, with their values', () => {
    expect(duty.get('B4')).toMatchObject({ formula: 'IF(B1>100,TRUE,B1*0.00001)', value: '0.00085' })
    expect(duty.get('B5')).toMatchObject({ formula: 'B1<=100', type: 'b', value: '1' })
    expect(duty.get('B7')).toMatchObject({ formula: 'B1/0', type: 'e', value: '#DIV/0!' })
    expect(duty.get('B12')).toMatchObject({ formula: '"n: "&Load', type: 'str', value: 'n: 85' })
  })

  it('writes a formula that refers to an empty cell with the value 0', () => {
    expect(duty.get('B11')).toMatchObject({ formula: 'B10', value: '0' })
  })

  it('writes a formula that computes with a range as an array formula, one that hands it to SUM as a plain one', () => {
    const leg = xmlCells(part('xl/worksheets/sheet3.xml'))
    expect(leg.get('A1')).toMatchObject({ formula: 'SUM(Duty!B1:B2)', array: false, value: '90' })
    expect(leg.get('A2')).toMatchObject({ formula: 'SUM(Duty!B1:B2*2)', array: true, value: '180' })
  })

  it('writes a call of a function of Lowside as a reference to its workings, with its value', () => {
    const cell = duty.get('B3')
    expect(cell?.formula).toBe("'SAT.PRESSURE'!T7")
    // 34.2445 psia at 5 °F: example of SAT.PRESSURE, Gao et al. 2023.
    expect(Number(cell?.value)).toBeCloseTo(34.2445, 4)
    expect(Number(xmlCells(part('xl/worksheets/sheet5.xml')).get('T7')?.value)).toBeCloseTo(34.2445, 4)
  })

  it('writes an error of such a call as an error', () => {
    expect(duty.get('B6')).toMatchObject({ type: 'e', value: '#VALUE!', formula: "'SAT.PRESSURE'!T8" })
    expect(xmlCells(part('xl/worksheets/sheet5.xml')).get('T8')).toMatchObject({ type: 'e', value: '#N/A' })
  })

  it('writes a cell that depends on itself as an error that files have', () => {
    expect(duty.get('B14')).toMatchObject({ type: 'e', value: '#VALUE!', formula: undefined })
    expect(comments.get('B14')).toContain('#CYCLE!')
  })

  it('keeps notes as comments, of empty cells too', () => {
    expect(comments.get('B1')).toBe('from the load list')
    expect(comments.get('B10')).toBe('to be filled in')
    expect(comments.has('A1')).toBe(false)
  })

  it('keeps the names that other programs understand, and no others', () => {
    expect(part('xl/workbook.xml')).toContain('<definedName name="Load">Duty!$B$1</definedName>')
    expect(part('xl/workbook.xml')).toContain(`<definedName name="Computed">'SAT.PRESSURE'!$T$6</definedName>`)
    expect(part('xl/workbook.xml')).not.toContain('Odd')
  })

  it('keeps column widths in proportion', () => {
    const [first = 0, second = 0] = [...part('xl/worksheets/sheet2.xml').matchAll(/<col [^>]*width="([0-9.]+)"/g)].map(([, width]) => Number(width))
    expect(first / second).toBeCloseTo(240 / 96, 2)
  })

  it('carries number formats', () => {
    const codes = new Map([...part('xl/styles.xml').matchAll(/<numFmt numFmtId="(\d+)" formatCode="([^"]*)"/g)].map(([, id, code]) => [id, code]))
    const ofStyle = [...(/<cellXfs.*<\/cellXfs>/s.exec(part('xl/styles.xml'))?.[0] ?? '').matchAll(/<xf numFmtId="(\d+)"/g)].map(([, id]) => id)
    // 2 is 0.00 in every file (ECMA-376, part 1, 18.8.30).
    expect(ofStyle[duty.get('B3')?.style ?? -1]).toBe('2')
    expect(codes.get(ofStyle[duty.get('B13')?.style ?? -1])).toBe('0.000')
    expect(ofStyle[duty.get('B1')?.style ?? -1]).toBe('0')
  })

  it('has input cells tinted, framed and unlocked, and no others', () => {
    const xfs = [...(/<cellXfs.*<\/cellXfs>/s.exec(part('xl/styles.xml'))?.[0] ?? '').matchAll(/<xf [^>]*?(?:\/>|>.*?<\/xf>)/g)].map(([xf]) => xf)
    const unlocked = [...duty].filter(([, { style }]) => xfs[style]?.includes('locked="0"')).map(([address]) => address)
    expect(unlocked).toEqual(['B1', 'B2', 'B10', 'B13', 'B15'])
    const fills = [...(/<fills.*<\/fills>/s.exec(part('xl/styles.xml'))?.[0] ?? '').matchAll(/<fill>.*?<\/fill>/g)].map(([fill]) => fill)
    expect(fills[Number(/fillId="(\d+)"/.exec(xfs[duty.get('B1')?.style ?? -1] ?? '')?.[1])]).toContain('patternType="solid"')
  })

  it('marks a check that turns FALSE', () => {
    expect(part('xl/worksheets/sheet2.xml')).toContain('<conditionalFormatting sqref="B5">')
  })

  it('keeps header rows in view and on every page, of the workbook and of the workings', () => {
    expect(part('xl/worksheets/sheet2.xml')).toContain('<pane xSplit="1" ySplit="2" topLeftCell="B3" activePane="bottomRight" state="frozen"/>')
    expect(part('xl/worksheets/sheet5.xml')).toContain('ySplit="5"')
    expect(part('xl/workbook.xml')).toContain('<definedName name="_xlnm.Print_Titles" localSheetId="1">Duty!$A:$A,Duty!$1:$2</definedName>')
    expect(part('xl/worksheets/sheet2.xml')).toMatch(/<pageSetup paperSize="1" orientation="landscape" fitToWidth="1" fitToHeight="0"\/>/)
  })

  it('names every part that relationships point to, and gives each a kind', () => {
    const types = part('[Content_Types].xml')
    for (const [name, text] of parts) {
      expect(types.includes(`PartName="/${name}"`) || /\.(rels|vml|json)$/.test(name) || name === '[Content_Types].xml', name).toBe(true)
      if (!name.endsWith('.rels')) continue
      const folder = name.replace(/_rels\/[^/]*$/, '')
      for (const [, target = ''] of text.matchAll(/Target="([^"]*)"/g)) expect(parts.has(new URL(target, `file:///${folder}`).pathname.slice(1)), `${name}: ${target}`).toBe(true)
    }
  })

  it('names title and date in its properties, and no author', () => {
    expect(part('docProps/core.xml')).toContain('<dc:title>Drum &amp; &lt;leg&gt;</dc:title>')
    expect(part('docProps/core.xml')).toContain('2025-03-04T05:06:07Z')
    expect(part('docProps/core.xml')).not.toMatch(/<dc:creator>[^<]/)
  })

  it('says what it is, every caution, and the source of every method used', () => {
    const texts = [...xmlCells(part('xl/worksheets/sheet1.xml')).values()].map(({ value }) => value)
    expect(texts).toEqual(expect.arrayContaining(['Drum & <leg>', 'A test of the export', '2025-03-04 05:06 UTC, exported by Lowside', ...CAUTIONS, 'SAT.PRESSURE']))
    expect(texts.some((text) => text?.includes('doi 10.1063/5.0128269') && text.includes('[confirmed]'))).toBe(true)
    expect(texts).not.toContain('FEED.FLOW')
  })

  it('has on its cover the version, the units, how many inputs, and each check as it is now and was', async () => {
    const areas = new Graph(workbook).allAreas()
    const cells = xmlCells(readZip(await exportXlsx(workbook, values, { date: DATE, checks: areas })).get('xl/worksheets/sheet1.xml') ?? '')
    const texts = [...cells.values()].map(({ value }) => value)
    expect(texts).toEqual(expect.arrayContaining([`Lowside ${VERSION}`, 'US units', '5 input cells on 1 sheet', '1 of 1 checks met at export', 'Prepared by', 'Checked by', 'Signature', 'Revision']))
    const place = [...cells].find(([, { value }]) => value === 'Duty!B5')?.[0] ?? expect.fail('the check is not on the cover')
    const row = place.slice(1)
    expect(cells.get(`C${row}`)).toMatchObject({ formula: 'IF(ISLOGICAL(Duty!B5),IF(Duty!B5,"met","not met"),"no verdict")', value: 'met' })
    // 85 TR against 100: 15 of 100 to spare.
    expect(cells.get(`D${row}`)?.value).toBe('met, 15 TR (15 %) to spare')
  })

  it('has on its cover what the sheet Basis takes as given, as references', async () => {
    const withBasis: Workbook = {
      ...workbook, names: new Map(),
      sheets: [sheet('Basis', {
        A1: { content: 'Site elevation', role: 'label' }, B1: { content: 1200, role: 'input' }, C1: { content: 'ft', role: 'unit' },
        A3: { content: 'Suction', role: 'heading' }, B3: { content: 'Temperature', role: 'heading' }, B4: { content: '°F', role: 'unit' }, A5: { content: 'Low', role: 'input' }, B5: { content: -40, role: 'input' },
      })],
    }
    const cells = xmlCells(readZip(await exportXlsx(withBasis, new Graph(withBasis).allValues(), { date: DATE })).get('xl/worksheets/sheet1.xml') ?? '')
    const rowOf = (name: string): string => [...cells].find(([, { value }]) => value === name)?.[0].slice(1) ?? expect.fail(`${name} is not on the cover`)
    expect(cells.get(`C${rowOf('Site elevation')}`)).toMatchObject({ formula: 'Basis!B1', value: '1200' })
    expect(cells.get(`D${rowOf('Site elevation')}`)).toMatchObject({ formula: 'Basis!C1', value: 'ft' })
    expect(cells.get(`C${rowOf('Low: Temperature')}`)).toMatchObject({ formula: 'Basis!B5', value: '-40' })
    expect(cells.get(`D${rowOf('Low: Temperature')}`)).toMatchObject({ formula: 'Basis!B4', value: '°F' })
  })

  it('names the version that the package has', () => expect(VERSION).toBe(packageVersion))

  it('is read back with the values of the workbook', () => {
    const { Sheets } = read(bytes, { type: 'array' })
    for (const [name, rows] of values) {
      for (const [row, line] of rows.entries()) {
        for (const [column, value] of line.entries()) {
          const found: unknown = Sheets[name]?.[`${String.fromCharCode(65 + column)}${row + 1}`]?.v
          if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') expect(found).toBe(value)
        }
      }
    }
  })

  it('is the same for the same workbook and date', async () => {
    expect(Buffer.from(await exportXlsx(workbook, values, { date: DATE })).equals(Buffer.from(bytes))).toBe(true)
  })

  it('takes a sheet without cells', async () => {
    const empty: Workbook = { title: '', purpose: '', sheets: [emptySheet('Empty')], names: new Map(), figures: [] }
    expect(read(await exportXlsx(empty, new Map(), { date: DATE }), { type: 'array' }).SheetNames).toEqual(['Cover', 'Empty', 'Lowside workbook'])
  })
})

describe('the formula of a file', () => {
  const names = fileNames(new Map([['load', 'Duty!$B$1'], ['loads', 'Duty!$B$1:$B$9']]))
  const written = (formula: string) => fileFormula(formula, names)

  it.each([
    ['=1E-5*.5+4.', '0.00001*0.5+4'],
    ['=1e25', '1E+25'],
    ['=if(a1;true;"a;b")', 'IF(A1,TRUE,"a;b")'],
    ['={1,2;3,4}', '{1,2;3,4}'],
    ['=$a$1+duty!b2', '$A$1+duty!B2'],
    ["='It''s'!A1:B2", "'It''s'!A1:B2"],
    ['=ifs(A1>0,1,true,2)', '_xlfn.IFS(A1>0,1,TRUE,2)'],
    ['=A1\u00a0+ 1', 'A1 + 1'],
    ['=#ref!+1', '#REF!+1'],
    ['="say ""no"""', '"say ""no"""'],
  ])('%s is written %s', (formula, text) => {
    expect(written(formula)?.text).toBe(text)
  })

  it.each(['=sat.pressure("5 °F","psia")', '=1+SAT.SLOPE(A1:B1,"psi/Δ°F")', '=unknownName', '=#CYCLE!', '=SEQUENCE(3)', '="open', '='])('%s is not written', (formula) => {
    expect(written(formula)).toBeUndefined()
  })

  it.each([
    ['=SUM(A1:A3)', false],
    ['=SUM( A1:A3 , 2)', false],
    ['=SUM(loads)', false],
    ['=load*2', false],
    ['=SUMPRODUCT(A1:A3,B1:B3)', false],
    ['=SUM(A1:A3*2)', true],
    ['=SQRT(SUM(A1:A3^2))', true],
    ['=SUM(ABS(A1:A3))', true],
    ['=SUM(loads*2)', true],
    ['=MAX(IF(A1:A3>1,B1:B3))', true],
  ])('%s as an array formula: %s', (formula, array) => {
    expect(written(formula)?.array).toBe(array)
  })

  it('names functions that the engine has', () => {
    const registered = new Set(HyperFormula.getRegisteredFunctionNames('enGB'))
    for (const name of [...PREFIXED, ...ENGINE_ONLY, ...RANGE_TAKERS]) expect(registered, name).toContain(name)
    for (const name of ENGINE_ONLY) expect(PREFIXED.has(name) || RANGE_TAKERS.has(name), name).toBe(false)
  })
})

describe('the number format of a file', () => {
  it('shows a number as its cell does, to one in the last place that both show', () => {
    const value = fc.double({ min: -1e12, max: 1e12, noNaN: true, noDefaultInfinity: true }).filter((number) => number === 0 || Math.abs(number) > 1e-9)
    const shape: fc.Arbitrary<NumberFormat> = fc.oneof(fc.record({ digits: fc.integer({ min: 1, max: 15 }) }), fc.record({ decimals: fc.integer({ min: 0, max: 12 }) }), fc.constant({}))
    fc.assert(fc.property(value, shape, (number, cellFormat) => {
      const inCell = formatNumber(number, cellFormat)
      const code = numberCode(number, cellFormat)
      if (code === 'General') {
        expect(inCell).toBe(String(number))
        return
      }
      const inFile = format(code, number)
      const [mantissa = '', exponent = '0'] = inFile.toLowerCase().split('e')
      const lastInFile = 10 ** (Number(exponent) - (mantissa.split('.')[1]?.length ?? 0))
      // A file shows every digit before the point; a cell of few significant digits has zeros there.
      const lastInCell = 10 ** (Math.floor(Math.log10(Math.abs(number))) + 1 - (cellFormat.digits ?? 15))
      // Both texts are rounded once more on their way back to a double.
      const rounding = 4 * Number.EPSILON * Math.abs(number)
      expect(Math.abs(Number(inFile) - Number(inCell))).toBeLessThanOrEqual(Math.max(lastInFile, lastInCell) + rounding)
    }))
  })

  it.each([
    [34.2445123, {}, '0.000'],
    [34.2445123, { digits: 3 }, '0.0'],
    [31, {}, 'General'],
    [31, { decimals: 2 }, '0.00'],
    [1.25e-7, {}, '0.00E+0'],
    [123456.78, {}, '0'],
  ])('of %d with %o is %s', (value, cellFormat, code) => {
    expect(numberCode(value, cellFormat)).toBe(code)
  })
})

function sheet(name: string, cells: Readonly<Record<string, Cell>>): Sheet {
  const changes = Object.entries(cells).map(([address, cell]) => ({ ...(parseAddress(address) ?? expect.fail(`${address} is no address`)), cell }))
  return withCells(emptySheet(name), changes)
}
