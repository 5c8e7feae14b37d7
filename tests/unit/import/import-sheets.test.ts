import { utils, write, type WorkBook } from 'xlsx'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { computedOtherwise } from '../../../src/exchange/import/compare-values.ts'
import { importedWorkbook, importEdits } from '../../../src/exchange/import/import-edits.ts'
import { importSheets, type ImportChoice, type Imported } from '../../../src/exchange/import/import-sheets.ts'
import { notesSheet } from '../../../src/exchange/import/notes-sheet.ts'
import type { FileContents, ReadCell, ReadSheet } from '../../../src/exchange/reading/contents.ts'
import { readFileContents } from '../../../src/exchange/reading/read-file.ts'
import { parseAddress } from '../../../src/workbook/address.ts'
import { usedRange, type Cell, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { workbookOf } from '../workbook-of.ts'

type Put = ReadCell | ReadCell['value']

function sheetOf(name: string, cells: Readonly<Record<string, Put>>, rest: Partial<ReadSheet> = {}): ReadSheet {
  const rows: (ReadCell | undefined)[][] = []
  for (const [address, put] of Object.entries(cells)) {
    const at = parseAddress(address)
    if (at === undefined) throw new Error(address)
    const row = (rows[at.row] ??= [])
    row[at.column] = put !== null && typeof put === 'object' && 'value' in put ? put : { value: put }
  }
  return { name, hidden: false, widthsPx: [], rows, ...rest }
}

const fileOf = (sheets: readonly ReadSheet[], rest: Partial<FileContents> = {}): FileContents => ({ kind: 'xlsx', sheets, names: new Map(), remarks: [], ...rest })

const imported = (cells: Readonly<Record<string, Put>>, rest: Partial<FileContents> = {}): Imported => importSheets(fileOf([sheetOf('Main', cells)], rest))

function cellIn({ sheets }: Imported, address: string, sheet = 0): Cell | undefined {
  const at = parseAddress(address)
  return at && sheets[sheet]?.sheet.rows[at.row]?.[at.column]
}

const remarksOf = ({ remarks }: Imported, kind?: string): string[] => remarks.filter((one) => kind === undefined || one.kind === kind).map(({ place, words }) => `${place}: ${words}`)

/** What is computed otherwise, by a graph of the workbook. */
function differences(one: Imported): string[] {
  const graph = new Graph(importedWorkbook('x', one))
  return one.sheets.flatMap((sheet) => {
    const { rows, columns } = usedRange(sheet.sheet)
    return computedOtherwise(sheet, 0, graph.read(sheet.sheet.name, { top: 0, left: 0, bottom: rows - 1, right: columns - 1 }).values)
  }).map(({ place, words }) => `${place}: ${words}`)
}

async function read(book: WorkBook, bookType: 'xlsx' | 'ods' | 'csv'): Promise<FileContents> {
  const contents = await readFileContents(new Uint8Array(write(book, { type: 'array', bookType }) as ArrayBuffer), `charge.${bookType}`)
  if ('problem' in contents) throw new Error(contents.problem)
  return contents
}

describe('values of a file', () => {
  it('are numbers, truth values and texts as they are; a text that would read as a number stays text', () => {
    const one = imported({ A1: 12.5, A2: true, A3: 'Drum', A4: '007', A5: '12', A6: 'TRUE', A7: '=A1', A8: "'quoted", A9: '' })
    expect(['A1', 'A2', 'A3', 'A4', 'A5', 'A6', 'A7', 'A8', 'A9'].map((address) => cellIn(one, address)?.content)).toEqual([12.5, true, 'Drum', '007', "'12", "'TRUE", "'=A1", "''quoted", undefined])
    expect(one.remarks).toEqual([])
  })

  it('errors without a formula are texts, with a remark', () => {
    const one = imported({ B2: { value: { error: '#N/A' } } })
    expect(cellIn(one, 'B2')).toEqual({ content: '#N/A', role: 'text' })
    expect(remarksOf(one, 'written otherwise')).toEqual(['Main!B2: errors that the file holds without a formula are texts'])
  })

  it('days are ISO 8601 texts, counted; those that formulas use stay numbers with the day in the note', () => {
    const cells = { A1: { value: 38749, format: 'yyyy-mm-dd' }, A2: { value: 38749, format: 'd/m/yy' }, A3: { value: 3687.4207639, format: 'yyyy-mm-dd hh:mm:ss' }, B1: { value: 38750, formula: 'A1+1', format: 'yyyy-mm-dd' } }
    const one = imported(cells)
    expect(['A1', 'A2', 'A3'].map((address) => cellIn(one, address)?.content)).toEqual([38749, '2006-02-01', '1910-02-03T10:05:54'])
    expect(cellIn(one, 'A1')?.note).toBe('In the file: 2006-02-01')
    expect(cellIn(one, 'B1')).toEqual({ content: '=A1+1', role: 'result', note: 'In the file: 2006-02-02' })
    expect(remarksOf(one)).toContain('Main: days and times are texts such as 2006-02-01 or 10:05:54 (ISO 8601) (2 cells: A2, A3)')
    expect(differences(one)).toEqual([])
    expect(cellIn(imported({ A1: { value: 0, format: 'yyyy-mm-dd' } }, { dateSystem: 1904 }), 'A1')?.content).toBe('1904-01-01')
    expect(cellIn(imported({ A1: { value: 60, format: 'yyyy-mm-dd' } }, { kind: 'ods' }), 'A1')?.content).toBe('1900-02-28')
  })

  it('number formats become decimals or digits; shares keep their number, and a remark says how to read it', () => {
    const look = (format: string, value = 1234.5): Cell | undefined => cellIn(imported({ A1: { value, format } }), 'A1')
    expect(look('0.00')).toEqual({ content: 1234.5, role: 'input', decimals: 2 })
    expect(look('#,##0')).toEqual({ content: 1234.5, role: 'input', decimals: 0 })
    expect(look('#,##0.0_);(#,##0.0)')).toEqual({ content: 1234.5, role: 'input', decimals: 1 })
    expect(look('0.00E+00')).toEqual({ content: 1234.5, role: 'input', digits: 3 })
    for (const format of ['General', '# ?/?', '0,', '@', '0.0##']) expect(look(format)).toEqual({ content: 1234.5, role: 'input' })
    const share = imported({ A1: { value: 0.05, format: '0.0%' } })
    expect(cellIn(share, 'A1')).toEqual({ content: 0.05, role: 'input', decimals: 3 })
    expect(remarksOf(share)).toEqual(['Main!A1: the file shows shares in percent, 0.05 as 5 %; here they are the numbers themselves, of the unit "-"'])
    expect(remarksOf(imported({ A1: { value: 85, format: '0.0 "kW"' } }))).toEqual(['Main!A1: the file shows "kW" with the number, by its format; a unit belongs into a cell of its own'])
  })

  it('notes, widths and lines kept in view come along; hidden columns and rows are shown, and named', () => {
    const one = importSheets(fileOf([sheetOf('Main', { A1: { value: 1, note: 'measured' } }, { widthsPx: [120.4, 0, 5000, 3], frozen: [2, 1] })]))
    expect(cellIn(one, 'A1')?.note).toBe('measured')
    expect(one.sheets[0]?.sheet.columns).toEqual([120, 64, 4000, 16])
    expect(one.sheets[0]?.sheet.frozen).toEqual([2, 1])
    expect(remarksOf(one)).toEqual(['Main: column B, which the file hides, is shown'])
    const more = importSheets(fileOf([sheetOf('Main', { A1: 1, A5: 2 }, { widthsPx: [0, 64, 0], hiddenRows: { first: 4, count: 2 } })]))
    expect(remarksOf(more)).toEqual(['Main: 2 columns that the file hides are shown: A, C', 'Main: 2 rows that the file hides are shown, the first is row 5'])
  })
})

describe('roles', () => {
  it('are guessed by content and place', () => {
    const one = imported({
      A1: 'Charge of the vessels',
      A3: 'Tag', B3: 'Volume', C3: 'Charge',
      B4: 'ft3', C4: 'lb',
      A5: 'V-1', B5: 100, C5: { value: 3800, formula: 'B5*38' }, D5: 'Built in', E5: true,
      A6: 'Load', B6: 85, C6: 'TR',
      A7: 'Enough?', B7: { value: true, formula: 'C5>B5' },
      A8: 'a word alone', A9: 'in',
    })
    const roles = Object.fromEntries(['A1', 'A3', 'B3', 'C3', 'B4', 'C4', 'A5', 'B5', 'C5', 'D5', 'E5', 'A6', 'B6', 'C6', 'A7', 'B7', 'A8', 'A9'].map((address) => [address, cellIn(one, address)?.role]))
    expect(roles).toEqual({
      A1: 'title', A3: 'heading', B3: 'heading', C3: 'heading', B4: 'unit', C4: 'unit', A5: 'label', B5: 'input', C5: 'result', D5: 'text', E5: 'input',
      A6: 'label', B6: 'input', C6: 'unit', A7: 'label', B7: 'check', A8: 'text', A9: 'text',
    })
  })
})

describe('formulas of a file', () => {
  it('that Lowside does not compute are texts with the value in a note, each listed with its reason', () => {
    const one = imported({ A1: { value: 3, formula: 'LET(a,1,a+2)' }, A2: { value: 7, formula: '[1]X!A1', note: 'by hand' }, A3: { value: 6, formula: 'A1*2' } })
    expect(cellIn(one, 'A1')).toEqual({ content: "'=LET(a,1,a+2)", role: 'text', note: 'In the file: 3' })
    expect(cellIn(one, 'A2')).toEqual({ content: "'=[1]X!A1", role: 'text', note: 'by hand\n\nIn the file: 7' })
    expect(remarksOf(one, 'kept as text')).toEqual(['Main!A1: =LET(a,1,a+2): LET is not known here', 'Main!A2: =[1]X!A1: it refers to another file'])
    expect(differences(one)).toEqual([expect.stringMatching(/^Main!A3: =A1\*2 comes to #VALUE! \(.*\), in the file to 6$/)])
  })

  it('that come to another value than the file holds are listed, from 1e-9 of it on', () => {
    expect(differences(imported({ A1: 10, A2: { value: 20 * (1 + 5e-10), formula: 'A1*2' } }))).toEqual([])
    expect(differences(imported({ A1: 10, A2: { value: 20 * (1 + 2e-9), formula: 'A1*2' } }))).toEqual(['Main!A2: =A1*2 comes to 20, in the file to 20.00000004'])
    expect(differences(imported({ A1: { value: 'x', formula: '"y"' }, A2: { value: { error: '#DIV/0!' }, formula: '1/0' }, A3: { value: 1, formula: '1=1' }, A4: { value: null, formula: '1+1' }, A5: { value: 0, formula: 'Z9' } })))
      .toEqual(['Main!A1: ="y" comes to "y", in the file to "x"', 'Main!A3: =1=1 comes to TRUE, in the file to 1'])
    expect(differences(imported({ A1: { value: 38749, formula: 'TODAY()' } }))[0]).toMatch(/it changes with every calculation$/)
  })

  it('follow sheets and names that are called otherwise in the workbook', () => {
    const target = workbookOf({ Duty: { A1: 1 } }, { Load: 'Duty!$A$1' })
    const file = fileOf([sheetOf('Duty', { A1: 85, A2: { value: 170, formula: 'Load*2' } }), sheetOf('a/b', { A1: { value: 85, formula: 'Duty!A1' }, A2: { value: 255, formula: "Duty!A2+'a/b'!A1" } })], { names: new Map([['Load', 'Duty!$A$1'], ['Left', '[1]X!A1'], ['g', '9.81']]) })
    const one = importSheets(file, {}, target)
    expect(one.sheets.map(({ sheet }) => sheet.name)).toEqual(['Duty 2', 'a b'])
    expect([...one.names]).toEqual([['Load_2', "'Duty 2'!$A$1"], ['g', '9.81']])
    expect([cellIn(one, 'A2')?.content, cellIn(one, 'A1', 1)?.content, cellIn(one, 'A2', 1)?.content]).toEqual(['=Load_2*2', "='Duty 2'!A1", "='Duty 2'!A2+'a b'!A1"])
    expect(remarksOf(one, 'left out')).toEqual([': the name Left is not brought in: it refers to another file'])

    let workbook: Workbook = target
    for (const { edits } of importEdits(target, one.sheets.map(({ sheet }) => sheet), one.names)) workbook = applyEdits(workbook, edits).workbook
    const graph = new Graph(workbook)
    expect([graph.value('Duty', 0, 0), graph.value('Duty 2', 1, 0), graph.value('a b', 1, 0)]).toEqual([1, 170, 255])
    expect(readWorkbook(writeWorkbook(workbook))).toEqual({ workbook })
  })
})

describe('the sheets of a file', () => {
  const choose = (contents: FileContents, choice?: ImportChoice): Imported => importSheets(contents, choice)

  it('that are hidden come only if chosen, and are listed', () => {
    const file = fileOf([sheetOf('Shown', { A1: { value: 1, formula: 'Prices!A1' } }), sheetOf('Prices', { A1: 1 }, { hidden: true })])
    const one = choose(file)
    expect(one.sheets.map(({ sheet }) => sheet.name)).toEqual(['Shown'])
    expect(remarksOf(one)).toEqual(['Prices: a hidden sheet of the file, which is not brought in', 'Shown!A1: =Prices!A1: it refers to the sheet "Prices", which is not brought in'])
    const both = choose(file, { sheets: new Set([0, 1]) })
    expect(both.sheets.map(({ sheet }) => sheet.name)).toEqual(['Shown', 'Prices'])
    expect(cellIn(both, 'A1')?.content).toBe('=Prices!A1')
  })

  it('with names that no workbook accepts, or that differ in capitals only, get acceptable ones', () => {
    const wanted = ['', 'A', 'a', '__proto__', "'x'", 'a*?b', 'x'.repeat(40), 'x'.repeat(41), 'Drum\u0007']
    const { sheets } = choose(fileOf(wanted.map((name) => sheetOf(name, { A1: 1 }))))
    expect(sheets.map(({ sheet }) => sheet.name)).toEqual(['Sheet', 'A', 'a 2', '__proto__ 2', 'x', 'a b', 'x'.repeat(31), `${'x'.repeat(29)} 2`, 'Drum'])
  })

  it('remarks of the reader come along, but for sheets that are left', () => {
    const remarks = [{ place: 'Left!A1', words: 'a' }, { place: 'Main', words: 'b' }, { place: '', words: 'c' }]
    expect(remarksOf(choose(fileOf([sheetOf('Main', { A1: 1 }), sheetOf('Left', {})], { remarks }), { sheets: new Set([0]) }))).toEqual(['Main: b', ': c'])
  })

  it('the notes of an import are a sheet that reads as text whatever the file says', () => {
    const sheet = notesSheet('=x.csv', new Date('2026-11-27T08:00:00Z'), [{ kind: 'left out', place: 'Main!A1', words: '=1+1' }], ['Import notes'])
    expect(sheet.name).toBe('Import notes 2')
    expect(sheet.rows[1]?.[1]?.content).toBe("'=x.csv")
    expect(sheet.rows[5]?.map((cell) => cell?.content)).toEqual(['Main!A1', 'left out', "'=1+1"])
  })
})

describe('files that another library wrote', () => {
  const book = (): WorkBook => {
    const sheet = utils.aoa_to_sheet([['Tag', 'Volume', 'Charge'], [null, 'ft3', 'lb'], ['V-1', 100, null], ['V-2', 250.5, null]])
    sheet['C3'] = { t: 'n', v: 3800, f: 'B3*38' }
    sheet['C4'] = { t: 'n', v: 9519, f: 'B4*38' }
    sheet['C5'] = { t: 'n', v: 13319, f: 'SUM(C3:C4)' }
    sheet['!ref'] = 'A1:C5'
    return utils.book_new(sheet, 'Vessels')
  }
  it.each(['xlsx', 'ods'] as const)('%s: formulas compute what the file holds', async (ending) => {
    const one = importSheets(await read(book(), ending))
    expect(['C3', 'C4', 'C5'].map((address) => cellIn(one, address)?.content)).toEqual(['=B3*38', '=B4*38', '=SUM(C3:C4)'])
    expect(['A1', 'B2', 'A3', 'B3', 'C5'].map((address) => cellIn(one, address)?.role)).toEqual(['heading', 'unit', 'label', 'input', 'result'])
    expect(differences(one)).toEqual([])
    expect(one.remarks).toEqual([])
  })

  it('csv: numbers and texts, no formula from a text that begins like one', async () => {
    const bytes = new TextEncoder().encode('Tag;Volume\nV-1;1,5\n=1+1;007\n')
    const contents = await readFileContents(bytes, 'list.csv')
    if ('problem' in contents) throw new Error(contents.problem)
    const one = importSheets(contents)
    expect(cellIn(one, 'B2')?.content).toBe(1.5)
    expect(cellIn(one, 'A3')?.content).toBe("'=1+1")
    expect(cellIn(one, 'B3')?.content).toBe('007')
    expect(one.sheets[0]?.sheet.name).toBe('list')
  })
})
