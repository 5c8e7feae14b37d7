import { readdirSync } from 'node:fs'
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import fc from 'fast-check'
import Papa from 'papaparse'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CAUTIONS } from '../../functions/cautions.ts'
import { Graph } from '../../src/calc/graph.ts'
import { isCellError, type CellValue } from '../../src/calc/values.ts'
import { csvFiles, exportCsv } from '../../src/exchange/csv.ts'
import { csvText } from '../../src/exchange/csv/csv-text.ts'
import { fileNamesOf } from '../../src/exchange/csv/file-names.ts'
import { readFileContents } from '../../src/exchange/reading/read-file.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { readTemplate } from '../templates/open-template.ts'
import { commandLine, DRUM_FILE, type CommandLine } from './cli-fixture.ts'
import { readZip } from './read-zip.ts'
import { workbookOf } from './workbook-of.ts'

const DATE = new Date('2025-03-04T05:06:07Z')
const TEMPLATES = readdirSync(join(import.meta.dirname, '../../templates')).filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`)

const textOf = (values: readonly (readonly CellValue[])[]): string => [...csvText(values)].join('')

/** Fields as another library reads them, the mark at the beginning and the last line's end left off. */
const parsed = (text: string): string[][] => Papa.parse<string[]>(text.replace(/\r\n$/, ''), { delimiter: ',', newline: '\r\n' }).data

/** What a field says, as the README tells it. */
function meant(field: string): string | number | boolean | null {
  if (field === '') return null
  if (field === 'TRUE' || field === 'FALSE') return field === 'TRUE'
  if (/^'+[=+\-@\t\r\n]/.test(field)) return field.slice(1)
  return /^-?\d+(?:\.\d+)?(?:e[+-]\d+)?$/.test(field) ? Number(field) : field
}

describe('values as comma-separated text', () => {
  it('is RFC 4180 in UTF-8 with a byte order mark: CR LF after every line, quotation marks doubled, as many fields in every line', () => {
    expect(textOf([['a', 1.5, 'b,c'], [], [null, 'say "no"', true], [false, 'two\nlines']])).toBe('\ufeffa,1.5,"b,c"\r\n,,\r\n,"say ""no""",TRUE\r\nFALSE,"two\nlines",\r\n')
  })

  it('has every digit of a number, with a point', () => {
    expect(textOf([[0.1 + 0.2, 1e-7, -123456789.125, 1.7976931348623157e308, 0]])).toBe('\ufeff0.30000000000000004,1e-7,-123456789.125,1.7976931348623157e+308,0\r\n')
  })

  it('has errors by their codes', () => {
    expect(textOf([[{ error: '#VALUE!', message: 'too cold' }, { error: '#CYCLE!', message: '' }]])).toBe('\ufeff#VALUE!,#CYCLE!\r\n')
  })

  // The signs are those that OWASP's page on formula injection names; from memory.
  it('puts an apostrophe before a text that a program could compute, and before no number', () => {
    expect(textOf([['=1+1', '+1', '-x', '@SUM', '\tx', '\rx', "'=1", -1, "'s", 'a=b']])).toBe(`\ufeff'=1+1,'+1,'-x,'@SUM,'\tx,"'\rx",''=1,-1,'s,a=b\r\n`)
  })

  it('gives no line that holds nothing at all', () => {
    expect(textOf([['a'], [null], ['b']])).toBe('\ufeffa\r\n""\r\nb\r\n')
    expect(textOf([])).toBe('\ufeff')
  })

  it('is read back the same, whatever the texts and numbers', () => {
    const awkward = fc.oneof(fc.string({ unit: 'grapheme' }), fc.string(), fc.array(fc.constantFrom('"', ',', '\n', '\r', '\t', '=', '+', '-', '@', "'", ' ', '#', ';', '°', '’', '\ufeff', 'a', '1'), { maxLength: 6 }).map((signs) => signs.join('')))
    // A text that looks like a number or a truth value is one in such a file: it has no kinds.
    const text = awkward.filter((one) => one !== '' && typeof meant(one) === 'string' && one.trim() === one.replace(/^\ufeff/, '').trim())
    const cell = fc.oneof(text, fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => (number === 0 ? 0 : number)), fc.boolean(), fc.constant(null))
    fc.assert(fc.property(fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 6 }), (rows) => {
      const found = parsed(textOf(rows)).map((fields) => fields.map(meant))
      for (const [row, cells] of rows.entries()) for (const [column, value] of cells.entries()) expect(found[row]?.[column] ?? null).toBe(value)
      expect(new Set(found.map(({ length }) => length)).size).toBeLessThanOrEqual(1)
    }), { numRuns: 500 })
  })
})

describe('the names of the files', () => {
  it('are such as every system takes, no two alike', () => {
    expect(fileNamesOf(['Duty', 'DUTY', 'A<b>|"c"', '...', 'con', 'Lpt1.x', 'Straße', 'STRASSE', 'Kälte', '  ', 'x.'])).toEqual(
      ['Duty', 'DUTY 2', 'A b c', 'Sheet', 'Sheet con', 'Sheet Lpt1.x', 'Straße', 'STRASSE 2', 'Kälte', 'Sheet 2', 'x'],
    )
    const signs = fc.array(fc.constantFrom('a', 'A', 'ß', 'ſ', 'İ', '.', ' ', '/', '<', '2', 'é', 'e\u0301'), { minLength: 1, maxLength: 6 }).map((all) => all.join(''))
    fc.assert(fc.property(fc.array(signs, { maxLength: 12 }), (sheets) => {
      const names = fileNamesOf(sheets)
      expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(sheets.length)
      for (const name of names) expect(name).toMatch(/^[^<>:"/\\|?*. ](?:[^<>:"/\\|?*]*[^<>:"/\\|?*. ])?$/)
    }))
  })
})

describe('the description of the files', () => {
  const workbook: Workbook = { ...workbookOf({ 'Duty & <leg>': { A1: 'Load', B1: 85, C1: 'TR' }, Empty: {}, '#2': { B2: '=1/3' } }), title: 'Drum', purpose: 'Of two words' }
  const parts = new Map(csvFiles(workbook, new Graph(workbook).allValues(), { date: DATE }).map(({ name, text }) => [name, [...text].join('')]))

  it('names each file with its sheet, its dialect, date and cautions, for programs', () => {
    expect([...parts.keys()]).toEqual(['README.txt', 'csv-metadata.json', 'Duty leg.csv', 'Empty.csv', '2.csv'])
    const described: unknown = JSON.parse(parts.get('csv-metadata.json') ?? '')
    // Terms and defaults: W3C, Metadata Vocabulary for Tabular Data, 2015, 5.2, 5.3 and 5.9.
    expect(described).toMatchObject({
      '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }], 'dc:title': 'Drum', 'dc:description': 'Of two words',
      'dc:date': { '@value': '2025-03-04T05:06:07Z', '@type': 'xsd:dateTime' }, 'rdfs:comment': CAUTIONS,
      dialect: { encoding: 'utf-8', delimiter: ',', quoteChar: '"', doubleQuote: true, lineTerminators: ['\r\n'], header: false, headerRowCount: 0, skipBlankRows: false, trim: false, commentPrefix: null },
      tables: [
        { url: 'Duty%20leg.csv', 'dc:title': 'Duty & <leg>', tableSchema: { columns: [{ name: 'A' }, { name: 'B' }, { name: 'C' }] } },
        { url: 'Empty.csv', 'dc:title': 'Empty' },
        { url: '2.csv', 'dc:title': '#2', tableSchema: { columns: [{ name: 'A' }, { name: 'B' }] } },
      ],
    })
  })

  it('says the same in words', () => {
    const readme = parts.get('README.txt') ?? ''
    const inOne = readme.replace(/\s+/g, ' ')
    for (const words of ['Drum', '2025-03-04 05:06 UTC', 'Duty leg.csv', 'RFC 4180', 'byte order mark', 'Values only', 'Units stand in the cells', ...CAUTIONS]) expect(inOne).toContain(words)
    expect(readme).not.toMatch(/[^\r]\n/)
    expect(Math.max(...readme.split('\r\n').map(({ length }) => length))).toBeLessThanOrEqual(80)
  })
})

describe.each([...TEMPLATES, 'demo-data/tallowmere.lowside.json'])('the values of %s', (path) => {
  const workbook = readTemplate(path)
  const values = new Graph(workbook).allValues()
  const parts = csvFiles(workbook, values, { date: DATE }).filter(({ name }) => name.endsWith('.csv')).map(({ name, text }) => ({ name, text: [...text].join('') }))

  it('are read back by another library than wrote them', () => {
    for (const [index, { name }] of workbook.sheets.entries()) expect(differing(values.get(name) ?? [], parsed(parts[index]?.text ?? '').map((fields) => fields.map(meant)))).toEqual([])
  })

  it('are read back by Lowside', async () => {
    for (const [index, { name }] of workbook.sheets.entries()) {
      const { name: file = '', text = '' } = parts[index] ?? {}
      const read = await readFileContents(new TextEncoder().encode(text), file)
      if ('problem' in read) expect.fail(read.problem)
      expect(differing(values.get(name) ?? [], (read.sheets[0]?.rows ?? []).map((row) => Array.from(row ?? [], (cell) => cell?.value ?? null)))).toEqual([])
    }
  })
})

it('is one zip file for a browser to save, the same for the same workbook and date', async () => {
  const workbook = readTemplate('templates/charge-inventory.lowside.json')
  const values = new Graph(workbook).allValues()
  const shares: (number | undefined)[] = []
  const bytes = await exportCsv(workbook, values, { date: DATE, report: (share) => shares.push(share) })
  expect([...readZip(bytes).keys()]).toEqual(csvFiles(workbook, values, { date: DATE }).map(({ name }) => name))
  expect(shares.at(-1)).toBe(1)
  expect(Buffer.from(await exportCsv(workbook, values, { date: DATE })).equals(Buffer.from(bytes))).toBe(true)
})

describe('on the command line', () => {
  let cli: CommandLine
  beforeAll(async () => {
    cli = await commandLine()
    await cli.write('drum.lowside.json', DRUM_FILE)
  })
  afterAll(() => cli.remove())

  it('makes a folder, and replaces an earlier export in it, sheets that are no more included', async () => {
    expect(await cli.run(['export', 'drum.lowside.json', '-o', 'out.csv'])).toEqual({ code: 0, out: [], err: [] })
    expect((await readdir(join(cli.folder, 'out.csv'))).toSorted()).toEqual(['Drum.csv', 'README.txt', 'Wet return.csv', 'csv-metadata.json'])
    expect(parsed(await readFile(join(cli.folder, 'out.csv/Drum.csv'), 'utf8'))[2]).toEqual(['Twice the load', '170', 'TR'])
    await writeFile(join(cli.folder, 'out.csv/my own.csv'), 'kept')
    await cli.write('drum2.lowside.json', DRUM_FILE.replace('"Wet return"', '"Dry return"'))
    expect((await cli.run(['export', 'drum2.lowside.json', '-o', 'out.csv/'])).code).toBe(0)
    expect((await readdir(join(cli.folder, 'out.csv'))).toSorted()).toEqual(['Drum.csv', 'Dry return.csv', 'README.txt', 'csv-metadata.json', 'my own.csv'])
  })

  it('leaves a file of that name, and a folder of other files, as they are', async () => {
    await cli.write('file.csv', 'mine')
    expect((await cli.run(['export', 'drum.lowside.json', '-o', 'file.csv'])).err[0]).toContain('file.csv is a file, and values go into a folder, a file a sheet')
    expect(await readFile(join(cli.folder, 'file.csv'), 'utf8')).toBe('mine')
    await mkdir(join(cli.folder, 'others.csv'))
    await writeFile(join(cli.folder, 'others.csv/letter.txt'), 'mine')
    expect((await cli.run(['export', 'drum.lowside.json', '-o', 'others.csv'])).err[0]).toContain('holds other files')
    expect(await readdir(join(cli.folder, 'others.csv'))).toEqual(['letter.txt'])
  })
})

/** Cells of the one that are otherwise in the other; an error is its code, and what looks like a number or a truth value counts as one. */
function differing(values: readonly (readonly CellValue[])[], found: readonly (readonly unknown[])[]): readonly string[] {
  return values.flatMap((cells, row) => (cells ?? []).flatMap((value, column) => {
    const wanted = isCellError(value) ? value.error : typeof value === 'string' ? meantText(value) : value
    const raw = found[row]?.[column] ?? null
    const other = typeof raw === 'object' && raw !== null && 'error' in raw ? raw.error : raw
    return wanted === other ? [] : [`row ${row + 1}, column ${column + 1}: ${JSON.stringify(wanted)}, read back ${JSON.stringify(other)}`]
  }))
}

const meantText = (text: string) => (/^[=+\-@\t\r\n']/.test(text) ? text : meant(text))
