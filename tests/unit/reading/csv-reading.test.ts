import { describe, expect, it } from 'vitest'
import { cell, contents, problem, values, words } from './reading.ts'

describe('RFC 4180, section 2', () => {
  it.each([
    ['1: records end with CRLF', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', [['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
    ['2: the last may end without', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', [['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
    ['4: spaces belong to a field', 'aaa, b ,ccc', [['aaa', ' b ', 'ccc']]],
    ['5: fields in quotation marks', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', [['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
    ['6: line breaks inside them', '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', [['aaa', 'b\nbb', 'ccc'], ['zzz', 'yyy', 'xxx']]],
    ['7: quotation marks inside, doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('%s', async (_, text, expected) => expect(values(await contents(text))).toEqual(expected))
})

describe('encodings', () => {
  const text = 'Tag,°F\nV-101,1.5\n'
  const expected = [['Tag', '°F'], ['V-101', 1.5]]
  const utf16 = (mark: boolean, big: boolean): Uint8Array => {
    const bytes = Buffer.from((mark ? '\ufeff' : '') + text, 'utf16le')
    return new Uint8Array(big ? bytes.swap16() : bytes)
  }
  it.each([
    ['UTF-8', new TextEncoder().encode(text), 'UTF-8'], ['UTF-8 with a mark', new TextEncoder().encode(`\ufeff${text}`), 'UTF-8'],
    ['UTF-16, low byte first, with a mark', utf16(true, false), 'UTF-16'], ['UTF-16, high byte first, with a mark', utf16(true, true), 'UTF-16'],
    ['UTF-16, low byte first', utf16(false, false), 'UTF-16'], ['UTF-16, high byte first', utf16(false, true), 'UTF-16'],
    ['Windows-1252, in which ° is byte B0', new Uint8Array(Buffer.from(text, 'latin1')), 'Windows-1252'],
  ] as const)('%s', async (_, bytes, encoding) => {
    const read = await contents(bytes)
    expect(values(read)).toEqual(expected)
    expect(read.dialect?.encoding).toBe(encoding)
    expect(words(read).includes('look whether signs such as ° and ² are right')).toBe(encoding === 'Windows-1252')
  })
  it('zero bytes are no text', async () => expect(await problem('a,b\n1,\0\n')).toMatch(/binary data/))
})

describe('delimiters', () => {
  it.each([
    ['comma', 'a,b,c\n1,2,3', ','], ['semicolon, and a comma in numbers', 'a;b\n1,5;2,25\n3,5;4,75', ';'], ['tab', 'a\tb\nx, y\t3', '\t'], ['upright stroke', 'a|b\n1|2', '|'],
    ['one column', 'a\nb\nc', ','], ['stated in the first line', 'sep=|\na,b|c,d', '|'], ['a comma in quotation marks only', 'a;"b,c,d"\ne;"f,g,h"', ';'],
  ])('%s', async (_, text, delimiter) => {
    const read = await contents(text)
    expect(read.dialect?.delimiter).toBe(delimiter)
    expect(read.sheets[0]?.rows.every((row) => row === undefined || row.length === (text.includes(delimiter) ? (read.sheets[0]?.rows[0]?.length ?? 0) : 1))).toBe(true)
  })
  it('the line that states it is no row', async () => expect(values(await contents('sep=;\na;b'))).toEqual([['a', 'b']]))
  it('what the user says holds', async () => expect(values(await contents('a;b,c', 'x.csv', { dialect: { delimiter: ',' } }))).toEqual([['a;b', 'c']]))
})

describe('numbers, strictly', () => {
  const one = async (text: string, more = ''): Promise<unknown> => values(await contents(`"${text}"\n${more}`))[0]?.[0]

  it.each([['0', 0], ['42', 42], ['-5', -5], ['+5', 5], ['1.5', 1.5], ['.5', 0.5], ['-0.25', -0.25], [' 12 ', 12], ['1.5E3', 1500], ['1E+05', 100_000], ['2e-3', 0.002], ['5%', 0.05], ['TRUE', true], ['1,234.5', 1234.5], ['1,234,567', 1_234_567], ['1 234.5', 1234.5], ["1'234.5", 1234.5]])(
    '%s is one', async (text, value) => expect(await one(text)).toBe(value))

  // An estimator's list: tags, sizes, dates, revisions. An exponent without sign or mark is a tag: programs write "1E+05", people write "12E4" for a tag.
  it.each(['007', '1-2', '3/4', '1 1/2', '1e5x', '12E4', '1E5', '12A', 'V-101', '1.2.3', '2026-11-27', '27/11/2026', '1:30', '0x10', 'Infinity', 'NaN', '1e999', '12345678901234567890', '--5', '+-5', '5 %%', '1,23,456', '-', '.', ',', '1 234 5', 'true'])(
    '%s is a text', async (text) => expect(await one(text)).toBe(text))

  it('zeros at the end and groups are shown as they were written', async () => {
    const read = await contents('a;1.50;"1,250.00";12.5%;7')
    expect(read.sheets[0]?.rows[0]?.slice(1)).toEqual([{ value: 1.5, format: '0.00' }, { value: 1250, format: '#,##0.00' }, { value: 0.125, format: '0.0%' }, { value: 7 }])
  })

  it('a comma as decimal mark, where a cell shows that it is one', async () => {
    const read = await contents('a;0,5\nb;1,250\nc;1.250\nd;1.234,5\ne;12\n')
    expect(values(read).map((row) => row[1])).toEqual([0.5, 1.25, 1250, 1234.5, 12])
    expect(read.dialect).toEqual({ encoding: 'UTF-8', delimiter: ';', decimalMark: ',' })
  })

  it('a point, where a cell shows that it is one', async () => {
    expect(values(await contents('a;0.5\nb;1,250\nc;1.250\n')).map((row) => row[1])).toEqual([0.5, 1250, 1.25])
  })

  it('where no cell shows it, what may be either stays text, and is said', async () => {
    const read = await contents('a;1,250\nb;1.250\nc;12\n')
    expect(values(read).map((row) => row[1])).toEqual(['1,250', '1.250', 12])
    expect(words(read)).toContain('file!B1: “1,250” can be read as more than one number; it is kept as text.')
  })

  it('and is a number once the user says the mark', async () => {
    expect(values(await contents('a;1,250\nb;1.250\n', 'x.csv', { dialect: { decimalMark: ',' } })).map((row) => row[1])).toEqual([1.25, 1250])
  })

  it('two tags with a space between them are no number', async () => expect(await one('101 102')).toBe('101 102'))
})

describe('texts like formulas', () => {
  it('are texts, counted in one remark', async () => {
    const lines = ['=1+1', "=cmd|'/c calc'!A1", '@SUM(A1)', '+1+1', '-1+x', '- none', '-']
    const read = await contents(lines.join('\n'))
    expect(values(read).map(([value]) => value)).toEqual(lines)
    expect(read.sheets[0]?.rows.some((row) => row?.some((one) => one?.formula !== undefined))).toBe(false)
    expect(words(read)).toBe(': 5 cells begin like a formula (with =, +, - or @) and are kept as text: a text file holds values only.')
  })

  it('the apostrophe that our own files put before them is taken off; what follows is a text', async () => {
    const read = await contents("'=1+1,'-5,'@x,'+1,\"'\tx\",'quoted',it's\n")
    expect(values(read)).toEqual([['=1+1', '-5', '@x', '+1', '\tx', "'quoted'", "it's"]])
  })
})

describe('quotation marks out of order', () => {
  it('one never closed: on its line they are ordinary, and no row is lost', async () => {
    const read = await contents('Tag,Size\n"V,1",2\nV-2,"3 in\nV-3,4\nV-4,5\n')
    expect(values(read)).toEqual([['Tag', 'Size'], ['V,1', 2], ['V-2', '"3 in'], ['V-3', 4], ['V-4', 5]])
    expect(words(read)).toContain('Line 3 opens a quotation mark that is never closed; on that line, quotation marks are taken as ordinary characters.')
  })
  it('many never closed take no time that grows with their square', async () => {
    const read = await contents(`Tag,Size\n${'x,"y"z\n'.repeat(20_001)}`)
    expect(read.sheets[0]?.rows.length).toBeGreaterThan(20_000)
  })
  it('one in the middle', async () => {
    const read = await contents('Tag,Size\n"a"b",2\nc,3\n')
    expect(words(read)).toContain('Line 2: a quotation mark stands in the middle of a cell')
    expect(values(read).at(-1)).toEqual(['c', 3])
  })
})

describe('limits', () => {
  it('columns', async () => expect(await problem(`${','.repeat(16_384)}x`)).toMatch(/Row 1 of the file has 16385 columns; accepted: up to 16384/))
  it('a line of nothing but delimiters', async () => expect(await problem(','.repeat(3_000_000))).toMatch(/more than 16384 columns; accepted: up to 16384/))
  it('rows', async () => expect(await problem('1\n'.repeat(1_048_577))).toMatch(/more than 1048576 rows; accepted: up to 1048576/))
  it('a long text is cut, and that is said', async () => expect(words(await contents(`x,${'y'.repeat(50_000)}`))).toContain('file!B1: The text has 50000 characters; only the first 32767 are taken over.'))
  it('no values', async () => expect(await problem('\n,,\n\n')).toMatch(/holds no values/))
})

it('the sheet is named after the file; a name that every object has stays a name', async () => {
  expect((await contents('a', 'C:\\lists\\vessels 2026.csv')).sheets[0]?.name).toBe('vessels 2026')
  expect((await contents('__proto__,constructor\n', '__proto__.csv')).sheets[0]?.name).toBe('__proto__')
  expect(cell(await contents('__proto__'), 'A1')).toEqual({ value: '__proto__' })
})
