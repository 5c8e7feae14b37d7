import { describe, expect, it } from 'vitest'
import { buildXlsx, rowsXml, xlsxParts } from './build-xlsx.ts'
import { buildOds, odsParts, tableXml } from './build-ods.ts'
import { buildZip, type PartToBuild } from './build-zip.ts'
import { cell, contents, problem, values, words } from './reading.ts'

const PLAIN = { sheets: [['Duty', rowsXml('<row r="1"><c r="A1"><v>42</v></c></row>')]] } as const
const SHEET = 'xl/worksheets/sheet1.xml'
const with_ = (more: PartToBuild): Uint8Array => buildZip([...xlsxParts(PLAIN), more])
const changed = (name: string, change: Partial<PartToBuild>): Uint8Array => buildZip(xlsxParts(PLAIN).map((part) => (part.name === name ? { ...part, ...change } : part)))

describe('statements of a package that do not hold', () => {
  it('the file that the others are made of is read', async () => expect(values(await contents(buildXlsx(PLAIN)))).toEqual([[42]]))

  const parts = xlsxParts(PLAIN)
  const whole = buildZip(parts)
  it.each<[what: string, file: Uint8Array, says: RegExp]>([
    ['a part stated smaller than it is', changed(SHEET, { statedSize: 20 }), /made to swell, or damaged.*larger than it says \(20 bytes\)/],
    ['a part stated larger than it is', changed(SHEET, { statedSize: 2000 }), /breaks off/],
    ['a part that would take 4 GB', changed(SHEET, { statedSize: 0xfffffffe }), /too large.*would take 4295 MB; accepted: up to 512 MB/],
    ['a part that expands a thousandfold', with_({ name: 'xl/media/zeros.bin', data: new Uint8Array(6_000_000) }), /made to swell.*-fold; accepted: up to 300-fold/],
    ['parts that take more than 1 GB together', buildZip([...parts, ...[1, 2, 3].map((number) => ({ name: `big${number}`, data: new Uint8Array(1_500_000), stored: true, method: 8, statedSize: 400_000_000 }))]), /parts would take more than 1024 MB together/],
    ['more than 10 000 parts', buildZip([...parts, ...Array.from({ length: 10_001 }, (_, index) => ({ name: `p${index}`, data: '', stored: true }))]), /it has 10006 parts; accepted: up to 10000/],
    ['two parts of one name', with_({ name: SHEET, data: '<worksheet/>' }), /two parts named “xl\/worksheets\/sheet1.xml”/],
    ['two parts of one name but for capitals', with_({ name: SHEET.toUpperCase(), data: '<worksheet/>' }), /two parts named/],
    ['a name that climbs out', with_({ name: '../../etc/passwd', data: 'x' }), /points out of the file/],
    ['a name that climbs out in the middle', with_({ name: 'xl/../../x', data: 'x' }), /points out of the file/],
    ['a name with backslashes that climbs out', with_({ name: 'xl\\..\\..\\x', data: 'x' }), /points out of the file/],
    ['a name from the root', with_({ name: '/etc/passwd', data: 'x' }), /points out of the file/],
    ['a name from a drive', with_({ name: 'C:/x', data: 'x' }), /points out of the file/],
    ['parts that share their data', with_({ name: 'second', localName: 'second', data: 'x', sharesDataOf: 0 }), /another one than the list of parts says/],
    ['parts of one name over one another', buildZip([...parts, { name: '[Content_Types].xml', data: parts[0]?.data ?? '', sharesDataOf: 0 }]), /two parts named/],
    ['a part whose data reaches over the next ones (a quoted overlap)', changed('[Content_Types].xml', { stored: true, statedPackedSize: 300, statedSize: 300 }), /lie over one another/],
    ['a part with another name before it', changed(SHEET, { localName: 'xl/worksheets/sheet9.xml' }), /another one than the list of parts says/],
    ['a part with a password', changed(SHEET, { flags: 0x801 }), /protected by a password/],
    ['a part packed in an unknown way', changed(SHEET, { method: 14 }), /packed in a way \(number 14\).*accepted: stored and deflate/],
    ['a part that is not what was written', changed(SHEET, { crc: 1 }), /not as it was written/],
    ['a part that is no deflate stream', changed(SHEET, { data: 'no deflate at all', stored: true, method: 8 }), /cannot be unpacked|breaks off/],
    ['more parts stated than there are', buildZip(parts, { count: 50 }), /list of parts breaks off/],
    ['a file cut off', whole.slice(0, -200), /breaks off before its list of parts/],
    ['a file cut at its beginning', new Uint8Array([...whole.slice(0, 4), ...whole.slice(90)]), /not where it says/],
    ['only the mark of a package', whole.slice(0, 4), /breaks off/],
  ])('%s', async (_, file, says) => expect(await problem(file)).toMatch(says))

  it('a package in the form for large files (Zip64) is read where it says the truth', async () => expect(values(await contents(buildZip(parts, { zip64: true })))).toEqual([[42]]))
  it('and refused where it promises more', async () => expect(await problem(buildZip(parts, { zip64: true, count: 2 ** 40 }))).toMatch(/parts; accepted: up to 10000/))
  it('a file beyond the limit is refused by its size alone', async () => expect(await problem(new Uint8Array(64_000_001))).toBe('The file is too large to be read safely: it has 64 MB; accepted: up to 64 MB. Leave out what is not needed, and save it again.'))
})

describe('XML that does harm', () => {
  const sheet = (data: string): Uint8Array => changed(SHEET, { data })
  it.each<[what: string, file: Uint8Array, says: RegExp]>([
    ['entities that multiply', sheet('<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><worksheet><sheetData><row><c t="str"><v>&b;</v></c></row></sheetData></worksheet>'), /declares a document type or entities/],
    ['entities of files', sheet('<?xml version="1.0"?><!DOCTYPE x SYSTEM "file:///etc/passwd"><worksheet/>'), /declares a document type or entities/],
    ['a document type in small letters', sheet('<!doctype html><worksheet/>'), /declares a document type or entities/],
    ['an entity without declaration', sheet('<worksheet><sheetData><row><c t="str"><v>&b;</v></c></row></sheetData></worksheet>'), /not well-formed/],
    ['elements in one another without end', sheet('<a>'.repeat(100_000)), /more than 128 elements in one another/],
    ['a tag without end', sheet(`<worksheet a="${'x'.repeat(500_000)}`), /more than 400000 characters/],
    ['elements that cross', sheet('<worksheet><sheetData></worksheet></sheetData>'), /not well-formed/],
    ['elements left open', sheet('<worksheet><sheetData>'), /not well-formed/],
    ['two roots', sheet('<worksheet/><worksheet/>'), /not well-formed/],
    ['nothing', sheet(''), /not well-formed/],
    ['an attribute twice', sheet('<worksheet a="1" a="2"/>'), /not well-formed/],
    ['a document type in an OpenDocument file', buildZip(odsParts('').map((part) => (part.name === 'content.xml' ? { ...part, data: `<!DOCTYPE x>${String(part.data)}` } : part))), /declares a document type/],
  ])('%s', async (_, file, says) => expect(await problem(file)).toMatch(says))
})

describe('sheets that do harm', () => {
  const sheet = (inside: string): Uint8Array => buildXlsx({ sheets: [['Duty', inside]] })
  it('a stated size of the sheet is not believed', async () => {
    expect(values(await contents(sheet(`<dimension ref="A1:XFD1048576"/>${rowsXml('<row r="1"><c r="A1"><v>1</v></c></row>')}`)))).toEqual([[1]])
  })
  it.each([
    ['below the last row', '<row r="1048577"><c r="A1048577"><v>1</v></c></row>', /row 1048577, column 1; accepted: up to row 1048576, column XFD/],
    ['right of the last column', '<row r="1"><c r="XFE1"><v>1</v></c></row>', /row 1, column 16385; accepted/],
    ['nowhere', '<row r="1"><c r="__proto__"><v>1</v></c></row>', /has a cell at “__proto__”/],
    ['in a row that is none', '<row r="-5"><c><v>1</v></c></row>', /row without a number/],
  ])('a cell %s', async (_, inside, says) => expect(await problem(sheet(rowsXml(inside)))).toMatch(says))

  it('a cell in the last row and column is read', async () => {
    const read = await contents(sheet(rowsXml('<row r="1048576"><c r="XFD1048576"><v>7</v></c></row>')))
    expect(read.sheets[0]?.rows[1_048_575]?.[16_383]).toEqual({ value: 7 })
  })

  it('names that every object has do not get anywhere', async () => {
    const hostile = ['__proto__', 'constructor', 'toString', 'hasOwnProperty']
    const read = await contents(buildXlsx({
      sheets: hostile.map((name) => [name, rowsXml('<row r="1"><c r="A1" t="str" s="__proto__"><v>__proto__</v></c></row>')]),
      book: `<definedNames>${hostile.map((name) => `<definedName name="${name}">constructor!$A$1</definedName>`).join('')}</definedNames>`,
    }))
    expect(read.sheets.map(({ name }) => name)).toEqual(hostile)
    expect([...read.names.keys()]).toEqual(hostile)
    expect(Object.keys(Object.prototype)).toEqual([])
    expect(({} as Record<string, unknown>)['$A$1']).toBeUndefined()
  })

  it('a text longer than a cell holds is cut, and that is said', async () => {
    const read = await contents(sheet(rowsXml(`<row r="1"><c r="A1" t="str"><v>${'x'.repeat(40_000)}</v></c></row>`)))
    expect(String(values(read)[0]?.[0]).length).toBe(32_767)
    expect(words(read)).toContain('Duty!A1: The text has 40000 characters; only the first 32767 are taken over.')
  })

  it('runs of columns, each as wide as the sheet: no more are gone through than there are columns', async () => {
    expect(values(await contents(sheet(`<cols>${'<col min="1" max="16384" width="9"/>'.repeat(40_000)}</cols>${rowsXml('<row><c><v>1</v></c></row>')}`)))).toEqual([[1]])
  })

  it('a formula of nothing but quotes and brackets', async () => {
    const text = "'[a]''".repeat(5_000)
    expect(cell(await contents(sheet(rowsXml(`<row>${`<c><f>${text}</f><v>1</v></c>`.repeat(20)}</row>`))), 'T1')).toEqual({ value: 1, formula: text })
  })

  it('more than 1024 sheets', async () => {
    expect(await problem(buildXlsx({ sheets: Array.from({ length: 1025 }, (_, index) => [`S${index}`, '']) }))).toMatch(/more than 1024 sheets; accepted: up to 1024/)
  })

  it('a cell of an OpenDocument file repeated over all the sheet is refused, empty ones are passed over', async () => {
    const rows = (cell: string): string => `<table:table-row table:number-rows-repeated="1048576">${cell}</table:table-row>`
    expect(await problem(buildOds(tableXml(rows('<table:table-cell table:number-columns-repeated="16384" office:value-type="float" office:value="1"/>'))))).toMatch(/more than 5000000 cells; accepted: up to 5000000/)
    expect(values(await contents(buildOds(tableXml(`<table:table-row><table:table-cell office:value-type="float" office:value="1"/></table:table-row>${rows('<table:table-cell table:number-columns-repeated="16384"/>')}`))))).toEqual([[1]])
  })

  it('a cell of an OpenDocument file right of the last column', async () => {
    expect(await problem(buildOds(tableXml('<table:table-row><table:table-cell table:number-columns-repeated="16384"/><table:table-cell office:value-type="float" office:value="1"/></table:table-row>')))).toMatch(/column 16385; accepted/)
  })
})

describe('what reaches out of a file', () => {
  it('links, macros, connections, embedded files, pictures: left out, and said', async () => {
    const names = ['xl/vbaProject.bin', 'xl/externalLinks/externalLink1.xml', 'xl/connections.xml', 'xl/embeddings/other.xlsx', 'xl/media/image1.png', 'xl/pivotTables/pivotTable1.xml']
    const read = await contents(buildZip([...xlsxParts(PLAIN), ...names.map((name) => ({ name, data: '<!DOCTYPE harm>' }))]))
    expect(values(read)).toEqual([[42]])
    for (const word of ['macros', 'links to other files or programs', 'connections to data elsewhere', 'Embedded files', 'pictures', 'Pivot tables']) expect(words(read)).toContain(word)
  })

  it('formulas that refer to other files or programs keep their values, and are named', async () => {
    const formula = (address: string, text: string): string => `<c r="${address}"><f>${text}</f><v>5</v></c>`
    const read = await contents(buildXlsx({
      sheets: [['Duty', rowsXml(`<row r="1">${formula('A1', '[1]Loads!$B$2*2')}${formula('B1', "'[other.xlsx]My sheet'!A1")}${formula('C1', "cmd|'/c calc'!A1")}${formula('D1', 'WEBSERVICE(&quot;http://example.org&quot;)')}${formula('E1', 'Table1[Duty]*2')}${formula('F1', '&quot;[1]Loads!A1&quot;&amp;A1')}</row>`)]],
    }))
    expect(values(read)).toEqual([[5, 5, 5, 5, 5, 5]])
    expect(read.remarks.map(({ place }) => place)).toEqual(['Duty!A1', 'Duty!C1', 'Duty!D1'])
    expect(words(read)).toContain('Duty!A1: The formula refers to another file. That file is not opened; the last value is kept. (2 cells of this sheet, this one first)')
    expect(words(read)).toContain('asks another program for data')
  })
})
