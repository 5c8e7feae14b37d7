import { expect, it } from 'vitest'
import { problem, contents } from './reading.ts'
import { buildXlsx, rowsXml } from './build-xlsx.ts'

const ACCEPTED = 'Accepted: spreadsheet files (.xlsx, .xlsm, .ods) without a password, and text files (.csv, .tsv).'
const bytes = (...values: number[]): Uint8Array => Uint8Array.from(values)
const compound = (stream: string): Uint8Array => new Uint8Array(Buffer.concat([bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1), Buffer.alloc(504), Buffer.from(stream, 'utf16le'), Buffer.alloc(64)]))

it.each([
  ['nothing', new Uint8Array(0), `The file is empty. ${ACCEPTED}`],
  ['a PDF document', '%PDF-1.7\n%âã', `The file is a PDF document, not a spreadsheet. ${ACCEPTED}`],
  ['a picture', bytes(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0), `The file is a picture, not a spreadsheet. ${ACCEPTED}`],
  ['a photograph', bytes(0xff, 0xd8, 0xff, 0xe0, 0, 16), `The file is a picture, not a spreadsheet. ${ACCEPTED}`],
  ['an archive', bytes(0x1f, 0x8b, 8, 0, 0), `The file is a compressed archive, not a spreadsheet. ${ACCEPTED}`],
  ['a program', bytes(0x4d, 0x5a, 0x90, 0, 3, 0), `The file is a program, not a spreadsheet. ${ACCEPTED}`],
  ['an old binary spreadsheet', compound('Workbook'), `The file is in an old binary form (such as .xls), which is not read. Save it as .xlsx or .ods in the program that wrote it. ${ACCEPTED}`],
  ['a spreadsheet with a password', compound('EncryptedPackage'), `The file is protected by a password. Take the password off in the program that wrote it, then try again. ${ACCEPTED}`],
  ['an old text document', compound('WordDocument'), `The file is a text document in an old binary form, not a spreadsheet. ${ACCEPTED}`],
  ['a web page', '<!DOCTYPE html><html><table></table></html>', `The file is a web page, whatever its name says. Save it as a spreadsheet in the program that wrote it. ${ACCEPTED}`],
  ['XML', '\ufeff<?xml version="1.0"?><a/>', `The file is XML outside a package. Save it as .xlsx or .ods in the program that wrote it. ${ACCEPTED}`],
  ['a workbook of Lowside', '{"lowside": 1,\n "title": "Charge"}', 'The file is a workbook of Lowside. Open it, instead of importing it.'],
  ['other JSON', '{"a": [1, 2]}', `The file is data in JSON, not a table. ${ACCEPTED}`],
  ['bytes of no kind', bytes(1, 2, 3, 0, 5, 6, 7, 8), `The file holds binary data and is no kind of file that can be read here. ${ACCEPTED}`],
])('%s says what it is, and what is accepted', async (_, file, said) => expect(await problem(file, 'list.xlsx')).toBe(said))

it('what a file is decides, not its name', async () => {
  expect((await contents(buildXlsx({ sheets: [['Duty', rowsXml('<row><c><v>1</v></c></row>')]] }), 'list.csv')).kind).toBe('xlsx')
  expect((await contents('a,b\n1,2\n', 'list.xlsx')).kind).toBe('csv')
})

it.each(['BM-101,3\nBM-102,4', 'MZ,1', 'RIFF,2', 'BZh,3', '[x],1\n', '{tag},1', '<0.5,kg\n', '< 5 kg,1\n'])('a list that begins with %s is a list', async (text) => expect((await contents(text)).kind).toBe('csv'))
