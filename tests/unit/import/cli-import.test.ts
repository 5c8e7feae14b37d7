import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { utils, write } from 'xlsx'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readWorkbook } from '../../../src/workbook/file.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { commandLine, DRUM_FILE, type CommandLine } from '../cli-fixture.ts'
import { buildXlsx, rowsXml } from '../reading/build-xlsx.ts'

let line: CommandLine
beforeAll(async () => {
  line = await commandLine()
  await line.write('drum.lowside.json', DRUM_FILE)
  const sheet = utils.aoa_to_sheet([['Tag', 'Volume'], ['V-1', 100]])
  sheet['C2'] = { t: 'n', v: 200, f: 'B2*2' }
  sheet['D2'] = { t: 'n', v: 3, f: 'LET(a,1,a+2)' }
  sheet['!ref'] = 'A1:D2'
  const book = utils.book_new(sheet, 'Vessels')
  utils.book_append_sheet(book, utils.aoa_to_sheet([[1]]), 'Drum')
  await line.write('vessels.xlsx', new Uint8Array(write(book, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer))
  await line.write('list.csv', 'Tag;Volume\nV-1;1,5\n')
  await line.write('half.xlsx', new Uint8Array(write(book, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer).slice(0, 900))
})
afterAll(() => line.remove())

async function workbookIn(name: string): Promise<Workbook> {
  const read = readWorkbook(await readFile(join(line.folder, name), 'utf8'))
  if ('problems' in read) throw new Error(read.problems[0]?.message)
  return read.workbook
}

const contentAt = (workbook: Workbook, sheet: number, row: number, column: number) => workbook.sheets[sheet]?.rows[row]?.[column]?.content

describe('import', () => {
  it('makes a workbook of a text file, 0 where all comes along', async () => {
    expect(await line.run(['import', 'list.csv', '-o', 'list.lowside.json'])).toEqual({ code: 0, out: [], err: [] })
    const workbook = await workbookIn('list.lowside.json')
    expect([workbook.title, workbook.sheets[0]?.name, contentAt(workbook, 0, 1, 1)]).toEqual(['list', 'list', 1.5])
  })

  it('compares a formula in the last corner of a sheet without reading all the cells before it', async () => {
    const corner = '<row r="1"><c r="A1"><v>5</v></c></row><row r="1048576"><c r="XFD1048576"><f>A1*2</f><v>11</v></c></row>'
    await line.write('corner.xlsx', buildXlsx({ sheets: [['Corner', rowsXml(corner)]] }))
    const ended = await line.run(['import', 'corner.xlsx', '-o', 'corner.lowside.json'])
    expect([ended.code, ended.err]).toEqual([1, [expect.stringMatching(/Corner!XFD1048576.*comes to 10, in the file to 11/)]])
  })

  it('takes the dialect that it is told', async () => {
    expect((await line.run(['import', 'list.csv', '-o', 'comma.lowside.json', '--delimiter', ','])).code).toBe(0)
    expect(contentAt(await workbookIn('comma.lowside.json'), 0, 1, 0)).toBe('V-1;1')
    const ended = await line.run(['import', 'list.csv', '-o', 'x.lowside.json', '--delimiter', '!'])
    expect([ended.code, ended.err[0]]).toEqual([2, expect.stringContaining('--delimiter !: accepted are ",", ";", "\\t", "tab", "|"')])
  })

  it('tells what is kept as text, a line each with its place, and ends with 1', async () => {
    const ended = await line.run(['import', 'vessels.xlsx', '-o', 'vessels.lowside.json'])
    expect(ended).toEqual({ code: 1, out: [], err: ['kept as text: Vessels!D2: =LET(a,1,a+2): LET is not known here'] })
    const workbook = await workbookIn('vessels.lowside.json')
    expect(workbook.sheets.map(({ name }) => name)).toEqual(['Vessels', 'Drum'])
    expect(contentAt(workbook, 0, 1, 2)).toBe('=B2*2')
  })

  it('puts chosen sheets into a workbook, under names that are free', async () => {
    const ended = await line.run(['import', 'vessels.xlsx', '--sheet', 'drum', '--into', 'drum.lowside.json', '-o', 'both.lowside.json'])
    expect([ended.code, ended.err]).toEqual([0, ['written otherwise: Drum 2: called "Drum" in the file; formulas follow']])
    expect((await workbookIn('both.lowside.json')).sheets.map(({ name }) => name)).toEqual(['Drum', 'Wet return', 'Drum 2'])
  })

  it('does not replace a file unless told to', async () => {
    await line.run(['import', 'list.csv', '-o', 'kept.lowside.json'])
    expect((await line.run(['import', 'list.csv', '-o', 'kept.lowside.json'])).err[0]).toContain('there is such a file already; --force replaces it')
    expect((await line.run(['import', 'list.csv', '-o', 'kept.lowside.json', '--force'])).code).toBe(0)
  })

  it('ends with 2 where a file cannot be read, a sheet is not there, or the ending is another', async () => {
    const half = await line.run(['import', 'half.xlsx', '-o', 'half.lowside.json'])
    expect([half.code, half.err.length]).toEqual([2, 1])
    expect((await line.run(['import', 'nowhere.xlsx', '-o', 'x.lowside.json'])).err).toEqual(['lowside import: nowhere.xlsx cannot be read: there is no such file or folder'])
    expect((await line.run(['import', 'vessels.xlsx', '--sheet', 'Gone', '-o', 'x.lowside.json'])).err).toEqual(['lowside import: --sheet "Gone": the file has no such sheet; it has "Vessels", "Drum"'])
    expect((await line.run(['import', 'vessels.xlsx', '-o', 'x.xlsx'])).err[0]).toContain('ends in .lowside.json')
    expect((await line.run(['import', 'vessels.xlsx', '--accept', 'all', '-o', 'x.lowside.json'])).err[0]).toContain('--accept is for files that Lowside exported')
    for (const name of ['half.lowside.json', 'x.lowside.json']) await expect(workbookIn(name)).rejects.toThrow()
  })

  it('brings a file that Lowside exported back as the workbook it was', async () => {
    for (const ending of ['xlsx', 'ods']) {
      expect((await line.run(['export', 'drum.lowside.json', '-o', `drum.${ending}`])).code).toBe(0)
      expect(await line.run(['import', `drum.${ending}`, '-o', `${ending}.lowside.json`])).toEqual({ code: 0, out: [], err: [] })
      expect(await workbookIn(`${ending}.lowside.json`)).toEqual(await workbookIn('drum.lowside.json'))
    }
  })
})
